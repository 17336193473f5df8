// Why no stitch counts fit, and what would; or that the search for them was given up.
// The search itself only says that it found none: the words, and further searches for what would fit, stand here.
#pragma once

#include "pieces/open_yoke.hpp"

namespace punchwright {

// For a size without an answer. Says which rule costs most, the smallest tolerance that would do, and the nearest
// widths with which the size fits as it is (nearest_widths.hpp).
[[nodiscard]] Error no_fit(const OpenedYoke& opened, std::size_t size);

// For a size whose search was given up: whether anything fits is not known.
[[nodiscard]] Error gave_up(const OpenedYoke& opened, std::size_t size);

} // namespace punchwright
