// Where a tip stands so that it doesn't cover what it speaks about.
// Pure, so that it is tested without a window.
#pragma once

#include "editor/canvas_layout.hpp"

#include <vector>

namespace punchwright::editor {

struct ClearPlace {
  ScreenPoint corner;    // the upper left one
  std::size_t clear = 0; // how many of the boxes, from the first, it leaves uncovered
};

// For something of that size within the bounds: clear of all boxes, or else of as many of the first ones as can be; of
// such places the nearest to the pointer, and not under it.
[[nodiscard]] ClearPlace clear_place(ScreenPoint size, ScreenPoint pointer, const std::vector<ScreenBox>& boxes,
                                     const ScreenBox& bounds);

} // namespace punchwright::editor
