// Gathering the key.
#include "rows/rows_key.hpp"

namespace punchwright {

RowsKey rows_key(const Document& document, const Profile& profile) {
  RowsKey key{profile, document.bands, document.piece, document.rules, document.card, {}, {}};
  const int height = document.grid.height();
  key.all_main.reserve(static_cast<std::size_t>(height));
  key.all_contrast.reserve(static_cast<std::size_t>(height));
  for (int row = 0; row < height; ++row) {
    key.all_main.push_back(document.grid.all_main(row));
    key.all_contrast.push_back(document.grid.all_contrast(row));
  }
  return key;
}

} // namespace punchwright
