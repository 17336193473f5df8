// Strips counted but for shifts, by the groups that the program finds in them: what formulas and another program count
// too.
#pragma once

#include "drawing/frieze.hpp"
#include "drawing/turns.hpp"

#include <algorithm>
#include <cstdint>
#include <set>
#include <string>
#include <vector>

namespace punchwright::test {

inline Grid strip_of(unsigned bits, int width, int height) {
  Grid strip(width, height);
  for (int place = 0; place < width * height; ++place) {
    strip.set(place % width, place / width, ((bits >> place) & 1U) != 0);
  }
  return strip;
}

// Strips of that size, one of each set that shifts of one another make up.
inline std::vector<Grid> strips_but_for_shifts(int width, int height) {
  std::vector<Grid> strips;
  std::set<std::string> seen;
  for (unsigned bits = 0; bits < (1U << (width * height)); ++bits) {
    const Grid strip = strip_of(bits, width, height);
    std::string least;
    for (int along = 0; along < width; ++along) {
      std::string text;
      for (int row = 0; row < height; ++row) {
        text += shifted(strip, along, 0).row_text(row);
      }
      least = least.empty() ? text : std::min(least, text);
    }
    if (seen.insert(least).second) {
      strips.push_back(strip);
    }
  }
  return strips;
}

struct StripCounts {
  std::int64_t strips = 0;
  std::int64_t mirrored = 0; // left and right, about some upright axis
  std::int64_t whole = 0;    // recur no sooner than after their whole width
  std::int64_t level = 0;    // mirrored below and above, about the middle
  std::int64_t gliding = 0;  // by half their width along the middle
};

inline StripCounts counts_of_strips(int width, int height) {
  StripCounts counts;
  for (const Grid& strip : strips_but_for_shifts(width, height)) {
    const Frieze found = classify(strip);
    const bool mirrored =
        found.group == FriezeGroup::p1m1 || found.group == FriezeGroup::p2mg || found.group == FriezeGroup::p2mm;
    ++counts.strips;
    counts.mirrored += mirrored ? 1 : 0;
    counts.whole += found.repeat == width ? 1 : 0;
    counts.level += has_symmetry(strip, {FriezeGroup::p11m, width, 0, height - 1}) ? 1 : 0;
    const bool even = width % 2 == 0;
    counts.gliding += even && has_symmetry(strip, {FriezeGroup::p11g, width, 0, height - 1}) ? 1 : 0;
  }
  return counts;
}

} // namespace punchwright::test
