// Leaves out one rule at a time to find the one that costs most, and says the nearest measures that fit.
#include "pieces/no_fit.hpp"

#include "pieces/nearest_widths.hpp"
#include "pieces/size_counts.hpp"
#include "words/words.hpp"

#include <fmt/format.h>
#include <vector>

namespace punchwright {
namespace {

// As the file has it, quoted where it is to be typed there: with a point in every language. All other figures have the
// language's sign.
std::string tolerance_in_file(double tolerance) {
  return fmt::format("tolerance = {:g}", tolerance);
}

std::string cm(double number) {
  return short_decimal(number, 3);
}

// How a search for what would fit may go on.
struct Effort {
  int most_parts = most_count_parts;
  const std::stop_token& stop;
};

enum class Fit { no, yes, not_known };

Fit fits(const OpenedYoke& opened, std::size_t size, const Effort& effort) {
  const CountsFound found = nearest_counts(counts_problem(opened, size), effort.most_parts, effort.stop);
  return found.counts ? Fit::yes : found.gave_up ? Fit::not_known : Fit::no;
}

Error fit_error(const OpenedYoke& opened, std::string message, std::string remedy) {
  const auto place = opened.places.find("fit.tolerance");
  const Spot spot = place == opened.places.end() ? Spot{} : place->second;
  return {opened.file, spot.line, spot.column, std::move(message), std::move(remedy)};
}

struct Rule {
  std::string name;
  LeftOut left_out;
};

std::vector<Rule> rules_of(const OpenedYoke& opened) {
  std::vector<Rule> rules;
  const YokeSeams seams = opened.yoke.fit.seams;
  for (std::size_t tier = 0; seams != YokeSeams::free && tier < opened.tiers.size(); ++tier) {
    const int width = opened.tiers[tier].document.grid.width();
    rules.push_back(
        {seams == YokeSeams::continuous
             ? said("the ring of tier {} closing on a multiple of {} stitches", tier + 1, width)
             : said("the repeat of tier {} in the middle of each piece, with seams that are alike,", tier + 1),
         {.tolerance = true, .seams = static_cast<int>(tier)}});
  }
  if (groups_of(opened.yoke).first.size() < opened.yoke.pieces.size()) {
    rules.push_back({tr("equal pieces staying equal"), {.tolerance = true, .alike = true}});
  }
  rules.push_back({tr("no decrease row taking more than one stitch in two"), {.tolerance = true, .halves = true}});
  rules.push_back(
      {tr("no increase row making more than one stitch between two"), {.tolerance = true, .doubles = true}});
  rules.push_back({said("the bed of {} needles", opened.profile.needles), {.tolerance = true, .bed = true}});
  return rules;
}

// The pieces that are wider than the bed where it is left out, and how many in the place of each would lie on it.
std::string wider_than_bed(const OpenedYoke& opened, std::size_t size, const Counts& counts) {
  const PieceGroups groups = groups_of(opened.yoke);
  std::string text;
  for (std::size_t group = 0; group < groups.first.size(); ++group) {
    int most = 0;
    for (const std::vector<int>& tier : counts.stitches) {
      most = std::max(most, tier[group]);
    }
    if (most > opened.profile.needles) {
      const std::size_t piece = groups.first[group];
      text += said("; piece '{}' would have {} stitches, {} pieces in its place would lie on it",
                   opened.yoke.pieces[piece].name, most, parts_on_bed(opened, size, piece));
    }
  }
  return text;
}

// Beside the tolerance, which is left out in both: by how much the squares fall without the rule.
std::string costliest_rule(const OpenedYoke& opened, std::size_t size, const Effort& effort, bool& tolerance) {
  const auto without = [&](const LeftOut& left_out) {
    return nearest_counts(counts_problem(opened, size, left_out), effort.most_parts, effort.stop);
  };
  const CountsFound without_tolerance = without({.tolerance = true});
  bool not_known = without_tolerance.gave_up;
  std::string costliest;
  std::string too_wide; // where it is the bed
  double most = 0;
  for (const Rule& rule : rules_of(opened)) {
    if (not_known) {
      break;
    }
    const CountsFound found = without(rule.left_out);
    not_known = found.gave_up;
    if (!found.counts) {
      continue;
    }
    const double saved = (without_tolerance.counts ? without_tolerance.counts->squares : 1e9) - found.counts->squares;
    if (saved > most) {
      most = saved;
      costliest = rule.name;
      too_wide = rule.left_out.bed ? wider_than_bed(opened, size, *found.counts) : std::string();
    }
  }
  if (not_known) {
    return tr("which rule costs most is not known, since the search for it gave up");
  }
  if (costliest.empty()) {
    tolerance = true;
    return said("the tolerance of {} costs most", short_decimal(opened.yoke.fit.tolerance, 6));
  }
  return (without_tolerance.counts ? said("{} costs most, {} squared stitches", costliest, decimal(most, 1))
                                   : said("{} can't be kept at all", costliest)) +
         too_wide;
}

// To a thousandth. A larger one allows whatever a smaller one does. Where it isn't known whether the largest of the
// form does, smaller ones, in which there is less to search, are asked.
void find_smallest_tolerance(OpenedYoke opened, std::size_t size, const Effort& effort, WouldFit& would) {
  constexpr double step = 0.001;
  constexpr int largest = 500;
  constexpr int apart = 50;
  const auto fit_with = [&](int steps) {
    opened.yoke.fit.tolerance = steps * step;
    const Fit fit = fits(opened, size, effort);
    would.less_not_known = would.less_not_known || fit == Fit::not_known;
    return fit;
  };
  int high = largest;
  Fit fit = fit_with(high);
  while (fit == Fit::not_known && high > apart && !effort.stop.stop_requested()) {
    fit = fit_with(high -= apart);
  }
  if (fit != Fit::yes) {
    return;
  }
  would.less_not_known = false;
  int low = 0;
  while (low + 1 < high) {
    const int middle = (low + high) / 2;
    (fit_with(middle) == Fit::yes ? high : low) = middle;
  }
  would.tolerance = high * step;
}

std::string change_text(const Yoke& yoke, const WidthChange& change) {
  const std::string& name = yoke.pieces[change.piece].name;
  const std::string to = cm(change.to_cm);
  const std::string from = cm(change.from_cm);
  return change.top ? said("{} {} cm at the top instead of {} cm", name, to, from)
                    : said("{} {} cm at the bottom instead of {} cm", name, to, from);
}

std::string changes_text(const Yoke& yoke, const WidthsFound& found) {
  std::string text;
  for (const WidthChange& change : found.changes) {
    text += (text.empty() ? "" : ", ") + change_text(yoke, change);
  }
  return text;
}

std::string changed_widths_text(const Yoke& yoke, const WidthsFound& found) {
  const std::string changes = changes_text(yoke, found);
  return found.gave_up
             ? said("with these widths, perhaps not the nearest (no change of less than {} cm in all does): {}",
                    cm(found.nearer_than_cm), changes)
             : said("with the nearest widths: {}", changes);
}

std::string without_widths(const Yoke& yoke, const WidthsFound& found) {
  if (found.gave_up) {
    return said("the search for widths that fit gave up: no change of less than {} cm in all does",
                cm(found.nearer_than_cm));
  }
  const std::string most = cm(most_width_steps * width_step_cm);
  return yoke.fit.seams == YokeSeams::free
             ? said("no widths fit of which none changes by more than {} cm", most)
             : said("no widths fit of which none changes by more than {} cm: choose narrower repeats for the tiers, or "
                    "seams = \"free\"",
                    most);
}

} // namespace

WouldFit what_would_fit(const OpenedYoke& opened, std::size_t size, const std::stop_token& stop, int most_parts) {
  const Effort effort{most_parts, stop};
  WouldFit would;
  would.costs_most = costliest_rule(opened, size, effort, would.costly_tolerance);
  find_smallest_tolerance(opened, size, effort, would);
  if (!stop.stop_requested()) {
    would.widths = nearest_widths(opened, size);
  }
  return would;
}

Error no_fit(const OpenedYoke& opened, std::size_t size, int most_parts) {
  const WouldFit would = what_would_fit(opened, size, {}, most_parts);
  Error error = fit_error(
      opened, said("no stitch counts of size {} keep to every rule; {}", opened.yoke.sizes[size], would.costs_most),
      "");
  const WidthsFound& widths = would.widths;
  const std::string with_widths = widths.changes.empty() ? std::string() : changed_widths_text(opened.yoke, widths);
  const std::string smallest = tolerance_in_file(would.tolerance);
  const std::string tolerance =
      would.less_not_known ? said("{} (whether a smaller one would do is not known)", smallest) : smallest;
  if (would.tolerance > 0 && !with_widths.empty()) {
    error.remedy = said("it fits with {}, or {}", tolerance, with_widths);
  } else if (would.tolerance > 0) {
    error.remedy = said("it fits with {}; {}", tolerance, without_widths(opened.yoke, widths));
  } else {
    error.remedy = with_widths.empty() ? without_widths(opened.yoke, widths) : said("it fits {}", with_widths);
    if (would.less_not_known) {
      error.remedy += "; " + std::string(tr("whether it fits with a larger tolerance is not known"));
    }
  }
  return error;
}

Error gave_up(const OpenedYoke& opened, std::size_t size) {
  return fit_error(
      opened,
      said("the search for stitch counts of size {} gave up: whether any keep to every rule is not known",
           opened.yoke.sizes[size]),
      tr("with a smaller tolerance, or pieces that narrow less from tier to tier, there is less to search"));
}

} // namespace punchwright
