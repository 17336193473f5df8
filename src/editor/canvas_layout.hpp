// Where a stitch of the drawing lies on the screen, and which stitch lies under a point: pure functions, tested.
// The one place where screen points and cells are converted, inserted rows' strips included.
#pragma once

#include "design/edits.hpp"

#include <span>

namespace punchwright::editor {

struct ScreenPoint { // px from the window's top left corner; y grows downwards
  float x = 0;
  float y = 0;
  bool operator==(const ScreenPoint&) const = default;
};

struct ScreenBox { // px
  float left = 0;
  float top = 0;
  float right = 0;
  float bottom = 0;
  [[nodiscard]] float width() const { return right - left; }
  [[nodiscard]] float height() const { return bottom - top; }
  [[nodiscard]] ScreenPoint middle() const { return {(left + right) / 2, (top + bottom) / 2}; }
  [[nodiscard]] bool contains(ScreenPoint point) const {
    return point.x >= left && point.x < right && point.y >= top && point.y < bottom;
  }
  [[nodiscard]] bool meets(const ScreenBox& other) const {
    return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
  }
  bool operator==(const ScreenBox&) const = default;
};

// The repeat is tiled over the whole plane; cells outside it are its neighbours and keep counting on:
//
//        column -1 | 0   1  …  width-1 | width
//     row height   |                   |
//     ----------------------------------------
//     row height-1 |                   |
//     …            |   the repeat      |
//     ~~~~~~~~~~~~~~~~~~~ strip of inserted rows, below row r when strips_up_to[r] > strips_up_to[r-1]
//     row 0        |                   |
//     -------------+ origin ------------------
//     row -1       |
struct CanvasLayout {
  int columns = 1;
  int rows = 1;
  float cell_width = 16;
  float cell_height = 13;
  float strip_height = 0;
  ScreenPoint origin;                // lowest left corner of the repeat; a strip below row 0 lies above it
  std::span<const int> strips_up_to; // for each row, the strips between the origin and that row; empty: none
};

// Height of the repeat with its strips, px.
[[nodiscard]] float tile_height(const CanvasLayout& layout);

// Unwrapped: cells of neighbours lie outside 0 … columns-1, 0 … rows-1. A strip belongs to the row above it.
[[nodiscard]] Cell cell_at(const CanvasLayout& layout, ScreenPoint point);
[[nodiscard]] ScreenBox box_of(const CanvasLayout& layout, Cell cell);

// The strip of inserted rows below a row; of no height where there is none.
[[nodiscard]] ScreenBox strip_below(const CanvasLayout& layout, Cell cell);
[[nodiscard]] bool has_strip_below(const CanvasLayout& layout, int row);

// The same stitch inside the repeat.
[[nodiscard]] Cell wrapped(Cell cell, int columns, int rows);

// How large a cell is at a zoom in px per mm. From 6 px on whole pixels, so that all cells look alike.
struct CellSize {
  float width = 1;
  float height = 1;
};
[[nodiscard]] CellSize cell_size(double stitch_mm, double row_mm, float zoom);

// The zoom at which that many columns and rows fill the box.
[[nodiscard]] float zoom_to_fit(double stitch_mm, double row_mm, float columns, float rows, const ScreenBox& box);

} // namespace punchwright::editor
