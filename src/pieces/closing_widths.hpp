// The nearest widths by the remainders that they leave: exact, where these are few enough to be told one by one.
// What nearest_widths.hpp asks where a few parts of its own search do not tell.
#pragma once

#include "pieces/width_remainders.hpp"

#include <optional>
#include <vector>

namespace punchwright {

struct WidthSums {
  // Of all tiers together: four repeats of 24 stitches have 331,776.
  std::size_t most_remainders = 400'000;
  // Counts looked at and costs added up before it is given up, in half a second.
  std::int64_t most_sums = 400'000'000;
};

struct ClosingWidths {
  // Of each group of pieces; empty: nothing fits within the bound, or it was given up.
  std::vector<StepsOfPiece> changes;
  bool gave_up = false;
  int nearer_than_steps = 0; // where it gave up: nothing fits with less
};

// For each group a table of the remainders that its widths leave and the fewest steps to each (width_remainders.hpp).
// Whether counts fit together depends on these alone: all round a ring they add up to nothing in every tier, and where
// seams are alike they are the same. So the least sums over all remainders, group after group, are the answer. Sums of
// no more than some steps are looked at first, then further ones.
[[nodiscard]] ClosingWidths closing_widths(const OpenedYoke& opened, std::size_t size, const WidthSums& sums);

} // namespace punchwright
