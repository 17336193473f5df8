// The gauge that a new design begins with on a bed, until a swatch is measured: by the distance of the needles, since
// stitches on a fine bed are less than half as wide as on a bulky one.
#pragma once

#include "design/document.hpp"
#include "machine/profile.hpp"

namespace punchwright {

// Stitches and rows over 10 cm; every swatch differs: common practice.
[[nodiscard]] Gauge usual_gauge(const Profile& profile);

} // namespace punchwright
