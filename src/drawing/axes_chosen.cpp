// The axes of a symmetry that is chosen for a drawing, and the signs that stand for them.
#include "drawing/axes.hpp"

#include <algorithm>
#include <cstdlib>

namespace punchwright {
namespace {

// Of the places at which a drawing with such axes may have those of the group, the nearest to the middle first.
std::vector<int> places_to_try(int found, int step, int repeat, int middle) {
  std::vector<int> places;
  for (int place = found % step; place < repeat; place += step) {
    places.push_back(place);
  }
  std::ranges::stable_sort(places, {}, [middle](int place) { return std::abs(place - middle); });
  return places;
}

} // namespace

Frieze frieze_for(const Grid& drawing, FriezeGroup group) {
  const int width = drawing.width();
  const Frieze centred = centred_frieze(group, width, drawing.height());
  if (unusable_frieze(centred, width, drawing.height()) || has_symmetry(drawing, centred)) {
    return centred;
  }
  const Frieze has = classify(drawing);
  Frieze frieze = centred;
  if (uses_level_axis(group)) {
    frieze.level = has.level;
  }
  // Half turns lie a quarter of the repeat beside mirrors, so that axes recur every half repeat at least.
  const int step = has.repeat % 2 == 0 ? has.repeat / 2 : has.repeat;
  const std::vector<int> uprights =
      uses_upright_axis(group) ? places_to_try(has.upright, step, width, centred.upright) : std::vector<int>{0};
  for (;;) { // a glide by half of a shorter repeat need not be one by half the width
    for (const int upright : uprights) {
      frieze.upright = upright % frieze.repeat;
      if (has_symmetry(drawing, frieze)) {
        return frieze;
      }
    }
    if (!needs_even_repeat(group) || frieze.repeat % 4 != 0) {
      return centred;
    }
    frieze.repeat /= 2;
  }
}

std::optional<Frieze> frieze_in(const Grid& drawing, const Frieze& wished) {
  const auto has = [&drawing](const Frieze& frieze) {
    return !unusable_frieze(frieze, drawing.width(), drawing.height()) && has_symmetry(drawing, frieze);
  };
  if (has(wished)) {
    return wished;
  }
  const Frieze own = frieze_for(drawing, wished.group);
  Frieze recurring = own; // as often as the one that is wished
  recurring.repeat = wished.repeat;
  recurring.upright %= wished.repeat;
  return has(recurring) ? std::optional(recurring) : has(own) ? std::optional(own) : std::nullopt;
}

AxisSigns axis_signs(const Frieze& frieze, int width) {
  AxisSigns signs;
  const auto recurring = [&](int place) {
    std::vector<int> places;
    for (int half = place % frieze.repeat; half < 2 * width; half += frieze.repeat) {
      places.push_back(half);
    }
    return places;
  };
  switch (frieze.group) {
  case FriezeGroup::p1: break;
  case FriezeGroup::p11g: signs.level = AxisSigns::Level::glide; break;
  case FriezeGroup::p1m1: signs.mirrors = recurring(frieze.upright); break;
  case FriezeGroup::p11m: signs.level = AxisSigns::Level::mirror; break;
  case FriezeGroup::p2: signs.centres = recurring(frieze.upright); break;
  case FriezeGroup::p2mg:
    signs.mirrors = recurring(frieze.upright);
    signs.centres = recurring(frieze.upright + frieze.repeat / 2);
    signs.level = AxisSigns::Level::glide;
    break;
  case FriezeGroup::p2mm:
    signs.mirrors = recurring(frieze.upright);
    signs.centres = signs.mirrors;
    signs.level = AxisSigns::Level::mirror;
    break;
  }
  return signs;
}

} // namespace punchwright
