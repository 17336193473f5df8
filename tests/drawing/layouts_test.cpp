// Layouts as straight repeats: by hand, by what they are on the plane, and where they don't fit.
#include "drawing/frieze.hpp"
#include "drawing/layouts.hpp"
#include "drawing/turns.hpp"
#include "support/builders.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using test::Dice;
using test::drawn;
using test::lines_of;
using Lines = std::vector<std::string>;

namespace {

const Grid hook = drawn({"##..", "#..."}).grid;

Lines hook_as(Layout layout) {
  const auto straight = laid_out(hook, layout, 24);
  REQUIRE(straight.ok());
  return lines_of(*straight);
}

std::string refused(const Grid& drawing, Layout layout, std::optional<int> card_width) {
  const auto straight = laid_out(drawing, layout, card_width);
  REQUIRE_FALSE(straight.ok());
  return straight.error().text();
}

} // namespace

TEST_SUITE("layouts") {
  TEST_CASE("by hand") {
    CHECK(hook_as(Layout::brick) == Lines{"..##", "..#.", "##..", "#..."});
    CHECK(hook_as(Layout::half_drop) == Lines{"##..#...", "#...##.."});
    CHECK(hook_as(Layout::mirrored_beside) == Lines{"##....##", "#......#"});
    CHECK(hook_as(Layout::turned_beside) == Lines{"##.....#", "#.....##"});
    CHECK(hook_as(Layout::upside_down_beside) == Lines{"##..#...", "#...##.."});
    CHECK(hook_as(Layout::upside_down_above) == Lines{"#...", "##..", "##..", "#..."});
    CHECK(hook_as(Layout::mirrored_all_round) == Lines{"#......#", "##....##", "##....##", "#......#"});
  }

  TEST_CASE(
      "tiled straight, a brick is the drawing moved by half its width in each second course; a half drop likewise") {
    for (std::uint64_t seed = 1; seed <= 100; ++seed) {
      Dice dice(seed);
      const int width = 2 * (1 + dice.throw_one(6));
      const int height = 2 * (1 + dice.throw_one(6));
      Grid drawing(width, height);
      for (int count = 0; count < width * height / 2; ++count) {
        drawing.set(dice.throw_one(width), dice.throw_one(height), true);
      }
      const Grid brick = *laid_out(drawing, Layout::brick, std::nullopt);
      const Grid drop = *laid_out(drawing, Layout::half_drop, std::nullopt);
      for (int row = 0; row < 4 * height; ++row) {
        for (int column = 0; column < 4 * width; ++column) {
          const int course = row / height;
          const int stack = column / width;
          REQUIRE(brick.at(column % brick.width(), row % brick.height()) ==
                  drawing.at((column + course * width / 2) % width, row % height));
          REQUIRE(drop.at(column % drop.width(), row % drop.height()) ==
                  drawing.at(column % width, (row + stack * height / 2) % height));
        }
      }
    }
  }

  TEST_CASE("a drawing beside its image has the symmetry that the image gives it") {
    for (std::uint64_t seed = 1; seed <= 50; ++seed) {
      Dice dice(seed);
      const int width = 2 + dice.throw_one(11);
      const int height = 2 + dice.throw_one(7);
      Grid drawing(width, height);
      for (int count = 0; count < width * height / 2; ++count) {
        drawing.set(dice.throw_one(width), dice.throw_one(height), true);
      }
      const auto has = [&](Layout layout, FriezeGroup group) {
        const Grid straight = *laid_out(drawing, layout, std::nullopt);
        return has_symmetry(straight, centred_frieze(group, straight.width(), straight.height()));
      };
      CHECK(has(Layout::mirrored_beside, FriezeGroup::p1m1));
      CHECK(has(Layout::turned_beside, FriezeGroup::p2));
      CHECK(has(Layout::upside_down_beside, FriezeGroup::p11g));
      CHECK(has(Layout::upside_down_above, FriezeGroup::p11m));
      CHECK(has(Layout::mirrored_all_round, FriezeGroup::p2mm));
    }
  }

  TEST_CASE("where a layout doesn't fit") {
    CHECK(refused(Grid(7, 4), Layout::brick, std::nullopt) ==
          "brick moves each second course by half of 7 stitches, which is no whole number; make the drawing one stitch "
          "wider or narrower");
    CHECK(
        refused(Grid(12, 5), Layout::half_drop, 24) ==
        "half drop moves each second column of repeats by half of 5 rows, which is no whole number; insert or delete a "
        "row");
    CHECK(refused(Grid(24, 5), Layout::mirrored_beside, 24) ==
          "laid out, the drawing is 48 stitches wide, and the card repeats over 24; a drawing of 1, 2, 3, 4, 6 or 12 "
          "stitches fits this layout; needles that are brought forward by hand have no such limit");
    CHECK(refused(Grid(10, 5), Layout::brick, 12).find("a drawing of 2, 4, 6 or 12 stitches fits") !=
          std::string::npos);
    CHECK(refused(Grid(150, 5), Layout::turned_beside, std::nullopt) ==
          "laid out, the drawing has 300 stitches and 5 rows; 200 stitches and 2000 rows at most");
    CHECK(laid_out(Grid(24, 6), Layout::brick, 24).ok());
    CHECK(laid_out(Grid(10, 6), Layout::half_drop, std::nullopt).ok());
    CHECK(layouts().size() == 7);
    CHECK(name_of(Layout::half_drop) == "half drop");
  }
}
