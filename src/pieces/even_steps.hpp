// Even spacing, as knitters count it: so many steps of one length and so many that are one longer.
// One function for decreases and increases, and what it gives is checked against published examples.
#pragma once

#include "pieces/yoke.hpp"

#include <utility>
#include <vector>

namespace punchwright {

// `length` stitches in `parts` equal parts, as whole numbers: how many parts of which length. 1 or more parts.
struct EvenParts {
  int short_step = 0;
  int short_parts = 0;
  int long_parts = 0; // of short_step + 1
  bool operator==(const EvenParts&) const = default;
};
[[nodiscard]] constexpr EvenParts even_parts(int length, int parts) {
  return {length / parts, parts - length % parts, length % parts};
}

// The places of `count` decreases or increases among `stitches`, counted from 1 at the left: the stitch that is taken
// away, or behind which one is made. 0 <= count <= stitches / 2, or of increases < stitches.
//
// Gathered and spread, the stitches are cut in count + 1 parts: the last one lies behind the last place. Gathered: half
// of the long steps (rounded down) first, then the short ones, then the other long ones, and a short one behind the
// last place. Spread: each place as near as can be to its share, (number of the place) / (count + 1) of the stitches.
// Half steps: cut in `count` parts with a place in the middle of each.
[[nodiscard]] std::vector<int> even_places(int stitches, int count, DecreaseWay way);

// From place to place, the first counted from 0: (step, how often in a row). "every 6th needle twice, every 5th 11
// times".
using Steps = std::vector<std::pair<int, int>>;
[[nodiscard]] Steps steps_between(const std::vector<int>& places);

} // namespace punchwright
