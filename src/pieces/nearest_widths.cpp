// The search from part to part: cut where counts can't fit together, and for each piece the nearest widths by
// themselves; and which search is asked first.
#include "pieces/nearest_widths.hpp"

#include "pieces/piece_widths.hpp"
#include "pieces/size_counts.hpp"

#include <algorithm>
#include <memory>
#include <optional>
#include <queue>

namespace punchwright {
namespace {

struct Part {
  std::vector<PieceLimits> limits;  // of each group of pieces
  std::vector<std::size_t> changes; // of each group, by number
  Nearness bound;
  double still = 0; // a guess of the steps that are still to go; not used while the nearest is sought
  int number = 0;   // the order of making, so that equal bounds are looked at in the same order everywhere
};

// A count that would have to be outside of what the widths allow.
struct Way {
  std::size_t group = 0;
  std::size_t tier = 0;
  bool above = false;
};

// Groups whose counts have to go together in a tier: all round a ring that closes, or those whose seams are alike.
struct Together {
  std::size_t tier = 0;
  std::vector<std::size_t> groups;
  CountsProblem problem; // of these alone
};

// Of each group of pieces, as they are named.
std::vector<WidthChange> width_changes(const OpenedYoke& opened, std::size_t size,
                                       const std::vector<StepsOfPiece>& steps) {
  const PieceGroups groups = groups_of(opened.yoke);
  std::vector<WidthChange> changes;
  for (std::size_t group = 0; group < steps.size(); ++group) {
    const YokePiece& piece = opened.yoke.pieces[groups.first[group]];
    const auto add = [&](bool top, double from, int far) {
      if (far != 0) {
        const auto to = static_cast<double>(in_thousandths(from) + far * PieceWidths::step);
        changes.push_back({groups.first[group], top, from, to / 1000});
      }
    };
    add(false, piece.bottom_cm.at(size), steps[group].bottom);
    add(true, piece.top_cm.at(size), steps[group].top);
  }
  return changes;
}

class Search {
public:
  Search(const OpenedYoke& opened, std::size_t size)
      : opened_(opened), size_(size), cone_(cone_of(opened, size)), groups_(groups_of(opened.yoke)),
        problem_(counts_problem(opened, size)) {
    problem_.denominator = 1;
    for (const std::size_t piece : groups_.first) {
      widths_.emplace_back(opened, cone_, problem_.seams, opened.yoke.pieces[piece], size);
    }
    for (std::size_t tier = 0; tier < problem_.seams.size(); ++tier) {
      find_together(tier);
    }
  }

  // The nearest; or, where `guessing`, any that is found soon.
  WidthsFound run(int most_parts, bool guessing) {
    guessing_ = guessing;
    begin();
    while (!waiting_.empty()) {
      const std::shared_ptr<const Part> part = waiting_.top();
      waiting_.pop();
      const auto ways = ways_out(*part);
      if (ways && ways->empty()) {
        return {changes_of(*part), guessing, 0};
      }
      if ((!ways && !guessing) || made_ >= most_parts) {
        return {{}, true, part->bound.steps * width_step_cm};
      }
      if (ways) {
        cut(*part, *ways);
      }
    }
    return {};
  }

private:
  struct Later {
    bool operator()(const std::shared_ptr<const Part>& one, const std::shared_ptr<const Part>& other) const {
      const double first = one->bound.steps + one->still;
      const double second = other->bound.steps + other->still;
      return first != second              ? second < first
             : one->bound != other->bound ? other->bound < one->bound
                                          : other->number < one->number;
    }
  };

  void find_together(std::size_t tier) {
    const bool ring = problem_.seams[tier].alike <= 1;
    for (std::size_t first = 0; first < widths_.size(); ++first) {
      Together next{tier, {}, {{}, {problem_.seams[tier]}, problem_.edge, false, false, 1, {{}}, {}}};
      for (std::size_t group = first; group < widths_.size(); ++group) {
        if (ring || problem_.classes[group] == first) {
          next.groups.push_back(group);
          next.problem.pieces.push_back(problem_.pieces[group]);
          next.problem.classes.push_back(0);
        }
      }
      if (!next.groups.empty()) {
        together_.push_back(std::move(next));
      }
      if (ring) {
        return;
      }
    }
  }

  void begin() {
    Part all;
    for (PieceWidths& widths : widths_) {
      all.limits.emplace_back(cone_.of_top.size(), Limits{0, opened_.profile.needles});
      const auto change = widths.nearest(all.limits.back(), 0);
      if (!change) {
        return; // no counts at all that keep to the rules of a single piece
      }
      all.changes.push_back(*change);
    }
    add(std::move(all));
  }

  void add(Part part) {
    part.bound = {};
    for (std::size_t group = 0; group < widths_.size(); ++group) {
      part.bound = part.bound + widths_[group].change(part.changes[group]).nearness();
    }
    constexpr double onwards = 3; // rather on from the best part than all round it
    part.still = guessing_ ? onwards * steps_still(part) : 0;
    part.number = made_++;
    waiting_.push(std::make_shared<const Part>(std::move(part)));
  }

  // Which counts are nearest isn't asked here, only whether there are any: whole ideals do.
  [[nodiscard]] CountChoice choice_of(const Part& part, std::size_t tier, std::size_t group) const {
    const Limits kept = both(part.limits[group][tier], widths_[group].counts(part.changes[group], tier));
    return {{(kept.least + kept.most) / 2, 0}, kept.least, kept.most};
  }

  [[nodiscard]] bool fit(const Part& part, Together& together) const {
    auto& choices = together.problem.choices.front();
    choices.clear();
    for (const std::size_t group : together.groups) {
      choices.push_back(choice_of(part, together.tier, group));
    }
    return nearest_counts(together.problem).counts.has_value();
  }

  // By the stitches that a ring is off the next one that closes.
  [[nodiscard]] double steps_still(const Part& part) {
    double steps = 0;
    for (Together& together : together_) {
      if (fit(part, together)) {
        continue;
      }
      int fewest = 0;
      int most = 0;
      for (std::size_t at = 0; at < together.groups.size(); ++at) {
        const CountChoice& choice = together.problem.choices.front()[at];
        fewest += together.problem.pieces[at] * (choice.least - 2 * problem_.edge);
        most += together.problem.pieces[at] * (choice.most - 2 * problem_.edge);
      }
      const int multiple = problem_.seams[together.tier].multiple;
      const int off = std::min(multiple - most % multiple, fewest % multiple);
      const auto each = std::max(cone_.of_bottom[together.tier], cone_.of_top[together.tier]) * PieceWidths::step;
      steps += std::max(1, off) * static_cast<double>(cone_.denominator) / static_cast<double>(each);
    }
    return steps;
  }

  // Of which one must be gone for any counts to fit; none where they do. Nothing: it isn't known.
  [[nodiscard]] std::optional<std::vector<Way>> ways_out(const Part& part) {
    for (Together& together : together_) {
      if (!fit(part, together)) {
        return all_ways(together.tier, together.tier + 1, together.groups);
      }
    }
    std::vector<std::size_t> groups;
    problem_.choices.assign(cone_.of_top.size(), {});
    for (std::size_t group = 0; group < widths_.size(); ++group) {
      groups.push_back(group);
      for (std::size_t tier = 0; tier < cone_.of_top.size(); ++tier) {
        problem_.choices[tier].push_back(choice_of(part, tier, group));
      }
    }
    constexpr int most_parts = 200; // such a search is one of many
    const CountsFound found = nearest_counts(problem_, most_parts);
    if (found.gave_up) {
      return std::nullopt;
    }
    return found.counts ? std::vector<Way>{} : all_ways(0, problem_.choices.size(), groups);
  }

  static std::vector<Way> all_ways(std::size_t first, std::size_t last, const std::vector<std::size_t>& groups) {
    std::vector<Way> ways;
    for (std::size_t tier = first; tier < last; ++tier) {
      for (const std::size_t group : groups) {
        ways.push_back({group, tier, true});
        ways.push_back({group, tier, false});
      }
    }
    return ways;
  }

  // By the first way that is gone: all before it are not, so that no counts fall into two parts.
  void cut(const Part& part, const std::vector<Way>& ways) {
    Part rest = part;
    for (const Way& way : ways) {
      const CountChoice allowed = choice_of(part, way.tier, way.group);
      Part next = rest;
      Limits& limits = next.limits[way.group][way.tier];
      Limits& others = rest.limits[way.group][way.tier];
      if (way.above) {
        limits.least = std::max(limits.least, allowed.most + 1);
        others.most = std::min(others.most, allowed.most);
      } else {
        limits.most = std::min(limits.most, allowed.least - 1);
        others.least = std::max(others.least, allowed.least);
      }
      const auto change = widths_[way.group].nearest(next.limits[way.group], part.changes[way.group]);
      if (change) {
        next.changes[way.group] = *change;
        add(std::move(next));
      }
    }
  }

  [[nodiscard]] std::vector<WidthChange> changes_of(const Part& part) const {
    std::vector<StepsOfPiece> steps;
    for (std::size_t group = 0; group < widths_.size(); ++group) {
      steps.push_back(widths_[group].change(part.changes[group]));
    }
    return width_changes(opened_, size_, steps);
  }

  const OpenedYoke& opened_;
  std::size_t size_;
  Cone cone_;
  PieceGroups groups_;
  CountsProblem problem_;           // its choices are those of the part that is looked at
  std::vector<PieceWidths> widths_; // of each group
  std::vector<Together> together_;  // the lowest tier first
  bool guessing_ = false;
  std::priority_queue<std::shared_ptr<const Part>, std::vector<std::shared_ptr<const Part>>, Later> waiting_;
  int made_ = 0;
};

} // namespace

WidthsFound nearest_widths(const OpenedYoke& opened, std::size_t size, const WidthSearch& search) {
  if (search.first_parts > 0) {
    const WidthsFound soon = Search(opened, size).run(search.first_parts, false);
    if (!soon.gave_up) {
      return soon;
    }
  }
  const ClosingWidths closing = closing_widths(opened, size, search.sums);
  if (!closing.gave_up) {
    return {width_changes(opened, size, closing.changes), false, 0};
  }
  WidthsFound found = Search(opened, size).run(search.parts, false);
  if (found.gave_up) {
    found.changes = Search(opened, size).run(search.parts, true).changes;
    found.nearer_than_cm = std::max(found.nearer_than_cm, closing.nearer_than_steps * width_step_cm);
  }
  return found;
}

} // namespace punchwright
