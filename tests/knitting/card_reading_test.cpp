// The card as the reader feels it: by the places of holes, whichever way it lies, and from a punch list.
#include "knitting/card_reading.hpp"
#include "support/machines.hpp"

#include <doctest/doctest.h>

using namespace punchwright;

namespace {

// A card of 2 rows: 6 lines, 5 mm apart, 12.5 mm from each end.
constexpr double width = 142.0;
constexpr double height = 2 * 12.5 + 5 * 5.0;

CardReader reader(CardFace face, bool turned) {
  CardReader reader;
  reader.face = face;
  reader.turned = turned;
  return reader;
}

// Holes of row 1, column 1, and of row 2, column 24; overlap, feed and clip holes beside them.
std::vector<HolePlace> holes(bool column_1_left, bool row_1_low) {
  std::vector<HolePlace> places;
  const auto add = [&](double from_column_1s_side, double from_first_end) {
    places.push_back({column_1_left ? from_column_1s_side : width - from_column_1s_side,
                      row_1_low ? height - from_first_end : from_first_end});
  };
  add(19.25, 12.5 + 2 * 5);
  add(19.25 + 23 * 4.5, 12.5 + 3 * 5);
  for (int column = 0; column < 24; ++column) {
    for (const int line : {0, 1, 4, 5}) {
      add(19.25 + column * 4.5, 12.5 + line * 5);
    }
  }
  add(6, 12.5 + 2 * 5);
  add(136, 12.5 + 3 * 5);
  add(13, 5);
  return places;
}

} // namespace

TEST_CASE("row 1 lies at the end that goes in first, column 1 on the side that the face says") {
  for (const CardFace face : {CardFace::as_knitter_sees, CardFace::as_knit_side}) {
    for (const bool turned : {false, true}) {
      // Half a turn changes left and right as well as the ends.
      const bool column_1_left = (face == CardFace::as_knitter_sees) != turned;
      const auto card = read_card(holes(column_1_left, !turned), width, height, reader(face, turned));
      REQUIRE(card.ok());
      CHECK(card->rows() == 2);
      int punched = 0;
      for (int column = 1; column <= 24; ++column) {
        punched += card->at(1, column) + card->at(2, column);
      }
      CHECK(punched == 2);
      CHECK(card->at(1, 1));
      CHECK(card->at(2, 24));
    }
  }
}

TEST_CASE("a punch list: rows in runs, words and brackets behind them left alone") {
  const auto card = read_punch_list("Punch list: x\nrow 1: 1-3, 24   [at 2]\noverlap, two rows: 1-24\n"
                                    "row 2: no hole, a blank row   [below 1]\nrow 4: 7\n",
                                    "list.txt", 24);
  REQUIRE(card.ok());
  CHECK(card->rows() == 4);
  CHECK(card->at(1, 1));
  CHECK(card->at(1, 3));
  CHECK_FALSE(card->at(1, 4));
  CHECK(card->at(1, 24));
  CHECK_FALSE(card->at(2, 1));
  CHECK_FALSE(card->at(3, 1));
  CHECK(card->at(4, 7));
  CHECK(card->at(5, 1)); // the overlap rows
}

TEST_CASE("punch lists that say nothing possible are refused, with their line") {
  const auto message = [](const std::string& text) {
    const auto card = read_punch_list(text, "list.txt", 24);
    REQUIRE_FALSE(card.ok());
    return card.error().text();
  };
  CHECK(message("row 1: 1-25\n") ==
        "list.txt:1: row 1 names a column that the card has not; columns 1 to 24 are allowed");
  CHECK(message("\nrow 1: 3-2\n").starts_with("list.txt:2:"));
  CHECK(message("row 0: 1\n").starts_with("list.txt:1: this is no row"));
  CHECK(message("row one: 1\n").starts_with("list.txt:1: this is no row"));
  CHECK(message("row 1: 1-\n").starts_with("list.txt:1: row 1 names"));
  CHECK(message("").starts_with("list.txt: the punch list has no rows"));
  CHECK(message("row 1999999: 1\n").starts_with("list.txt: row 1999999 lies far"));
  CHECK(message("row 99999999999: 1\n").starts_with("list.txt:1: this is no row"));
}
