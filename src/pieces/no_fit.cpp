// Leaves out one rule at a time to find the one that costs most, and looks for the nearest measures that fit.
#include "pieces/no_fit.hpp"

#include "pieces/size_counts.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace punchwright {
namespace {

bool fits(const OpenedYoke& opened, std::size_t size) {
  return nearest_counts(counts_problem(opened, size)).counts.has_value();
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
         {true, false, false, static_cast<int>(tier)}});
  }
  if (groups_of(opened.yoke).first.size() < opened.yoke.pieces.size()) {
    rules.push_back({tr("equal pieces staying equal"), {true, false, true, -1}});
  }
  rules.push_back({tr("no decrease row taking more than one stitch in two"), {true, true, false, -1}});
  return rules;
}

// Beside the tolerance, which is left out in both: by how much the squares fall without the rule.
std::string costliest_rule(const OpenedYoke& opened, std::size_t size) {
  const CountsFound without_tolerance = nearest_counts(counts_problem(opened, size, {true, false, false, -1}));
  if (without_tolerance.gave_up) {
    return said("with the tolerance of {}", short_decimal(opened.yoke.fit.tolerance, 6));
  }
  std::string costliest;
  double most = 0;
  for (const Rule& rule : rules_of(opened)) {
    const auto without = nearest_counts(counts_problem(opened, size, rule.left_out)).counts;
    if (!without) {
      continue;
    }
    const double saved = (without_tolerance.counts ? without_tolerance.counts->squares : 1e9) - without->squares;
    if (saved > most) {
      most = saved;
      costliest = rule.name;
    }
  }
  if (costliest.empty()) {
    return said("the tolerance of {} costs most", short_decimal(opened.yoke.fit.tolerance, 6));
  }
  return without_tolerance.counts ? said("{} costs most, {} squared stitches", costliest, decimal(most, 1))
                                  : said("{} can't be kept at all", costliest);
}

// To a thousandth; 0: none up to the form's largest.
double smallest_tolerance(OpenedYoke opened, std::size_t size) {
  constexpr double step = 0.001;
  constexpr double largest = 0.5;
  opened.yoke.fit.tolerance = largest;
  if (!fits(opened, size)) {
    return 0;
  }
  int low = 0;
  int high = static_cast<int>(largest / step);
  while (low + 1 < high) {
    const int middle = (low + high) / 2;
    opened.yoke.fit.tolerance = middle * step;
    (fits(opened, size) ? high : low) = middle;
  }
  return high * step;
}

void scale(Yoke& yoke, std::size_t size, double bottom, double top) {
  const auto scaled = [&](PerSize<double>& widths, double by) {
    if (widths.values.size() == 1) {
      widths.values.assign(yoke.sizes.size(), widths.values.front());
    }
    widths.values[size] = std::round(widths.values[size] * by * 10) / 10;
  };
  for (YokePiece& piece : yoke.pieces) {
    if (piece.like.empty()) {
      scaled(piece.bottom_cm, bottom);
      scaled(piece.top_cm, top);
    }
  }
}

std::string widths_text(const Yoke& yoke, std::size_t size) {
  std::string text;
  for (const YokePiece& piece : yoke.pieces) {
    if (piece.like.empty()) {
      text += (text.empty() ? "" : ", ") + said("{} {} cm at the bottom and {} cm at the top", piece.name,
                                                short_decimal(piece.bottom_cm.at(size), 3),
                                                short_decimal(piece.top_cm.at(size), 3));
    }
  }
  return text;
}

// Bottom and top of all pieces made wider or narrower by hundredths, the smallest changes first.
std::string nearest_widths(const OpenedYoke& opened, std::size_t size) {
  constexpr int farthest = 25;
  constexpr double step = 0.01;
  std::vector<std::pair<int, int>> steps;
  for (int bottom = -farthest; bottom <= farthest; ++bottom) {
    for (int top = -farthest; top <= farthest; ++top) {
      steps.emplace_back(bottom, top);
    }
  }
  std::ranges::stable_sort(
      steps, {}, [](const std::pair<int, int>& one) { return one.first * one.first + one.second * one.second; });
  OpenedYoke changed = opened;
  for (const auto& [bottom, top] : steps) {
    changed.yoke = opened.yoke;
    scale(changed.yoke, size, 1 + bottom * step, 1 + top * step);
    const CountsFound found = nearest_counts(counts_problem(changed, size));
    if (found.counts) {
      return widths_text(changed.yoke, size);
    }
    if (found.gave_up) {
      return ""; // others would take as long
    }
  }
  return "";
}

} // namespace

Error no_fit(const OpenedYoke& opened, std::size_t size) {
  Error error = fit_error(
      opened,
      said("no stitch counts of size {} keep to every rule; {}", opened.yoke.sizes[size], costliest_rule(opened, size)),
      "");
  const double tolerance = smallest_tolerance(opened, size);
  const std::string widths = nearest_widths(opened, size);
  if (tolerance > 0) {
    error.remedy = said("it fits with a tolerance of {}", decimal(tolerance, 3));
  }
  if (!widths.empty()) {
    error.remedy = error.remedy.empty() ? said("the nearest widths that fit: {}", widths)
                                        : said("{}, or with the nearest widths that fit: {}", error.remedy, widths);
  }
  if (error.remedy.empty()) {
    error.remedy = tr("choose narrower repeats for the tiers, or seams = \"free\"");
  }
  return error;
}

Error gave_up(const OpenedYoke& opened, std::size_t size) {
  return fit_error(
      opened,
      said("the search for stitch counts of size {} gave up after {} parts: whether any keep to every "
           "rule is not known",
           opened.yoke.sizes[size], most_count_parts),
      tr("with a smaller tolerance, or pieces that narrow less from tier to tier, there is less to search"));
}

} // namespace punchwright
