// Why no stitch counts fit, and what would.
#pragma once

#include "pieces/open_yoke.hpp"

namespace punchwright {

// For a size without an answer. Says which rule costs most, the smallest tolerance that would do, and the nearest
// widths with which the size fits as it is, found by trying.
[[nodiscard]] Error no_fit(const OpenedYoke& opened, std::size_t size);

} // namespace punchwright
