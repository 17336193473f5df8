// Where on a picture, and how wide, a repeat tiles best.
#pragma once

#include "tracing/trace.hpp"

#include <vector>

namespace punchwright {

struct Place {
  Lattice lattice;
  // Mean over the stitches of the squared difference between the picture and the knitted repeat beside itself: its own
  // stitches and a quarter of its width on either side, where the repeat goes on and the picture too. 0 to 1.
  double error = 0;
};

// Widths from the whole picture to a quarter of it, in steps of a twelfth of the width before; across in steps of half
// a stitch; the middle stays at the height of `from`. The best first, `most` of them at most, each at least a stitch
// away from those before it.
[[nodiscard]] std::vector<Place> best_places(const Photo& photo, const Lattice& from, const Gauge& gauge,
                                             const std::optional<IgnoredColour>& ignored, const TraceWishes& wishes,
                                             std::size_t most);

} // namespace punchwright
