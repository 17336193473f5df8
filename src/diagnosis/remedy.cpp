// How far to ravel back, where the card must stand, which needles must stand forward.
#include "diagnosis/remedy.hpp"

#include "diagnosis/marked_slips.hpp"
#include "plan/step_words.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright {
namespace {

std::string card_words(const Setting& setting, const Remedy& remedy, int next_row) {
  if (remedy.card_row == 0) {
    return "";
  }
  if (setting.profile.selects == Selects::next_pass) {
    return ' ' + said("Turn the card until its row {} is under the reader, and leave it released: it moves on with the "
                      "pass that knits row {}.",
                      remedy.card_row, next_row);
  }
  return ' ' +
         said("Lock the card on its row {} and make two free passes, across and back, so that the carriage stores "
              "it; then release the card.",
              remedy.card_row);
}

std::string go_on_words(const Setting& setting, int counter, int number, const RowToKnit& row) {
  const auto name = [&](char key) {
    const std::string& given = yarn_of(setting.document, key).name;
    return given.empty() ? said("yarn {}", key) : given;
  };
  if (row.two_coloured()) {
    return said("Set the row counter to {}. Go on with row {}, in {} and {}.", counter, number, name(row.main),
                name(row.contrast));
  }
  return said("Set the row counter to {}. Go on with row {}, in {} alone.", counter, number,
              name(row.contrast == 0 ? row.main : row.contrast));
}

// What must be put right before going on, whatever is ravelled.
// `row`: to be knitted next; a step that belongs to a later one comes again in its turn.
std::string cause_words(const Setting& setting, const std::vector<Departure>& departures, int row) {
  std::string text;
  const auto say = [&](const std::string& sentence) { // once, whatever number of departures ask for it
    if (text.find(sentence) == std::string::npos) {
      text += ' ' + sentence;
    }
  };
  for (const Departure& departure : departures) {
    const Step& step = setting.steps.steps[static_cast<std::size_t>(departure.step)];
    const bool knits = std::ranges::any_of(
        step.actions, [](const MachineAction& action) { return std::holds_alternative<KnitPass>(action); });
    if ((departure.kind == DepartureKind::left_out || departure.kind == DepartureKind::part_left_out) && !knits &&
        step.first_row <= row) {
      say(said("Do step {} now.", departure.step + 1));
    } else if (departure.kind == DepartureKind::hole_wrong) {
      say(departure.amount > 0
              ? said("Close the hole in row {}, column {}, with tape on both sides.", departure.row, departure.column)
              : said("Punch the hole in row {}, column {}.", departure.row, departure.column));
    } else if (departure.kind == DepartureKind::carriage_plain) {
      say(tr("Set the carriage to two-colour knitting."));
    } else if (departure.kind == DepartureKind::yarns_exchanged) {
      say(tr("Exchange the yarns in the feeders."));
    } else if (departure.kind == DepartureKind::card_stuck || departure.kind == DepartureKind::card_skipped) {
      say(tr("See that the card runs freely and its clips don't catch."));
    }
  }
  return text;
}

// Passes before the row, since the counter was set.
int counter_before(const Setting& setting, int row) {
  const ActionLine line = action_line(setting.steps);
  const std::size_t pass = pass_of(setting, line, row - 1).value_or(0);
  int counter = 0;
  for (std::size_t at = 0; at < pass; ++at) {
    if (const auto* set = std::get_if<SetCounter>(&line.actions[at])) {
      counter = set->to;
    }
    counter += std::holds_alternative<KnitPass>(line.actions[at]) ? 1 : 0;
  }
  return counter;
}

} // namespace

int first_difference(const Fabric& planned, const Fabric& real, int rows) {
  const int both = std::min({planned.rows(), real.rows(), rows});
  for (int row = 0; row < both; ++row) {
    const auto one = planned.row(row);
    const auto other = real.row(row);
    for (std::size_t needle = 0; needle < one.size(); ++needle) {
      if (one[needle].yarn != other[needle].yarn || one[needle].missing != other[needle].missing) {
        return row;
      }
    }
    if (planned.loose(row) != real.loose(row)) {
      return row;
    }
  }
  return planned.rows() != real.rows() && both < rows ? both : -1;
}

Remedy remedy_for(const Setting& setting, int first_wrong, int rows_seen, bool only_dropped,
                  const std::vector<Departure>& departures) {
  Remedy remedy;
  if (first_wrong < 0) {
    remedy.back_to_row = rows_seen;
    remedy.text = tr("Nothing shows of it in what is knitted so far: go on.");
    return remedy;
  }
  const int wrong = first_wrong - setting.steps.rows_before + 1; // row to knit
  const int count = static_cast<int>(setting.rows.rows.size());
  if (wrong <= 1) {
    remedy.ravel_rows = rows_seen;
    remedy.carriage = setting.steps.carriage;
    remedy.card_row = setting.profile.selects == Selects::by_hand ? 0 : 1;
    remedy.text = said_count(rows_seen, "Ravel back the one row of the pattern, and begin again with the setting-up.",
                             "Ravel back all {} rows of the pattern, and begin again with the setting-up.");
    return remedy;
  }
  remedy.back_to_row = wrong - 1;
  remedy.ravel_rows = std::max(0, rows_seen - remedy.back_to_row);
  std::string text = remedy.ravel_rows == 0
                         ? std::string(tr("Nothing needs ravelling."))
                         : said_count(remedy.ravel_rows, "Ravel back {} row, down to row {}, which is right.",
                                      "Ravel back {} rows, down to row {}, which is right.", remedy.back_to_row);
  if (wrong <= count) {
    const RowToKnit& next = setting.rows.rows[static_cast<std::size_t>(wrong - 1)];
    remedy.carriage = other(end_of(next.travel));
    remedy.counter = counter_before(setting, wrong);
    if (setting.profile.selects != Selects::same_pass) {
      remedy.forward = needles_in_row(setting.document, setting.profile, next);
    }
    if (setting.profile.selects != Selects::by_hand) {
      remedy.card_row = next.card_row;
    }
    text += ' ' + said("The carriage must stand on the {}.", word_for_side(remedy.carriage));
    if (!remedy.forward.empty()) {
      text += ' ' + said("Bring forward the needles of row {}: {}; all others stand back.", wrong,
                         text_of(runs_of(remedy.forward)));
    } else if (setting.profile.selects != Selects::same_pass) {
      text += ' ' + std::string(tr("No needle stands forward."));
    }
    text += card_words(setting, remedy, wrong);
    text += cause_words(setting, departures, wrong);
    text += ' ' + go_on_words(setting, remedy.counter, wrong, next);
  } else {
    for (const Step& step : setting.steps.steps) {
      remedy.counter = step.last_row == count ? step.counter : remedy.counter;
    }
    text += ' ' + std::string(tr("Then finish as the last steps say."));
  }
  if (only_dropped) {
    text = said("Where only few stitches dropped, latch them up with a hook, row by row, from the dropped loop to the "
                "needle. Else: {}",
                text);
  }
  remedy.text = std::move(text);
  return remedy;
}

} // namespace punchwright
