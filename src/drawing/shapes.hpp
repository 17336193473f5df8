// Shapes drawn with the pointer, as the stitches that they cover: line, freehand stroke, rectangle, ellipse, flood
// fill. Worked out on the open plane and wrapped at the end, so that a shape may cross the joins of the repeat on all
// sides.
#pragma once

#include "design/edits.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace punchwright {

enum class Interior { outline, filled };

// Points of a drag are plane cells: columns and rows that were not taken modulo the repeat, negative ones too. All
// lists that are returned are sorted by column, then row, and name each stitch once.

// The straight line between two cells, both included, one stitch in every column (or in every row where it is
// steeper). Each stitch is the one nearest to the line through the centres; where two are equally near, the lower one
// (steep: the left one). Hence the same line in both directions of drawing.
[[nodiscard]] std::vector<Cell> line_cells(Cell from, Cell to);

// A freehand stroke: lines from each point to the next; a single point is a dot, none is nothing.
[[nodiscard]] std::vector<Cell> stroke_cells(std::span<const Cell> points);

// The rectangle with these two opposite corners, both included; its outline is one stitch wide.
[[nodiscard]] std::vector<Cell> rectangle_cells(Cell corner, Cell opposite, Interior interior);

// The ellipse that fills the rectangle with these two corners: the stitches whose centre is inside it or on it, and, so
// that a flat one reaches all four sides, those within half a stitch (across or up) of the ellipse through the centres
// of the outermost ones. In whole numbers, so that it is its own mirror image both ways. Its outline: those of them
// that have a neighbour outside, left, right, above or below.
[[nodiscard]] std::vector<Cell> ellipse_cells(Cell corner, Cell opposite, Interior interior);

// Plane cells as stitches of the repeat: columns and rows modulo its size. A drawing without rows has none.
[[nodiscard]] std::vector<Cell> on_repeat(std::span<const Cell> plane, const Grid& repeat);

// Whether so many cells are quicker put in order by a drawing that holds them than by sorting them.
[[nodiscard]] bool are_many(std::size_t cells, int width, int height);
// The contrast stitches, in the order above.
[[nodiscard]] std::vector<Cell> contrast_cells(const Grid& drawing);

// The stitches that hang together with `start` and have its yarn: neighbours left, right, above and below, round the
// edges of the repeat. `start` may be a plane cell.
[[nodiscard]] std::vector<Cell> flood_cells(const Grid& repeat, Cell start);

} // namespace punchwright
