// Choices of counts from the nearest on, each tried by the columns that the bed offers.
#include "pieces/ring_mend.hpp"

#include "design/words.hpp"
#include "design/wrap.hpp"
#include "machine/placement.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <queue>

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
          choices.push_back({stitches, problem.pieces[group] * change * change, columns_of(stitches)});
        }
      }
      std::ranges::stable_sort(choices, {}, &Choice::cost);
      choices_.push_back(std::move(choices));
    }
  }

  CountsThatMeet run() {
    constexpr int most = 5'000; // a millisecond or two: yokes are worked out while they are dragged
    if (std::ranges::any_of(choices_, &std::vector<Choice>::empty)) {
      return {};
    }
    push(std::vector<std::size_t>(choices_.size(), 0), 0);
    for (int looked_at = 0; !waiting_.empty(); ++looked_at) {
      if (looked_at == most) {
        return {{}, true};
      }
      const Chosen chosen = waiting_.top();
      waiting_.pop();
      if (all_meet(chosen.at)) {
        CountsThatMeet found;
        for (const std::size_t group : groups_.of_piece) {
          found.stitches.push_back(choices_[group][chosen.at[group]].stitches);
        }
        return found;
      }
      // On in one group, and only in those from there: each choice is come upon once.
      for (std::size_t group = chosen.from; group < choices_.size(); ++group) {
        if (chosen.at[group] + 1 < choices_[group].size()) {
          std::vector<std::size_t> next = chosen.at;
          ++next[group];
          push(std::move(next), group);
        }
      }
    }
    return {};
  }

private:
  struct Choice {
    int stitches = 0;
    int cost = 0;
    std::vector<bool> columns; // that can be the piece's left one
  };
  struct Chosen {
    int cost = 0;
    std::vector<std::size_t> at; // of each group
    std::size_t from = 0;
    bool operator<(const Chosen& other) const {
      return cost != other.cost ? cost > other.cost : at > other.at; // the cheapest is on top
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

  void push(std::vector<std::size_t> at, std::size_t from) {
    int cost = 0;
    for (std::size_t group = 0; group < at.size(); ++group) {
      cost += choices_[group][at[group]].cost;
    }
    waiting_.push({cost, std::move(at), from});
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
  std::priority_queue<Chosen> waiting_;
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
