// The search: the planned steps are knitted once, and at each place where a departure is possible a copy is knitted on
// with it, until the fabric no longer looks as marked.
#include "diagnosis/diagnosis.hpp"

#include "diagnosis/fitting.hpp"
#include "diagnosis/marked_slips.hpp"
#include "diagnosis/remedy.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace punchwright {
namespace {

constexpr std::size_t most_explanations = 12;
// Of pairs: needles passed by the carriage, which take about a second; what is copied counts a tenth.
constexpr long long most_work_in_pairs = 100'000'000;
constexpr double weight_of_pair = 0.05; // two slips at once are rarer than one
constexpr double weight_hole_wrong = 4;
constexpr double weight_slipped = 3;

bool passes(const MachineAction& action) {
  return std::holds_alternative<KnitPass>(action);
}

// A knitting under way, with how much of it was found to be as marked.
struct Try {
  Knitting knitting;
  int fitting = 0; // rows
  bool failed = false;
  int along = 0; // needles by which the piece stands further right than planned
};

class Search {
public:
  Search(const Setting& setting, const SeenFabric& seen, std::stop_token stop)
      : setting_(setting), stop_(std::move(stop)), fitting_(setting, seen), line_(action_line(setting.steps)),
        found_(machine_as_found(setting.profile, setting.steps.carriage, setting.card, setting.document.card.loop)),
        variations_(all_variations(setting.steps, line_)) {}

  Diagnosis all() {
    planned_ = begin_knitting(found_);
    for (const MachineAction& action : line_.actions) {
      if (stop_.stop_requested() || !knit_on(planned_, action)) {
        break;
      }
    }
    diagnosis_.as_planned = fitting_.rows_that_fit(planned_.fabric, 0, true) == fitting_.rows();
    if (diagnosis_.as_planned) {
      return std::move(diagnosis_);
    }
    singles();
    from_the_marks();
    if (diagnosis_.explanations.empty()) {
      pairs();
    }
    keep_the_likeliest();
    return std::move(diagnosis_);
  }

private:
  void keep_the_likeliest() {
    std::ranges::stable_sort(diagnosis_.explanations, std::greater<>(), &Explanation::weight);
    if (diagnosis_.explanations.size() > most_explanations) {
      diagnosis_.explanations.resize(most_explanations);
    }
  }

  // Knits one action on; false: refused, or the fabric no longer looks as marked, or all is to stop.
  bool on(Try& one, const MachineAction& action) {
    if (one.failed || stop_.stop_requested() || !knit_on(one.knitting, action)) {
      one.failed = true;
      return false;
    }
    if (passes(action)) {
      work_ += static_cast<long long>(one.knitting.state.needles.size());
      const int ready = one.knitting.fabric.rows() - fitting_.below() - 2;
      one.fitting = fitting_.rows_that_fit(one.knitting.fabric, one.fitting, false, one.along);
      one.failed = one.fitting < std::min(ready, fitting_.rows());
    }
    return !one.failed;
  }

  // Everything that is marked has been knitted, with two rows above it that could still change it.
  [[nodiscard]] bool done(const Try& one) const { return !one.failed && one.fitting == fitting_.rows(); }

  bool finish(Try& one, std::size_t from) {
    for (std::size_t at = from; at < line_.actions.size() && !done(one); ++at) {
      if (!on(one, line_.actions[at])) {
        return false;
      }
    }
    return fits_at_the_end(one);
  }

  bool fits_at_the_end(Try& one) {
    one.fitting = fitting_.rows_that_fit(one.knitting.fabric, one.fitting, true, one.along);
    return one.fitting == fitting_.rows();
  }

  bool vary(Try& one, const Variation& variation) {
    return std::ranges::all_of(variation.instead, [&](const MachineAction& action) { return on(one, action); });
  }

  void singles() {
    Try planned{begin_knitting(found_), 0, false};
    std::size_t next = 0;
    for (std::size_t at = 0; at <= line_.actions.size(); ++at) {
      for (; next < variations_.size() && variations_[next].from == at; ++next) {
        ++diagnosis_.tried;
        Try one = planned;
        if (vary(one, variations_[next]) && finish(one, variations_[next].to)) {
          explain({variations_[next].departure}, one.knitting.fabric);
        }
      }
      if (at == line_.actions.size() || !on(planned, line_.actions[at])) {
        return; // beyond the first row that isn't as planned, no departure can explain it
      }
    }
  }

  void pairs() {
    work_ = 0;
    Try planned{begin_knitting(found_), 0, false};
    std::size_t next = 0;
    for (std::size_t at = 0; at <= line_.actions.size(); ++at) {
      for (; next < variations_.size() && variations_[next].from == at; ++next) {
        Try one = planned;
        if (vary(one, variations_[next])) {
          second(one, next);
        }
        if (!diagnosis_.complete) {
          return;
        }
      }
      if (at == line_.actions.size() || !on(planned, line_.actions[at])) {
        return;
      }
    }
  }

  // All second departures behind the first, as far as the fabric looks as marked.
  void second(Try& one, std::size_t first) {
    const Variation& before = variations_[first];
    std::size_t next = first + 1;
    for (std::size_t at = before.to; at <= line_.actions.size(); ++at) {
      while (next < variations_.size() && variations_[next].from < at) {
        ++next;
      }
      for (; next < variations_.size() && variations_[next].from == at; ++next) {
        if (work_ > most_work_in_pairs) {
          diagnosis_.complete = false;
          return;
        }
        ++diagnosis_.tried;
        Try two = one;
        work_ += static_cast<long long>(two.knitting.fabric.rows()) *
                 static_cast<long long>(two.knitting.state.needles.size()) / 10;
        if (vary(two, variations_[next]) && finish(two, variations_[next].to)) {
          explain({before.departure, variations_[next].departure}, two.knitting.fabric);
        }
      }
      if (at == line_.actions.size() || !on(one, line_.actions[at])) {
        return;
      }
    }
  }

  // Departures that the marks themselves point at: the lowest row that differs says where.
  void from_the_marks() {
    const int rows = std::min(
        {fitting_.rows(), planned_.fabric.rows() - fitting_.below(), static_cast<int>(setting_.rows.rows.size())});
    int lowest = 0;
    while (lowest < rows && fitting_.differing(planned_.fabric, lowest).empty()) {
      ++lowest;
    }
    if (lowest == rows) {
      return;
    }
    int next = lowest + 1;
    while (next < rows && fitting_.differing(planned_.fabric, next).empty()) {
      ++next;
    }
    if (next == rows) { // no other row differs
      const std::vector<Needle> needles = fitting_.differing(planned_.fabric, lowest);
      slipped(lowest, needles);
      try_marked(needles_wrong(setting_, line_, lowest, needles));
      try_marked(carriage_plain(setting_, line_, lowest));
    }
    holes_wrong();
    try_marked(card_skipped(setting_, line_, lowest));
    try_marked(yarns_exchanged(setting_, line_, lowest));
    moved_along(lowest);
  }

  // Marks of dropped stitches and nothing else.
  void slipped(int row, const std::vector<Needle>& needles) {
    constexpr std::size_t most = 4;
    const bool all_dropped = needles.size() <= most && std::ranges::all_of(needles, [&](Needle needle) {
                               return fitting_.mark_at(row, needle) == Mark::dropped;
                             });
    if (all_dropped) {
      Departure departure;
      departure.kind = DepartureKind::stitch_slipped;
      departure.row = row + 1;
      departure.needles = needles;
      departure.weight = weight_slipped;
      diagnosis_.explanations.push_back({{departure},
                                         departure.weight,
                                         remedy_for(setting_, row + fitting_.below(), fitting_.rows(), true, {}),
                                         nullptr});
    }
  }

  void try_marked(const std::optional<Variation>& variation) {
    if (variation) {
      try_whole(*variation, found_);
    }
  }

  // The motif lies beside its place: the work, or the counting, was so many needles off.
  void moved_along(int lowest) {
    constexpr int furthest = 12;
    for (int by = 1; by <= furthest; ++by) {
      for (const int signed_by : {by, -by}) {
        try_line(work_off(setting_, line_, signed_by));
        if (setting_.profile.selects == Selects::by_hand) {
          try_line(counted_off(setting_, line_, lowest, signed_by));
        }
      }
    }
  }

  void try_line(const OtherLine& other) {
    ++diagnosis_.tried;
    Try one{begin_knitting(found_), 0, false, other.along};
    for (const MachineAction& action : other.actions) {
      if (done(one)) {
        break;
      }
      if (!on(one, action)) {
        return;
      }
    }
    if (fits_at_the_end(one)) {
      explain({other.departure}, one.knitting.fabric);
    }
  }

  // A hole too many or too few shows in every repeat; with a loop in every circuit.
  void holes_wrong() {
    if (setting_.profile.selects == Selects::by_hand || !setting_.card || setting_.card->rows() == 0) {
      return;
    }
    for (int one = 0; one < std::min({fitting_.rows(), static_cast<int>(setting_.rows.rows.size()),
                                      planned_.fabric.rows() - fitting_.below()});
         ++one) {
      const auto differing = fitting_.differing(planned_.fabric, one);
      if (differing.empty()) {
        continue;
      }
      const int card_row = setting_.rows.rows[static_cast<std::size_t>(one)].card_row;
      const int columns = setting_.card->columns();
      const int from_first = differing.front().position - setting_.profile.card->first_needle.position;
      const int column = ((from_first % columns) + columns) % columns + 1;
      auto card = std::make_shared<PunchedCard>(*setting_.card);
      const bool hole = card->at(card_row, column);
      for (int row = card_row; row <= card->rows(); row += std::max(1, setting_.rows.circuit)) {
        card->set(row, column, !hole);
      }
      Variation variation;
      variation.departure.kind = DepartureKind::hole_wrong;
      variation.departure.row = card_row;
      variation.departure.column = column;
      variation.departure.amount = hole ? -1 : 1;
      variation.departure.weight = weight_hole_wrong;
      MachineState state = found_;
      state.card.card = std::move(card);
      try_whole(variation, state);
      return; // the lowest row that differs decides
    }
  }

  void try_whole(const Variation& variation, const MachineState& state) {
    ++diagnosis_.tried;
    Try one{begin_knitting(state), 0, false};
    for (std::size_t at = 0; at < variation.from; ++at) {
      if (!on(one, line_.actions[at])) {
        return;
      }
    }
    if (vary(one, variation) && finish(one, variation.to)) {
      explain({variation.departure}, one.knitting.fabric);
    }
  }

  void explain(std::vector<Departure> departures, const Fabric& fabric) {
    const int rows = fitting_.rows() + fitting_.below();
    const int wrong = first_difference(planned_.fabric, fabric, rows);
    bool only_dropped = wrong >= 0;
    for (int row = std::max(wrong, 0); row < std::min({rows, fabric.rows(), planned_.fabric.rows()}) && only_dropped;
         ++row) {
      const auto one = planned_.fabric.row(row);
      const auto other = fabric.row(row);
      for (std::size_t needle = 0; needle < one.size(); ++needle) {
        only_dropped = only_dropped && (one[needle].yarn == other[needle].yarn || other[needle].missing);
      }
    }
    double weight = departures.size() > 1 ? weight_of_pair : 1;
    for (const Departure& departure : departures) {
      weight *= departure.weight;
    }
    Remedy remedy = remedy_for(setting_, wrong, fitting_.rows(), only_dropped, departures);
    diagnosis_.explanations.push_back(
        {std::move(departures), weight, std::move(remedy), std::make_shared<const Fabric>(fabric)});
    if (diagnosis_.explanations.size() > 4 * most_explanations) {
      keep_the_likeliest(); // each holds its fabric
    }
  }

  const Setting& setting_;
  std::stop_token stop_;
  Fitting fitting_;
  ActionLine line_;
  MachineState found_;
  std::vector<Variation> variations_;
  Knitting planned_;
  Diagnosis diagnosis_;
  long long work_ = 0; // in pairs
};

} // namespace

Setting setting_of(const Document& document, const Profile& profile, const RowsToKnit& rows) {
  Setting setting{document, profile, rows, steps_of(document, profile, rows), nullptr};
  if (profile.card && profile.selects != Selects::by_hand) {
    setting.card = std::make_shared<const PunchedCard>(planned_card(document, profile, rows));
  }
  return setting;
}

Diagnosis what_went_wrong(const Setting& setting, const SeenFabric& seen, std::stop_token stop) {
  return Search(setting, seen, std::move(stop)).all();
}

std::string words_of_search(const Diagnosis& diagnosis) {
  return diagnosis.complete ? ""
                            : said("Not every pair of slips was tried: after {} the search was ended. Mark fewer "
                                   "rows, up to a few above the lowest fault, and ask again.",
                                   diagnosis.tried);
}

Diagnosis what_went_wrong(const Document& document, const Profile& profile, const RowsToKnit& rows,
                          const SeenFabric& seen) {
  return what_went_wrong(setting_of(document, profile, rows), seen);
}

} // namespace punchwright
