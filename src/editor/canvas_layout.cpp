// The arithmetic of the canvas: no window, no drawing, so that it can be tested alone.
#include "editor/canvas_layout.hpp"

#include "design/wrap.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace punchwright::editor {

namespace {

int floor_divide(int number, int by) {
  const int quotient = number / by;
  return number % by < 0 ? quotient - 1 : quotient;
}

int strips_at(const CanvasLayout& layout, int row) {
  return layout.strips_up_to.empty() ? 0 : layout.strips_up_to[static_cast<std::size_t>(row)];
}

// px above the origin of the lower edge of a row inside the repeat.
float height_of_row(const CanvasLayout& layout, int row) {
  return static_cast<float>(row) * layout.cell_height +
         static_cast<float>(strips_at(layout, row)) * layout.strip_height;
}

// The highest row whose strip and stitches begin at or below `height` px above the origin.
int row_at_height(const CanvasLayout& layout, float height) {
  int low = 0;
  int high = layout.rows - 1;
  while (low < high) {
    const int middle = (low + high + 1) / 2;
    const float strip = has_strip_below(layout, middle) ? layout.strip_height : 0;
    if (height_of_row(layout, middle) - strip <= height) {
      low = middle;
    } else {
      high = middle - 1;
    }
  }
  return low;
}

} // namespace

float tile_height(const CanvasLayout& layout) {
  return height_of_row(layout, layout.rows - 1) + layout.cell_height;
}

bool has_strip_below(const CanvasLayout& layout, int row) {
  const int inside = wrapped(Cell{0, row}, layout.columns, layout.rows).row;
  return strips_at(layout, inside) > (inside == 0 ? 0 : strips_at(layout, inside - 1));
}

Cell cell_at(const CanvasLayout& layout, ScreenPoint point) {
  const float tall = tile_height(layout);
  const float height = layout.origin.y - point.y;
  // A point on the edge between two rows belongs to the lower one on screen, as a pixel's upper edge does.
  const float below = std::nextafter(height, -1.0F);
  const int tile = static_cast<int>(std::floor(below / tall));
  const int row = row_at_height(layout, below - static_cast<float>(tile) * tall);
  const int column = static_cast<int>(std::floor((point.x - layout.origin.x) / layout.cell_width));
  return Cell{column, row + tile * layout.rows};
}

ScreenBox box_of(const CanvasLayout& layout, Cell cell) {
  const int tile = floor_divide(cell.row, layout.rows);
  const float lower = layout.origin.y - static_cast<float>(tile) * tile_height(layout) -
                      height_of_row(layout, cell.row - tile * layout.rows);
  const float left = layout.origin.x + static_cast<float>(cell.column) * layout.cell_width;
  return ScreenBox{left, lower - layout.cell_height, left + layout.cell_width, lower};
}

ScreenBox strip_below(const CanvasLayout& layout, Cell cell) {
  const ScreenBox box = box_of(layout, cell);
  const float strip = has_strip_below(layout, cell.row) ? layout.strip_height : 0;
  return ScreenBox{box.left, box.bottom, box.right, box.bottom + strip};
}

Cell wrapped(Cell cell, int columns, int rows) {
  return Cell{round_edge(cell.column, columns), round_edge(cell.row, rows)};
}

CellSize cell_size(double stitch_mm, double row_mm, float zoom) {
  const auto size = [zoom](double mm) {
    const float px = static_cast<float>(mm) * zoom;
    return px >= 6 ? std::round(px) : std::max(px, 0.25F);
  };
  return CellSize{size(stitch_mm), size(row_mm)};
}

float zoom_to_fit(double stitch_mm, double row_mm, float columns, float rows, const ScreenBox& box) {
  const float across = box.width() / (columns * static_cast<float>(stitch_mm));
  const float upwards = box.height() / (rows * static_cast<float>(row_mm));
  return std::max(0.01F, std::min(across, upwards));
}

} // namespace punchwright::editor
