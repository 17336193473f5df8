// Holes of a card that would run into one another, worked out before anything is drawn or punched.
#pragma once

#include "machine/profile.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace punchwright {

struct HoleConflict {
  std::string_view key; // of [card.geometry]: "feed_from_side_mm"
  std::string what;     // "the feed holes, 18 mm from the side, run into column 1"
};

// Feed or clip holes that meet a place where a pattern or overlap hole can be.
[[nodiscard]] std::optional<HoleConflict> hole_conflict(const CardGeometry& geometry, int repeat);

} // namespace punchwright
