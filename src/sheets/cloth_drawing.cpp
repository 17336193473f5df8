// Runs of one colour are one area and one zigzag of stitches each.
#include "sheets/cloth_drawing.hpp"

#include "plan/plan.hpp"
#include "sheets/fabric_tile.hpp"
#include "sheets/shapes.hpp"

#include <algorithm>

namespace punchwright {
namespace {

constexpr double least_stitch = 1.2; // mm: smaller ones can't be told apart in print
constexpr double largest_stitch = 5.0;
constexpr double least_for_lines = 0.9; // mm; below, the stitches' lines would cover the colour

// Two legs that lean out from the stitch below, for `columns` stitches:
//
//     \  /\  /\  /
//      \/  \/  \/
void stitches(std::vector<Shape>& shapes, Point corner, double width, double height, int columns, Colour yarn) {
  RectangleShape area;
  area.corner = corner;
  area.width = width * columns;
  area.height = height;
  area.paint = fill_paint(yarn);
  shapes.emplace_back(area);
  if (std::min(width, height) < least_for_lines) {
    return;
  }
  PolylineShape line;
  line.paint = line_paint(yarn_tones(yarn).shade, std::min(width, height) * 0.09);
  for (int column = 0; column < columns; ++column) {
    const double left = corner.x + width * column;
    line.points.push_back({left, corner.y + height * 0.28});
    line.points.push_back({left + width / 2, corner.y + height * 0.94});
  }
  line.points.push_back({corner.x + width * columns, corner.y + height * 0.28});
  shapes.emplace_back(std::move(line));
}

} // namespace

ClothDrawn draw_cloth(std::vector<Shape>& shapes, Point corner, double width, double height, const Document& document,
                      const Profile& profile, const RowsToKnit& rows) {
  const int all_columns = stitches_of(document);
  const int all_rows = static_cast<int>(rows.rows.size());
  const double high_by_wide = document.gauge.row_mm() / document.gauge.stitch_mm();
  const double stitch =
      std::clamp(std::min(width / all_columns, height / (all_rows * high_by_wide)), least_stitch, largest_stitch);
  const double row_height = stitch * high_by_wide;
  ClothDrawn drawn;
  drawn.columns = std::clamp(static_cast<int>(width / stitch + 1e-9), 1, all_columns);
  drawn.rows = std::clamp(static_cast<int>(height / row_height + 1e-9), 1, all_rows);
  drawn.width = drawn.columns * stitch;
  drawn.height = drawn.rows * row_height;
  for (int row = 0; row < drawn.rows; ++row) {
    const RowToKnit& knitted = rows.rows[static_cast<std::size_t>(row)];
    std::vector<bool> contrast = stitches_in_row(document, profile, knitted);
    std::reverse(contrast.begin(), contrast.end()); // the bed shows the purl side
    const double y = corner.y + drawn.height - (row + 1) * row_height;
    for (int first = 0; first < drawn.columns;) {
      int last = first;
      while (last + 1 < drawn.columns &&
             contrast[static_cast<std::size_t>(last + 1)] == contrast[static_cast<std::size_t>(first)]) {
        ++last;
      }
      const char yarn = contrast[static_cast<std::size_t>(first)] ? knitted.contrast : knitted.main;
      stitches(shapes, {corner.x + first * stitch, y}, stitch, row_height, last - first + 1,
               yarn_of(document, yarn).colour);
      first = last + 1;
    }
  }
  RectangleShape edge;
  edge.corner = corner;
  edge.width = drawn.width;
  edge.height = drawn.height;
  edge.paint = line_paint(ink::middle, 0.15);
  shapes.emplace_back(edge);
  return drawn;
}

void draw_sample(std::vector<Shape>& shapes, Point corner, double stitch_mm, double row_mm, int columns, int rows,
                 Colour yarn) {
  for (int row = 0; row < rows; ++row) {
    stitches(shapes, {corner.x, corner.y + row * row_mm}, stitch_mm, row_mm, columns, yarn);
  }
  RectangleShape edge;
  edge.corner = corner;
  edge.width = stitch_mm * columns;
  edge.height = row_mm * rows;
  edge.paint = line_paint(ink::middle, 0.15);
  shapes.emplace_back(edge);
}

} // namespace punchwright
