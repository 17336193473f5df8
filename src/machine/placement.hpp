// Which drawn column a needle knits, and which card column selects it: the one place where needle, card column and
// drawn column are converted.
//
//     bed, as the knitter sees it (purl side)      L12 L11 …  L1 | R1 … R12 | R13 …
//     x, counted from card column 1's needle         0   1 …  11   12 …  23    24 …
//     card column                                    1   2 …  12   13 …  24     1 …
//     drawn column (knit side, from the left), W=24  24  23 … 13   12 …   1    24 …
//
// The knitter sees the purl side, so the drawing runs from right to left along the bed.
#pragma once

#include "design/document.hpp"
#include "machine/profile.hpp"

namespace punchwright {

class Placement {
public:
  Placement(const Document& document, const Profile& profile);

  // Drawn column, from 0 at the left on the knit side, that the needle knits. Any needle, on the bed or not.
  [[nodiscard]] int column_of(Needle needle) const;

  // x of the picture above, any sign.
  [[nodiscard]] int x_of(Needle needle) const { return needle.position - origin_; }

  // Drawn column, from 0, on card column `card_column` (from 1).
  [[nodiscard]] int column_on_card(int card_column) const;

private:
  int width_;
  int origin_;       // position of the needle with x = 0
  int first_column_; // drawn column, from 0, of that needle
};

// True where end needles knit contrast in every pattern row, by the document or else by the profile.
[[nodiscard]] bool end_needles_knit_contrast(const Document& document, const Profile& profile);

// True where the card is joined into a loop; the wish is idle on a machine that reads no card.
[[nodiscard]] bool card_goes_round(const Document& document, const Profile& profile);

// The limit for floats in stitches: a float of more is too long. From mm by the gauge: the most stitches that are not
// wider than the limit (25 mm at 16 stitches to 10 cm: 4).
[[nodiscard]] int longest_float_of(const Document& document, const Profile& profile);

// The widths up to 200 that a card of this repeat can hold: its divisors, ascending.
[[nodiscard]] std::vector<int> widths_for_card(int repeat);

} // namespace punchwright
