// Images of stitches, worked out from the movements that make each of the seven frieze groups: what mends are measured
// by, apart from the program's own friezes.
#pragma once

#include "design/grid.hpp"
#include "drawing/frieze.hpp"

#include <algorithm>
#include <cstdint>
#include <random>
#include <set>
#include <utility>
#include <vector>

namespace punchwright::test {

using Place = std::pair<int, int>; // column, row
// The movements that make the group, besides whole repeats.
inline std::vector<Place> moved(Place from, const Frieze& frieze) {
  const auto [column, row] = from;
  const int half = frieze.repeat / 2;
  const Place mirror{frieze.upright - column, row};
  const Place level{column, frieze.level - row};
  const Place glide{column + half, frieze.level - row};
  const Place turn{frieze.upright - column, frieze.level - row};
  switch (frieze.group) {
  case FriezeGroup::p1: return {};
  case FriezeGroup::p1m1: return {mirror};
  case FriezeGroup::p11m: return {level};
  case FriezeGroup::p11g: return {glide};
  case FriezeGroup::p2: return {turn};
  case FriezeGroup::p2mg: return {mirror, glide};
  case FriezeGroup::p2mm: return {mirror, level};
  }
  return {};
}

inline std::set<Place> images(Place from, const Frieze& frieze, int width) {
  std::set<Place> found{from};
  std::vector<Place> to_go{from};
  while (!to_go.empty()) {
    const Place one = to_go.back();
    to_go.pop_back();
    auto next = moved(one, frieze);
    next.emplace_back(one.first + frieze.repeat, one.second);
    for (const auto& [column, row] : next) {
      const Place there{(column % width + width) % width, row};
      if (found.insert(there).second) {
        to_go.push_back(there);
      }
    }
  }
  return found;
}

inline std::int64_t unlike_by_hand(const Grid& drawing, const Frieze& frieze) {
  const auto contrast = [&](const Place& place) {
    return place.second >= 0 && place.second < drawing.height() && drawing.at(place.first, place.second);
  };
  std::set<std::set<Place>> seen;
  std::int64_t pairs = 0;
  for (int row = 0; row < drawing.height(); ++row) {
    for (int column = 0; column < drawing.width(); ++column) {
      const auto alike = images({column, row}, frieze, drawing.width());
      if (!seen.insert(alike).second) {
        continue;
      }
      for (const Place& one : alike) {
        pairs += std::ranges::count_if(alike, [&](const Place& other) { return contrast(one) && !contrast(other); });
      }
    }
  }
  return pairs;
}

// Long runs, so that there is something to mend.
inline Grid random_drawing(std::mt19937& random, int width, int height) {
  Grid drawing(width, height);
  for (int row = 0; row < height; ++row) {
    bool contrast = random() % 2 == 0;
    for (int column = 0; column < width; ++column) {
      contrast = random() % 4 == 0 ? !contrast : contrast;
      drawing.set(column, row, contrast);
    }
  }
  return drawing;
}

} // namespace punchwright::test
