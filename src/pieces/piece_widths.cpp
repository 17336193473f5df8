// Works the changes out by their sum, and leaves out those that allow nothing new.
#include "pieces/piece_widths.hpp"

#include <algorithm>

namespace punchwright {
namespace {

bool is_width(std::int64_t thousandths) {
  return thousandths >= in_thousandths(narrowest_yoke_piece_cm) && thousandths <= in_thousandths(widest_yoke_piece_cm);
}

} // namespace

Limits both(const Limits& one, const Limits& other) {
  return {std::max(one.least, other.least), std::min(one.most, other.most)};
}

PieceWidths::PieceWidths(const OpenedYoke& opened, const Cone& cone, const std::vector<SeamRule>& seams,
                         const YokePiece& piece, std::size_t size)
    : opened_(opened), cone_(cone), seams_(seams), bottom_(in_thousandths(piece.bottom_cm.at(size))),
      top_(in_thousandths(piece.top_cm.at(size))) {}

std::optional<std::size_t> PieceWidths::nearest(const PieceLimits& limits, std::size_t from) {
  for (std::size_t number = from;; ++number) {
    while (number == changes_.size()) {
      if (next_sum_ > 2 * most_width_steps) {
        return std::nullopt;
      }
      add_changes_of(next_sum_++);
    }
    if (keeps(limits, &counts(number, 0))) {
      return number;
    }
  }
}

// One width changed before two; wider before narrower. What comes twice adds nothing the second time.
void PieceWidths::add_changes_of(int sum) {
  const auto add_with_top = [&](int far) {
    for (const int bottom_steps : {sum - far, far - sum}) {
      for (const int top_steps : {far, -far}) {
        add({bottom_steps, top_steps});
      }
    }
  };
  add_with_top(0);
  add_with_top(sum);
  for (int far = 1; far < sum; ++far) {
    add_with_top(far);
  }
}

void PieceWidths::add(const StepsOfPiece& change) {
  if (std::max(std::abs(change.bottom), std::abs(change.top)) > most_width_steps || !is_width(bottom(change.bottom)) ||
      !is_width(top(change.top))) {
    return;
  }
  PieceLimits counts;
  for (std::size_t tier = 0; tier < cone_.of_top.size(); ++tier) {
    const std::int64_t ideal = cone_.at(tier, bottom(change.bottom), top(change.top));
    const CountChoice choice = counts_around(opened_, ideal, cone_.denominator, true);
    counts.push_back({choice.least, choice.most});
  }
  if (keeps(counts, counts.data()) && known_.insert(counts).second) {
    changes_.push_back(change);
    counts_.insert(counts_.end(), counts.begin(), counts.end());
  }
}

// Whether the piece by itself has counts within the limits: such that its seams allow, and rows between them that
// neither take nor make too many.
bool PieceWidths::keeps(const PieceLimits& limits, const Limits* counts) const {
  Limits below;
  for (std::size_t tier = 0; tier < limits.size(); ++tier) {
    Limits kept = both(limits[tier], counts[tier]);
    if (tier > 0) {
      kept.least = std::max(kept.least, fewest_above(below.least, opened_.yoke.edge));
      kept.most = std::min(kept.most, most_above(below.most, opened_.yoke.edge));
    }
    while (tier < seams_.size() && kept.least <= kept.most && !seams_[tier].allows(kept.least)) {
      ++kept.least;
    }
    if (kept.least > kept.most) {
      return false;
    }
    below = kept;
  }
  return true;
}

} // namespace punchwright
