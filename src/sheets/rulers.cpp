// Drawn with hair lines, so that a ruler laid beside them can be read to a fifth of a millimetre.
#include "sheets/rulers.hpp"

#include "sheets/shapes.hpp"

#include <array>
#include <fmt/format.h>

namespace punchwright {
namespace {

constexpr double hair = 0.12;

// The longer ticks lie upon the shorter ones, so that each kind runs along the whole ruler at equal distances.
struct Ticks {
  int every; // mm
  double length;
};
constexpr std::array<Ticks, 3> all_ticks = {{{1, 1.6}, {5, 2.6}, {10, 3.6}}};

} // namespace

void add_ruler_across(std::vector<Shape>& shapes, Point start) {
  const int length = static_cast<int>(ruler_length);
  shapes.push_back(line_shape(start, {start.x + ruler_length, start.y}, line_paint(ink::black, hair)));
  for (const Ticks& ticks : all_ticks) {
    for (int millimetre = 0; millimetre <= length; millimetre += ticks.every) {
      const double x = start.x + millimetre;
      shapes.push_back(line_shape({x, start.y}, {x, start.y + ticks.length}, line_paint(ink::black, hair)));
    }
  }
  for (int centimetre = 0; centimetre * 10 <= length; ++centimetre) {
    const bool last = centimetre * 10 == length;
    const double x = start.x + centimetre * 10;
    shapes.push_back(text_shape({last ? x + 3 : x, start.y + 6.2}, last ? "15 cm" : fmt::format("{}", centimetre), 2.4,
                                Anchor::middle));
  }
}

void add_ruler_up(std::vector<Shape>& shapes, Point start) {
  const int length = static_cast<int>(ruler_length);
  shapes.push_back(line_shape(start, {start.x, start.y - ruler_length}, line_paint(ink::black, hair)));
  for (const Ticks& ticks : all_ticks) {
    for (int millimetre = 0; millimetre <= length; millimetre += ticks.every) {
      const double y = start.y - millimetre;
      shapes.push_back(line_shape({start.x, y}, {start.x - ticks.length, y}, line_paint(ink::black, hair)));
    }
  }
  for (int centimetre = 0; centimetre * 10 <= length; ++centimetre) {
    const double y = start.y - centimetre * 10;
    shapes.push_back(text_shape({start.x - 4.2, y + 0.9}, fmt::format("{}", centimetre), 2.4, Anchor::end));
  }
}

void add_cross(std::vector<Shape>& shapes, Point centre) {
  const Paint paint = line_paint(ink::black, 0.15);
  shapes.push_back(line_shape({centre.x - cross_arm, centre.y}, {centre.x + cross_arm, centre.y}, paint));
  shapes.push_back(line_shape({centre.x, centre.y - cross_arm}, {centre.x, centre.y + cross_arm}, paint));
}

void add_test_square(std::vector<Shape>& shapes, Point corner) {
  RectangleShape square;
  square.corner = corner;
  square.width = test_square;
  square.height = test_square;
  square.paint = line_paint(ink::black, 0.2);
  square.label.class_name = "test-square";
  shapes.push_back(square);
}

} // namespace punchwright
