// Pieces near the wished one that show whole repeats between their edges: what to set where the repeat is cut.
#pragma once

#include "design/document.hpp"
#include "machine/profile.hpp"

#include <optional>
#include <vector>

namespace punchwright {

struct WholeRepeats {
  int repeats = 1;
  int stitches = 0; // edges included
  Needle first_needle;
  std::optional<int> first_column; // from 1; without a card only, where the drawing has to be moved along the bed
  bool operator==(const WholeRepeats&) const = default;
};

// The nearest piece with no more stitches than this one, and the nearest with more; without those that the bed has no
// room for. Without a card the drawing is moved to the piece, which stays in the middle of the bed unless its first
// needle is given.
[[nodiscard]] std::vector<WholeRepeats> nearest_whole_repeats(const Document& document, const Profile& profile);

// The fewest stitches, edges included, that show whole repeats in the middle of the bed; none: where the card lies on
// the bed, no number of repeats that the bed has room for does.
[[nodiscard]] std::optional<int> whole_repeats_in_the_middle(const Document& document, const Profile& profile);

} // namespace punchwright
