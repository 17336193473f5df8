// One stitch as pixels, as it looks on either side of the cloth.
// Its middle and most of its area are exactly the yarn's colour, so that a picture can be measured as well as looked
// at.
#pragma once

#include "design/document.hpp"
#include "design/units.hpp"

#include <vector>

namespace punchwright {

// How much of a stitch is shown. One detail for a whole picture: its cells differ by a pixel, and would differ in
// looks.
enum class StitchDetail { flat, outlined, crowned };
// For cells whose shortest side has so many pixels; in smaller ones the lines would cover the yarn.
[[nodiscard]] StitchDetail detail_for(int shortest_side);

// For lines that show on the yarn's own colour: darker and lighter, or for a dark yarn lighter and darker.
struct YarnTones {
  Colour shade;
  Colour shine;
};
[[nodiscard]] YarnTones yarn_tones(Colour yarn);

// width × height × 3 bytes.
[[nodiscard]] std::vector<unsigned char> stitch_tile(int width, int height, Colour yarn, Face side,
                                                     StitchDetail detail);

} // namespace punchwright
