// A design as a small picture: a colour for each stitch, or for several where there is no room for all. For the lists
// of the editor, and for the desktop's.
#pragma once

#include "design/document.hpp"

#include <vector>

namespace punchwright {

struct SmallPicture {
  int columns = 0;
  int rows = 0;
  float shape = 1;           // height of a cell by its width
  std::vector<Colour> cells; // row by row, the lowest first
  [[nodiscard]] Colour at(int column, int row) const {
    return cells[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) + static_cast<std::size_t>(column)];
  }
};

// The repeat, side by side as often as makes the picture about that much wider than high, at most `most` cells either
// way; a cell of several stitches has their mean colour.
[[nodiscard]] SmallPicture small_picture(const Document& design, double width_by_height, int most = 120);

} // namespace punchwright
