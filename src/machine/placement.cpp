// Needle, card column and drawn column, converted; see the picture in the header.
#include "machine/placement.hpp"

#include "design/wrap.hpp"

#include <cmath>

namespace punchwright {
namespace {

int origin_for(const Document& document, const Profile& profile) {
  if (profile.card) {
    return profile.card->first_needle.position;
  }
  if (document.piece.first_column) {
    return first_needle_of(document).position;
  }
  return -(document.grid.width() / 2); // L of half the width, rounded down; width 1: R1
}

} // namespace

Placement::Placement(const Document& document, const Profile& profile)
    : width_(document.grid.width()), origin_(origin_for(document, profile)),
      first_column_(!profile.card && document.piece.first_column ? *document.piece.first_column - 1 : width_ - 1) {}

int Placement::column_of(Needle needle) const {
  return round_edge(first_column_ - x_of(needle), width_);
}

int Placement::column_on_card(int card_column) const {
  return round_edge(first_column_ - (card_column - 1), width_);
}

bool end_needles_knit_contrast(const Document& document, const Profile& profile) {
  switch (document.piece.end_needles) {
  case EndNeedles::always: return true;
  case EndNeedles::never: return false;
  case EndNeedles::as_profile: break;
  }
  return profile.end_needles;
}

bool card_goes_round(const Document& document, const Profile& profile) {
  return document.card.loop && profile.card.has_value();
}

int longest_float_of(const Document& document, const Profile& profile) {
  if (document.rules.longest_float) {
    return *document.rules.longest_float;
  }
  if (document.rules.longest_float_mm) {
    // A float as wide as the limit is allowed: the small addition keeps 4 stitches of 6.25 mm within 25 mm,
    // whatever the division rounds to.
    constexpr double rounding = 1e-9;
    return static_cast<int>(std::floor(*document.rules.longest_float_mm / document.gauge.stitch_mm() + rounding));
  }
  return profile.longest_float;
}

std::vector<int> widths_for_card(int repeat) {
  std::vector<int> widths;
  for (int width = 1; width <= repeat; ++width) {
    if (repeat % width == 0) {
      widths.push_back(width);
    }
  }
  return widths;
}

} // namespace punchwright
