// Small questions to a yoke's document.
#include "pieces/yoke.hpp"

#include <algorithm>

namespace punchwright {

std::size_t widths_of(const Yoke& yoke, std::size_t piece) {
  if (yoke.pieces[piece].like.empty()) {
    return piece;
  }
  const auto found = std::ranges::find(yoke.pieces, yoke.pieces[piece].like, &YokePiece::name);
  return found == yoke.pieces.end() ? piece : static_cast<std::size_t>(found - yoke.pieces.begin());
}

} // namespace punchwright
