// The card as the machine's reader finds it: from places of holes on a sheet, or from a punch list.
// Worked out here from the profile's numbers alone, and not with those who laid the card out.
#pragma once

#include "design/result.hpp"
#include "knitting/state.hpp"
#include "machine/profile.hpp"

#include <string_view>
#include <vector>

namespace punchwright {

struct HolePlace { // mm from the card's top left corner as it lies face up; y grows downwards
  double x = 0;
  double y = 0;
};

// Holes beside the columns (feed, clips) and the two overlap rows at each end are left alone.
[[nodiscard]] Result<PunchedCard> read_card(const std::vector<HolePlace>& holes, double width, double height,
                                            const CardReader& reader);

// Cards joined one behind the other.
[[nodiscard]] PunchedCard joined_cards(const std::vector<PunchedCard>& cards);

// Lines "row 12: 1-3, 7", as in an exported punch list; other lines are left alone, and so is what follows in brackets
// or in words. Rows that are left out have no hole.
[[nodiscard]] Result<PunchedCard> read_punch_list(std::string_view text, const std::string& name, int columns);

} // namespace punchwright
