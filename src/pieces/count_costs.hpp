// What stitch counts cost in the searches for the nearest ones: in whole numbers, so that ties are ties.
// k stitches above the ideal's whole part cost D k² - 2 k r, which is D times the squared difference less a part that
// no choice changes.
#pragma once

#include "pieces/stitch_counts.hpp"

#include <compare>
#include <cstdint>

namespace punchwright {

struct CountCost {
  std::int64_t squares = 0; // as said above, times the pieces of the group
  std::int64_t stitches = 0;
  auto operator<=>(const CountCost&) const = default;
  CountCost operator+(const CountCost& other) const { return {squares + other.squares, stitches + other.stitches}; }
  CountCost operator-(const CountCost& other) const { return {squares - other.squares, stitches - other.stitches}; }
};

[[nodiscard]] inline CountCost cost_of(const CountsProblem& problem, const CountChoice& choice, std::size_t group,
                                       int stitches) {
  const std::int64_t above = stitches - choice.ideal.whole;
  const std::int64_t pieces = problem.pieces[group];
  return {pieces * (problem.denominator * above * above - 2 * above * choice.ideal.rest), pieces * stitches};
}

} // namespace punchwright
