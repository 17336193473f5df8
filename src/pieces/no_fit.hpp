// Why no stitch counts fit, and what would; or that the search for them was given up.
// The search itself only says that it found none: the words, and further searches for what would fit, stand here.
#pragma once

#include "pieces/nearest_widths.hpp"
#include "pieces/open_yoke.hpp"
#include "pieces/stitch_counts.hpp"

#include <stop_token>
#include <string>

namespace punchwright {

// For a size without an answer.
struct WouldFit {
  double tolerance = 0;          // the smallest that would do; 0: none up to the form's largest does
  bool less_not_known = false;   // searches gave up: a smaller one, too, may do, or where it is 0, one at all
  WidthsFound widths;            // with which it would fit as it is
  std::string costs_most;        // in words, the rule that does
  bool costly_tolerance = false; // it is the tolerance
};
// Stopped, it is worth nothing. `most_parts`: of each search for stitch counts.
[[nodiscard]] WouldFit what_would_fit(const OpenedYoke& opened, std::size_t size, const std::stop_token& stop = {},
                                      int most_parts = most_count_parts);

// The same as an error. Says which rule costs most, the smallest tolerance that would do, and the nearest
// widths with which the size fits as it is (nearest_widths.hpp).
[[nodiscard]] Error no_fit(const OpenedYoke& opened, std::size_t size, int most_parts = most_count_parts);

// For a size whose search was given up: whether anything fits is not known.
[[nodiscard]] Error gave_up(const OpenedYoke& opened, std::size_t size);

} // namespace punchwright
