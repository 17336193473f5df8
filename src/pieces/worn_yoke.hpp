// The yoke as it is worn, seen from above: rings that narrow to the neck, the front below.
//
//              back
//          . --------- .
//      .       neck        .        left to right along the front, on the knit side,
//     |       (    )        |       goes against the clock
//      .                   .
//          ' --------- '
//              front
#pragma once

#include "pieces/yoke_cloth.hpp"

#include <array>
#include <optional>
#include <vector>

namespace punchwright {

// The ring at one height.
struct WornRing {
  double radius = 0;         // mm
  std::vector<double> turns; // where each piece begins and, at last, where the ring closes; 0: the front's middle
};

// At the first row of each tier, and at last at the top.
[[nodiscard]] std::vector<WornRing> worn_rings(const OpenedYoke& opened, const SizePlan& plan);

// A point of the cloth as it is worn.
struct WornPlace {
  std::size_t tier = 0;
  std::size_t piece = 0;
  double up = 0;    // from the tier's first row, 0, to the next tier's, 1
  double along = 0; // the piece, from its left end, 0, to its right one, 1
};
// At x and y, mm from the middle, y upwards; nothing: no cloth there. What is worn higher lies above. Between the rings
// a piece's ends run straight from one to the other.
[[nodiscard]] std::optional<WornPlace> place_on_rings(const std::vector<WornRing>& rings, double x, double y);

// The rings that are wished in that size, whatever stitches make of them: at the bottom, and at the top.
[[nodiscard]] std::array<WornRing, 2> wished_rings(const Yoke& yoke, std::size_t size);

// A square of so many cells either way, row by row from the top; white where there is no cloth. A cell has the mean
// colour of what lies in it.
[[nodiscard]] std::vector<Colour> worn_picture(const OpenedYoke& opened, const SizePlan& plan, std::size_t size,
                                               int cells);

// The same of a yoke whose tiers can't be seen, as where a desktop lets a program read one file alone: the rings of the
// first size as wide as its pieces are wished, in greys, one for each tier.
[[nodiscard]] std::vector<Colour> worn_outline(const Yoke& yoke, int cells);

} // namespace punchwright
