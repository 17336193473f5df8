// How much light a colour gives: which of two is the darker, and how well two can be told apart.
#pragma once

#include "design/document.hpp"

#include <cstdint>

namespace punchwright {

// Light, 0 to 1, of one part (red, green or blue) of an sRGB colour. IEC 61966-2-1.
[[nodiscard]] double linear_light(std::uint8_t part);

// 0, black, to 1, white. WCAG 2.x, "relative luminance".
[[nodiscard]] double relative_luminance(Colour colour);

} // namespace punchwright
