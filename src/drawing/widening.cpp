// Choosing a width that has room, is knitted from the card, and leaves the drawing whole.
#include "drawing/widening.hpp"

namespace punchwright {

namespace {

// The least that will do; 0: none will.
template <class Fits> int least_width(int least, int most, Fits&& fits) {
  for (int width = least; width <= most; ++width) {
    if (fits(width)) {
      return width;
    }
  }
  return 0;
}

} // namespace

std::optional<Widening> widening_for(int width, int least, std::optional<int> card_width) {
  if (least <= width || least > widest_repeat) {
    return std::nullopt;
  }
  const auto on_card = [&](int wide) { return !card_width || *card_width % wide == 0; };
  const auto whole = [&](int wide) { return wide % width == 0; };
  if (const int wide = least_width(least, widest_repeat, [&](int one) { return on_card(one) && whole(one); })) {
    return Widening{wide, wide / width, true};
  }
  if (card_width) {
    if (const int wide = least_width(least, widest_repeat, on_card)) {
      return Widening{wide, 1, true};
    }
  }
  const int wide = least_width(least, widest_repeat, whole);
  return wide > 0 ? Widening{wide, wide / width, !card_width} : Widening{least, 1, !card_width};
}

std::vector<Edit> widening_edits(const Grid& drawing, const Widening& widening) {
  if (widening.times == 1) {
    return {Resize{widening.width, drawing.height(), AcrossAnchor::left, UpAnchor::bottom}};
  }
  return std::vector<Edit>(static_cast<std::size_t>(widening.times - 1), DuplicateColumns{0, drawing.width()});
}

} // namespace punchwright
