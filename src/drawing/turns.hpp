// A drawing turned, mirrored, inverted, shifted and repeated: pure functions from stitches to stitches.
// Used for the marked area, for layouts and for motifs alike.
#pragma once

#include "design/grid.hpp"

namespace punchwright {

[[nodiscard]] Grid mirrored_left_right(const Grid& drawing);
[[nodiscard]] Grid mirrored_upside_down(const Grid& drawing);

// By quarter turns to the left (against the clock) as seen on the knit side, any number, also below 0; an odd number
// exchanges width and height. Counted in stitches: a stitch isn't square, so a turned motif is stretched in the cloth.
[[nodiscard]] Grid turned(const Grid& drawing, int quarters);

[[nodiscard]] Grid inverted(const Grid& drawing);

// Stitches that leave at one edge come in at the other; to the right and upwards, any number.
[[nodiscard]] Grid shifted(const Grid& drawing, int columns, int rows);

// `width` by `height` stitches of the drawing repeated from its lowest left stitch. The drawing has a stitch at least.
[[nodiscard]] Grid repeated(const Grid& drawing, int width, int height);

} // namespace punchwright
