// The straight cone from the widths at the bottom to those at the top, in whole numbers.
// Apart from the counts, since who looks for widths that would fit asks for it at thousands of widths.
#pragma once

#include "pieces/open_yoke.hpp"
#include "pieces/stitch_counts.hpp"

#include <cstdint>
#include <vector>

namespace punchwright {

// Widths and gauges are taken to 0.001, so that all of it is whole numbers.
[[nodiscard]] std::int64_t in_thousandths(double value);

// Of one size: stitches of any piece, seam stitches included, by its widths in thousandths of a centimetre.
struct Cone {
  // What a thousandth adds at the height of each tier's first row, and at last at the top.
  std::vector<std::int64_t> of_bottom;
  std::vector<std::int64_t> of_top;
  std::int64_t seams = 0;
  std::int64_t denominator = 1; // of all of them

  // Numerator of the stitches there.
  [[nodiscard]] std::int64_t at(std::size_t tier, std::int64_t bottom, std::int64_t top) const {
    return of_bottom[tier] * bottom + of_top[tier] * top + seams;
  }
};
[[nodiscard]] Cone cone_of(const OpenedYoke& opened, std::size_t size);

// Around numerator / denominator: the counts within the tolerance, or all, that the bed holds and that leave a visible
// stitch.
[[nodiscard]] CountChoice counts_around(const OpenedYoke& opened, std::int64_t numerator, std::int64_t denominator,
                                        bool within_tolerance);

// What a piece would be cast on with there, were nothing else asked for.
[[nodiscard]] inline std::int64_t rounded_count(std::int64_t numerator, std::int64_t denominator) {
  return (2 * numerator + denominator) / (2 * denominator);
}

} // namespace punchwright
