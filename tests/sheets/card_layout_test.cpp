// Where the holes of a card lie, in millimetres, against numbers worked out by hand.
#include "card_designs.hpp"
#include "sheets/card_layout.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <set>

using namespace punchwright;

namespace {

CardLayout layout_of(const Document& document, const Profile& profile, std::size_t card = 0) {
  const auto rows = rows_to_knit(document, profile);
  return {document, profile, rows, card_plan(document, *profile.card, rows).cards.at(card)};
}

long count(const CardLayout& layout, HoleKind kind) {
  return std::ranges::count(layout.holes(), kind, &CardHole::kind);
}

const CardHole* hole_at(const CardLayout& layout, int row, int column) {
  const auto found = std::ranges::find_if(layout.holes(), [&](const CardHole& hole) {
    return hole.kind == HoleKind::pattern && hole.row == row && hole.column == column;
  });
  return found == layout.holes().end() ? nullptr : &*found;
}

// One contrast stitch, in the leftmost drawn column of row 1: the card's last column, since the drawing runs from right
// to left along the bed.
Document one_stitch() {
  Document document = slanting_design(10);
  document.grid = Grid(24, 10);
  document.grid.set(0, 0, true);
  return document;
}

} // namespace

TEST_CASE("a card has two fully punched rows at each end, and a hole for every contrast stitch") {
  const auto layout = layout_of(slanting_design(10), card_machine());
  CHECK(count(layout, HoleKind::overlap) == 4 * 24);
  CHECK(count(layout, HoleKind::pattern) == 10 * 8);
  CHECK(layout.unpunched().size() == 10 * 16);
  CHECK(count(layout, HoleKind::clip) == 8);
  CHECK(layout.lines() == 14);
}

TEST_CASE("the sheet is as high as its rows and the free strip at both ends") {
  const auto layout = layout_of(slanting_design(10), card_machine());
  CHECK(layout.width() == doctest::Approx(142.0));
  CHECK(layout.height() == doctest::Approx(2 * 12.5 + 13 * 5.0)); // 10 rows and 4 of overlap: 13 steps of 5 mm
}

TEST_CASE("row 1 lies lowest, above two overlap rows") {
  const auto layout = layout_of(slanting_design(10), card_machine());
  CHECK(layout.y_of_line(layout.line_of(1)) == doctest::Approx(layout.height() - 12.5 - 2 * 5.0));
  CHECK(layout.y_of_line(layout.line_of(10)) == doctest::Approx(12.5 + 2 * 5.0));
}

TEST_CASE("column 1 lies left on a face that shows the purl side") {
  const auto layout = layout_of(one_stitch(), card_machine());
  CHECK(layout.x_of_column(1) == doctest::Approx(19.25));
  CHECK(layout.x_of_column(24) == doctest::Approx(19.25 + 23 * 4.5));
  REQUIRE(hole_at(layout, 1, 24) != nullptr);
  CHECK(hole_at(layout, 1, 24)->centre.x == doctest::Approx(142.0 - 19.25));
  CHECK(count(layout, HoleKind::pattern) == 1);
}

TEST_CASE("column 1 lies right on a face that shows the knit side") {
  Profile profile = card_machine();
  profile.card->face = CardFace::as_knit_side;
  const auto layout = layout_of(one_stitch(), profile);
  CHECK(layout.x_of_column(1) == doctest::Approx(142.0 - 19.25));
  REQUIRE(hole_at(layout, 1, 24) != nullptr);
  CHECK(hole_at(layout, 1, 24)->centre.x == doctest::Approx(19.25));
}

TEST_CASE("a card that is fed by its other end is turned by half a turn") {
  Profile profile = card_machine();
  const auto upright = layout_of(slanting_design(10), profile);
  profile.card->turned = true;
  const auto turned = layout_of(slanting_design(10), profile);
  REQUIRE(upright.holes().size() == turned.holes().size());
  for (const CardHole& hole : upright.holes()) {
    const bool found = std::ranges::any_of(turned.holes(), [&](const CardHole& other) {
      return other.kind == hole.kind && other.row == hole.row && other.column == hole.column &&
             std::abs(other.centre.x - (142.0 - hole.centre.x)) < 1e-9 &&
             std::abs(other.centre.y - (90.0 - hole.centre.y)) < 1e-9;
    });
    CHECK(found);
  }
}

TEST_CASE("where a hole means main, the main stitches are punched, in plain rows all of them") {
  Profile profile = card_machine();
  profile.card->hole = HoleMeans::main;
  Document document = slanting_design(10);
  for (int column = 0; column < 24; ++column) {
    document.grid.set(column, 4, false);
  }
  const auto layout = layout_of(document, profile);
  CHECK(count(layout, HoleKind::pattern) == 9 * 16 + 24);
}

TEST_CASE("a narrow drawing is repeated over the card's columns") {
  Document document = blank_document(4, 3);
  document.bands = {{3, 'A', 'B', {}}};
  document.grid.set(0, 0, true);
  const auto layout = layout_of(document, card_machine());
  CHECK(count(layout, HoleKind::pattern) == 6);
  for (const int column : {4, 8, 12, 16, 20, 24}) {
    CHECK(hole_at(layout, 1, column) != nullptr);
  }
}

TEST_CASE("feed holes run down both sides, level with the rows, and leave clip holes and the sheet's ends alone") {
  const auto layout = layout_of(slanting_design(10), card_machine());
  // 90 mm of card: 2.5, 7.5 … 87.5 mm, 18 places on each side; the clips at 6 mm from the side and 5 mm from the ends
  // take two of them at each end.
  CHECK(count(layout, HoleKind::feed) == 2 * (18 - 4));
  std::multiset<double> sides;
  for (const CardHole& hole : layout.holes()) {
    if (hole.kind == HoleKind::feed) {
      sides.insert(hole.centre.x);
      const double steps = (layout.y_of_line(0) - hole.centre.y) / 5.0;
      CHECK(steps == doctest::Approx(std::round(steps)));
    }
  }
  CHECK(sides.count(6.0) == 14);
  CHECK(sides.count(136.0) == 14);
}

TEST_CASE("no hole touches another, on any built-in card") {
  for (const Profile& profile : built_in_profiles()) {
    if (!profile.card) {
      continue;
    }
    CAPTURE(profile.name);
    Document document = blank_document(profile.card->repeat, 5);
    document.bands = {{5, 'A', 'B', {}}};
    const auto layout = layout_of(document, profile);
    for (std::size_t one = 0; one < layout.holes().size(); ++one) {
      const CardHole& hole = layout.holes()[one];
      CHECK(hole.centre.x - hole.diameter / 2 > 0);
      CHECK(hole.centre.x + hole.diameter / 2 < layout.width());
      CHECK(hole.centre.y - hole.diameter / 2 > 0);
      CHECK(hole.centre.y + hole.diameter / 2 < layout.height());
      for (std::size_t two = one + 1; two < layout.holes().size(); ++two) {
        const CardHole& other = layout.holes()[two];
        const double apart = std::hypot(hole.centre.x - other.centre.x, hole.centre.y - other.centre.y);
        CHECK(apart >= (hole.diameter + other.diameter) / 2);
      }
    }
  }
}

TEST_CASE("a card that is longer than a blank is split, and rows count on") {
  const auto first = layout_of(slanting_design(100), card_machine(), 0);
  const auto second = layout_of(slanting_design(100), card_machine(), 1);
  CHECK(first.last_row() == 60);
  CHECK(second.first_row() == 61);
  CHECK(second.last_row() == 100);
  CHECK(hole_at(second, 61, 24) != nullptr); // drawn column 0 of row 60: (0 + 60) % 3 == 0
  CHECK(count(second, HoleKind::overlap) == 4 * 24);
}

TEST_CASE("a short circuit is repeated until the loop can be joined, and its rows count on") {
  Document document = slanting_design(10);
  document.card.loop = true;
  const auto layout = layout_of(document, card_machine());
  CHECK(layout.last_row() == 40); // 4 × 10 reach the 36 rows that a loop needs
  CHECK(count(layout, HoleKind::pattern) == 40 * 8);
  for (int column = 1; column <= 24; ++column) {
    CHECK((hole_at(layout, 3, column) != nullptr) == (hole_at(layout, 33, column) != nullptr));
  }
}
