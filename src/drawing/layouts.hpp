// Repeats set out other than straight, expanded into the straight repeat that a card or a needle list needs.
#pragma once

#include "design/edits.hpp"
#include "design/result.hpp"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace punchwright {

enum class Layout {
  brick,              // each second course of repeats moved sideways by half the width: twice as high
  half_drop,          // each second column of repeats moved up by half the height: twice as wide
  mirrored_beside,    // the drawing and its mirror image side by side: twice as wide
  turned_beside,      // the drawing and itself turned by a half turn side by side: twice as wide
  upside_down_beside, // the drawing and itself upside down side by side: twice as wide
  upside_down_above,  // itself upside down above it: twice as high
  mirrored_all_round, // mirrored beside it, and both upside down above: twice as wide and high
};

[[nodiscard]] std::span<const Layout> layouts();
[[nodiscard]] std::string_view name_of(Layout layout); // "half drop", in English: a step is called by it
// "each second column of repeats moved up by half the height"
[[nodiscard]] std::string_view description_of(Layout layout);

// The straight repeat, the drawing at its lowest left. `card_width`: the stitches that the machine's card repeats over,
// absent where it reads none. Refused, with the reason: an odd width for brick, an odd height for half drop; more than
// 200 stitches or 2000 rows; a width that doesn't divide the card's.
[[nodiscard]] Result<Grid> laid_out(const Grid& drawing, Layout layout, std::optional<int> card_width);

// The same for a whole design, as edits that are one step together: size, bands, stitches. Rows that are copies of
// others keep the yarns of the rows that they copy. Refused, too, where a stitch of contrast would come to lie in a
// band of one yarn, as half drop may bring it about.
[[nodiscard]] Result<std::vector<Edit>> layout_edits(const Document& document, Layout layout,
                                                     std::optional<int> card_width);

} // namespace punchwright
