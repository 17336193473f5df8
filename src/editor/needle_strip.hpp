// Where the needles of a row stand on the screen at the bench: in groups of five and ten, counted outwards from the
// middle of the bed as needles are, and in several lines where one would be too fine to count.
#pragma once

#include "design/units.hpp"

#include <vector>

namespace punchwright::editor {

struct StripWishes {
  Needle first; // of the piece
  int needles = 1;
  float width = 0;       // px of room
  float least_pitch = 0; // px: finer than this can't be counted; another line is begun then
  float most_pitch = 0;
  int most_lines = 1; // however fine
};

struct StripGroup { // up to ten needles; tens are counted outwards from the middle
  Needle first;
  Needle last;
  float left = 0; // px from the room's left edge
  float right = 0;
  [[nodiscard]] int count() const { return last.position - first.position + 1; }
};

struct StripLine {
  std::vector<StripGroup> groups; // left to right
};

struct NeedleStrip {
  std::vector<StripLine> lines; // left end of the bed first
  float pitch = 0;              // px from needle to needle
  // px: the middle of a needle of that group; behind its fifth needle there is a gap.
  [[nodiscard]] float x_of(const StripGroup& group, Needle needle) const;
};

[[nodiscard]] NeedleStrip needle_strip(const StripWishes& wishes);

// "L12" has 12: needles are counted outwards from the middle.
[[nodiscard]] int number_of(Needle needle);
// How many tens the needle is away from the middle: L1 to L10 and R1 to R10 have 0.
[[nodiscard]] int tens_of(Needle needle);
// Of its ten, outwards: 1 to 10.
[[nodiscard]] int place_in_ten(Needle needle);

} // namespace punchwright::editor
