// The rows to knit, written as a knitter counts them. In the pictures below a drawn row is its number, and an inserted
// one
// '+' (yarn change), '>' (change side), '=' (asked for below a band) or '%' (even circuit); a blank separates rows.
#include "rows/cards.hpp"
#include "rows/rows.hpp"
#include "support/builders.hpp"
#include "support/machines.hpp"

#include <algorithm>
#include <doctest/doctest.h>
#include <map>

using namespace punchwright;
using test::drawn;

namespace {

std::string picture(const RowsToKnit& rows) {
  const std::map<Why, std::string> marks{
      {Why::yarn_change, "+"}, {Why::change_side, ">"}, {Why::plain_below, "="}, {Why::even_circuit, "%"}};
  std::string text;
  for (const RowToKnit& row : rows.rows) {
    text += (text.empty() ? "" : " ") + (row.why == Why::drawn ? std::to_string(row.drawn + 1) : marks.at(row.why));
  }
  return text;
}

std::string picture(const Document& document, const Profile& profile = test::card_machine()) {
  return picture(rows_to_knit(document, profile));
}

// Bands from the bottom: rows, contrast; 0 for a band of one yarn. Every row of a band with a contrast has a contrast
// stitch in its first column, unless `plain` names it.
Document banded(const std::vector<std::pair<int, char>>& bands, const std::vector<int>& plain = {}) {
  int rows = 0;
  for (const auto& [count, contrast] : bands) {
    rows += count;
  }
  Document document = blank_document(4, rows);
  document.yarns = test::five_yarns();
  document.bands.clear();
  int row = 0;
  for (const auto& [count, contrast] : bands) {
    document.bands.push_back(Band{count, 'A', contrast == 0 ? std::nullopt : std::optional(contrast), std::nullopt});
    for (const int above = row + count; row < above; ++row) {
      document.grid.set(0, row, contrast != 0 && std::ranges::find(plain, row + 1) == plain.end());
    }
  }
  return document;
}

} // namespace

TEST_SUITE("rows to knit") {
  TEST_CASE("one band: the drawn rows, times over") {
    Document document = banded({{3, 'B'}});
    CHECK(picture(document) == "1 2 3");
    document.piece.times = 3;
    CHECK(picture(document) == "1 2 3 1 2 3 1 2 3");
  }

  TEST_CASE("single-colour rows come between where the contrast changes, and from one repetition to the next") {
    Document document = banded({{2, 'B'}, {1, 'C'}});
    CHECK(picture(document) == "1 2 + 3");
    document.piece.times = 2;
    CHECK(picture(document) == "1 2 + 3 + 1 2 + 3");
    document.rules.plain_rows = 3;
    CHECK(picture(document) == "1 2 + + + 3 + + + 1 2 + + + 3");
    document.rules.plain_rows = 0;
    CHECK(picture(document) == "1 2 3 1 2 3");
  }

  TEST_CASE("single-colour rows that are drawn there already count, below and above") {
    Document document = banded({{3, 'B'}, {3, 'C'}}, {3, 4});
    document.rules.plain_rows = 3;
    CHECK(picture(document) == "1 2 3 + 4 5 6");
    document.rules.plain_rows = 2;
    CHECK(picture(document) == "1 2 3 4 5 6");
    document.rules.plain_rows = 1;
    CHECK(picture(document) == "1 2 3 4 5 6");
    document.rules.plain_rows = 9;
    CHECK(picture(document) == "1 2 3 + + + + + + + 4 5 6");
  }

  TEST_CASE("an all-contrast row is no single-colour row of main") {
    Document document = banded({{1, 'B'}, {1, 'C'}});
    document.grid.set_row_text(0, "####");
    CHECK(picture(document) == "1 + 2");
  }

  TEST_CASE("a band of one yarn is single-colour rows; rows inserted below it count for the change above it") {
    Document document = banded({{1, 'B'}, {1, 0}, {1, 'C'}});
    CHECK(picture(document) == "1 2 3");
    document.rules.plain_rows = 3;
    CHECK(picture(document) == "1 + + 2 3");
    document.piece.times = 2;
    CHECK(picture(document) == "1 + + 2 3 + + + 1 + + 2 3");
  }

  TEST_CASE("rows above that count may lie in the next repetition") {
    Document document = banded({{2, 'B'}, {2, 'C'}}, {1, 4});
    document.rules.plain_rows = 2;
    document.piece.times = 2;
    CHECK(picture(document) == "1 2 + + 3 4 1 2 + + 3 4");
  }

  TEST_CASE("rows that a band above asks for below itself count as well, as they do on a loop") {
    Document document = banded({{1, 'C'}, {1, 'B'}, {1, 'B'}}, {2});
    document.rules.plain_rows = 3;
    document.bands[2].plain_below = 1;
    CHECK(picture(document) == "1 + 2 = 3"); // drawn row 2 and one asked for above it: one is missing
    document.bands[2].plain_below = 3;
    CHECK(picture(document) == "1 2 = = = 3");
    // The same from one repetition to the next.
    document = banded({{1, 'B'}, {1, 'B'}, {1, 'C'}}, {1});
    document.rules.plain_rows = 3;
    document.bands[1].plain_below = 3;
    document.piece.times = 2;
    CHECK(picture(document) == "1 = = = 2 + + + 3 1 = = = 2 + + + 3");
    document.card.loop = true;
    CHECK(picture(document) == "1 = = = 2 + + + 3 1 = = = 2 + + + 3");
    // And where they lie beyond the repetition's own boundary.
    document = banded({{1, 'B'}, {1, 'B'}}, {2});
    document.bands[1].contrast = 'C';
    document.rules.plain_rows = 3;
    document.bands[0].plain_below = 2;
    document.piece.times = 2;
    CHECK(picture(document) == "1 2 = = 1 + + 2");
    document.card.loop = true;
    CHECK(picture(document) == "1 2 = = 1 2 = =");
  }

  TEST_CASE("a change of main alone needs none") {
    Document document = banded({{1, 'B'}, {1, 'B'}});
    document.bands[1].main = 'C';
    CHECK(picture(document) == "1 2");
  }

  TEST_CASE("plain_below overrides the derived number, and the lowest band's counts between repetitions") {
    Document document = banded({{1, 'B'}, {1, 'C'}});
    document.bands[1].plain_below = 2;
    document.bands[0].plain_below = 0;
    document.piece.times = 2;
    CHECK(picture(document) == "1 = = 2 1 = = 2");
    document.rules.change_side = ChangeSide::right;
    CHECK(picture(document) == "1 = = 2 1 = = 2"); // the side too
    Document one_band = banded({{2, 'B'}});
    one_band.bands[0].plain_below = 1;
    one_band.piece.times = 2;
    CHECK(picture(one_band) == "1 2 = 1 2");
    one_band.piece.times = 1;
    CHECK(picture(one_band) == "1 2");
  }

  TEST_CASE("inserted rows knit in the main of the band below") {
    Document document = banded({{1, 'B'}, {1, 'C'}});
    document.bands[0].main = 'D';
    document.bands[1].main = 'E';
    document.piece.times = 2;
    const auto rows = rows_to_knit(document, test::card_machine()).rows;
    CHECK(rows[1].main == 'D');
    CHECK(rows[3].main == 'E');
    CHECK(rows[1].contrast == 0);
  }

  TEST_CASE("one more row where the carriage would stand on the wrong side when the new contrast is threaded") {
    Document document = banded({{2, 'B'}, {1, 'C'}}); // rows 1, 2, + : the carriage ends on the left
    document.rules.change_side = ChangeSide::left;
    CHECK(picture(document) == "1 2 + 3");
    document.rules.change_side = ChangeSide::right;
    CHECK(picture(document) == "1 2 + > 3");
    document.piece.carriage = Side::left;
    CHECK(picture(document) == "1 2 + 3");
  }

  TEST_CASE("the new contrast is threaded before its first stitch, not at the band's edge") {
    Document document = banded({{2, 'B'}, {2, 'C'}}, {3}); // row 3 is plain: C is threaded before row 4
    document.rules.change_side = ChangeSide::left;
    CHECK(picture(document) == "1 2 3 4");
    document.rules.change_side = ChangeSide::right;
    CHECK(picture(document) == "1 2 > 3 4");
  }

  TEST_CASE("a band of one yarn threads nothing, and neither does a contrast that has no stitch") {
    Document document = banded({{1, 'B'}, {1, 0}, {1, 'C'}});
    document.rules.change_side = ChangeSide::left;
    CHECK(picture(document) == "1 2 > 3");
    Document without_stitch = banded({{1, 'B'}, {1, 'C'}, {1, 'D'}}, {2});
    without_stitch.rules.change_side = ChangeSide::left;
    CHECK(picture(without_stitch) == "1 2 > 3");
  }

  TEST_CASE("directions alternate, from the side where the carriage stands") {
    Document document = banded({{3, 'B'}});
    auto rows = rows_to_knit(document, test::card_machine()).rows;
    CHECK(rows[0].travel == Travel::leftwards);
    CHECK(rows[1].travel == Travel::rightwards);
    CHECK(rows[2].travel == Travel::leftwards);
    document.piece.carriage = Side::left;
    rows = rows_to_knit(document, test::card_machine()).rows;
    CHECK(rows[0].travel == Travel::rightwards);
  }

  TEST_CASE("a row without contrast stitches has no contrast; an all-contrast row still names its main") {
    const Document document = drawn({"####", "....", ".#.."});
    const auto rows = rows_to_knit(document, test::card_machine()).rows;
    CHECK(rows[0].contrast == 'B');
    CHECK(rows[0].two_coloured());
    CHECK(rows[1].contrast == 0);
    CHECK(rows[1].main == 'A');
    CHECK(rows[2].contrast == 'B');
    CHECK(rows[2].main == 'A');
    CHECK(rows[2].all_contrast);
    CHECK(passes_of(rows[0]) == std::vector{Pass{Travel::leftwards, 'A', 'B'}});
    CHECK(passes_of(rows[1]) == std::vector{Pass{Travel::rightwards, 'A', 0}});
    CHECK(passes_of(rows[2]) == std::vector{Pass{Travel::leftwards, 0, 'B'}});
  }

  TEST_CASE("card rows count up; without a card there are none") {
    Document document = banded({{1, 'B'}, {1, 'C'}});
    document.piece.times = 2;
    const auto rows = rows_to_knit(document, test::card_machine()).rows;
    for (std::size_t index = 0; index < rows.size(); ++index) {
      CHECK(rows[index].card_row == static_cast<int>(index) + 1);
    }
    for (const RowToKnit& row : rows_to_knit(document, test::by_hand()).rows) {
      CHECK(row.card_row == 0);
    }
  }
}

TEST_SUITE("a card joined into a loop") {
  Document looped(const std::vector<std::pair<int, char>>& bands, const std::vector<int>& plain = {}) {
    Document document = banded(bands, plain);
    document.card.loop = true;
    return document;
  }

  TEST_CASE("one circuit ends with the rows for the change back to row 1, and goes round `times` times, all alike") {
    Document document = looped({{2, 'B'}, {1, 'C'}});
    CHECK(picture(document) == "1 2 + 3 +");
    document.piece.times = 2;
    CHECK(picture(document) == "1 2 + 3 + 1 2 + 3 +");
    const RowsToKnit rows = rows_to_knit(document, test::card_machine());
    CHECK(rows.circuit == 5);
    CHECK(rows.rows[4].card_row == 5);
    CHECK(rows.rows[5].card_row == 1);
    CHECK(rows.rows[5].travel == Travel::rightwards); // an odd circuit: the next one goes the other way
  }

  TEST_CASE("without a card there is nothing to join: the rows are those of a straight piece") {
    Document document = looped({{2, 'B'}, {1, 'C'}});
    document.rules.change_side = ChangeSide::left;
    document.piece.times = 2;
    const RowsToKnit rows = rows_to_knit(document, test::by_hand());
    document.card.loop = false;
    CHECK(rows.rows == rows_to_knit(document, test::by_hand()).rows);
    CHECK(rows.circuit == std::ssize(rows.rows));
  }

  TEST_CASE("single-colour rows at both ends of the circuit count for the change") {
    Document document = looped({{2, 'B'}, {2, 'C'}}, {1, 4});
    document.rules.plain_rows = 3;
    CHECK(picture(document) == "1 2 + + + 3 4 +");
  }

  TEST_CASE("without a change of contrast nothing is added") {
    CHECK(picture(looped({{3, 'B'}})) == "1 2 3");
  }

  TEST_CASE("the lowest band's plain_below stands at the end of the circuit") {
    Document document = looped({{2, 'B'}});
    document.bands[0].plain_below = 2;
    CHECK(picture(document) == "1 2 = =");
  }

  TEST_CASE("where a side for changing is set, the circuit is made even") {
    Document document = looped({{3, 'B'}});
    document.rules.change_side = ChangeSide::left;
    CHECK(picture(document) == "1 2 3 %");
    document = looped({{4, 'B'}});
    document.rules.change_side = ChangeSide::left;
    CHECK(picture(document) == "1 2 3 4");
  }
}

TEST_SUITE("one feeder") {
  Profile one_feeder() {
    Profile profile = test::by_hand();
    profile.feeders = 1;
    return profile;
  }

  TEST_CASE("a two-colour row takes two passes, one for each yarn, and ends where it began") {
    const Document document = drawn({".#..", "....", "####", ".#.."});
    const auto rows = rows_to_knit(document, one_feeder()).rows;
    CHECK(passes_of(rows[0]) == std::vector{Pass{Travel::leftwards, 'A', 0}, Pass{Travel::rightwards, 0, 'B'}});
    CHECK(passes_of(rows[1]) == std::vector{Pass{Travel::leftwards, 0, 'B'}});
    CHECK(passes_of(rows[2]).size() == 1);
    CHECK(rows[3].travel == Travel::leftwards);
  }

  TEST_CASE("main and contrast take turns in going first, so that no pass is made without yarn") {
    const Document document = drawn({".#..", "..#.", ".#.."});
    const auto rows = rows_to_knit(document, one_feeder()).rows;
    CHECK_FALSE(rows[0].contrast_first);
    CHECK(rows[1].contrast_first);
    CHECK_FALSE(rows[2].contrast_first);
  }

  TEST_CASE("sides count passes") {
    Document document = banded({{1, 'B'}, {1, 'C'}}); // 1 takes two passes, so the carriage is on the right before +
    document.rules.change_side = ChangeSide::left;
    CHECK(picture(document, one_feeder()) == "1 + 2");
    CHECK(picture(document, test::card_machine()) == "1 + > 2");
  }
}

TEST_SUITE("setting up") {
  TEST_CASE("selecting for the next pass: a plain row, then the row that knits plain and selects") {
    Document document = banded({{1, 'B'}});
    CHECK(setup_rows(document, test::card_machine()) ==
          std::vector{SetupRow{Travel::leftwards, 'A', false}, SetupRow{Travel::rightwards, 'A', true}});
    document.piece.carriage = Side::left;
    CHECK(setup_rows(document, test::card_machine()) ==
          std::vector{SetupRow{Travel::rightwards, 'A', false}, SetupRow{Travel::leftwards, 'A', true}});
  }

  // One free, non-knitting pass over the locked card stores row 1 (lacecarriage.com, two-colour knitting).
  TEST_CASE("selecting in the same pass: a plain row, then a free pass") {
    Profile profile = test::card_machine();
    profile.selects = Selects::same_pass;
    CHECK(setup_rows(banded({{1, 'B'}}), profile) ==
          std::vector{SetupRow{Travel::leftwards, 'A', false}, SetupRow{Travel::rightwards, std::nullopt, true}});
  }

  TEST_CASE("by hand: a plain row that ends where the carriage is to stand") {
    CHECK(setup_rows(banded({{1, 'B'}}), test::by_hand()) == std::vector{SetupRow{Travel::rightwards, 'A', false}});
  }
}

TEST_SUITE("cards") {
  CardPlan plan_for(int rows, bool loop) {
    Document document = banded({{rows, 'B'}});
    document.card.loop = loop;
    const Profile profile = test::card_machine();
    return card_plan(document, *profile.card, rows_to_knit(document, profile));
  }

  // A card joined into a loop needs at least 36 punched rows, a blank has 60 (alessandrina.com, 2015-09-03).
  TEST_CASE("a short circuit is repeated until a loop can be joined") {
    CHECK(plan_for(10, true).circuits == 4);
    CHECK(plan_for(10, true).rows_in_all == 40);
    CHECK(plan_for(36, true).circuits == 1);
    CHECK(plan_for(35, true).circuits == 2);
    CHECK(plan_for(10, false).rows_in_all == 10);
  }

  TEST_CASE("a card that is longer than a blank goes on the next one") {
    CHECK(plan_for(60, false).cards == std::vector{Card{1, 1, 60}});
    CHECK(plan_for(61, false).cards == std::vector{Card{1, 1, 60}, Card{2, 61, 1}});
    CHECK(plan_for(35, true).cards == std::vector{Card{1, 1, 60}, Card{2, 61, 10}});
  }
}

TEST_SUITE("how many rows") {
  TEST_CASE("the largest drawing, knitted as often as can be, is worked out whole") {
    Document document = blank_document(200, tallest_repeat);
    document.piece.times = 1000;
    CHECK_FALSE(too_many_rows(document, test::card_machine()));
    document.bands = {Band{1000, 'A', 'B', 9}, Band{1000, 'A', 'B', 9}}; // 1,000 times 2,018 rows, less 9
    CHECK_FALSE(too_many_rows(document, test::card_machine()));
    const RowsToKnit rows = rows_to_knit(document, test::card_machine());
    CHECK(rows.rows.size() == 2'017'991);
    CHECK_FALSE(rows.cut_off);
  }

  TEST_CASE("more than four million are refused, and never held in memory") {
    Document document = blank_document(2, tallest_repeat);
    document.bands.assign(tallest_repeat, Band{1, 'A', 'B', 99});
    document.piece.times = 1000; // 200 million
    for (const bool loop : {false, true}) {
      document.card.loop = loop;
      const Failure failure = too_many_rows(document, test::card_machine());
      REQUIRE(failure);
      CHECK(failure->text() == "the design comes to more than 4 million rows to knit; allowed: fewer; lower times in "
                               "[piece], or plain_below in the bands");
      const RowsToKnit rows = rows_to_knit(document, test::card_machine());
      CHECK(rows.cut_off);
      CHECK(rows.rows.size() == most_rows_to_knit);
      CHECK(rows.rows.capacity() < 2 * most_rows_to_knit);
      CHECK(rows.circuit == (loop ? 200'000 : most_rows_to_knit));
    }
  }

  TEST_CASE("the limit is met exactly: four million are allowed, one more is not") {
    // Each repetition has 2,000 drawn rows and 2,000 asked for below the 100 bands; the first one 20 less.
    Document document = blank_document(2, 2000);
    document.bands.assign(100, Band{20, 'A', 'B', 20}); // 3,980 + 999 repetitions of 4,000
    document.piece.times = 1000;
    CHECK_FALSE(too_many_rows(document, test::by_hand()));
    document.bands.back().plain_below = 21; // one more in each of 1,000
    CHECK(too_many_rows(document, test::by_hand()));
    document.bands.back().plain_below = 20;
    document.card.loop = true; // every circuit alike: 4,000 rows, 1,000 times
    CHECK(rows_to_knit(document, test::card_machine()).rows.size() == most_rows_to_knit);
    CHECK_FALSE(too_many_rows(document, test::card_machine()));
  }
}
