// All stitches of a yoke in one size by their colours, knit side up: what its pictures are made of.
// In a row the pieces of a tier follow each other as they do round the ring; nothing is drawn to scale here.
#pragma once

#include "pieces/yoke_plan.hpp"

#include <vector>

namespace punchwright {

struct YokeCloth {
  int width = 0;                      // stitches of the widest tier, seam stitches included
  int height = 0;                     // rows
  std::vector<std::vector<int>> left; // [tier][piece]: the place of its first stitch in a row; see stitches_in_row()
  std::vector<Colour> stitches;       // row by row, the highest first

  // Row 0 is the lowest.
  [[nodiscard]] Colour at(int place, int row) const {
    return stitches[static_cast<std::size_t>(height - 1 - row) * static_cast<std::size_t>(width) +
                    static_cast<std::size_t>(place)];
  }
};

[[nodiscard]] YokeCloth yoke_cloth(const OpenedYoke& opened, const SizePlan& plan, std::size_t size);

} // namespace punchwright
