// Which group a drawing has, worked out in whole words, against the same by definition, stitch by stitch: in widths on
// both sides of a word's end, for drawings that have a group, that nearly have one, and any.
#include "design/wrap.hpp"
#include "drawing/frieze.hpp"
#include "drawing/turns.hpp"
#include "support/builders.hpp"

#include <algorithm>
#include <doctest/doctest.h>
#include <map>

using namespace punchwright;
using test::Dice;

namespace {

// Does every stitch have its like where `place` sends it? Columns go round; above and below lies main.
template <class Place> bool falls_on_itself(const Grid& strip, Place&& place) {
  for (int row = 0; row < strip.height(); ++row) {
    for (int column = 0; column < strip.width(); ++column) {
      const Cell there = place(column, row);
      const bool inside = there.row >= 0 && there.row < strip.height();
      if (strip.at(column, row) != (inside && strip.at(round_edge(there.column, strip.width()), there.row))) {
        return false;
      }
    }
  }
  return true;
}

// The first number from 0 up to `end` for which it holds.
template <class Holds> std::optional<int> first_that(int end, Holds&& holds) {
  for (int number = 0; number < end; ++number) {
    if (holds(number)) {
      return number;
    }
  }
  return std::nullopt;
}

Frieze by_definition(const Grid& strip) {
  const int width = strip.width();
  const auto goes_on = [&](int by) {
    return falls_on_itself(strip, [=](int column, int row) { return Cell{column + by, row}; });
  };
  const int repeat = 1 + *first_that(width, [&](int less) { return width % (less + 1) == 0 && goes_on(less + 1); });
  const auto mirror = first_that(repeat, [&](int upright) {
    return falls_on_itself(strip, [=](int column, int row) { return Cell{upright - column, row}; });
  });
  const auto level_with = [&](int sign, int across) {
    return first_that(2 * strip.height() - 1, [&](int level) {
      return falls_on_itself(strip, [=](int column, int row) { return Cell{across + sign * column, level - row}; });
    });
  };
  bool contrast = false;
  for (int row = 0; row < strip.height(); ++row) {
    contrast = contrast || strip.has_contrast(row);
  }
  if (const auto level = level_with(1, 0)) {
    const int axis = contrast ? *level : strip.height() - 1;
    return {mirror ? FriezeGroup::p2mm : FriezeGroup::p11m, repeat, mirror.value_or(0), axis};
  }
  if (const auto level = repeat % 2 == 0 ? level_with(1, repeat / 2) : std::nullopt) {
    return {mirror ? FriezeGroup::p2mg : FriezeGroup::p11g, repeat, mirror.value_or(0), *level};
  }
  if (mirror) {
    return {FriezeGroup::p1m1, repeat, *mirror, 0};
  }
  std::optional<int> level;
  const auto turn = first_that(repeat, [&](int across) {
    level = level_with(-1, across);
    return level.has_value();
  });
  return turn ? Frieze{FriezeGroup::p2, repeat, *turn, *level} : Frieze{FriezeGroup::p1, repeat, 0, 0};
}

// A drawing with the group, or more: any stitches, completed.
Grid with_group(Dice& dice, const Frieze& frieze, int width, int height) {
  std::vector<Cell> stroke;
  const int many = 1 + dice.throw_one(width * height);
  for (int cell = 0; cell < many; ++cell) {
    stroke.push_back({dice.throw_one(width), dice.throw_one(height)});
  }
  Grid strip(width, height);
  for (const Cell cell : complete_stroke(stroke, frieze, width, height).cells) {
    strip.set(cell.column, cell.row, true);
  }
  return strip;
}

Frieze any_of(Dice& dice, FriezeGroup group, int width, int height) {
  std::vector<int> repeats;
  for (int repeat = needs_even_repeat(group) ? 2 : 1; repeat <= width; repeat += needs_even_repeat(group) ? 2 : 1) {
    if (width % repeat == 0) {
      repeats.push_back(repeat);
    }
  }
  const int repeat = repeats[static_cast<std::size_t>(dice.throw_one(static_cast<int>(repeats.size())))];
  return {group, repeat, uses_upright_axis(group) ? dice.throw_one(repeat) : 0,
          uses_level_axis(group) ? dice.throw_one(2 * height - 1) : 0};
}

} // namespace

TEST_CASE("the group is the one by definition, in whole words and across them; a stitch more or less too") {
  std::map<FriezeGroup, int> seen;
  std::uint64_t seed = 0;
  for (const int width : {1, 2, 3, 12, 24, 30, 60, 63, 64, 65, 66, 72, 96, 126, 127, 128, 129, 130, 192, 193, 200}) {
    for (const FriezeGroup group : frieze_groups()) {
      if (needs_even_repeat(group) && width % 2 != 0) {
        continue;
      }
      for (int round = 0; round < 4; ++round) {
        Dice dice(++seed);
        CAPTURE(seed);
        const int height = 1 + dice.throw_one(7);
        Grid strip = with_group(dice, any_of(dice, group, width, height), width, height);
        const Frieze found = classify(strip);
        REQUIRE(found == by_definition(strip));
        REQUIRE(has_symmetry(strip, found));
        ++seen[found.group];
        strip.flip(dice.throw_one(width), dice.throw_one(height));
        REQUIRE(classify(strip) == by_definition(strip));
        // Moved along, so are its axes.
        const Grid moved = shifted(strip, dice.throw_one(width), 0);
        REQUIRE(classify(moved) == by_definition(moved));
      }
    }
  }
  for (const FriezeGroup group : frieze_groups()) {
    CAPTURE(notation_of(group));
    CHECK(seen[group] >= 12);
  }
}

TEST_CASE("rows that recur after different numbers of stitches recur together after the least that all divide") {
  Grid strip(60, 3);
  for (int column = 0; column < 60; ++column) {
    strip.set(column, 0, column % 4 == 0);
    strip.set(column, 1, column % 6 == 1);
    strip.set(column, 2, column % 10 == 3);
  }
  // Axes at 0, 2 and 6, modulo 4, 6 and 10: 0, 2 and 6 modulo 60 together is 56.
  CHECK(classify(strip) == Frieze{FriezeGroup::p1m1, 60, 56, 0});
  CHECK(classify(strip) == by_definition(strip));
}
