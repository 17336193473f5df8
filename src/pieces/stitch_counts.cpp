// Best counts tier by tier over the remainders that the seams ask for, and a best-first search over the decrease rows.
// Where that multiplies what pieces ask by themselves, the search piece by piece is asked instead.
#include "pieces/stitch_counts.hpp"

#include "design/wrap.hpp"
#include "pieces/counts_by_pieces.hpp"

#include <algorithm>
#include <memory>
#include <queue>

namespace punchwright {
namespace {

using Cost = CountCost;
using Choices = std::vector<CountChoice>; // of one tier

struct TierCounts {
  std::vector<int> stitches;
  Cost cost;
};

struct Best {
  std::optional<Cost> cost;
  int stitches = 0;
};

// The cheapest count of a group: of those that the rule allows, from `first` on in steps; together with what the others
// then cost, which `others` says, or that there is nothing for them.
template <class Others>
Best cheapest_count(const CountsProblem& problem, const CountChoice& choice, const SeamRule& rule, std::size_t group,
                    int first, int step, Others others) {
  Best best;
  for (int stitches = first; stitches <= choice.most; stitches += step) {
    const std::optional<Cost> beside = rule.allows(stitches) ? others(stitches) : std::nullopt;
    if (!beside) {
      continue;
    }
    const Cost cost = cost_of(problem, choice, group, stitches) + *beside;
    if (!best.cost || cost < *best.cost) {
      best = {cost, stitches};
    }
  }
  return best;
}

// A continuous tier. best[g][r]: the least cost of groups g and later whose visible stitches together leave the
// remainder r.
class RingSearch {
public:
  RingSearch(const CountsProblem& problem, const Choices& choices, const SeamRule& rule)
      : problem_(problem), choices_(choices), rule_(rule), multiple_(std::max(1, rule.multiple)),
        best_(choices.size() + 1, std::vector<std::optional<Cost>>(static_cast<std::size_t>(multiple_))) {}

  std::optional<TierCounts> run() {
    best_.back()[0] = Cost{};
    for (std::size_t group = choices_.size(); group-- > 0;) {
      for (int rest = 0; rest < multiple_; ++rest) {
        best_[group][static_cast<std::size_t>(rest)] = best_from(group, rest).cost;
      }
    }
    if (!best_.front()[0]) {
      return std::nullopt;
    }
    TierCounts counts;
    counts.cost = *best_.front()[0];
    int rest = 0;
    for (std::size_t group = 0; group < choices_.size(); ++group) {
      const int stitches = best_from(group, rest).stitches;
      counts.stitches.push_back(stitches);
      rest = rest_after(group, rest, stitches);
    }
    return counts;
  }

private:
  [[nodiscard]] int rest_after(std::size_t group, int rest, int stitches) const {
    return remainder_of(rest - ring_remainder(problem_.pieces[group], stitches, problem_.edge, multiple_), multiple_);
  }

  [[nodiscard]] Best best_from(std::size_t group, int rest) const {
    return cheapest_count(problem_, choices_[group], rule_, group, choices_[group].least, 1, [&](int stitches) {
      return best_[group + 1][static_cast<std::size_t>(rest_after(group, rest, stitches))];
    });
  }

  const CountsProblem& problem_;
  const Choices& choices_;
  const SeamRule& rule_;
  int multiple_;
  std::vector<std::vector<std::optional<Cost>>> best_;
};

// A tier whose seams are alike: each class of groups by itself, with the remainder that costs least.
class AlikeSearch {
public:
  AlikeSearch(const CountsProblem& problem, const Choices& choices, const SeamRule& rule)
      : problem_(problem), choices_(choices), rule_(rule) {}

  [[nodiscard]] std::optional<TierCounts> run() const {
    TierCounts counts;
    counts.stitches.resize(choices_.size());
    for (std::size_t first = 0; first < choices_.size(); ++first) {
      if (class_of(first) != first) {
        continue;
      }
      std::optional<TierCounts> best;
      for (int rest = 0; rest < rule_.alike; ++rest) {
        auto next = with_rest(first, rest);
        if (next &&
            (!best || next->cost < best->cost || (next->cost == best->cost && next->stitches < best->stitches))) {
          best = std::move(next);
        }
      }
      if (!best) {
        return std::nullopt;
      }
      counts.cost = counts.cost + best->cost;
      for (std::size_t group = 0; group < choices_.size(); ++group) {
        counts.stitches[group] += best->stitches[group]; // 0 for those of other classes
      }
    }
    return counts;
  }

private:
  [[nodiscard]] std::size_t class_of(std::size_t group) const {
    return problem_.classes.empty() ? group : problem_.classes[group];
  }

  [[nodiscard]] std::optional<TierCounts> with_rest(std::size_t first, int rest) const {
    TierCounts counts;
    counts.stitches.resize(choices_.size());
    for (std::size_t group = first; group < choices_.size(); ++group) {
      if (class_of(group) != first) {
        continue;
      }
      const Best best = best_of(group, rest);
      if (!best.cost) {
        return std::nullopt;
      }
      counts.cost = counts.cost + *best.cost;
      counts.stitches[group] = best.stitches;
    }
    return counts;
  }

  [[nodiscard]] Best best_of(std::size_t group, int rest) const {
    const int first = choices_[group].least + remainder_of(rest - choices_[group].least, rule_.alike);
    return cheapest_count(problem_, choices_[group], rule_, group, first, rule_.alike,
                          [](int) { return std::optional(Cost{}); });
  }

  const CountsProblem& problem_;
  const Choices& choices_;
  const SeamRule& rule_;
};

std::optional<TierCounts> best_of_tier(const CountsProblem& problem, const Choices& choices, const SeamRule& rule) {
  return rule.alike > 1 ? AlikeSearch(problem, choices, rule).run() : RingSearch(problem, choices, rule).run();
}

// A part of the search: what its choices have been narrowed to, and the best counts of its tiers one by one.
struct Part {
  std::vector<Choices> choices;
  std::vector<TierCounts> tiers;
  Cost bound;
  int number = 0; // the order of making, so that equal bounds are looked at in the same order everywhere
};

constexpr std::int64_t first_parts = 100;              // most yokes are told by these
constexpr std::int64_t most_comparisons = 100'000'000; // of one call: a part of a second
constexpr std::int64_t besides = 2'000;                // what a part costs beside its comparisons, in these

class Search {
public:
  explicit Search(const CountsProblem& problem) : problem_(problem) {}

  CountsFound run(int most_parts, const std::stop_token& stop) {
    const std::int64_t each = comparisons_in_a_part(problem_);
    std::int64_t left = std::min(most_comparisons, std::int64_t{most_parts} * each);
    add({problem_.choices, std::vector<TierCounts>(problem_.choices.size()), {}, 0}, 0, problem_.choices.size());
    if (auto soon = go_on(std::min<std::int64_t>(most_parts, first_parts), stop)) {
      return std::move(*soon);
    }
    left -= made_ * each;
    const CountsByPieces found = counts_by_pieces(problem_, waiting_.top()->bound.squares, left, stop);
    if (!found.gave_up) {
      return found.stitches.empty() ? CountsFound{} : CountsFound{counts_of(found), false};
    }
    left -= found.compared;
    const std::int64_t parts = std::max<std::int64_t>(0, left / (each + besides));
    if (auto late = go_on(std::min<std::int64_t>(most_parts, made_ + parts), stop)) {
      return std::move(*late);
    }
    return {std::nullopt, true};
  }

private:
  struct Later {
    bool operator()(const std::shared_ptr<const Part>& one, const std::shared_ptr<const Part>& other) const {
      return one->bound != other->bound ? other->bound < one->bound : other->number < one->number;
    }
  };

  // Until something is proved; nothing where so many parts are made before.
  std::optional<CountsFound> go_on(std::int64_t most_parts, const std::stop_token& stop) {
    while (!waiting_.empty()) {
      const std::shared_ptr<const Part> part = waiting_.top();
      const auto broken = broken_rule(*part);
      if (!broken) {
        return CountsFound{counts_of(*part), false};
      }
      if (made_ >= most_parts || stop.stop_requested()) {
        return std::nullopt;
      }
      waiting_.pop();
      cut(*part, broken->first, broken->second);
    }
    return CountsFound{};
  }

  [[nodiscard]] const SeamRule& rule_of(std::size_t tier) const {
    return tier < problem_.seams.size() ? problem_.seams[tier] : no_rule_;
  }

  // The part, with the tiers from `first` to before `last` looked at anew; dropped where one of them allows nothing.
  void add(Part part, std::size_t first, std::size_t last) {
    for (std::size_t tier = first; tier < last; ++tier) {
      auto counts = best_of_tier(problem_, part.choices[tier], rule_of(tier));
      if (!counts) {
        return;
      }
      part.tiers[tier] = std::move(*counts);
    }
    part.bound = {};
    for (const TierCounts& tier : part.tiers) {
      part.bound = part.bound + tier.cost;
    }
    part.number = made_++;
    waiting_.push(std::make_shared<const Part>(std::move(part)));
  }

  // Tier and group of the first decrease or increase row that takes too much.
  [[nodiscard]] std::optional<std::pair<std::size_t, std::size_t>> broken_rule(const Part& part) const {
    for (std::size_t tier = 0; tier + 1 < part.tiers.size(); ++tier) {
      for (std::size_t group = 0; group < problem_.pieces.size(); ++group) {
        const int below = part.tiers[tier].stitches[group];
        const int above = part.tiers[tier + 1].stitches[group];
        if ((problem_.halves && above < fewest_above(below, problem_.edge)) ||
            (problem_.doubles && above > most_above(below, problem_.edge))) {
          return std::pair(tier, group);
        }
      }
    }
    return std::nullopt;
  }

  // In two: less than that count below; or that count and more, with the least that may stand above it. Both limits
  // grow with the count, so that nothing allowed falls between them. For increases the other way round.
  void cut(const Part& part, std::size_t tier, std::size_t group) {
    const int below = part.tiers[tier].stitches[group];
    const bool too_few = part.tiers[tier + 1].stitches[group] < fewest_above(below, problem_.edge);
    Part less = part;
    Part more = part;
    CountChoice& less_below = less.choices[tier][group];
    CountChoice& more_below = more.choices[tier][group];
    if (too_few) {
      less_below.most = std::min(less_below.most, below - 1);
      more_below.least = std::max(more_below.least, below);
      CountChoice& above = more.choices[tier + 1][group];
      above.least = std::max(above.least, fewest_above(below, problem_.edge));
      add(std::move(less), tier, tier + 1);
      add(std::move(more), tier, tier + 2);
    } else {
      more_below.least = std::max(more_below.least, below + 1);
      less_below.most = std::min(less_below.most, below);
      CountChoice& above = less.choices[tier + 1][group];
      above.most = std::min(above.most, most_above(below, problem_.edge));
      add(std::move(more), tier, tier + 1);
      add(std::move(less), tier, tier + 2);
    }
  }

  [[nodiscard]] Counts counts_of(const Part& part) const {
    Counts counts;
    for (const TierCounts& tier : part.tiers) {
      counts.stitches.push_back(tier.stitches);
    }
    measure(counts, part.bound);
    return counts;
  }

  [[nodiscard]] Counts counts_of(const CountsByPieces& found) const {
    Counts counts;
    counts.stitches = found.stitches;
    measure(counts, found.cost);
    return counts;
  }

  // The squares from the counts, the bound from what was proved of them.
  void measure(Counts& counts, const Cost& bound) const {
    counts.in_all = bound.stitches;
    counts.looked_at = made_;
    const auto denominator = static_cast<double>(problem_.denominator);
    double unchanged = 0; // the part of the squares that no choice changes
    for (std::size_t tier = 0; tier < counts.stitches.size(); ++tier) {
      for (std::size_t group = 0; group < problem_.pieces.size(); ++group) {
        const double rest = static_cast<double>(problem_.choices[tier][group].ideal.rest) / denominator;
        unchanged += problem_.pieces[group] * rest * rest;
        const double off =
            counts.stitches[tier][group] - static_cast<double>(problem_.choices[tier][group].ideal.whole) - rest;
        counts.squares += problem_.pieces[group] * off * off;
      }
    }
    // They are summed up differently: the last digits of the bound must not stand above what was found.
    counts.bound = std::min(counts.squares, static_cast<double>(bound.squares) / denominator + unchanged);
  }

  const CountsProblem& problem_;
  const SeamRule no_rule_{};
  std::priority_queue<std::shared_ptr<const Part>, std::vector<std::shared_ptr<const Part>>, Later> waiting_;
  int made_ = 0;
};

} // namespace

int fewest_above(int below, int edge) {
  return below - (below - 2 * edge) / 2;
}

int most_above(int below, int edge) {
  return below + std::max(0, below - 2 * edge - 1);
}

CountsFound nearest_counts(const CountsProblem& problem, int most_parts, const std::stop_token& stop) {
  return Search(problem).run(most_parts, stop);
}

std::int64_t comparisons_in_a_part(const CountsProblem& problem) {
  std::int64_t most = 0;
  for (std::size_t tier = 0; tier < problem.choices.size(); ++tier) {
    const int remainders = tier < problem.seams.size() ? std::max(1, problem.seams[tier].multiple) : 1;
    std::int64_t comparisons = 0;
    for (const CountChoice& choice : problem.choices[tier]) {
      comparisons += static_cast<std::int64_t>(remainders) * std::max(0, choice.most - choice.least + 1);
    }
    most = std::max(most, comparisons);
  }
  return 4 * most; // two parts, of two tiers at most
}

} // namespace punchwright
