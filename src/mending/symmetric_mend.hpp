// Mends under which the drawing keeps its symmetry whole, with more changed stitches than the fewest where it must be.
#pragma once

#include "mending/mend.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace punchwright {

// The fewest changes that keep `wishes.symmetry`, which the drawing has, and leave no float too long in the rows that
// `fewest`, the mend without that condition, could mend; of these the one that looks best, as far as is found. Nothing
// where none keeps it: stitches that stay, or rows that aren't to be mended, may be in its way.
[[nodiscard]] std::optional<Mended> mend_symmetrically(const Grid& drawing, const MendWishes& wishes,
                                                       const Mended& fewest);

struct MendOffer {
  Mended fewest;                   // of equally few changes those that keep the symmetry best
  std::optional<Mended> symmetric; // where that breaks the symmetry, and more changes keep it
  [[nodiscard]] const Mended& first() const { return symmetric ? *symmetric : fewest; }
};

// What to offer first, and what else.
[[nodiscard]] MendOffer offer_mend(const Grid& drawing, const MendWishes& wishes);

struct RowStitches {
  int row = 0;
  std::vector<char> stitches; // true: contrast
  bool operator==(const RowStitches&) const = default;
};

// All equally cheap forms of a row of a symmetric mend, each with the row that is its image; by pairs and squares
// beside the rest of `mended`. Empty where the row needs no mending, or has more than `most` of them.
[[nodiscard]] std::vector<std::vector<RowStitches>>
symmetric_forms_of_row(const Grid& drawing, const Grid& mended, int row, const MendWishes& wishes, std::size_t most);

} // namespace punchwright
