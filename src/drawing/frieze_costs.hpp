// How many stitches each place of the axes would change, all places at once.
// For frieze*.cpp of this room only.
#pragma once

#include "drawing/frieze.hpp"

#include <vector>

namespace punchwright {

// For p2, p2mg and p2mm, with the strip's whole width as the repeat: stitches to change for the level axis `level` and
// the upright axis `upright` stand at level * width + upright. For p2mg the width is even.
[[nodiscard]] std::vector<int> costs_of_axes(const Grid& strip, FriezeGroup group);

} // namespace punchwright
