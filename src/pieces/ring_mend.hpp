// Other stitch counts of a tier with which all its seams meet, where its own leave some that don't.
// Closing the ring may ask for more than the tolerance allows, and pieces that nearly fill the bed can hardly be moved:
// only certain columns can be the first ones of each.
#pragma once

#include "pieces/size_counts.hpp"

#include <optional>
#include <string>
#include <vector>

namespace punchwright {

struct CountsThatMeet {
  std::vector<int> stitches; // of each piece; empty: none were found
  bool gave_up = false;      // there may be some
};

// Those nearest to the counts that the tier has, by the squares of the changes; equal pieces stay equal, each count is
// within the tolerance, and the rows of decreases below and above keep to the rule of halves with the other tiers as
// they are. Every choice of counts with which the ring closes is looked at, the nearest first, until all seams meet.
[[nodiscard]] CountsThatMeet counts_that_meet(const OpenedYoke& opened, std::size_t size, std::size_t tier,
                                              const CountsOfSize& counts);

// In words, after what ring_on_bed() says of the seams; empty: not known.
[[nodiscard]] std::string mend_by_counts(const OpenedYoke& opened, std::size_t size, std::size_t tier,
                                         const CountsOfSize& counts);

} // namespace punchwright
