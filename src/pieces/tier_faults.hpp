// Tiers whose drawings can't be knitted well as they are: what the check of their files finds in the repeat.
#pragma once

#include "pieces/open_yoke.hpp"

#include <string>
#include <vector>

namespace punchwright {

struct TierFaults {
  std::size_t tier = 0;
  int faults = 0; // floats that are too long in the repeat, none of which is caught or accepted
};
// Those that have any, from the bottom upwards.
[[nodiscard]] std::vector<TierFaults> tiers_with_faults(const OpenedYoke& opened);

// "tier 2: its drawing has 2 faults, floats that are too long".
[[nodiscard]] std::string words_of(const TierFaults& faults);
// "see punchwright check shore/buoys.repeat".
[[nodiscard]] std::string remedy_of(const OpenedYoke& opened, const TierFaults& faults);

} // namespace punchwright
