// Floats caught by hand, against trying every choice: fewest catches, then fewest pairs, then nearest the middle.
#include "mending/catches.hpp"
#include "mending/mend.hpp"
#include "rules/findings.hpp"
#include "support/builders.hpp"
#include "support/machines.hpp"

#include <algorithm>
#include <cstdlib>
#include <doctest/doctest.h>
#include <optional>
#include <tuple>

using namespace punchwright;
using test::Dice;
using test::drawn;

namespace {

using Rank = std::tuple<int, std::int64_t, std::int64_t>; // catches, pairs, squares

// A block of rows of the shape "contrast, then a float": all stitches but `contrast` are main.
Document block(Dice& dice, int width, int rows, int limit) {
  Document design = blank_document(width, rows);
  design.rules.longest_float = limit;
  design.piece.times = dice.heads() ? 2 : 1;
  for (int row = 0; row < rows; ++row) {
    bool colour = dice.heads();
    for (int column = 0; column < width; ++column) {
      colour = dice.throw_one(5) == 0 ? !colour : colour;
      design.grid.set(column, row, colour);
    }
  }
  return design;
}

int apart(int one, int another, int width) {
  const int distance = std::abs(one - another);
  return std::min(distance, width - distance);
}

// Worked out cell by cell; nothing where a part of one of the floats is too long.
std::optional<Rank> rank_of(const Document& design, const Grid& caught, const std::vector<DrawnFloat>& floats,
                            int limit) {
  const int width = design.grid.width();
  const int height = design.grid.height();
  Rank rank{0, 0, 0};
  for (const DrawnFloat& one : floats) {
    std::int64_t part = 0;
    for (int place = 0; place <= one.stitches; ++place) {
      if (place < one.stitches && !caught.at((one.first + place) % width, one.row)) {
        ++part;
        continue;
      }
      if (part > limit) {
        return std::nullopt;
      }
      std::get<0>(rank) += place < one.stitches ? 1 : 0;
      std::get<2>(rank) += part * part;
      part = 0;
    }
  }
  for (int row = 0; row < height; ++row) {
    const int above = (row + 1) % height;
    if (above == row || (above < row && design.piece.times == 1)) {
      continue;
    }
    for (int column = 0; column < width; ++column) {
      for (int other = 0; caught.at(column, row) && other < width; ++other) {
        std::get<1>(rank) += caught.at(other, above) && apart(column, other, width) <= 1 ? 1 : 0;
      }
    }
  }
  return rank;
}

std::vector<Cell> cells_of(const Document& design, const std::vector<DrawnFloat>& floats) {
  std::vector<Cell> cells;
  for (const DrawnFloat& one : floats) {
    for (int place = 0; place < one.stitches; ++place) {
      cells.push_back({(one.first + place) % design.grid.width(), one.row});
    }
  }
  return cells;
}

Rank best_by_trying(const Document& design, const Grid& staying, const std::vector<DrawnFloat>& floats, int limit) {
  const std::vector<Cell> cells = cells_of(design, floats);
  std::optional<Rank> best;
  for (std::uint32_t choice = 0; choice < (std::uint32_t{1} << cells.size()); ++choice) {
    Grid caught = staying;
    for (std::size_t place = 0; place < cells.size(); ++place) {
      caught.set(cells[place].column, cells[place].row, (choice >> place & 1U) != 0);
    }
    const auto rank = rank_of(design, caught, floats, limit);
    best = rank && (!best || *rank < *best) ? rank : best;
  }
  return *best;
}

} // namespace

TEST_CASE("small blocks: as few catches, as few pairs and as near the middle as by trying every choice") {
  int looked_at = 0;
  int with_pairs = 0;
  for (std::uint64_t seed = 1; looked_at < 400; ++seed) {
    Dice dice(seed);
    CAPTURE(seed);
    const int limit = 1 + dice.throw_one(3);
    Document design = block(dice, 3 + dice.throw_one(8), 1 + dice.throw_one(4), limit);
    std::vector<DrawnFloat> floats = floats_too_long(design, test::by_hand());
    if (floats.empty() || cells_of(design, floats).size() > 14) {
      continue;
    }
    Grid staying(design.grid.width(), design.grid.height());
    if (dice.heads()) { // one float has been caught before
      design.marks = catch_floats(design, test::by_hand(), {floats.back()}).marks;
      staying = design.marks.caught;
      floats.pop_back();
      CHECK(floats_too_long(design, test::by_hand()) == floats);
    }
    ++looked_at;
    const Caught caught = catch_floats(design, test::by_hand(), floats);
    const Rank best = best_by_trying(design, staying, floats, limit);
    CHECK(caught.proved);
    CHECK(Rank{caught.catches, caught.pairs, caught.squares} == best);
    Grid marks = caught.marks.caught.width() == 0 ? staying : caught.marks.caught;
    CHECK(rank_of(design, marks, floats, limit) == best);
    with_pairs += std::get<1>(best) > 0 ? 1 : 0;
    design.marks = caught.marks;
    CHECK(floats_too_long(design, test::by_hand()).empty());
    CHECK(mend(design.grid, mend_wishes(design, test::by_hand())).changed.empty());
  }
  CHECK(with_pairs > 20);
}

TEST_CASE("one float is caught in its middle, the next row's beside it, not above") {
  Document design = drawn({"#.......", "#.......", "#......."}); // seven stitches, a limit of 5: one catch
  design.piece.times = 1;
  const auto floats = floats_too_long(design, test::by_hand());
  REQUIRE(floats.size() == 3);
  const Caught caught = catch_floats(design, test::by_hand(), floats);
  CHECK(caught.catches == 3);
  CHECK(caught.pairs == 0);
  CHECK(caught.proved);
  CHECK(words_for_catches(catch_floats(design, test::by_hand(), {floats[0]}).marks.caught, 0) == "column 5");
}

TEST_CASE("accepted floats are no longer too long, and are not mended; caught after all, they are not accepted") {
  Document design = drawn({"#.......", "#......."});
  const auto floats = floats_too_long(design, test::by_hand());
  REQUIRE(floats.size() == 2);
  design.marks = accept_floats(design, {floats[1]});
  CHECK(floats_too_long(design, test::by_hand()) == std::vector{floats[0]});
  const Mended mended = mend(design.grid, mend_wishes(design, test::by_hand()));
  REQUIRE(mended.changed.size() == 1);
  CHECK(mended.changed[0].row == floats[0].row);
  design.marks = catch_floats(design, test::by_hand(), {floats[1]}).marks;
  CHECK(design.marks.accepted.width() == 0);
}

TEST_CASE("stitches that the document protects are never changed") {
  Document design = drawn({"#......."});
  for (int column = 3; column < 6; ++column) {
    set_mark(design.marks.kept, design.grid, column, 0, true);
  }
  const Mended mended = mend(design.grid, mend_wishes(design, test::by_hand()));
  REQUIRE(mended.changed.size() == 1);
  CHECK((mended.changed[0].column < 3 || mended.changed[0].column > 5));
}

TEST_CASE("a large drawing of long floats is caught whole") {
  Document design = blank_document(200, 300);
  for (int row = 0; row < 300; ++row) {
    design.grid.set(row * 7 % 200, row, true);
  }
  const Caught caught = catch_floats(design, test::by_hand(), floats_too_long(design, test::by_hand()));
  CHECK(caught.catches == 300 * (199 / 6));
  design.marks = caught.marks;
  CHECK(floats_too_long(design, test::by_hand()).empty());
}
