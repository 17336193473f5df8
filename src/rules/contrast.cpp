// How well two colours can be told apart by their lightness.
#include "design/light.hpp"
#include "rules/findings.hpp"

#include <algorithm>

namespace punchwright {

double contrast_ratio(Colour one, Colour another) {
  const auto [darker, lighter] = std::minmax({relative_luminance(one), relative_luminance(another)});
  return (lighter + 0.05) / (darker + 0.05);
}

} // namespace punchwright
