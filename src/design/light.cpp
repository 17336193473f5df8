// The curve of sRGB, and the weights of its three parts.
#include "design/light.hpp"

#include <cmath>

namespace punchwright {

// WCAG 2.1, definition of relative luminance (with the threshold 0.04045 of IEC 61966-2-1 that its errata give).
double linear_light(std::uint8_t part) {
  const double share = part / 255.0;
  return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
}

double relative_luminance(Colour colour) {
  return 0.2126 * linear_light(colour.red) + 0.7152 * linear_light(colour.green) + 0.0722 * linear_light(colour.blue);
}

} // namespace punchwright
