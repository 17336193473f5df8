// Every edit, and that each followed by its undo gives back the identical document.
#include "design/edits.hpp"
#include "design/history.hpp"
#include "design/step_words.hpp"
#include "support/any_edit.hpp"
#include "support/builders.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using test::any_edit;
using test::Dice;
using test::drawn;

namespace {

std::vector<std::string> lines(const Document& document) {
  std::vector<std::string> text;
  for (int row = document.grid.height() - 1; row >= 0; --row) {
    text.push_back(document.grid.row_text(row));
  }
  return text;
}

std::vector<std::string> after(Document document, const Edit& edit) {
  const auto change = apply_edit(document, edit);
  REQUIRE(change.ok());
  return lines(document);
}

using Lines = std::vector<std::string>;

Grid grid_of(const Lines& text) {
  return drawn(text).grid;
}

void check_bands_cover(const Document& document) {
  int rows = 0;
  for (const Band& band : document.bands) {
    CHECK(band.rows >= 1);
    rows += band.rows;
  }
  CHECK(rows == document.grid.height());
  for (int row = 0; row < document.grid.height(); ++row) {
    const bool two_yarns = document.bands[band_index_at(document, row)].contrast.has_value();
    CHECK((two_yarns || document.grid.all_main(row)));
  }
}

} // namespace

TEST_SUITE("edits") {
  TEST_CASE("set cells, fill and invert; an area goes round the edges") {
    CHECK(after(drawn({"...", "..."}), SetCells{{{0, 0}, {2, 1}}, true}) == Lines{"..#", "#.."});
    CHECK(after(drawn({"###", "###"}), SetCells{{{1, 1}}, false}) == Lines{"#.#", "###"});
    CHECK(after(drawn({"....", "....", "...."}), Fill{{{3, 2}, 2, 2}, true}) == Lines{"#..#", "....", "#..#"});
    CHECK(after(drawn({".#", "#."}), Invert{{{0, 0}, 2, 2}}) == Lines{"#.", ".#"});
  }

  TEST_CASE("what leaves at one edge comes in at the other") {
    CHECK(after(drawn({"#...", ".#.."}), Shift{1, 0}) == Lines{".#..", "..#."});
    CHECK(after(drawn({"#...", ".#.."}), Shift{-1, 0}) == Lines{"...#", "#..."});
    CHECK(after(drawn({"##..", "#...", "...."}), Shift{0, 1}) == Lines{"#...", "....", "##.."});
    CHECK(after(drawn({"#...", ".#.."}), Shift{4, -2}) == Lines{"#...", ".#.."});
  }

  TEST_CASE("mirrors") {
    CHECK(after(drawn({"##..", ".#.."}), MirrorLeftRight{}) == Lines{"..##", "..#."});
    CHECK(after(drawn({"##..", ".#.."}), MirrorUpsideDown{}) == Lines{".#..", "##.."});
  }

  TEST_CASE("turned upside down, rows keep their yarns, and asked-for plain rows their place between bands") {
    Document document = drawn({"#.", ".#", ".."});
    document.yarns = test::five_yarns();
    document.bands = {Band{1, 'A', 'B', 7}, Band{2, 'C', 'D', 3}};
    REQUIRE(apply_edit(document, MirrorUpsideDown{}).ok());
    CHECK(lines(document) == Lines{"..", ".#", "#."});
    CHECK(document.bands == std::vector{Band{2, 'C', 'D', 7}, Band{1, 'A', 'B', 3}});
  }

  TEST_CASE("inserted rows are all main and join the band below; below row 1, the lowest") {
    Document document = drawn({"##", "##"});
    document.yarns = test::five_yarns();
    document.bands = {Band{1, 'A', 'B', std::nullopt}, Band{1, 'C', 'D', std::nullopt}};
    Document between = document;
    REQUIRE(apply_edit(between, InsertRows{1, 2}).ok());
    CHECK(lines(between) == Lines{"##", "..", "..", "##"});
    CHECK(between.bands == std::vector{Band{3, 'A', 'B', std::nullopt}, Band{1, 'C', 'D', std::nullopt}});
    Document below = document;
    REQUIRE(apply_edit(below, InsertRows{0, 1}).ok());
    CHECK(below.bands.front().rows == 2);
    Document above = document;
    REQUIRE(apply_edit(above, InsertRows{2, 1}).ok());
    CHECK(above.bands.back().rows == 2);
  }

  TEST_CASE("a band without rows goes") {
    Document document = drawn({"#.", "..", ".#"});
    document.bands = {Band{1, 'A', 'B', std::nullopt}, Band{1, 'A', std::nullopt, std::nullopt},
                      Band{1, 'B', 'A', std::nullopt}};
    REQUIRE(apply_edit(document, DeleteRows{1, 1}).ok());
    CHECK(lines(document) == Lines{"#.", ".#"});
    CHECK(document.bands == std::vector{Band{1, 'A', 'B', std::nullopt}, Band{1, 'B', 'A', std::nullopt}});
  }

  TEST_CASE("duplicated rows lie above, with the yarns of the rows that they copy") {
    Document document = drawn({"..", "##", "#."});
    document.yarns = test::five_yarns();
    document.bands = {Band{1, 'A', 'B', 4}, Band{2, 'C', 'D', 5}};
    REQUIRE(apply_edit(document, DuplicateRows{0, 2}).ok());
    CHECK(lines(document) == Lines{"..", "##", "#.", "##", "#."});
    CHECK(document.bands == std::vector{Band{1, 'A', 'B', 4}, Band{1, 'C', 'D', 5}, Band{1, 'A', 'B', std::nullopt},
                                        Band{2, 'C', 'D', std::nullopt}});
  }

  TEST_CASE("columns: insert, delete, duplicate") {
    CHECK(after(drawn({"#.#"}), InsertColumns{1, 2}) == Lines{"#...#"});
    CHECK(after(drawn({"#.##"}), DeleteColumns{1, 2}) == Lines{"##"});
    CHECK(after(drawn({"#.."}), DuplicateColumns{0, 2}) == Lines{"#.#.."});
  }

  TEST_CASE("a new size keeps row 1 and column 1, and the top band takes new rows") {
    CHECK(after(drawn({"#.", ".#"}), Resize{3, 3}) == Lines{"...", "#..", ".#."});
    CHECK(after(drawn({"#.#", ".#."}), Resize{2, 1}) == Lines{".#"});
  }

  TEST_CASE("a paste goes round the edges") {
    CHECK(after(drawn({"...", "...", "..."}), Paste{{2, 2}, grid_of({"##", "#."})}) == Lines{"..#", "...", "#.#"});
  }

  TEST_CASE("refused, and the document as it was") {
    Document document = drawn({"#.", ".#"});
    const Document before = document;
    const auto message = [&](const Edit& edit) {
      const auto change = apply_edit(document, edit);
      CHECK_FALSE(change.ok());
      CHECK(document == before);
      return change.ok() ? std::string() : change.error().text();
    };
    CHECK(message(DeleteRows{0, 2}) == "the last row can't be deleted; leave one row at least");
    CHECK(message(DeleteColumns{0, 2}) == "the last column can't be deleted; leave one column at least");
    CHECK(message(DeleteRows{1, 2}) ==
          "rows 2 to 3 don't exist in a drawing of 2 stitches and 2 rows; choose rows 1 to 2");
    CHECK(message(Resize{201, 2}) ==
          "a drawing can't have 201 stitches and 2 rows; 1 to 200 stitches and 1 to 2000 rows");
    CHECK(message(InsertRows{0, 1999}) ==
          "a drawing can't have 2 stitches and 2001 rows; 1 to 200 stitches and 1 to 2000 rows");
    CHECK(message(SetCells{{{0, 5}}, true}) ==
          "stitch 1 of row 6 lies outside the drawing; stitches 1 to 2, rows 1 to 2");
    CHECK(message(ChangeBands{{Band{1, 'A', 'B', std::nullopt}}}) ==
          "the bands cover 1 rows, the drawing has 2; bands together cover every row");
    CHECK(message(ChangeBands{{Band{2, 'A', std::nullopt, std::nullopt}}}) ==
          "row 1 has contrast stitches; a band of one yarn has none: clear its rows first");
    CHECK(message(ChangeBands{{Band{2, 'A', 'Z', std::nullopt}}}) ==
          "a band knits with yarn 'Z', which isn't there; choose one of the yarns");
    Document fewer = document;
    fewer.yarns.pop_back();
    CHECK(message(ChangeSettings{fewer}) == "yarn 'B' is used by a band; give the band another yarn first");
  }

  TEST_CASE("contrast stitches are refused in a band of one yarn") {
    Document document = drawn({"..", ".#"});
    document.bands = {Band{1, 'A', 'B', std::nullopt}, Band{1, 'A', std::nullopt, std::nullopt}};
    const Document before = document;
    CHECK_FALSE(apply_edit(document, SetCells{{{0, 1}}, true}).ok());
    CHECK_FALSE(apply_edit(document, Shift{0, 1}).ok());
    CHECK(document == before);
    CHECK(apply_edit(document, Shift{1, 0}).ok());
  }

  TEST_CASE("an edit that changes nothing leaves nothing to undo") {
    Document document = drawn({"#.", ".#"});
    CHECK(apply_edit(document, SetCells{{{0, 1}}, true})->nothing());
    CHECK(apply_edit(document, Shift{2, 2})->nothing());
    CHECK(apply_edit(document, Resize{2, 2})->nothing());
    CHECK(apply_edit(document, ChangeSettings{document})->nothing());
    CHECK_FALSE(apply_edit(document, Shift{1, 0})->nothing());
  }

  TEST_CASE("marks go where their stitches go") {
    int moved = 0;
    for (std::uint64_t seed = 1; seed <= 4000; ++seed) {
      Dice dice(seed);
      CAPTURE(seed);
      Document document = blank_document(1 + dice.throw_one(70), 1 + dice.throw_one(9));
      for (int count = 0; count < 30; ++count) {
        document.grid.set(dice.throw_one(document.grid.width()), dice.throw_one(document.grid.height()), true);
      }
      document.marks.accepted = document.grid; // the marks are the drawing, so they must stay so
      const Edit edit = any_edit(dice, document);
      const bool draws = std::holds_alternative<SetCells>(edit) || std::holds_alternative<Fill>(edit) ||
                         std::holds_alternative<Invert>(edit) || std::holds_alternative<Redraw>(edit) ||
                         std::holds_alternative<Paste>(edit) || std::holds_alternative<ChangeBands>(edit);
      if (draws || !apply_edit(document, edit)) {
        continue;
      }
      ++moved;
      REQUIRE(document.marks.accepted == without_blank(document.grid));
    }
    CHECK(moved > 1500);
  }

  TEST_CASE("drawing leaves marks as they are, setting down takes those below away") {
    Document document = drawn({"#...", "..#."});
    document.marks.caught = document.grid;
    REQUIRE(apply_edit(document, Fill{{{0, 0}, 4, 1}, false}).ok());
    CHECK(columns_text(document.marks.caught, 0) == "3");
    REQUIRE(apply_edit(document, Paste{{3, 1}, grid_of({"##"})}).ok()); // round the edge
    CHECK(columns_text(document.marks.caught, 1).empty());
    CHECK(columns_text(document.marks.caught, 0) == "3");
    REQUIRE(apply_edit(document, Paste{{0, 0}, grid_of({"####"})}).ok());
    CHECK(document.marks.none());
    CHECK_FALSE(apply_edit(document, ChangeMarks{{Grid(3, 2), {}, {}}, "catch"}).ok());
  }

  TEST_CASE("any edit, undone, gives back the identical document; done again, the identical result") {
    int applied = 0;
    for (std::uint64_t seed = 1; seed <= 4000; ++seed) {
      Dice dice(seed);
      CAPTURE(seed);
      Document document = blank_document(1 + dice.throw_one(70), 1 + dice.throw_one(9));
      document.yarns = test::five_yarns();
      for (int count = 0; count < 30; ++count) {
        document.grid.set(dice.throw_one(document.grid.width()), dice.throw_one(document.grid.height()), true);
      }
      if (const int lower = dice.throw_one(document.grid.height()); lower > 0) {
        document.bands = {Band{lower, 'A', 'B', 1}, Band{document.grid.height() - lower, 'C', 'D', std::nullopt}};
      }
      if (dice.heads()) {
        document.marks = {document.grid, {}, document.grid};
      }
      const Document before = document;
      auto change = apply_edit(document, any_edit(dice, document));
      if (!change) {
        REQUIRE(document == before);
        continue;
      }
      ++applied;
      check_bands_cover(document);
      const Document result = document;
      REQUIRE(change->nothing() == (result == before));
      exchange(document, *change);
      REQUIRE(document == before);
      exchange(document, *change);
      REQUIRE(document == result);
    }
    CHECK(applied > 2000);
  }
}

TEST_SUITE("history") {
  TEST_CASE("a long walk back and forth") {
    Dice dice(7);
    History history;
    Document document = blank_document(24, 8);
    document.yarns = test::five_yarns();
    std::vector<Document> states{document};
    while (states.size() < 300) {
      REQUIRE(states.size() == history.done() + 1);
      const auto failure = history.apply(document, any_edit(dice, document));
      if (!failure && document != states.back()) {
        states.push_back(document);
      }
    }
    for (std::size_t step = states.size() - 1; step > 0; --step) {
      REQUIRE(document == states[step]);
      REQUIRE(history.undo(document));
    }
    CHECK(document == states.front());
    CHECK_FALSE(history.undo(document));
    for (std::size_t step = 1; step < states.size(); ++step) {
      REQUIRE(history.redo(document));
      REQUIRE(document == states[step]);
    }
    CHECK_FALSE(history.redo(document));
  }

  TEST_CASE("a drag is one step") {
    History history;
    Document document = blank_document(4, 1);
    history.begin_drag("draw");
    for (int column = 0; column < 4; ++column) {
      CHECK_FALSE(history.apply(document, SetCells{{{column, 0}}, true}));
    }
    history.end_drag();
    CHECK(history.apply(document, SetCells{{{0, 0}}, false}) == std::nullopt);
    CHECK(history.steps().size() == 2);
    CHECK(words_of(history.steps()[0]) == "draw, row 1");
    CHECK(words_of(history.steps()[1]) == "erase, row 1");
    CHECK(history.undo(document));
    CHECK(history.undo(document));
    CHECK(document.grid.row_text(0) == "....");
    CHECK(history.redo(document));
    CHECK(document.grid.row_text(0) == "####");
  }

  TEST_CASE("a step says which rows it drew in; one of more than stitches has its name alone") {
    History history;
    Document document = blank_document(4, 9);
    history.begin_drag("draw");
    CHECK_FALSE(history.apply(document, SetCells{{{0, 7}}, true}));
    CHECK_FALSE(history.apply(document, SetCells{{{0, 2}, {1, 4}}, true}));
    history.end_drag();
    CHECK(words_of(history.steps()[0]) == "draw, rows 3 to 8");
    CHECK(history.undo(document)); // what was undone is listed too
    CHECK(words_of(history.steps()[0]) == "draw, rows 3 to 8");
    CHECK_FALSE(history.apply(document, InsertRows{3, 1}));
    CHECK(words_of(history.steps()[0]) == "insert rows");
  }

  TEST_CASE("undoing to the saved state is unchanged again; losing the way to it is not") {
    History history;
    Document document = blank_document(4, 1);
    CHECK(history.saved());
    CHECK_FALSE(history.apply(document, SetCells{{{0, 0}}, true}));
    CHECK_FALSE(history.saved());
    history.mark_saved();
    CHECK(history.saved());
    CHECK(history.undo(document));
    CHECK_FALSE(history.saved());
    CHECK(history.redo(document));
    CHECK(history.saved());
    CHECK_FALSE(history.apply(document, SetCells{{{2, 0}}, true})); // a step on from what was saved
    CHECK_FALSE(history.saved());
    CHECK(history.undo(document));
    CHECK(history.saved());
    CHECK(history.undo(document));
    CHECK_FALSE(history.apply(document, SetCells{{{1, 0}}, true}));
    CHECK(history.undo(document));
    CHECK_FALSE(history.saved());
  }

  TEST_CASE("a step keeps room for what it changed, not for all that a step can change") {
    CHECK(sizeof(Change) <= 64);
    CHECK(sizeof(Document) > 256); // or the line above says little
  }

  TEST_CASE("a copy of what was done goes its own way") {
    Document document = drawn({"#..", ".#."});
    History history;
    Document settings = document;
    settings.title = "Cove";
    REQUIRE_FALSE(history.apply(document, ChangeSettings{settings}));
    REQUIRE_FALSE(history.apply(document, DuplicateColumns{0, 3}));
    History copy = history;
    Document other = document;
    REQUIRE(copy.undo(other));
    REQUIRE(copy.undo(other));
    CHECK(other.title.empty());
    CHECK(copy.steps()[0].changes != history.steps()[0].changes);
    CHECK(history.steps()[1].changes == History(history).steps()[1].changes);
    REQUIRE(history.undo(document));
    REQUIRE(history.undo(document));
    CHECK(document == other);
  }

  TEST_CASE("where the saved file is gone no state is saved before the next saving") {
    History history;
    Document document = blank_document(4, 1);
    history.begin_drag("draw");
    CHECK_FALSE(history.apply(document, SetCells{{{0, 0}}, true}));
    history.mark_saved();
    history.forget_saved();
    CHECK_FALSE(history.saved());
    CHECK_FALSE(history.dragging());
    CHECK(history.undo(document));
    CHECK_FALSE(history.saved());
    CHECK(history.redo(document));
    CHECK_FALSE(history.saved());
    history.mark_saved();
    CHECK(history.saved());
  }

  TEST_CASE("every change of the document moves the revision") {
    History history;
    Document document = blank_document(4, 1);
    const auto first = history.revision();
    CHECK_FALSE(history.apply(document, SetCells{{{0, 0}}, true}));
    const auto second = history.revision();
    CHECK(second > first);
    CHECK_FALSE(history.apply(document, SetCells{{{0, 0}}, true}));
    CHECK(history.revision() == second);
    CHECK(history.undo(document));
    CHECK(history.revision() > second);
  }
}
