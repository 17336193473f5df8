// From the top downwards what all further tiers cost at least; then upwards through every chain that can still keep to
// the room, none other.
#include "pieces/count_chain.hpp"

#include "design/wrap.hpp"

#include <algorithm>

namespace punchwright {

CountChain::CountChain(const CountsProblem& problem, std::size_t group, const std::vector<int>& multiples)
    : problem_(problem), group_(group), multiples_(multiples), onwards_(problem.choices.size()) {
  for (std::size_t tier = onwards_.size(); tier-- > 0;) {
    find_onwards(tier);
  }
  for (const auto& cost : onwards_.front()) {
    if (cost && (!best_ || *cost < *best_)) {
      best_ = cost;
    }
  }
}

const SeamRule& CountChain::rule_of(std::size_t tier) const {
  return tier < problem_.seams.size() ? problem_.seams[tier] : no_rule_;
}

// What the choice and the rule of halves allow above that count; in the lowest tier what the choice does.
CountChain::Limits CountChain::limits_above(std::size_t tier, int below) const {
  const CountChoice& choice = problem_.choices[tier][group_];
  const bool halves = tier > 0 && problem_.halves;
  const bool doubles = tier > 0 && problem_.doubles;
  return {halves ? std::max(choice.least, fewest_above(below, problem_.edge)) : choice.least,
          doubles ? std::min(choice.most, most_above(below, problem_.edge)) : choice.most};
}

const std::optional<CountCost>& CountChain::onwards(std::size_t tier, int stitches) const {
  return onwards_[tier][static_cast<std::size_t>(stitches - problem_.choices[tier][group_].least)];
}

void CountChain::find_onwards(std::size_t tier) {
  const CountChoice& choice = problem_.choices[tier][group_];
  const bool last = tier + 1 == onwards_.size();
  for (int stitches = choice.least; stitches <= choice.most; ++stitches) {
    std::optional<CountCost> least;
    if (rule_of(tier).allows(stitches)) {
      const Limits limits = last ? Limits{0, -1} : limits_above(tier + 1, stitches);
      least = last ? std::optional(CountCost{}) : std::nullopt;
      for (int above = limits.least; above <= limits.most; ++above) {
        const auto& cost = onwards(tier + 1, above);
        least = cost && (!least || *cost < *least) ? cost : least;
      }
      compared_ += std::max(1, limits.most - limits.least + 1);
    }
    onwards_[tier].push_back(least ? std::optional(*least + cost_of(problem_, choice, group_, stitches))
                                   : std::nullopt);
  }
}

std::size_t CountChain::remainder_with(std::size_t tier, std::size_t before, int stitches) const {
  const int multiple = multiples_[tier];
  const int remainder = rule_of(tier).alike > 1
                            ? remainder_of(stitches, multiple)
                            : ring_remainder(problem_.pieces[group_], stitches, problem_.edge, multiple);
  return before * static_cast<std::size_t>(multiple) + static_cast<std::size_t>(remainder);
}

std::vector<CountChain::Entry> CountChain::within(std::int64_t room, std::size_t remainders, std::int64_t most,
                                                  bool& cut_off) {
  entries_.clear();
  entry_of_.assign(remainders, -1);
  walk({}, room, most, cut_off);
  std::ranges::sort(entries_, [](const Entry& one, const Entry& other) {
    return one.more != other.more ? one.more < other.more : one.remainder < other.remainder;
  });
  return entries_;
}

void CountChain::walk(const Walk& at, std::int64_t room, std::int64_t most, bool& cut_off) {
  const CountChoice& choice = problem_.choices[at.tier][group_];
  const Limits limits = limits_above(at.tier, at.below);
  for (int stitches = limits.least; stitches <= limits.most && compared_ <= most; ++stitches) {
    ++compared_;
    const auto& further = onwards(at.tier, stitches);
    if (!further) {
      continue;
    }
    const CountCost more = at.so_far + *further - *best_;
    if (more.squares > room) {
      cut_off = true;
      continue;
    }
    const std::size_t remainder = remainder_with(at.tier, at.remainder, stitches);
    if (at.tier + 1 < multiples_.size()) {
      walk({at.tier + 1, stitches, remainder, at.so_far + cost_of(problem_, choice, group_, stitches)}, room, most,
           cut_off);
      continue;
    }
    int& entry = entry_of_[remainder];
    if (entry < 0) {
      entry = static_cast<int>(entries_.size());
      entries_.push_back({remainder, more});
    }
    Entry& there = entries_[static_cast<std::size_t>(entry)];
    there.more = std::min(there.more, more);
  }
}

std::vector<int> CountChain::counts_of(const Entry& entry) {
  std::vector<int> counts(onwards_.size());
  trace({}, entry, counts);
  return counts;
}

bool CountChain::trace(const Walk& at, const Entry& wanted, std::vector<int>& counts) const {
  if (at.tier == onwards_.size()) {
    return true;
  }
  const CountChoice& choice = problem_.choices[at.tier][group_];
  const Limits limits = limits_above(at.tier, at.below);
  for (int stitches = limits.least; stitches <= limits.most; ++stitches) {
    const auto& further = onwards(at.tier, stitches);
    if (!further || at.so_far + *further - *best_ > wanted.more) {
      continue;
    }
    std::size_t remainder = at.remainder;
    if (at.tier < multiples_.size()) {
      remainder = remainder_with(at.tier, remainder, stitches);
      if (at.tier + 1 == multiples_.size() && remainder != wanted.remainder) {
        continue;
      }
    }
    counts[at.tier] = stitches;
    if (trace({at.tier + 1, stitches, remainder, at.so_far + cost_of(problem_, choice, group_, stitches)}, wanted,
              counts)) {
      return true;
    }
  }
  return false;
}

} // namespace punchwright
