// From centimetres and rows to stitches.
#include "pieces/cone.hpp"

#include "pieces/yoke_rows.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright {

std::int64_t in_thousandths(double value) {
  return std::llround(value * 1000);
}

Cone cone_of(const OpenedYoke& opened, std::size_t size) {
  // Stitches are cm × gauge / 10, both in thousandths.
  constexpr std::int64_t stitch = 10'000'000;
  const std::vector<int> heights = tier_heights(opened, size);
  const std::int64_t rows = heights.back();
  Cone cone;
  cone.denominator = stitch * rows;
  cone.seams = std::int64_t{2} * opened.yoke.edge * cone.denominator;
  for (std::size_t tier = 0; tier < heights.size(); ++tier) {
    const std::size_t knitted = std::min(tier, opened.tiers.size() - 1);
    const std::int64_t gauge = in_thousandths(opened.tiers[knitted].document.gauge.stitches);
    cone.of_bottom.push_back((rows - heights[tier]) * gauge);
    cone.of_top.push_back(heights[tier] * gauge);
  }
  return cone;
}

CountChoice counts_around(const OpenedYoke& opened, std::int64_t numerator, std::int64_t denominator,
                          bool within_tolerance) {
  CountChoice choice;
  choice.ideal = {numerator / denominator, numerator % denominator};
  choice.least = 2 * opened.yoke.edge + 1;
  choice.most = opened.profile.needles;
  if (within_tolerance) {
    constexpr double rounding = 1e-9; // a count right at the limit is within it, whatever the product rounds to
    const double ideal = static_cast<double>(numerator) / static_cast<double>(denominator);
    const double tolerance = opened.yoke.fit.tolerance;
    choice.least = std::max(choice.least, static_cast<int>(std::ceil(ideal * (1 - tolerance) - rounding)));
    choice.most = std::min(choice.most, static_cast<int>(std::floor(ideal * (1 + tolerance) + rounding)));
  }
  return choice;
}

} // namespace punchwright
