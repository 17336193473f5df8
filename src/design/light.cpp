// The curve of sRGB, and the weights of its three parts.
#include "design/light.hpp"

#include <array>
#include <cmath>

namespace punchwright {

// WCAG 2.1, definition of relative luminance (with the threshold 0.04045 of IEC 61966-2-1 that its errata give).
double linear_light(std::uint8_t part) {
  static const std::array<double, 256> table = [] {
    std::array<double, 256> light{};
    for (std::size_t value = 0; value < light.size(); ++value) {
      const double share = static_cast<double>(value) / 255.0;
      light[value] = share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
    }
    return light;
  }();
  return table[part];
}

double relative_luminance(Colour colour) {
  return 0.2126 * linear_light(colour.red) + 0.7152 * linear_light(colour.green) + 0.0722 * linear_light(colour.blue);
}

} // namespace punchwright
