// Points to cells and back, the strips between rows, lines without gaps.
#include "editor/canvas_layout.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <doctest/doctest.h>

using namespace punchwright;
using namespace punchwright::editor;

namespace {

CanvasLayout plain_layout() {
  CanvasLayout layout;
  layout.columns = 6;
  layout.rows = 4;
  layout.cell_width = 20;
  layout.cell_height = 16;
  layout.origin = {100, 300};
  return layout;
}

} // namespace

TEST_CASE("the stitch of row 1 and column 1 lies in the lowest left corner") {
  const CanvasLayout layout = plain_layout();
  CHECK(cell_at(layout, {101, 299}) == Cell{0, 0});
  CHECK(box_of(layout, Cell{0, 0}) == ScreenBox{100, 284, 120, 300});
  CHECK(cell_at(layout, {219, 237}) == Cell{5, 3});
}

TEST_CASE("beyond the repeat lie its neighbours, which keep counting on") {
  const CanvasLayout layout = plain_layout();
  CHECK(cell_at(layout, {99, 299}) == Cell{-1, 0});
  CHECK(cell_at(layout, {221, 301}) == Cell{6, -1});
  CHECK(cell_at(layout, {101, 235}) == Cell{0, 4});
  CHECK(wrapped(Cell{-1, 4}, 6, 4) == Cell{5, 0});
  CHECK(wrapped(Cell{13, -9}, 6, 4) == Cell{1, 3});
}

TEST_CASE("the middle of every cell leads back to it, with strips and without, in neighbours too") {
  const std::array strips = {1, 1, 2, 2}; // below row 1 (the join) and below row 3
  for (const bool with_strips : {false, true}) {
    CanvasLayout layout = plain_layout();
    if (with_strips) {
      layout.strips_up_to = strips;
      layout.strip_height = 9;
    }
    for (int row = -9; row < 13; ++row) {
      for (int column = -7; column < 13; ++column) {
        CAPTURE(row);
        CAPTURE(column);
        CHECK(cell_at(layout, box_of(layout, Cell{column, row}).middle()) == Cell{column, row});
      }
    }
  }
}

TEST_CASE("rows lie on one another without gap or overlap; a strip lies between the row and the one below") {
  const std::array strips = {0, 0, 1, 1};
  CanvasLayout layout = plain_layout();
  layout.strips_up_to = strips;
  layout.strip_height = 9;
  for (int row = -5; row < 9; ++row) {
    CAPTURE(row);
    const float above = box_of(layout, Cell{0, row}).bottom;
    const float below = box_of(layout, Cell{0, row - 1}).top;
    const bool strip = (row + 8) % 4 == 2;
    CHECK(below - above == doctest::Approx(strip ? 9 : 0));
    CHECK(has_strip_below(layout, row) == strip);
  }
  CHECK(strip_below(layout, Cell{0, 2}) == ScreenBox{100, 259, 120, 268});
  CHECK(cell_at(layout, {101, 262}) == Cell{0, 2});
  CHECK(tile_height(layout) == doctest::Approx(73));
}

TEST_CASE("cells have the gauge's proportion, on whole pixels from 6 px on") {
  const CellSize size = cell_size(6.25, 5.0, 3.2F); // 16 stitches and 20 rows to 10 cm
  CHECK(size.width == doctest::Approx(20));
  CHECK(size.height == doctest::Approx(16));
  CHECK(cell_size(6.25, 5.0, 0.4F).height == doctest::Approx(2));
  const float zoom = zoom_to_fit(6.25, 5.0, 24, 20, ScreenBox{0, 0, 300, 900});
  CHECK(zoom == doctest::Approx(2)); // 24 stitches of 6.25 mm are 150 mm: as wide as 300 px
}
