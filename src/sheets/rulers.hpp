// Rulers of 150 mm and the square of 100 mm: the printed means of checking that a sheet came out true to size; and the
// crosses by which parts on several pages are joined.
#pragma once

#include "sheets/drawing.hpp"

#include <vector>

namespace punchwright {

constexpr double ruler_length = 150.0; // mm
constexpr double ruler_breadth = 7.5;  // mm taken up beside the ruler's line
constexpr double test_square = 100.0;  // mm

// From `start` to the right; ticks and numbers below the line.
void add_ruler_across(std::vector<Shape>& shapes, Point start);
// From `start` upwards; ticks and numbers to the left of the line.
void add_ruler_up(std::vector<Shape>& shapes, Point start);
// Registration cross: lies upon the other page's when two parts are glued together.
constexpr double cross_arm = 2.2; // mm
void add_cross(std::vector<Shape>& shapes, Point centre);
// `corner` is its top left.
void add_test_square(std::vector<Shape>& shapes, Point corner);

} // namespace punchwright
