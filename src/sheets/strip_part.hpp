// A part of a decrease strip at the bed's true pitch: the needles to transfer, where each loop goes, and the needles in
// work before and after. What a strip shows is worked out once, and each of its parts is drawn from that.
#pragma once

#include "sheets/yoke_parts.hpp"

#include <vector>

namespace punchwright {

constexpr double strip_part_height = 34.0; // mm
constexpr double strip_flap = 8.0;         // goes under the next part
constexpr double strip_cross_away = 2.8;   // from the part's edge to a cross

// One mark: the needle, and the neighbour that takes its loop, or from which a loop is lifted.
struct StripMark {
  Needle needle;
  Needle neighbour;
};

struct StripFacts {
  const TierOfPiece& tier;
  double pitch = 9;
  int edge = 1;
  bool hung_on_again = true;
  std::vector<StripMark> marks;
  int first = 0; // positions of the needles shown
  int end = 0;   // behind the last one
};

// Drawn between these; the upper left corner's place on the page.
struct StripPart {
  int number = 1;
  int parts = 1;
  int first = 0;
  int end = 0;
  Point corner;
};

[[nodiscard]] std::vector<StripMark> marks_of(const TierOfPiece& tier);
[[nodiscard]] StripFacts facts_of(const YokeJob& job, const YokeStrip& strip);

// Parts of about equal length, cut half-way between two needles, and never between a needle and the one that takes its
// loop.
[[nodiscard]] std::vector<StripPart> parts_of_strip(const StripFacts& facts, double width);

void draw_strip_part(const StripFacts& facts, const StripPart& part, std::vector<Shape>& shapes);

} // namespace punchwright
