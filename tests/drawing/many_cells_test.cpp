// Strokes that cover much of a wide drawing are put together in whole words and as drawings: the same stitches as one
// by one.
#include "design/wrap.hpp"
#include "drawing/frieze.hpp"
#include "drawing/random_drawing.hpp"
#include "drawing/shapes.hpp"
#include "support/builders.hpp"

#include <doctest/doctest.h>
#include <set>
#include <vector>

using namespace punchwright;
using test::Dice;
using test::random_drawing;

namespace {

std::vector<Cell> listed(const std::set<Cell>& cells) {
  return {cells.begin(), cells.end()};
}

// A stitch at a time.
std::vector<Cell> plain_flood(const Grid& repeat, Cell start) {
  const bool yarn = at_round_edges(repeat, start);
  std::set<Cell> reached;
  std::vector<Cell> open{start};
  while (!open.empty()) {
    const Cell cell = round_edges(open.back(), repeat);
    open.pop_back();
    if (repeat.at(cell.column, cell.row) == yarn && reached.insert(cell).second) {
      open.insert(open.end(), {{cell.column - 1, cell.row},
                               {cell.column + 1, cell.row},
                               {cell.column, cell.row - 1},
                               {cell.column, cell.row + 1}});
    }
  }
  return listed(reached);
}

} // namespace

TEST_CASE("a flood over several words, and round their edges, reaches what a stitch at a time reaches") {
  for (int seed = 1; seed <= 300; ++seed) {
    CAPTURE(seed);
    Dice dice(static_cast<std::uint64_t>(seed));
    const Grid drawing =
        random_drawing(dice, 1 + dice.throw_one(widest_repeat), 1 + dice.throw_one(9), dice.throw_one(11));
    const Cell start{dice.throw_one(drawing.width()), dice.throw_one(drawing.height())};
    REQUIRE(flood_cells(drawing, start) == plain_flood(drawing, start));
  }
}

TEST_CASE("a way that winds up and down through the whole drawing is followed to its end") {
  Grid walls(199, 40);
  for (int column = 1; column < walls.width(); column += 2) { // with a gap above and below by turns
    for (int row = 0; row < walls.height(); ++row) {
      walls.set(column, row, row != (column % 4 == 1 ? 39 : 0));
    }
  }
  for (int column = 0; column < walls.width(); ++column) {
    walls.set(column, 20, walls.at(column, 20) || column == 0 || column == walls.width() - 1);
  }
  CHECK(flood_cells(walls, {4, 5}) == plain_flood(walls, {4, 5}));
}

TEST_CASE("plane cells become stitches of the repeat, however many there are") {
  const Grid repeat(70, 12);
  for (const int way : {1, 5, 30, 200}) {
    CAPTURE(way);
    const auto plane = rectangle_cells({-9, -7}, {way, 4}, Interior::filled);
    std::set<Cell> stitches;
    for (const Cell cell : plane) {
      stitches.insert(round_edges(cell, repeat));
    }
    CHECK(on_repeat(plane, repeat) == listed(stitches));
  }
  CHECK(on_repeat(rectangle_cells({0, 0}, {3, 3}, Interior::filled), Grid(5, 0)).empty());
}

TEST_CASE("a stroke over much of the drawing is completed as its stitches are, each by itself") {
  constexpr int width = 72;
  constexpr int height = 14;
  for (int group = 0; group < 7; ++group) {
    CAPTURE(group);
    Frieze frieze = centred_frieze(static_cast<FriezeGroup>(group), width, height);
    frieze.level = frieze.level == 0 ? 0 : frieze.level - 3; // so that some stitches have no partner
    for (const int seed : {1, 2, 3}) {
      Dice dice(static_cast<std::uint64_t>(seed));
      const auto stroke = contrast_cells(random_drawing(dice, width, height, 2 * seed));
      std::set<Cell> whole;
      std::set<Cell> alone;
      for (const Cell cell : stroke) {
        const CompletedStroke one = complete_stroke(std::vector{cell}, frieze, width, height);
        whole.insert(one.cells.begin(), one.cells.end());
        alone.insert(one.without_partner.begin(), one.without_partner.end());
      }
      const CompletedStroke all = complete_stroke(stroke, frieze, width, height);
      CHECK(all.cells == listed(whole));
      CHECK(all.without_partner == listed(alone));
    }
  }
}
