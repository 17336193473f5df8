// What the rows to knit depend on: of the drawing only which rows are of one yarn. As long as the key stays the same,
// so do the rows.
#pragma once

#include "design/document.hpp"
#include "machine/profile.hpp"

#include <vector>

namespace punchwright {

struct RowsKey {
  Profile profile;
  std::vector<Band> bands;
  Piece piece;
  KnittingRules rules;
  CardWishes card;
  std::vector<bool> all_main; // by drawn row
  std::vector<bool> all_contrast;

  bool operator==(const RowsKey&) const = default;
};

[[nodiscard]] RowsKey rows_key(const Document& document, const Profile& profile);

} // namespace punchwright
