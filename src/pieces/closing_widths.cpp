// Least sums of costs over remainders: of two halves of the ring, which are then laid together.
#include "pieces/closing_widths.hpp"

#include "pieces/adding_remainders.hpp"
#include "pieces/size_counts.hpp"

#include <algorithm>
#include <deque>
#include <limits>

namespace punchwright {
namespace {

constexpr int no_cost = std::numeric_limits<int>::max();
using Table = std::vector<WidthRemainders::Entry>; // by cost
using Costs = std::vector<int>;                    // of each remainder; no_cost: it isn't reached

// Groups one after the other: the least costs of the first of them, of the first two, and so on.
class Chain {
public:
  Chain(AddingRemainders& adding, int most_cost) : adding_(adding), most_cost_(most_cost) {
    layers_.emplace_back(adding.count(), no_cost);
    layers_.back()[0] = 0;
  }

  // Sums of no more than `most_cost` less what the other groups cost at least. False: `left` is used up.
  bool add(const Table& table, int others_cost, std::int64_t& left) {
    tables_.push_back(&table);
    if (layers_.size() == 1) {
      Costs& alone = layers_.emplace_back(adding_.count(), no_cost);
      for (const auto& entry : table) {
        alone[entry.remainder] = entry.cost;
      }
      return true;
    }
    const std::vector<Reached> before = by_cost(layers_.back());
    Costs& sums = layers_.emplace_back(adding_.count(), no_cost);
    for (const auto& entry : table) {
      const int most = most_cost_ - others_cost - entry.cost;
      const auto end = std::ranges::upper_bound(before, most, {}, &Reached::cost);
      if (end == before.begin()) {
        break;
      }
      left -= end - before.begin() + static_cast<std::ptrdiff_t>(adding_.tables());
      if (left < 0) {
        return false;
      }
      adding_.set(entry.remainder);
      for (auto reached = before.begin(); reached != end; ++reached) {
        int& sum = sums[adding_.plus(reached->high, reached->low)];
        sum = std::min(sum, reached->cost + entry.cost);
      }
    }
    return true;
  }

  [[nodiscard]] const Costs& costs() const { return layers_.back(); }

  // The changes that come to the costs of that remainder, the first group's first.
  [[nodiscard]] std::vector<StepsOfPiece> changes(std::size_t remainder) const {
    std::vector<StepsOfPiece> changes;
    for (std::size_t layer = tables_.size(); layer > 0; --layer) {
      const int cost = layers_[layer][remainder];
      const auto last = std::ranges::find_if(*tables_[layer - 1], [&](const auto& entry) {
        const int before = layers_[layer - 1][adding_.difference(remainder, entry.remainder)];
        return before != no_cost && before + entry.cost == cost;
      });
      changes.insert(changes.begin(), last->change);
      remainder = adding_.difference(remainder, last->remainder);
    }
    return changes;
  }

private:
  struct Reached {
    std::uint32_t high = 0;
    std::uint32_t low = 0;
    int cost = 0;
  };

  [[nodiscard]] std::vector<Reached> by_cost(const Costs& costs) const {
    std::vector<std::vector<Reached>> of_steps(static_cast<std::size_t>(most_cost_ / cost_of_step) + 1);
    std::size_t count = 0;
    for (std::size_t remainder = 0; remainder < costs.size(); ++remainder) {
      if (costs[remainder] <= most_cost_) {
        of_steps[static_cast<std::size_t>(costs[remainder] / cost_of_step)].push_back(
            {adding_.high(remainder), adding_.low(remainder), costs[remainder]});
        ++count;
      }
    }
    std::vector<Reached> sorted;
    sorted.reserve(count);
    for (auto& reached : of_steps) {
      std::ranges::stable_sort(reached, {}, &Reached::cost);
      sorted.insert(sorted.end(), reached.begin(), reached.end());
    }
    return sorted;
  }

  AddingRemainders& adding_;
  int most_cost_;
  std::vector<const Table*> tables_;
  std::vector<Costs> layers_; // one more than tables
};

// Groups whose counts have to fit together.
class Together {
public:
  // Their remainders add up to nothing, or else are the same.
  Together(bool ring, Remainders remainders)
      : ring_(ring), remainders_(std::move(remainders)), adding_(remainders_.of_tier) {}

  void add(const PieceWidths& widths, std::vector<RemainderOfCount> of_count, int edge) {
    groups_.emplace_back(widths, remainders_, std::move(of_count), edge);
  }

  // Within so many steps, then within more; all at once where the tables have nothing further.
  ClosingWidths run(std::int64_t& left) {
    std::vector<int> fewest;
    for (WidthRemainders& group : groups_) {
      fewest.push_back(group.fewest_steps());
      fewest_steps_ += fewest.back();
    }
    if (std::ranges::any_of(fewest, [](int steps) { return steps > 2 * most_width_steps; })) {
      return {};
    }
    const int all_steps = 2 * most_width_steps * static_cast<int>(groups_.size());
    for (int steps = fewest_steps_ + 4;; steps += std::max(4, steps / 4)) {
      bool complete = true;
      for (std::size_t group = 0; group < groups_.size(); ++group) {
        if (!groups_[group].grow(steps - fewest_steps_ + fewest[group], left)) {
          return {{}, true, nearer_than_};
        }
        complete = complete && groups_[group].complete();
      }
      steps = complete ? all_steps : std::min(steps, all_steps);
      auto changes = ring_ ? closed(steps, fewest, left) : alike(steps);
      if (left < 0) {
        return {{}, true, nearer_than_};
      }
      if (!changes.empty() || steps == all_steps) {
        return {std::move(changes), false, 0};
      }
      nearer_than_ = steps + 1;
    }
  }

private:
  [[nodiscard]] std::vector<StepsOfPiece> closed(int steps, const std::vector<int>& fewest, std::int64_t& left) {
    const int most_cost = cost_of_step * (steps + 1) - 1;
    Chain first(adding_, most_cost);
    Chain second(adding_, most_cost);
    int others = fewest_steps_;
    const std::size_t half = (groups_.size() + 1) / 2;
    for (std::size_t group = 0; group < groups_.size(); ++group) {
      if (group == half) {
        others = fewest_steps_;
      }
      others -= fewest[group];
      if (!(group < half ? first : second).add(groups_[group].entries(), cost_of_step * others, left)) {
        return {};
      }
    }
    int least = no_cost;
    std::size_t at = 0;
    for (std::size_t remainder = 0; remainder < first.costs().size(); ++remainder) {
      const int one = first.costs()[remainder];
      if (one == no_cost) {
        continue;
      }
      const int other = second.costs()[adding_.difference(0, remainder)];
      if (other != no_cost && one + other <= most_cost && one + other < least) {
        least = one + other;
        at = remainder;
      }
    }
    if (least == no_cost) {
      return {};
    }
    auto changes = first.changes(at);
    const auto others_changes = second.changes(adding_.difference(0, at));
    changes.insert(changes.end(), others_changes.begin(), others_changes.end());
    return changes;
  }

  // The sums of all groups with the same remainder.
  [[nodiscard]] std::vector<StepsOfPiece> alike(int steps) const {
    Costs sums(adding_.count(), 0);
    for (const WidthRemainders& group : groups_) {
      Costs costs(adding_.count(), no_cost);
      for (const auto& entry : group.entries()) {
        costs[entry.remainder] = entry.cost;
      }
      for (std::size_t remainder = 0; remainder < sums.size(); ++remainder) {
        sums[remainder] =
            sums[remainder] == no_cost || costs[remainder] == no_cost ? no_cost : sums[remainder] + costs[remainder];
      }
    }
    const auto least = std::ranges::min_element(sums);
    std::vector<StepsOfPiece> changes;
    if (*least / cost_of_step <= steps) {
      for (const WidthRemainders& group : groups_) {
        changes.push_back(std::ranges::find(group.entries(), static_cast<std::size_t>(least - sums.begin()),
                                            &WidthRemainders::Entry::remainder)
                              ->change);
      }
    }
    return changes;
  }

  bool ring_;
  Remainders remainders_;
  AddingRemainders adding_;
  std::deque<WidthRemainders> groups_; // stay where they are
  int fewest_steps_ = 0;
  int nearer_than_ = 0;
};

// Which remainder a count leaves, of a group of so many pieces in a ring.
RemainderOfCount round_the_ring(const SeamRule& rule, int pieces, int edge, int needles) {
  RemainderOfCount remainders;
  for (int stitches = 0; stitches <= needles; ++stitches) {
    remainders.push_back(ring_remainder(pieces, stitches, edge, rule.multiple));
  }
  return remainders;
}

// Those of the counts that the rule allows, numbered as they come; all the same for a group that stands alone.
RemainderOfCount where_alike(const SeamRule& rule, bool alone, int needles) {
  std::vector<int> numbers(static_cast<std::size_t>(rule.alike), -1);
  int count = 0;
  RemainderOfCount remainders;
  for (int stitches = 0; stitches <= needles; ++stitches) {
    int& number = numbers[static_cast<std::size_t>(stitches % rule.alike)];
    if (rule.allows(stitches) && number < 0) {
      number = count++;
    }
    remainders.push_back(!rule.allows(stitches) ? -1 : alone ? 0 : number);
  }
  return remainders;
}

class Search {
public:
  Search(const OpenedYoke& opened, std::size_t size, const WidthSums& sums)
      : opened_(opened), size_(size), sums_(sums), cone_(cone_of(opened, size)), groups_(groups_of(opened.yoke)),
        problem_(counts_problem(opened, size)) {}

  ClosingWidths run() {
    ClosingWidths all;
    all.changes.resize(groups_.first.size());
    std::int64_t left = sums_.most_sums;
    const bool ring = std::ranges::all_of(problem_.seams, [](const SeamRule& rule) { return rule.alike <= 1; });
    for (std::size_t first = 0; first < groups_.first.size(); ++first) {
      std::vector<std::size_t> members;
      for (std::size_t group = first; group < groups_.first.size(); ++group) {
        if (ring || problem_.classes[group] == first) {
          members.push_back(group);
        }
      }
      if (!members.empty()) {
        const ClosingWidths found = of_members(ring, members, left);
        all.gave_up = all.gave_up || found.gave_up;
        all.nearer_than_steps += found.nearer_than_steps;
        if (!found.gave_up && found.changes.empty()) {
          return {};
        }
        for (std::size_t at = 0; at < found.changes.size(); ++at) {
          all.changes[members[at]] = found.changes[at];
          all.nearer_than_steps += found.changes[at].nearness().steps;
        }
      }
      if (ring) {
        break;
      }
    }
    if (all.gave_up) {
      all.changes.clear();
    }
    return all;
  }

private:
  [[nodiscard]] ClosingWidths of_members(bool ring, const std::vector<std::size_t>& members, std::int64_t& left) const {
    const int needles = opened_.profile.needles;
    std::vector<std::vector<RemainderOfCount>> of_count;
    Remainders remainders;
    remainders.of_tier.assign(problem_.seams.size(), 1);
    for (const std::size_t member : members) {
      std::vector<RemainderOfCount>& of_member = of_count.emplace_back();
      for (std::size_t tier = 0; tier < problem_.seams.size(); ++tier) {
        const SeamRule& rule = problem_.seams[tier];
        of_member.push_back(ring ? round_the_ring(rule, problem_.pieces[member], problem_.edge, needles)
                                 : where_alike(rule, members.size() == 1, needles));
        int& count = remainders.of_tier[tier];
        count = std::max({count, ring ? rule.multiple : 1, std::ranges::max(of_member.back()) + 1});
      }
    }
    if (remainders.count(sums_.most_remainders) > sums_.most_remainders) {
      return {{}, true, 0};
    }
    Together together(ring, remainders);
    for (std::size_t at = 0; at < members.size(); ++at) {
      const YokePiece& piece = opened_.yoke.pieces[groups_.first[members[at]]];
      together.add({opened_, cone_, problem_.seams, piece, size_}, std::move(of_count[at]), problem_.edge);
    }
    return together.run(left);
  }

  const OpenedYoke& opened_;
  std::size_t size_;
  WidthSums sums_;
  Cone cone_;
  PieceGroups groups_;
  CountsProblem problem_;
};

} // namespace

ClosingWidths closing_widths(const OpenedYoke& opened, std::size_t size, const WidthSums& sums) {
  return Search(opened, size, sums).run();
}

} // namespace punchwright
