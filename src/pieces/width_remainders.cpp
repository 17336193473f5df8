// Goes through a piece's changes, the nearest first, and notes which remainders their counts are the first to leave.
#include "pieces/width_remainders.hpp"

#include <algorithm>

namespace punchwright {

std::size_t Remainders::count(std::size_t within) const {
  std::size_t all = 1;
  for (const int one : of_tier) {
    all *= static_cast<std::size_t>(one);
    if (all > within) {
      return within + 1;
    }
  }
  return all;
}

WidthRemainders::WidthRemainders(PieceWidths widths, const Remainders& remainders,
                                 std::vector<RemainderOfCount> of_count, int edge)
    : widths_(std::move(widths)), remainders_(remainders), of_count_(std::move(of_count)), edge_(edge),
      no_limits_(of_count_.size() + 1, Limits{0, static_cast<int>(of_count_.front().size()) - 1}),
      known_(remainders.count(SIZE_MAX - 1)) {}

int WidthRemainders::fewest_steps() {
  const auto first = widths_.nearest(no_limits_, 0);
  return first ? widths_.change(*first).nearness().steps : 2 * most_width_steps + 1;
}

bool WidthRemainders::grow(int steps, std::int64_t& left) {
  while (!complete_ && left >= 0) {
    const auto change = widths_.nearest(no_limits_, next_);
    if (!change) {
      complete_ = true;
      break;
    }
    if (widths_.change(*change).nearness().steps > steps) {
      break;
    }
    add_from({*change, 0, 0, 0}, left);
    complete_ = entries_.size() == known_.size();
    next_ = *change + 1;
  }
  return left >= 0;
}

void WidthRemainders::add_from(const Walk& walk, std::int64_t& left) {
  Limits limits = widths_.counts(walk.change, walk.tier);
  if (walk.tier > 0) {
    limits = both(limits, {fewest_above(walk.below, edge_), most_above(walk.below, edge_)});
  }
  if (limits.least > limits.most || left-- < 0) {
    return;
  }
  if (walk.tier == of_count_.size()) {
    if (!known_[walk.remainder]) {
      known_[walk.remainder] = true;
      const StepsOfPiece& change = widths_.change(walk.change);
      entries_.push_back({walk.remainder, cost_of(change.nearness()), change});
    }
    return;
  }
  for (int stitches = limits.least; stitches <= limits.most; ++stitches) {
    const int remainder = of_count_[walk.tier][static_cast<std::size_t>(stitches)];
    if (remainder >= 0) {
      const auto of_tier = static_cast<std::size_t>(remainders_.of_tier[walk.tier]);
      add_from({walk.change, walk.tier + 1, stitches, walk.remainder * of_tier + static_cast<std::size_t>(remainder)},
               left);
    }
  }
}

} // namespace punchwright
