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

TEST_CASE("the nearest drawing is the first of the cheapest over every place of the axes, each tried alone") {
  std::uint64_t seed = 0;
  for (const auto& [width, height] : std::vector<std::pair<int, int>>{
           {1, 1}, {1, 5}, {2, 3}, {7, 4}, {12, 9}, {16, 1}, {24, 5}, {20, 8}, {65, 2}, {66, 3}}) {
    for (const FriezeGroup group : {FriezeGroup::p2, FriezeGroup::p2mg, FriezeGroup::p2mm}) {
      if (needs_even_repeat(group) && width % 2 != 0) {
        continue;
      }
      Dice dice(++seed);
      CAPTURE(seed);
      Grid strip = with_group(dice, any_of(dice, group, width, height), width, height);
      for (int flip = dice.throw_one(width * height); flip > 0; flip -= 3) {
        strip.flip(dice.throw_one(width), dice.throw_one(height));
      }
      std::vector<int> repeats{width};
      while (needs_even_repeat(group) && repeats.back() % 4 == 0) {
        repeats.push_back(repeats.back() / 2); // a glide by half of it is none by half the width
      }
      std::optional<NearestFrieze> best;
      for (const int repeat : repeats) {
        for (int level = 0; level < 2 * height - 1; ++level) {
          for (int upright = 0; upright < repeat; ++upright) {
            auto near = nearest_with(strip, Frieze{group, repeat, upright, level});
            if (!best || near->changed_stitches < best->changed_stitches) {
              best = std::move(near).value();
            }
          }
        }
      }
      const auto found = nearest_with(strip, group);
      REQUIRE(found->changed_stitches == best->changed_stitches);
      REQUIRE(found->frieze == best->frieze);
      REQUIRE(found->strip == best->strip);
    }
  }
}

TEST_CASE("the nearest drawing of the largest size is found while one waits") {
  Dice dice(200);
  const Frieze frieze{FriezeGroup::p2mm, widest_repeat, 77, tallest_repeat};
  const Grid whole = with_group(dice, frieze, widest_repeat, tallest_repeat);
  Grid strip = whole;
  for (int flip = 0; flip < 90; ++flip) {
    strip.flip(2 * flip, 20 * flip + 5);
  }
  const auto found = nearest_with(strip, FriezeGroup::p2mm);
  CHECK(found->frieze == frieze);
  CHECK(found->strip == whole);
  CHECK(found->changed_stitches == 90);
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
