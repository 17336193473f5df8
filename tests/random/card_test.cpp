// What must follow from a change of the drawing, on random designs: a mirrored design has the mirrored card, and moving
// anything by a whole repeat changes nothing.
#include "design/edits.hpp"
#include "design/repeat_file.hpp"
#include "plan/plan.hpp"
#include "proof/proof.hpp"
#include "random/random_design.hpp"

#include <algorithm>
#include <doctest/doctest.h>
#include <memory>

using namespace punchwright;
using namespace punchwright::test;

namespace {

// Stitch by stitch, and not by the program's own way to mirror.
Document seen_in_a_mirror(const Document& document) {
  Document mirrored = document;
  for (int row = 0; row < document.grid.height(); ++row) {
    std::string text = document.grid.row_text(row);
    std::reverse(text.begin(), text.end());
    mirrored.grid.set_row_text(row, text);
  }
  mirrored.marks = {};
  return mirrored;
}

// The rows whose stitches are worked out: each drawn one.
std::vector<RowToKnit> drawn_rows(const RowsToKnit& rows) {
  std::vector<RowToKnit> drawn;
  std::ranges::copy_if(rows.rows, std::back_inserter(drawn), [](const RowToKnit& row) { return row.drawn >= 0; });
  return drawn;
}

std::vector<int> mirrored_columns(std::vector<int> columns, int repeat) {
  for (int& column : columns) {
    column = repeat + 1 - column;
  }
  std::ranges::reverse(columns);
  return columns;
}

// Designs on a machine with a card, of a width that the card holds.
template <class Examine> std::uint64_t for_each_card(Examine examine) {
  std::uint64_t examined = 0;
  for (std::uint64_t seed = seeds().first; seed < seeds().end(); ++seed) {
    RandomDesign design = random_design(seed);
    if (design.profile.card && design.profile.card->repeat % design.document.grid.width() == 0) {
      CAPTURE(seed);
      examine(design, seed);
      ++examined;
    }
  }
  return examined;
}

// A drawing of the given size, filled with as many whole repeats as fit.
Grid repeated(const Grid& grid, int across, int up) {
  Grid result(grid.width() * across, grid.height() * up);
  for (int row = 0; row < result.height(); ++row) {
    for (int column = 0; column < result.width(); ++column) {
      result.set(column, row, grid.at(column % grid.width(), row % grid.height()));
    }
  }
  return result;
}

} // namespace

TEST_CASE("a mirrored design has the mirrored card, and mirrored rows on the bed's middle") {
  const std::uint64_t examined = for_each_card([](RandomDesign design, std::uint64_t seed) {
    Document& document = design.document;
    const int repeat = design.profile.card->repeat;
    document.piece.first_needle.reset();
    document.piece.stitches = 2 * (1 + static_cast<int>(seed % 40));
    const Document mirrored = seen_in_a_mirror(document);
    const RowsToKnit rows = rows_to_knit(document, design.profile);
    REQUIRE(rows_to_knit(mirrored, design.profile).rows == rows.rows);
    for (int row = 1; row <= rows.circuit; ++row) {
      REQUIRE(punched_columns(mirrored, design.profile, rows, row) ==
              mirrored_columns(punched_columns(document, design.profile, rows, row), repeat));
    }
    for (const RowToKnit& row : drawn_rows(rows)) {
      std::vector<bool> stitches = stitches_in_row(document, design.profile, row);
      std::reverse(stitches.begin(), stitches.end());
      REQUIRE(stitches_in_row(mirrored, design.profile, row) == stitches);
    }
  });
  CHECK(examined > seeds().count / 4);
}

TEST_CASE("the holes on the sheets of a mirrored design are the mirrored holes") {
  std::uint64_t read = 0;
  constexpr std::uint64_t share = 25; // of the designs: each lays out every sheet
  for_each_card([&read](const RandomDesign& design, std::uint64_t seed) {
    if (seed % share != 0) {
      return;
    }
    const auto card = card_on_sheets(design.document, design.profile);
    const auto mirrored = card_on_sheets(seen_in_a_mirror(design.document), design.profile);
    REQUIRE(card);
    REQUIRE(mirrored);
    REQUIRE(mirrored->rows() == card->rows());
    REQUIRE(mirrored->columns() == card->columns());
    for (int row = 1; row <= card->rows(); ++row) {
      for (int column = 1; column <= card->columns(); ++column) {
        REQUIRE(mirrored->at(row, card->columns() + 1 - column) == card->at(row, column));
      }
    }
    ++read;
  });
  CHECK(read > seeds().count / share / 8);
}

TEST_CASE("shifting the drawing by whole repeats changes nothing") {
  std::uint64_t shifted = 0;
  for (std::uint64_t seed = seeds().first; seed < seeds().end(); ++seed) {
    CAPTURE(seed);
    Dice dice(seed);
    Document document = random_design(seed).document;
    const std::string before = write_repeat(document);
    const int columns = document.grid.width() * (dice.throw_one(7) - 3);
    const int rows = document.grid.height() * (dice.throw_one(7) - 3);
    const auto at_once = apply_edit(document, Shift{columns, rows});
    REQUIRE(at_once);
    REQUIRE(at_once->nothing());
    // In two parts, of which the first may be refused: no contrast comes into a band of one yarn.
    const Shift part{dice.throw_one(400) - 200, dice.throw_one(100) - 50};
    if (apply_edit(document, part)) {
      REQUIRE(apply_edit(document, Shift{columns - part.columns, rows - part.rows}));
      ++shifted;
    }
    REQUIRE(write_repeat(document) == before);
  }
  CHECK(shifted > seeds().count / 4);
}

TEST_CASE("a drawing that holds its repeat twice has the same card, needles and rows") {
  const std::uint64_t examined = for_each_card([](const RandomDesign& design, std::uint64_t) {
    const Document& document = design.document;
    const RowsToKnit rows = rows_to_knit(document, design.profile);
    Document wider = document;
    wider.grid = repeated(document.grid, 2, 1);
    wider.piece.stitches = stitches_of(document);
    wider.piece.first_needle = first_needle_of(document);
    REQUIRE(rows_to_knit(wider, design.profile).rows == rows.rows);
    Document moved = wider; // on the bed, by a whole repeat
    moved.piece.first_needle->position += document.grid.width();
    const bool holds_it = design.profile.card->repeat % wider.grid.width() == 0;
    for (const RowToKnit& row : drawn_rows(rows)) {
      const std::vector<bool> stitches = stitches_in_row(document, design.profile, row);
      if (holds_it) {
        REQUIRE(stitches_in_row(wider, design.profile, row) == stitches);
        REQUIRE(punched_columns(wider, design.profile, rows, row.card_row) ==
                punched_columns(document, design.profile, rows, row.card_row));
      }
      moved.grid = document.grid;
      REQUIRE(stitches_in_row(moved, design.profile, row) == stitches);
    }
  });
  CHECK(examined > seeds().count / 4);
}

TEST_CASE("a drawing that holds its rows twice is knitted as the drawing knitted twice") {
  for (std::uint64_t seed = seeds().first; seed < seeds().end(); ++seed) {
    CAPTURE(seed);
    RandomDesign design = random_design(seed);
    Document& document = design.document;
    document.card.loop = false;
    Document taller = document;
    taller.grid = repeated(document.grid, 1, 2);
    taller.bands.insert(taller.bands.end(), document.bands.begin(), document.bands.end());
    document.piece.times *= 2;
    RowsToKnit twice = rows_to_knit(taller, design.profile);
    for (RowToKnit& row : twice.rows) {
      row.drawn = static_cast<std::int16_t>(row.drawn < 0 ? -1 : row.drawn % document.grid.height());
    }
    REQUIRE(twice.rows == rows_to_knit(document, design.profile).rows);
  }
}
