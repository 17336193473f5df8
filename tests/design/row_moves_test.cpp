// Rows and columns moved, with the yarns of the place or their own, and a new size at one of nine places.
#include "design/edits.hpp"
#include "support/builders.hpp"

#include <doctest/doctest.h>
#include <memory>

using namespace punchwright;
using test::drawn;
using Lines = std::vector<std::string>;

namespace {

Lines lines(const Document& document) {
  Lines text;
  for (int row = document.grid.height() - 1; row >= 0; --row) {
    text.push_back(document.grid.row_text(row));
  }
  return text;
}

// Five rows, told apart by their stitch: rows 1 and 2 in A with B, rows 3 to 5 in C with D.
Document five_rows() {
  Document document = drawn({"....#", "...#.", "..#..", ".#...", "#...."});
  document.yarns = test::five_yarns();
  document.bands = {Band{2, 'A', 'B', 4}, Band{3, 'C', 'D', std::nullopt}};
  return document;
}

Document moved(Document document, const Edit& edit) {
  const auto change = apply_edit(document, edit);
  REQUIRE(change.ok());
  return document;
}

std::string refused(Document document, const Edit& edit) {
  const auto change = apply_edit(document, edit);
  REQUIRE_FALSE(change.ok());
  return change.error().text();
}

const std::vector<Band> as_before = five_rows().bands;

} // namespace

TEST_SUITE("moved rows and columns") {
  TEST_CASE("a row moved within its band leaves the bands as they were, to the band's edges too") {
    CHECK(lines(moved(five_rows(), MoveRows{4, 1, 3})) == Lines{"...#.", "....#", "..#..", ".#...", "#...."});
    CHECK(moved(five_rows(), MoveRows{4, 1, 3}).bands == as_before);
    CHECK(moved(five_rows(), MoveRows{4, 1, 2}).bands == as_before);
    CHECK(moved(five_rows(), MoveRows{2, 1, 4}).bands == as_before);
    CHECK(moved(five_rows(), MoveRows{0, 1, 1}).bands == as_before);
    CHECK(lines(moved(five_rows(), MoveRows{2, 2, 3})) == Lines{"...#.", "..#..", "....#", ".#...", "#...."});
  }

  TEST_CASE("a row moved to another band takes on the yarns of where it lands") {
    const Document up = moved(five_rows(), MoveRows{0, 1, 3});
    CHECK(lines(up) == Lines{"....#", "#....", "...#.", "..#..", ".#..."});
    CHECK(up.bands == std::vector{Band{1, 'A', 'B', 4}, Band{4, 'C', 'D', std::nullopt}});
    const Document down = moved(five_rows(), MoveRows{3, 2, 0});
    CHECK(lines(down) == Lines{"..#..", ".#...", "#....", "....#", "...#."});
    CHECK(down.bands == std::vector{Band{4, 'A', 'B', 4}, Band{1, 'C', 'D', std::nullopt}});
  }

  TEST_CASE("rows of two bands, set down between bands, join the band below; a band without rows goes") {
    Document document = five_rows();
    document.bands = {Band{1, 'A', 'B', std::nullopt}, Band{2, 'C', 'D', std::nullopt},
                      Band{2, 'E', 'A', std::nullopt}};
    const Document result = moved(document, MoveRows{0, 2, 1});
    CHECK(lines(result) == Lines{"....#", "...#.", ".#...", "#....", "..#.."});
    CHECK(result.bands == std::vector{Band{3, 'C', 'D', std::nullopt}, Band{2, 'E', 'A', std::nullopt}});
  }

  TEST_CASE("rows moved with their own yarns split and join bands") {
    const Document result = moved(five_rows(), MoveRows{0, 2, 1, MovedYarns::their_own});
    CHECK(lines(result) == Lines{"....#", "...#.", ".#...", "#....", "..#.."});
    CHECK(result.bands ==
          std::vector{Band{1, 'C', 'D', std::nullopt}, Band{2, 'A', 'B', 4}, Band{2, 'C', 'D', std::nullopt}});
  }

  TEST_CASE("a row with contrast is refused by a band of one yarn, not so with its own yarns") {
    Document document = five_rows();
    document.grid.set_row_text(0, ".....");
    document.bands = {Band{1, 'A', std::nullopt, std::nullopt}, Band{4, 'A', 'B', std::nullopt}};
    CHECK(
        refused(document, MoveRows{4, 1, 0}) ==
        "row 5 has contrast stitches, and the band where it lands has one yarn; give that band a contrast yarn first, "
        "or move the row with its own yarns");
    CHECK(moved(document, MoveRows{4, 1, 0, MovedYarns::their_own}).bands.size() == 3);
  }

  TEST_CASE("a comment goes with its row") {
    Document document = five_rows();
    document.extras.comments_after["repeat.rows.1"] = " # the beak";
    CHECK(moved(document, MoveRows{0, 1, 4}).extras.comments_after ==
          std::map<std::string, std::string>{{"repeat.rows.5", " # the beak"}});
  }

  TEST_CASE("columns") {
    CHECK(lines(moved(drawn({"##..."}), MoveColumns{0, 2, 3})) == Lines{"...##"});
    CHECK(lines(moved(drawn({"..#.#"}), MoveColumns{4, 1, 0})) == Lines{"#..#."});
  }

  TEST_CASE("places that aren't there") {
    CHECK(refused(five_rows(), MoveRows{4, 2, 0}) ==
          "rows 5 to 6 don't exist in a drawing of 5 stitches and 5 rows; choose rows 1 to 5");
    CHECK(refused(five_rows(), MoveRows{0, 2, 4}) ==
          "rows 1 to 2 can't be moved to 5; the first of them can stand at 1 to 4");
    CHECK(refused(five_rows(), MoveColumns{0, 1, -1}) ==
          "columns 1 to 1 can't be moved to 0; the first of them can stand at 1 to 5");
    CHECK(apply_edit(*std::make_unique<Document>(five_rows()), MoveRows{0, 5, 0})->nothing());
  }
}

TEST_SUITE("a new size") {
  TEST_CASE("larger, at each of the nine places; an odd rest of the middle goes right and up") {
    const Document dot = drawn({"#"});
    const auto at = [&](AcrossAnchor across, UpAnchor up) { return lines(moved(dot, Resize{4, 3, across, up})); };
    CHECK(at(AcrossAnchor::left, UpAnchor::bottom) == Lines{"....", "....", "#..."});
    CHECK(at(AcrossAnchor::middle, UpAnchor::bottom) == Lines{"....", "....", ".#.."});
    CHECK(at(AcrossAnchor::right, UpAnchor::bottom) == Lines{"....", "....", "...#"});
    CHECK(at(AcrossAnchor::left, UpAnchor::middle) == Lines{"....", "#...", "...."});
    CHECK(at(AcrossAnchor::middle, UpAnchor::middle) == Lines{"....", ".#..", "...."});
    CHECK(at(AcrossAnchor::right, UpAnchor::middle) == Lines{"....", "...#", "...."});
    CHECK(at(AcrossAnchor::left, UpAnchor::top) == Lines{"#...", "....", "...."});
    CHECK(at(AcrossAnchor::middle, UpAnchor::top) == Lines{".#..", "....", "...."});
    CHECK(at(AcrossAnchor::right, UpAnchor::top) == Lines{"...#", "....", "...."});
  }

  TEST_CASE("smaller, from the middle, and back, keeps the middle where it was") {
    const Document document = drawn({"....", ".##.", "#..#", "...."});
    const Document small = moved(document, Resize{2, 2, AcrossAnchor::middle, UpAnchor::middle});
    CHECK(lines(small) == Lines{"##", ".."});
    CHECK(lines(moved(small, Resize{4, 4, AcrossAnchor::middle, UpAnchor::middle})) ==
          Lines{"....", ".##.", "....", "...."});
    CHECK(lines(moved(drawn({"#.##."}), Resize{2, 1, AcrossAnchor::middle, UpAnchor::middle})) == Lines{".#"});
  }

  TEST_CASE("new rows join the nearest band, cut rows leave theirs") {
    CHECK(moved(five_rows(), Resize{5, 8, AcrossAnchor::left, UpAnchor::middle}).bands ==
          std::vector{Band{3, 'A', 'B', 4}, Band{5, 'C', 'D', std::nullopt}});
    CHECK(moved(five_rows(), Resize{5, 6, AcrossAnchor::left, UpAnchor::top}).bands.front().rows == 3);
    CHECK(moved(five_rows(), Resize{5, 2, AcrossAnchor::left, UpAnchor::top}).bands ==
          std::vector{Band{2, 'C', 'D', std::nullopt}});
  }

  TEST_CASE("a drawing of another size doesn't replace this one") {
    CHECK(refused(five_rows(), Redraw{Grid(5, 4), "redraw"}) ==
          "a drawing of 5 stitches and 4 rows doesn't replace one of 5 and 5; change the size first");
    CHECK(name_of(Redraw{Grid(5, 4), "turn"}) == "turn");
  }
}
