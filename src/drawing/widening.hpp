// A repeat made wider, so that a word or a motif has room in it: to which width, and by which edits.
#pragma once

#include "design/edits.hpp"

#include <optional>
#include <vector>

namespace punchwright {

struct Widening {
  int width = 1;
  int times = 1;         // the drawing side by side; 1: once, and new stitches of main at its right
  bool fits_card = true; // the card repeats over it, or none is read
  bool operator==(const Widening&) const = default;
};

// From `width` to `least` or more, the least of them that: the card repeats over and is a multiple of the width, so
// that the drawing stays whole; else that the card repeats over; else that is a multiple; else `least` itself.
// `card_width`: the stitches that the machine's card repeats over, absent where it reads none. None: `least` fits
// already, or is wider than any repeat.
[[nodiscard]] std::optional<Widening> widening_for(int width, int least, std::optional<int> card_width);

// One step together. Copies of the drawing have its marks too.
[[nodiscard]] std::vector<Edit> widening_edits(const Grid& drawing, const Widening& widening);

} // namespace punchwright
