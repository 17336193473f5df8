// Choices of counts that close the ring, from the nearest on, each tried by the columns that the bed offers.
#include "pieces/ring_mend.hpp"

#include "design/words.hpp"
#include "design/wrap.hpp"
#include "machine/placement.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <limits>
#include <queue>
#include <utility>

namespace punchwright {
namespace {

class Mender {
public:
  Mender(const OpenedYoke& opened, std::size_t size, std::size_t tier, const CountsOfSize& counts)
      : document_(opened.tiers[tier].document), profile_(opened.profile), edge_(opened.yoke.edge),
        width_(document_.grid.width()), groups_(groups_of(opened.yoke)) {
    const CountsProblem problem = counts_problem(opened, size);
    for (std::size_t group = 0; group < groups_.first.size(); ++group) {
      const std::vector<int>& present = counts.stitches[groups_.first[group]];
      std::vector<Choice> choices;
      const CountChoice& allowed = problem.choices[tier][group];
      for (int stitches = allowed.least; stitches <= allowed.most; ++stitches) {
        if (stitches > 2 * edge_ && (tier == 0 || halves_allow(present[tier - 1], stitches)) &&
            halves_allow(stitches, present[tier + 1])) {
          const int change = stitches - present[tier];
          choices.push_back({stitches, problem.pieces[group] * change * change,
                             ring_remainder(problem.pieces[group], stitches, edge_, width_), columns_of(stitches)});
        }
      }
      std::ranges::stable_sort(choices, {}, &Choice::cost);
      choices_.push_back(std::move(choices));
    }
    cost_least_.assign(choices_.size() + 1, std::vector<int>(static_cast<std::size_t>(width_), none));
    cost_least_.back()[0] = 0;
    for (std::size_t group = choices_.size(); group-- > 0;) {
      for (int wanted = 0; wanted < width_; ++wanted) {
        int& least = cost_least_[group][static_cast<std::size_t>(wanted)];
        for (const Choice& choice : choices_[group]) {
          const int then = least_from(group + 1, wanted - choice.remainder);
          least = then == none ? least : std::min(least, choice.cost + then);
        }
      }
    }
  }

  CountsThatMeet run() {
    constexpr std::size_t most = 20'000; // some milliseconds: yokes are worked out while they are dragged
    push({});
    while (!waiting_.empty()) {
      if (pushed_ > most) {
        return {{}, true};
      }
      const Chosen chosen = waiting_.top();
      waiting_.pop();
      if (chosen.at.size() < choices_.size()) {
        for (std::size_t next = 0; next < choices_[chosen.at.size()].size(); ++next) {
          std::vector<std::size_t> at = chosen.at;
          at.push_back(next);
          push(std::move(at));
        }
      } else if (all_meet(chosen.at)) {
        CountsThatMeet found;
        for (const std::size_t group : groups_.of_piece) {
          found.stitches.push_back(choices_[group][chosen.at[group]].stitches);
        }
        return found;
      }
    }
    return {};
  }

private:
  static constexpr int none = std::numeric_limits<int>::max();

  struct Choice {
    int stitches = 0;
    int cost = 0;              // of all its pieces
    int remainder = 0;         // of their visible stitches
    std::vector<bool> columns; // that can be the piece's left one
  };
  struct Chosen {
    int cost = 0;                // with the least that closes the ring in the groups to come
    std::vector<std::size_t> at; // of the first groups
    bool operator<(const Chosen& other) const {
      // On top are the cheapest, of these the furthest, so that a choice with which all meet is come upon soon.
      return cost != other.cost ? cost > other.cost : std::pair(other.at.size(), at) < std::pair(at.size(), other.at);
    }
  };

  [[nodiscard]] bool halves_allow(int below, int above) const {
    return above >= fewest_above(below, edge_) && above <= most_above(below, edge_);
  }

  [[nodiscard]] std::vector<bool> columns_of(int stitches) const {
    std::vector<bool> columns(static_cast<std::size_t>(width_), !profile_.card);
    const Placement placement(document_, profile_);
    for (int last = profile_.leftmost().position + stitches - 1; profile_.card && last <= profile_.rightmost().position;
         ++last) {
      columns[static_cast<std::size_t>(placement.column_of(Needle{last - edge_}))] = true;
    }
    return columns;
  }

  // In the groups from that one on, so that their visible stitches leave that remainder.
  [[nodiscard]] int least_from(std::size_t group, int remainder) const {
    return cost_least_[group][static_cast<std::size_t>(remainder_of(remainder, width_))];
  }

  // Not where no choice in the groups to come would close the ring: all seams can't meet then.
  void push(std::vector<std::size_t> at) {
    int cost = 0;
    int remainder = 0;
    for (std::size_t group = 0; group < at.size(); ++group) {
      cost += choices_[group][at[group]].cost;
      remainder += choices_[group][at[group]].remainder;
    }
    const int to_come = least_from(at.size(), -remainder);
    if (to_come != none) {
      waiting_.push({cost + to_come, std::move(at)});
      ++pushed_;
    }
  }

  [[nodiscard]] bool all_meet(const std::vector<std::size_t>& at) const {
    const auto goes_round = [&](int column) {
      const int first = column;
      for (const std::size_t group : groups_.of_piece) {
        const Choice& choice = choices_[group][at[group]];
        if (!choice.columns[static_cast<std::size_t>(column)]) {
          return false;
        }
        column = round_edge(column + choice.stitches - 2 * edge_, width_);
      }
      return column == first;
    };
    for (int column = 0; column < width_; ++column) {
      if (goes_round(column)) {
        return true;
      }
    }
    return false;
  }

  const Document& document_;
  const Profile& profile_;
  int edge_;
  int width_;
  PieceGroups groups_;
  std::vector<std::vector<Choice>> choices_; // of each group, the nearest first
  std::vector<std::vector<int>> cost_least_; // see least_from()
  std::priority_queue<Chosen> waiting_;
  std::size_t pushed_ = 0;
};

} // namespace

CountsThatMeet counts_that_meet(const OpenedYoke& opened, std::size_t size, std::size_t tier,
                                const CountsOfSize& counts) {
  return Mender(opened, size, tier, counts).run();
}

std::string mend_by_counts(const OpenedYoke& opened, std::size_t size, std::size_t tier, const CountsOfSize& counts) {
  const CountsThatMeet found = counts_that_meet(opened, size, tier, counts);
  if (found.stitches.empty()) {
    return found.gave_up ? "" : tr("no stitch counts of this tier within the tolerance make every seam meet");
  }
  std::vector<std::string> pieces;
  for (std::size_t piece = 0; piece < found.stitches.size(); ++piece) {
    pieces.push_back(fmt::format("{} {}", opened.yoke.pieces[piece].name, found.stitches[piece]));
  }
  return said("every seam would meet with these stitches: {}", fmt::join(pieces, ", "));
}

} // namespace punchwright
