// A yarn passing behind stitches, as it lies on the purl side: below the middle of the cells, so that these stay what
// can be measured.
#pragma once

#include "design/document.hpp"
#include "sheets/fabric_picture.hpp"

#include <vector>

namespace punchwright {

// Columns of the picture, from its left. The strand runs from the middle of the cell before `first` to the middle of
// that behind `last`; where there is none, to the picture's edge.
struct Strand {
  int first = 0; // leftmost and rightmost column passed
  int last = 0;
  Colour colour;
  std::vector<int> caught; // columns where it was lifted onto the needle: it rises to the stitch and down again
};

// Onto the pixels of one row of the picture, `height` lines of them.
void draw_strand(std::vector<unsigned char>& rgb, const FabricSize& size, int height, const Strand& strand);

} // namespace punchwright
