// Lines, rectangles, ellipses and flood fill: by hand on small sizes, and against ImageMagick on the open plane.
#include "drawing/reference_pictures.hpp"
#include "drawing/shapes.hpp"
#include "support/builders.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <set>

using namespace punchwright;
using test::Dice;
using test::imagemagick;
using test::Picture;

namespace {

// A picture with row 0 at its top, which is how both sides are compared.
Picture picture_of(const std::vector<Cell>& cells, int width, int height) {
  Picture picture(static_cast<std::size_t>(height), std::string(static_cast<std::size_t>(width), '.'));
  for (const Cell cell : cells) {
    picture.at(static_cast<std::size_t>(cell.row)).at(static_cast<std::size_t>(cell.column)) = '#';
  }
  return picture;
}

void add(std::vector<Cell>& all, const std::vector<Cell>& cells) {
  all.insert(all.end(), cells.begin(), cells.end());
}

// Column c becomes `columns` - c.
std::vector<Cell> mirrored(std::vector<Cell> cells, int columns) {
  for (Cell& cell : cells) {
    cell.column = columns - cell.column;
  }
  std::ranges::sort(cells);
  return cells;
}

// Stitches of a line that have an equally near neighbour: there two rasters may choose differently.
bool has_even_choice(int across, int up) {
  const int length = std::max(std::abs(across), std::abs(up));
  const int rise = std::min(std::abs(across), std::abs(up));
  for (int step = 1; step < length; ++step) {
    if ((2 * step * rise) % (2 * length) == length) {
      return true;
    }
  }
  return false;
}

} // namespace

TEST_SUITE("shapes") {
  TEST_CASE("a line has one stitch in every column; of two equally near, the lower") {
    CHECK(picture_of(line_cells({0, 0}, {4, 2}), 5, 3) == Picture{"##...", "..##.", "....#"});
    CHECK(picture_of(line_cells({0, 2}, {4, 0}), 5, 3) == Picture{"...##", ".##..", "#...."});
    CHECK(line_cells({3, 5}, {3, 5}) == std::vector<Cell>{{3, 5}});
    CHECK(picture_of(line_cells({0, 0}, {3, 3}), 4, 4) == Picture{"#...", ".#..", "..#.", "...#"});
  }

  TEST_CASE("a line is the same in both directions, and lies as it lies elsewhere") {
    Dice dice(11);
    for (int turn = 0; turn < 2000; ++turn) {
      const Cell from{dice.throw_one(60) - 30, dice.throw_one(60) - 30};
      const Cell to{dice.throw_one(60) - 30, dice.throw_one(60) - 30};
      const auto line = line_cells(from, to);
      REQUIRE(line == line_cells(to, from));
      auto moved = line_cells({from.column - 77, from.row + 31}, {to.column - 77, to.row + 31});
      for (Cell& cell : moved) {
        cell = {cell.column + 77, cell.row - 31};
      }
      REQUIRE(line == moved);
      const int across = std::abs(to.column - from.column);
      const int up = std::abs(to.row - from.row);
      REQUIRE(std::ssize(line) == std::max(across, up) + 1);
      if (across >= up) {
        REQUIRE(line_cells({to.column, from.row}, {from.column, to.row}) == mirrored(line, from.column + to.column));
      }
    }
  }

  // The lines of netpbm's ppmdraw; ImageMagick's are filled shapes with gaps in some directions.
  TEST_CASE("lines as netpbm draws them, but for stitches with an equally near neighbour") {
    constexpr int reach = 11;
    constexpr int cell = 2 * reach + 3;
    std::vector<Cell> ours;
    std::string script;
    int row = 0;
    for (int up = -reach; up <= reach; ++up, ++row) {
      int column = 0;
      for (int across = -reach; across <= reach; ++across, ++column) {
        if (has_even_choice(across, up)) {
          continue;
        }
        const Cell from{column * cell + reach + 1, row * cell + reach + 1};
        const Cell to{from.column + across, from.row + up};
        add(ours, line_cells(from, to));
        script += fmt::format("line {} {} {} {}; ", from.column, from.row, to.column, to.row);
      }
    }
    const int size = cell * (2 * reach + 1);
    const auto theirs = test::picture_by(fmt::format("ppmmake white {} {} | ppmdraw -script='setcolor black; {}' | "
                                                     "ppmtopgm | pnmtopnm -plain",
                                                     size, size, script));
    CHECK(picture_of(ours, size, size) == theirs);
  }

  TEST_CASE("a freehand stroke has no gaps; a dot is a stroke") {
    const std::vector<Cell> points{{0, 0}, {3, 0}, {3, 2}, {3, 2}};
    CHECK(picture_of(stroke_cells(points), 4, 3) == Picture{"####", "...#", "...#"});
    CHECK(stroke_cells(std::span(points).first(1)) == std::vector<Cell>{{0, 0}});
    CHECK(stroke_cells({}).empty());
  }

  TEST_CASE("rectangles as ImageMagick draws them, outlines and filled") {
    std::vector<Cell> outlines;
    std::vector<Cell> filled;
    std::string script;
    for (int width = 1; width <= 9; ++width) {
      for (int height = 1; height <= 9; ++height) {
        const Cell corner{width * 12, height * 12};
        const Cell opposite{corner.column + width - 1, corner.row + height - 1};
        add(outlines, rectangle_cells(corner, opposite, Interior::outline));
        add(filled, rectangle_cells({opposite.column, corner.row}, {corner.column, opposite.row}, Interior::filled));
        script += fmt::format("rectangle {},{} {},{} ", corner.column, corner.row, opposite.column, opposite.row);
      }
    }
    const std::string blank = "-size 120x120 xc:white +antialias ";
    CHECK(picture_of(filled, 120, 120) == imagemagick(blank + "-draw '" + script + "'"));
    CHECK(picture_of(outlines, 120, 120) ==
          imagemagick(blank + "-draw '" + script + "' -negate -morphology EdgeIn Diamond -negate"));
  }

  TEST_CASE("small ellipses, by hand") {
    CHECK(picture_of(ellipse_cells({0, 0}, {6, 6}, Interior::outline), 7, 7) ==
          Picture{"..###..", ".#...#.", "#.....#", "#.....#", "#.....#", ".#...#.", "..###.."});
    CHECK(picture_of(ellipse_cells({5, 3}, {0, 0}, Interior::filled), 6, 4) ==
          Picture{".####.", "######", "######", ".####."});
    CHECK(picture_of(ellipse_cells({0, 0}, {3, 0}, Interior::outline), 4, 1) == Picture{"####"});
    CHECK(picture_of(ellipse_cells({0, 0}, {1, 1}, Interior::outline), 2, 2) == Picture{"##", "##"});
  }

  TEST_CASE("an ellipse reaches all four sides and is its own mirror image, both ways") {
    for (int width = 1; width <= 40; ++width) {
      for (int height = 1; height <= 40; ++height) {
        for (const auto interior : {Interior::outline, Interior::filled}) {
          const auto cells = ellipse_cells({0, 0}, {width - 1, height - 1}, interior);
          std::set<int> columns;
          std::set<int> rows;
          for (const Cell cell : cells) {
            columns.insert(cell.column);
            rows.insert(cell.row);
          }
          REQUIRE(std::ssize(columns) == width);
          REQUIRE(std::ssize(rows) == height);
          auto left_right = cells;
          auto upside_down = cells;
          for (std::size_t index = 0; index < cells.size(); ++index) {
            left_right[index].column = width - 1 - cells[index].column;
            upside_down[index].row = height - 1 - cells[index].row;
          }
          std::ranges::sort(left_right);
          std::ranges::sort(upside_down);
          REQUIRE(left_right == cells);
          REQUIRE(upside_down == cells);
        }
      }
    }
  }

  // ImageMagick draws a filled ellipse with the half pixel of a hair line around it, so one of radius r - 1/2 covers
  // the pixels up to r. It goes round in straight pieces, which shows at one pixel a stitch where a centre is nearer to
  // the curve than 0.08 of a stitch; in these sizes none is.
  TEST_CASE("circles as ImageMagick draws them, outlines and filled") {
    std::vector<Cell> outlines;
    std::vector<Cell> filled;
    std::string script;
    for (const int size : {2, 3, 4, 5, 6, 7, 8, 11, 12, 13, 15, 16, 18, 23, 24}) {
      const Cell corner{(size % 5) * 26 + 1, (size / 5) * 26 + 1};
      const Cell opposite{corner.column + size - 1, corner.row + size - 1};
      add(outlines, ellipse_cells(corner, opposite, Interior::outline));
      add(filled, ellipse_cells(corner, opposite, Interior::filled));
      const double radius = (size - 1) / 2.0;
      script += fmt::format("ellipse {},{} {},{} 0,360 ", corner.column + radius, corner.row + radius, radius, radius);
    }
    const std::string blank = "-size 132x132 xc:white +antialias ";
    CHECK(picture_of(filled, 132, 132) == imagemagick(blank + "-draw '" + script + "'"));
    CHECK(picture_of(outlines, 132, 132) ==
          imagemagick(blank + "-draw '" + script + "' -negate -morphology EdgeIn Diamond -negate"));
  }

  // A stitch belongs to the ellipse where its centre does, so the reference is drawn large and sampled at the centres;
  // centres nearer to the curve than the large pixels can tell may fall either way. (One that is 2 stitches wide can
  // only reach its ends as a rectangle, so it isn't compared.)
  TEST_CASE("ellipses of all proportions, as ImageMagick draws them enlarged") {
    constexpr int zoom = 15;
    for (int height = 3; height <= 18; height += 3) {
      std::string script;
      constexpr int pitch = 25;
      for (int width = 2; width <= 24; ++width) {
        const double centre = (width - 2) * pitch * zoom + width * zoom / 2.0;
        script += fmt::format("ellipse {},{} {},{} 0,360 ", centre - 0.5, height * zoom / 2.0 - 0.5,
                              width * zoom / 2.0 - 0.5, height * zoom / 2.0 - 0.5);
      }
      const auto theirs = imagemagick(fmt::format("-size {}x{} xc:white +antialias -draw '{}' -sample {}x{}",
                                                  23 * pitch * zoom, height * zoom, script, 23 * pitch, height));
      std::string outermost;
      for (int width = 2; width <= 24; ++width) {
        outermost += fmt::format("ellipse {},{} {},{} 0,360 ", (width - 2) * pitch + (width - 1) / 2.0,
                                 (height - 1) / 2.0, (width - 1) / 2.0, (height - 1) / 2.0);
      }
      const auto reaching =
          imagemagick(fmt::format("-size {}x{} xc:white +antialias -draw '{}'", 23 * pitch, height, outermost));
      int compared = 0;
      for (int width = 3; width <= 24; ++width) {
        const auto ours = picture_of(ellipse_cells({0, 0}, {width - 1, height - 1}, Interior::filled), width, height);
        for (int row = 0; row < height; ++row) {
          for (int column = 0; column < width; ++column) {
            const double across = (2.0 * column + 1 - width) / width;
            const double up = (2.0 * row + 1 - height) / height;
            const double from_curve = std::abs(std::sqrt(across * across + up * up) - 1) * std::min(width, height) / 2;
            if (from_curve > 1.0 / zoom) {
              CAPTURE(width);
              CAPTURE(height);
              const auto there = static_cast<std::size_t>((width - 2) * pitch + column);
              const char stitch = ours[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)];
              if (stitch != theirs[static_cast<std::size_t>(row)][there]) {
                // So that a flat ellipse reaches its sides.
                REQUIRE(stitch == '#');
                REQUIRE(reaching[static_cast<std::size_t>(row)][there] == '#');
              }
              ++compared;
            }
          }
        }
      }
      CHECK(compared > 23 * 13 * height * 9 / 10);
    }
  }

  TEST_CASE("a shape across the join comes in at the other edge, below row 1 from the top") {
    const Grid repeat(4, 3);
    const auto cells = on_repeat(rectangle_cells({3, 2}, {4, 3}, Interior::filled), repeat);
    CHECK(cells == std::vector<Cell>{{0, 0}, {0, 2}, {3, 0}, {3, 2}});
    CHECK(on_repeat(line_cells({-1, -1}, {-1, -1}), repeat) == std::vector<Cell>{{3, 2}});
    CHECK(on_repeat(line_cells({-9, 1}, {9, 1}), repeat).size() == 4);
  }
}

TEST_SUITE("flood fill") {
  TEST_CASE("round the edges, not through corners") {
    const auto repeat = test::drawn({"..#..", "..#..", "###..", "..#.."}).grid;
    CHECK(flood_cells(repeat, {0, 0}).size() == 14);
    const auto corners = test::drawn({"#.#", ".#.", "#.#"}).grid;
    CHECK(flood_cells(corners, {1, 1}) == std::vector<Cell>{{1, 1}});
    CHECK(flood_cells(corners, {0, 0}).size() == 4);
    CHECK(flood_cells(corners, {3, -3}).size() == 4);
  }

  TEST_CASE("as ImageMagick fills it on a plane of repeats large enough for every way round") {
    for (int seed = 1; seed <= 24; ++seed) {
      Dice dice(static_cast<std::uint64_t>(seed));
      CAPTURE(seed);
      const int width = 2 + dice.throw_one(7);
      const int height = 2 + dice.throw_one(7);
      Grid repeat(width, height);
      for (int count = 0; count < width * height * 2 / 5; ++count) {
        repeat.set(dice.throw_one(width), dice.throw_one(height), true);
      }
      const Cell start{dice.throw_one(width), dice.throw_one(height)};
      constexpr int times = 13; // repeats each way: a way through 8 × 8 stitches leaves no more than 6 on either side
      Picture plane(static_cast<std::size_t>(height * times),
                    std::string(static_cast<std::size_t>(width * times), '.'));
      for (int row = 0; row < height * times; ++row) {
        for (int column = 0; column < width * times; ++column) {
          if (repeat.at(column % width, row % height)) {
            plane[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)] = '#';
          }
        }
      }
      const test::PictureFile file(plane);
      const auto filled =
          imagemagick(fmt::format("{} -fill gray50 -draw 'color {},{} floodfill'", file.argument(),
                                  start.column + width * (times / 2), start.row + height * (times / 2)));
      std::set<Cell> theirs;
      for (int row = 0; row < height * times; ++row) {
        for (int column = 0; column < width * times; ++column) {
          if (filled[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)] == '+') {
            theirs.insert({column % width, row % height});
          }
        }
      }
      CHECK(flood_cells(repeat, start) == std::vector<Cell>(theirs.begin(), theirs.end()));
    }
  }
}
