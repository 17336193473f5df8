// The departures that a list of steps allows, with how likely each is.
#include "diagnosis/departures.hpp"

#include "words/words.hpp"

#include <algorithm>

namespace punchwright {
namespace {

// Relative weights, from memory of what beginners at a machine forget; only their order matters.
double weight_left_out(StepKind kind) {
  switch (kind) {
  case StepKind::needles_back: return 10;
  case StepKind::card_released:
  case StepKind::contrast_in:
  case StepKind::lift_float: return 6;
  case StepKind::contrast_out:
  case StepKind::two_colour_on:
  case StepKind::selection_on:
  case StepKind::length_single: return 5;
  case StepKind::set_plain:
  case StepKind::card_locked:
  case StepKind::main_out:
  case StepKind::main_in: return 3;
  default: return 2;
  }
}

constexpr double weight_row_miscounted = 8;
constexpr double weight_card_row_off = 6;
constexpr double weight_card_stuck = 2;
constexpr double weight_part = 4;
constexpr double weight_twice = 1;

class Variations {
public:
  Variations(const StepList& list, const ActionLine& line) : list_(list), line_(line) {}

  std::vector<Variation> whole_steps() {
    each_step([&](int step, std::size_t from, std::size_t to) { whole(step, from, to); });
    return std::move(all_);
  }

  std::vector<Variation> all() {
    each_step([&](int step, std::size_t from, std::size_t to) {
      whole(step, from, to);
      parts(step, from, to);
    });
    std::ranges::stable_sort(all_, {}, &Variation::from);
    return std::move(all_);
  }

private:
  template <class Use> void each_step(Use&& use) {
    std::size_t from = 0;
    while (from < line_.actions.size()) {
      std::size_t to = from;
      while (to < line_.actions.size() && line_.steps[to] == line_.steps[from]) {
        ++to;
      }
      use(line_.steps[from], from, to);
      from = to;
    }
  }

  [[nodiscard]] const Step& step_at(int step) const { return list_.steps[static_cast<std::size_t>(step)]; }

  void add(DepartureKind kind, int step, double weight, std::size_t from, std::size_t to,
           std::vector<MachineAction> instead, int row, int amount = 0) {
    Departure departure;
    departure.kind = kind;
    departure.step = step;
    departure.row = row;
    departure.amount = amount;
    departure.weight = weight;
    all_.push_back({std::move(departure), from, to, std::move(instead)});
  }

  void whole(int step, std::size_t from, std::size_t to) {
    const Step& done = step_at(step);
    add(DepartureKind::left_out, step, weight_left_out(done.kind), from, to, {}, done.first_row);
    std::vector<MachineAction> twice;
    for (int time = 0; time < 2; ++time) {
      twice.insert(twice.end(), line_.actions.begin() + static_cast<std::ptrdiff_t>(from),
                   line_.actions.begin() + static_cast<std::ptrdiff_t>(to));
    }
    add(DepartureKind::done_twice, step, weight_twice, from, to, std::move(twice), done.first_row);
  }

  void parts(int step, std::size_t from, std::size_t to) {
    const Step& done = step_at(step);
    if (done.kind == StepKind::knit_rows && to - from > 1) {
      add(DepartureKind::row_less, step, weight_row_miscounted, to - 1, to, {}, done.last_row);
      add(DepartureKind::row_more, step, weight_row_miscounted, to, to, {KnitPass{}}, done.last_row);
    } else if (to - from > 1) {
      for (std::size_t part = from; part < to; ++part) {
        add(DepartureKind::part_left_out, step, weight_part, part, part + 1, {}, done.first_row);
      }
    }
    int row = done.first_row;
    for (std::size_t at = from; at < to; ++at) {
      const MachineAction& action = line_.actions[at];
      if (const auto* turned = std::get_if<TurnCard>(&action)) {
        for (const int amount : {1, -1, 2, -2, 3, -3, 5, -5, 7, -7}) {
          add(DepartureKind::card_row_off, step, weight_card_row_off / (amount < 0 ? -amount : amount), at, at + 1,
              {TurnCard{turned->row + amount}}, 0, amount);
        }
      }
      if (done.kind == StepKind::knit_rows && std::holds_alternative<KnitPass>(action)) {
        stuck(step, at, row);
        row = std::min(row + 1, done.last_row);
      }
    }
  }

  void stuck(int step, std::size_t at, int row) {
    const bool has_card =
        std::ranges::any_of(list_.steps, [](const Step& one) { return one.kind == StepKind::card_in; });
    if (has_card) {
      add(DepartureKind::card_stuck, step, weight_card_stuck, at, at + 1, {LockCard{true}, KnitPass{}, LockCard{false}},
          row);
    }
  }

  const StepList& list_;
  const ActionLine& line_;
  std::vector<Variation> all_;
};

std::string names_of(const std::vector<Needle>& needles) {
  return text_of(runs_of(needles));
}

std::string words_of_needles(const Departure& departure) {
  switch (departure.stood) {
  case Stood::none_forward: return said("In row {} no needle stood forward.", departure.row);
  case Stood::all_forward: return said("In row {} every needle stood forward.", departure.row);
  case Stood::some_wrong: break;
  }
  return said("In row {} the wrong needles stood forward: see {}.", departure.row, names_of(departure.needles));
}

std::string words_of_card_off(int rows, int step) {
  return rows > 0 ? said_count(rows, "The card stood {} row too far on when it was locked (step {}).",
                               "The card stood {} rows too far on when it was locked (step {}).", step)
                  : said_count(-rows, "The card stood {} row too far back when it was locked (step {}).",
                               "The card stood {} rows too far back when it was locked (step {}).", step);
}

std::string words_of_work_off(int needles, int step) {
  return needles > 0 ? said_count(needles, "The work hung {} needle too far to the right (step {}).",
                                  "The work hung {} needles too far to the right (step {}).", step)
                     : said_count(-needles, "The work hung {} needle too far to the left (step {}).",
                                  "The work hung {} needles too far to the left (step {}).", step);
}

std::string words_of_counted_off(int needles, int row) {
  return needles > 0
             ? said_count(needles,
                          "From row {1} on the needles were counted from the wrong place, {0} needle too far to the "
                          "right.",
                          "From row {1} on the needles were counted from the wrong place, {0} needles too far to the "
                          "right.",
                          row)
             : said_count(-needles,
                          "From row {1} on the needles were counted from the wrong place, {0} needle too far to the "
                          "left.",
                          "From row {1} on the needles were counted from the wrong place, {0} needles too far to the "
                          "left.",
                          row);
}

} // namespace

std::string_view word_for(DepartureKind kind) {
  switch (kind) {
  case DepartureKind::left_out: return "left-out";
  case DepartureKind::done_twice: return "done-twice";
  case DepartureKind::part_left_out: return "part-left-out";
  case DepartureKind::row_less: return "row-less";
  case DepartureKind::row_more: return "row-more";
  case DepartureKind::card_row_off: return "card-row-off";
  case DepartureKind::card_stuck: return "card-stuck";
  case DepartureKind::card_skipped: return "card-skipped";
  case DepartureKind::needle_wrong: return "needle-wrong";
  case DepartureKind::carriage_plain: return "carriage-plain";
  case DepartureKind::yarns_exchanged: return "yarns-exchanged";
  case DepartureKind::work_off: return "work-off";
  case DepartureKind::counted_off: return "counted-off";
  case DepartureKind::hole_wrong: return "hole-wrong";
  case DepartureKind::stitch_slipped: return "stitch-slipped";
  }
  return "";
}

std::string words_of(const Departure& departure, const StepList& list) {
  const Step& step = list.steps[static_cast<std::size_t>(departure.step)];
  const int number = departure.step + 1;
  switch (departure.kind) {
  case DepartureKind::left_out: return said("Step {} was left out: \"{}\"", number, step.text);
  case DepartureKind::done_twice: return said("Step {} was done twice: \"{}\"", number, step.text);
  case DepartureKind::part_left_out: return said("A part of step {} was left out: \"{}\"", number, step.text);
  case DepartureKind::row_less: return said("One row too few was knitted in step {}: \"{}\"", number, step.text);
  case DepartureKind::row_more: return said("One row too many was knitted in step {}: \"{}\"", number, step.text);
  case DepartureKind::card_row_off: return words_of_card_off(departure.amount, number);
  case DepartureKind::card_stuck:
    return said("The card did not move on before the pass of row {}, and the same row of it was read again.",
                departure.row);
  case DepartureKind::card_skipped:
    return said("The card moved on by two rows at once, and its row for row {} was left out.", departure.row);
  case DepartureKind::needle_wrong: return words_of_needles(departure);
  case DepartureKind::carriage_plain:
    return said("For the pass of row {} the carriage was set to plain knitting.", departure.row);
  case DepartureKind::yarns_exchanged:
    return said("Main and contrast were exchanged in the feeders in step {}: \"{}\"", number, step.text);
  case DepartureKind::work_off: return words_of_work_off(departure.amount, number);
  case DepartureKind::counted_off: return words_of_counted_off(departure.amount, departure.row);
  case DepartureKind::hole_wrong:
    return departure.amount > 0
               ? said("The card has a hole too many in row {}, column {}.", departure.row, departure.column)
               : said("The card has a hole too few in row {}, column {}.", departure.row, departure.column);
  case DepartureKind::stitch_slipped:
    return said("A stitch slipped off its needle by itself in row {}: {}. No step explains it.", departure.row,
                names_of(departure.needles));
  }
  return "";
}

ActionLine action_line(const StepList& list) {
  ActionLine line;
  for (std::size_t step = 0; step < list.steps.size(); ++step) {
    for (const MachineAction& action : list.steps[step].actions) {
      line.actions.push_back(action);
      line.steps.push_back(static_cast<int>(step));
    }
  }
  return line;
}

std::vector<Variation> step_variations(const StepList& list, const ActionLine& line) {
  return Variations(list, line).whole_steps();
}

std::vector<Variation> all_variations(const StepList& list, const ActionLine& line) {
  return Variations(list, line).all();
}

Knitting knit_variation(const ActionLine& line, const Variation& variation, const MachineState& found) {
  Knitting knitting = begin_knitting(found);
  const auto knit = [&](const MachineAction& action) { return knit_on(knitting, action); };
  const auto begin = line.actions.begin();
  const auto at = [&](std::size_t index) { return begin + static_cast<std::ptrdiff_t>(index); };
  if (std::all_of(begin, at(variation.from), knit) && std::ranges::all_of(variation.instead, knit)) {
    (void)std::all_of(at(variation.to), line.actions.end(), knit);
  }
  return knitting;
}

} // namespace punchwright
