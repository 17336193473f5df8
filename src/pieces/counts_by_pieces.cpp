// Chains of counts of each group, put together by what they leave of the tiers' repeats.
// Only what can still lie within the room is looked at.
#include "pieces/counts_by_pieces.hpp"

#include "pieces/adding_remainders.hpp"
#include "pieces/count_chain.hpp"

#include <algorithm>

namespace punchwright {
namespace {

constexpr std::size_t most_remainders = 1U << 22U; // memory

std::size_t count_of(const std::vector<int>& multiples) {
  std::size_t count = 1;
  for (const int multiple : multiples) {
    count *= static_cast<std::size_t>(multiple);
    if (count > most_remainders) {
      return count;
    }
  }
  return count;
}

// Groups that have to go together.
class Together {
public:
  Together(const CountsProblem& problem, std::vector<std::size_t> groups, std::vector<int> multiples, bool ring)
      : groups_(std::move(groups)), multiples_(std::move(multiples)), ring_(ring), remainders_(count_of(multiples_)) {
    for (const std::size_t group : groups_) {
      chains_.emplace_back(problem, group, multiples_);
      compared_ += chains_.back().compared();
    }
  }

  enum class Answer { found, none, gave_up };

  Answer run(std::int64_t least_squares, std::int64_t step, std::int64_t most, const std::stop_token& stop) {
    for (const CountChain& chain : chains_) {
      if (!chain.best()) {
        return Answer::none;
      }
      cost_ = cost_ + *chain.best();
    }
    if (remainders_ > most_remainders) {
      return Answer::gave_up;
    }
    std::int64_t room = std::max<std::int64_t>(0, least_squares - cost_.squares);
    while (!stop.stop_requested()) {
      cut_off_ = false;
      compared_ += static_cast<std::int64_t>(remainders_ * groups_.size()) / 8; // filled, not compared
      if (compared_ > most || !find_entries(room, most)) {
        return Answer::gave_up;
      }
      std::optional<CountCost> more = ring_ ? round_the_ring(room, most) : alike();
      if (compared_ > most) {
        return Answer::gave_up;
      }
      if (more && (more->squares <= room || !cut_off_)) {
        cost_ = cost_ + *more;
        return Answer::found;
      }
      if (!cut_off_) {
        return Answer::none;
      }
      room = 2 * room + step;
    }
    return Answer::gave_up;
  }

  [[nodiscard]] std::int64_t compared() const { return compared_; }
  [[nodiscard]] const CountCost& cost() const { return cost_; }

  // Of the answer that was found, into the counts of all groups.
  void put_into(std::vector<std::vector<int>>& stitches) {
    for (std::size_t at = 0; at < groups_.size(); ++at) {
      const std::vector<int> counts = chains_[at].counts_of(chosen_[at]);
      for (std::size_t tier = 0; tier < stitches.size(); ++tier) {
        stitches[tier][groups_[at]] = counts[tier];
      }
    }
  }

private:
  using Entry = CountChain::Entry;

  bool find_entries(std::int64_t room, std::int64_t most) {
    entries_.clear();
    for (CountChain& chain : chains_) {
      const std::int64_t before = chain.compared();
      const std::int64_t left = most - compared_;
      entries_.push_back(chain.within(room, remainders_, before + left, cut_off_));
      compared_ += chain.compared() - before;
      if (compared_ > most) {
        return false;
      }
    }
    return true;
  }

  // The cheapest of what all of them can leave alike.
  std::optional<CountCost> alike() {
    struct Sum {
      std::size_t groups = 0;
      CountCost more;
      std::vector<Entry> chosen;
    };
    std::vector<Sum> sums(groups_.size() == 1 ? 1 : remainders_);
    for (std::size_t at = 0; at < groups_.size(); ++at) {
      for (const Entry& entry : entries_[at]) {
        Sum& sum = sums[groups_.size() == 1 ? 0 : entry.remainder];
        ++compared_;
        if (sum.groups == at) { // of one group alone the first entry, which is the cheapest
          ++sum.groups;
          sum.more = sum.more + entry.more;
          sum.chosen.push_back(entry);
        }
      }
    }
    std::optional<CountCost> best;
    for (Sum& sum : sums) {
      if (sum.groups == groups_.size() && (!best || sum.more < *best)) {
        best = sum.more;
        chosen_ = std::move(sum.chosen);
      }
    }
    return best;
  }

  // The groups until now, together.
  struct State {
    Entry sum;
    std::size_t entry = 0; // of the last of them
    std::size_t before = 0;
  };

  std::optional<CountCost> round_the_ring(std::int64_t room, std::int64_t most) {
    layers_.assign(1, {State{}});
    for (std::size_t at = 0; at + 1 < groups_.size(); ++at) {
      layers_.push_back(next_layer(layers_.back(), entries_[at], room, most));
      if (compared_ > most) {
        return std::nullopt;
      }
    }
    return close(room);
  }

  std::vector<State> next_layer(const std::vector<State>& before, const std::vector<Entry>& entries, std::int64_t room,
                                std::int64_t most) {
    AddingRemainders adding(multiples_);
    std::vector<State> layer;
    std::vector<int> at_remainder(remainders_, -1);
    for (std::size_t number = 0; number < entries.size() && compared_ <= most; ++number) {
      const Entry& entry = entries[number];
      adding.set(entry.remainder);
      compared_ += static_cast<std::int64_t>(adding.tables());
      for (std::size_t from = 0; from < before.size(); ++from) {
        const Entry& sum = before[from].sum;
        ++compared_;
        if (sum.more.squares + entry.more.squares > room) {
          cut_off_ = true;
          break; // all that follow cost as much or more
        }
        const CountCost more = sum.more + entry.more;
        const std::size_t remainder = adding.plus(adding.high(sum.remainder), adding.low(sum.remainder));
        int& place = at_remainder[remainder];
        if (place < 0) {
          place = static_cast<int>(layer.size());
          layer.push_back({{remainder, more}, number, from});
        } else if (State& there = layer[static_cast<std::size_t>(place)]; more < there.sum.more) {
          there = {{remainder, more}, number, from};
        }
      }
    }
    std::ranges::sort(layer, [](const State& one, const State& other) {
      return one.sum.more != other.sum.more ? one.sum.more < other.sum.more : one.sum.remainder < other.sum.remainder;
    });
    return layer;
  }

  // With the last group, which leaves what is missing.
  std::optional<CountCost> close(std::int64_t room) {
    const AddingRemainders adding(multiples_);
    std::vector<int> at_remainder(remainders_, -1);
    for (std::size_t number = 0; number < entries_.back().size(); ++number) {
      at_remainder[entries_.back()[number].remainder] = static_cast<int>(number);
    }
    std::optional<CountCost> best;
    State last;
    for (std::size_t from = 0; from < layers_.back().size(); ++from) {
      const Entry& sum = layers_.back()[from].sum;
      const int place = at_remainder[adding.difference(0, sum.remainder)];
      compared_ += static_cast<std::int64_t>(multiples_.size());
      if (place < 0) {
        continue;
      }
      const CountCost more = sum.more + entries_.back()[static_cast<std::size_t>(place)].more;
      cut_off_ = cut_off_ || more.squares > room;
      if (!best || more < *best) {
        best = more;
        last = {{0, more}, static_cast<std::size_t>(place), from};
      }
    }
    if (best) {
      choose(last);
    }
    return best;
  }

  void choose(State last) {
    chosen_.resize(groups_.size());
    for (std::size_t at = groups_.size(); at-- > 0;) {
      chosen_[at] = entries_[at][last.entry];
      last = layers_[at][last.before];
    }
  }

  std::vector<std::size_t> groups_;
  std::vector<int> multiples_;
  bool ring_;
  std::size_t remainders_;
  std::vector<CountChain> chains_;
  std::vector<std::vector<Entry>> entries_; // of each group, the cheapest first
  std::vector<std::vector<State>> layers_;  // before each group, the cheapest first
  std::vector<Entry> chosen_;
  CountCost cost_;
  bool cut_off_ = false; // something lies beyond the room
  std::int64_t compared_ = 0;
};

// What a chain leaves has to be told up to the last tier that asks for something.
std::vector<int> multiples_of(const CountsProblem& problem, bool ring) {
  std::vector<int> multiples{1};
  for (std::size_t tier = 0; tier < problem.seams.size(); ++tier) {
    const int multiple = std::max(1, ring ? problem.seams[tier].multiple : problem.seams[tier].alike);
    if (multiple > 1) {
      multiples.resize(tier + 1, 1);
      multiples[tier] = multiple;
    }
  }
  return multiples;
}

std::vector<Together> all_together(const CountsProblem& problem, bool ring) {
  const std::vector<int> multiples = multiples_of(problem, ring);
  const std::size_t groups = problem.pieces.size();
  const bool of_classes = count_of(multiples) > 1 && !ring && !problem.classes.empty();
  std::vector<Together> together;
  for (std::size_t first = 0; first < groups; ++first) {
    std::vector<std::size_t> members;
    for (std::size_t group = first; group < groups; ++group) {
      const bool ring_of_all = ring && first == 0;
      if (ring_of_all || (!ring && (of_classes ? problem.classes[group] == first : group == first))) {
        members.push_back(group);
      }
    }
    if (!members.empty()) {
      const bool alone = members.size() == 1 && !ring; // what it leaves is asked by nobody
      together.emplace_back(problem, members, alone ? std::vector<int>{1} : multiples, ring);
    }
  }
  return together;
}

} // namespace

CountsByPieces counts_by_pieces(const CountsProblem& problem, std::int64_t least_squares, std::int64_t most,
                                const std::stop_token& stop) {
  const auto asks_ring = [](const SeamRule& rule) { return rule.multiple > 1; };
  const auto asks_alike = [](const SeamRule& rule) { return rule.alike > 1; };
  const bool ring = std::ranges::any_of(problem.seams, asks_ring);
  CountsByPieces found;
  if (ring && std::ranges::any_of(problem.seams, asks_alike)) {
    found.gave_up = true; // no yoke has both
    return found;
  }
  std::vector<std::vector<int>> stitches(problem.choices.size(), std::vector<int>(problem.pieces.size()));
  for (Together& together : all_together(problem, ring)) {
    const auto answer =
        together.run(ring ? least_squares : INT64_MIN / 2, problem.denominator, most - found.compared, stop);
    found.compared += together.compared();
    if (answer == Together::Answer::none) {
      return {{}, {}, false, found.compared};
    }
    found.gave_up = found.gave_up || answer == Together::Answer::gave_up;
    if (!found.gave_up) {
      together.put_into(stitches);
      found.cost = found.cost + together.cost();
    }
  }
  if (!found.gave_up) {
    found.stitches = std::move(stitches);
  }
  return found;
}

} // namespace punchwright
