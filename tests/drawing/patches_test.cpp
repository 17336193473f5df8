// A drawing's patches, found at once, are what a fill from each stitch reaches; and a whole patch is completed under a
// symmetry as its stitches are, each by itself.
#include "design/wrap.hpp"
#include "drawing/frieze.hpp"
#include "drawing/patches.hpp"
#include "drawing/random_drawing.hpp"
#include "drawing/shapes.hpp"
#include "support/builders.hpp"

#include <algorithm>
#include <doctest/doctest.h>
#include <map>
#include <set>
#include <vector>

using namespace punchwright;
using test::Dice;
using test::random_drawing;

namespace {

Grid drawing_of(const std::vector<std::string>& rows) { // the uppermost first
  Grid drawing(static_cast<int>(rows.front().size()), static_cast<int>(rows.size()));
  for (int row = 0; row < drawing.height(); ++row) {
    drawing.set_row_text(row, rows[static_cast<std::size_t>(drawing.height() - 1 - row)]);
  }
  return drawing;
}

int how_many(const Grid& drawing) {
  const Patches patches(drawing);
  std::set<int> found;
  for (int row = 0; row < drawing.height(); ++row) {
    for (int column = 0; column < drawing.width(); ++column) {
      found.insert(patches.patch_at({column, row}));
    }
  }
  return static_cast<int>(found.size());
}

} // namespace

TEST_CASE("stitches of one yarn hang together beside and above one another, round the edges, and not across a corner") {
  CHECK(how_many(drawing_of({"."})) == 1);
  CHECK(how_many(drawing_of({"..#.."})) == 2); // main goes round the edge
  CHECK(how_many(drawing_of({"#.", ".#"})) == 4);
  CHECK(how_many(drawing_of({"....", ".##.", ".##.", "...."})) == 2);
  CHECK(how_many(drawing_of({".#..", "####", ".#..", ".#.."})) == 2); // the cross's arms close up, and so does the rest
  CHECK(how_many(drawing_of({"#..", "...", "..#"})) == 3);            // neighbours across a corner of the repeat, too
  CHECK(how_many(drawing_of({"#....", "#.##.", "#.#..", "###.."})) == 2);
}

TEST_CASE("a plane cell is taken round the edges") {
  const Grid drawing = drawing_of({"....", ".##.", ".##.", "...."});
  const Patches patches(drawing);
  CHECK(patches.patch_at({1 - 4, 2 + 8}) == patches.patch_at({2, 1}));
  CHECK(patches.patch_at({-1, -1}) == patches.patch_at({0, 0}));
  CHECK(patches.patch_at({0, 0}) != patches.patch_at({1, 1}));
}

TEST_CASE("from each stitch of random drawings: the patch is what the fill reaches, and its number is its alone") {
  for (int seed = 1; seed <= 400; ++seed) {
    CAPTURE(seed);
    Dice dice(static_cast<std::uint64_t>(seed));
    const int width = seed % 2 == 0 ? 1 + dice.throw_one(widest_repeat) : 1 + dice.throw_one(9);
    const Grid drawing = random_drawing(dice, width, 1 + dice.throw_one(9), dice.throw_one(11));
    const Patches patches(drawing);
    std::map<int, std::vector<Cell>> cells_of_patches;
    for (int column = 0; column < drawing.width(); ++column) {
      for (int row = 0; row < drawing.height(); ++row) {
        cells_of_patches[patches.patch_at({column, row})].push_back({column, row});
      }
    }
    for (const auto& [patch, cells] : cells_of_patches) {
      REQUIRE(cells == flood_cells(drawing, cells[cells.size() / 2]));
      REQUIRE(contrast_cells(patches.stitches_of(patch)) == cells);
    }
  }
}

TEST_CASE("a way that winds up and down through the whole drawing is one patch") {
  Grid walls(199, 40);
  for (int column = 1; column < walls.width() - 1; column += 2) { // with a gap above and below by turns
    for (int row = 0; row < walls.height(); ++row) {
      walls.set(column, row, row != (column % 4 == 1 ? 39 : 0));
    }
  }
  const Patches patches(walls);
  CHECK(contrast_cells(patches.stitches_of(patches.patch_at({4, 5}))) == flood_cells(walls, {4, 5}));
}

TEST_CASE("a drawing is completed as its stitches are, each by itself, under every group and every repeat") {
  int left_out = 0;
  for (const int width : {1, 12, 64, 72, 128, 200}) {
    for (int repeat = 1; repeat <= width; ++repeat) {
      if (width % repeat != 0) {
        continue;
      }
      for (const FriezeGroup group : frieze_groups()) {
        if (needs_even_repeat(group) && repeat % 2 != 0) {
          continue;
        }
        CAPTURE(width);
        CAPTURE(repeat);
        CAPTURE(notation_of(group));
        Dice dice(static_cast<std::uint64_t>(width * 1000 + repeat));
        constexpr int height = 6;
        Frieze frieze{group, repeat, uses_upright_axis(group) ? dice.throw_one(repeat) : 0,
                      uses_level_axis(group) ? dice.throw_one(2 * height - 1) : 0};
        REQUIRE_FALSE(unusable_frieze(frieze, width, height).has_value());
        const Grid stroke = random_drawing(dice, width, height, 1 + dice.throw_one(2));
        std::set<Cell> whole;
        for (const Cell cell : contrast_cells(stroke)) {
          const auto orbit = orbit_of(cell, frieze, width);
          const bool inside =
              std::ranges::all_of(orbit, [](Cell there) { return there.row >= 0 && there.row < height; });
          left_out += inside ? 0 : 1;
          if (inside) {
            whole.insert(orbit.begin(), orbit.end());
          }
        }
        REQUIRE(contrast_cells(completed(stroke, frieze)) == std::vector<Cell>(whole.begin(), whole.end()));
      }
    }
  }
  CHECK(left_out > 1000); // their partners would lie above or below
}
