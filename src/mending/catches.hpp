// Floats that are caught by hand: which of them, and onto which needles, staggered by the criteria of the mend.
#pragma once

#include "design/document.hpp"
#include "machine/profile.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace punchwright {

// A float of the repeat as it tiles: behind so many stitches from `first` on, round the edge where it must.
struct DrawnFloat {
  int row = 0;
  int first = 0;
  int stitches = 0;

  [[nodiscard]] bool passes(int column, int width) const { return (column - first + width) % width < stitches; }
  bool operator==(const DrawnFloat&) const = default;
};

// The floats that are too long and neither accepted nor caught so that every part of them is short enough; by row, then
// by column.
[[nodiscard]] std::vector<DrawnFloat> floats_too_long(const Document& design, const Profile& profile);

struct Caught {
  StitchMarks marks;      // of the design, with the catches
  int catches = 0;        // new ones
  std::int64_t pairs = 0; // catches in neighbouring rows on the same or the next needle, those that were there too
  // Of the lengths of the parts of the floats, squared and added up: least where each is caught in its middle.
  std::int64_t squares = 0;
  // No other choice of as few catches has fewer pairs, nor as many and smaller squares. False: one may have.
  bool proved = true;
};

// Catches each of the floats anew: with as few catches as can be, then with as few pairs, then as near the middle as
// can be. All other catches stay where they are. The limit and whether the drawing is stacked as for the mend.
[[nodiscard]] Caught catch_floats(const Document& design, const Profile& profile,
                                  const std::vector<DrawnFloat>& floats);

// Accepted as they are, and not caught.
[[nodiscard]] StitchMarks accept_floats(const Document& design, const std::vector<DrawnFloat>& floats);

// "columns 9 and 14": the stitches of a row that are marked; empty where none is.
[[nodiscard]] std::string words_for_catches(const Grid& caught, int row);

} // namespace punchwright
