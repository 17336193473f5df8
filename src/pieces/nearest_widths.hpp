// For a size in which no stitch counts fit: the nearest widths with which they would.
// An exact search: nothing that it leaves out is nearer.
#pragma once

#include "pieces/closing_widths.hpp"
#include "pieces/open_yoke.hpp"

#include <vector>

namespace punchwright {

struct WidthChange {
  std::size_t piece = 0; // that has the width; pieces like it go with it
  bool top = false;      // else its bottom
  double from_cm = 0;
  double to_cm = 0;
};

struct WidthsFound {
  std::vector<WidthChange>
      changes;               // in the order of the pieces; none: nothing fits within the bound, or none was found
  bool gave_up = false;      // the parts were used up: what is named fits, but something nearer may, too
  double nearer_than_cm = 0; // where it gave up: nothing fits with changes that come to less
};

// How much is looked at before a search gives up.
struct WidthSearch {
  int first_parts = 100; // of the search from part to part: where the tolerance leaves room, a few tell
  WidthSums sums{};
  int parts = 8'000; // where the sums gave up; and as many for one that only looks for widths that fit
};

// Nearness is the sum of the changes in cm, over the widths as they stand in the file: a designer would rather change
// one number by 2 cm than four of them by 1 cm. Where two such sums are equal, fewer changed widths are nearer.
//
// Told by the remainders of the tiers' repeats (closing_widths.hpp): 6 pieces with widths of their own in 4 tiers of 24
// stitches take 20 to 150 milliseconds. Where these are too many (more tiers or wider repeats), or the tolerance leaves
// so much room that the counts are, half a second is lost, and there is the search from part to part, a second or two:
//
// Best first, over limits to the counts of each piece in each tier. Each part of the search has for every piece the
// nearest widths whose counts keep to its limits, found piece by piece; their sum bounds the part. Where counts within
// the tolerance of these widths fit together, they are the answer: all other parts are bounded by as much. Where they
// don't, one of the pieces must have a count that those widths do not allow: the part is cut by which one, and whether
// it has more or fewer.
[[nodiscard]] WidthsFound nearest_widths(const OpenedYoke& opened, std::size_t size, const WidthSearch& search = {});

} // namespace punchwright
