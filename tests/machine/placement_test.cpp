// Which drawn column a needle knits: the trade's classic place for a fault by one, so every case is written out.
#include "machine/placement.hpp"
#include "support/builders.hpp"
#include "support/machines.hpp"

#include <doctest/doctest.h>

using namespace punchwright;

namespace {

// Drawn columns, from 1, that the needles from `first` on knit, from left to right as the knitter sees them.
std::vector<int> columns_from(const Document& document, const Profile& profile, Needle first, int count) {
  const Placement placement(document, profile);
  std::vector<int> columns;
  for (int needle = 0; needle < count; ++needle) {
    columns.push_back(placement.column_of(Needle{first.position + needle}) + 1);
  }
  return columns;
}

using Columns = std::vector<int>;

} // namespace

TEST_SUITE("placement") {
  // The fixed repeat of a 24-stitch reader is centred, twelve needles on either side of the middle
  // (alessandrina.com, 2015-09-03, on punch cards).
  TEST_CASE("on a 24-stitch card L12 knits the last drawn column, since the knitter sees the purl side") {
    const Document document = blank_document(24, 1);
    CHECK(columns_from(document, test::card_machine(), left_needle(12), 3) == Columns{24, 23, 22});
    CHECK(columns_from(document, test::card_machine(), left_needle(2), 4) == Columns{14, 13, 12, 11});
    CHECK(columns_from(document, test::card_machine(), right_needle(12), 2) == Columns{1, 24});
    CHECK(columns_from(document, test::card_machine(), left_needle(36), 1) == Columns{24});
    CHECK(columns_from(document, test::card_machine(), left_needle(13), 1) == Columns{1});
  }

  TEST_CASE("a narrower repeat begins on L12 as well") {
    const Document document = blank_document(8, 1);
    CHECK(columns_from(document, test::card_machine(), left_needle(12), 9) == Columns{8, 7, 6, 5, 4, 3, 2, 1, 8});
    CHECK(columns_from(document, test::card_machine(), left_needle(13), 1) == Columns{1});
  }

  TEST_CASE("on a 12-stitch card it is L6") {
    Profile profile = test::card_machine();
    profile.card->repeat = 12;
    profile.card->first_needle = left_needle(6);
    const Document document = blank_document(12, 1);
    CHECK(columns_from(document, profile, left_needle(6), 2) == Columns{12, 11});
    CHECK(columns_from(document, profile, right_needle(6), 2) == Columns{1, 12});
  }

  TEST_CASE("without a card it is L of half the width, rounded down; width 1: R1") {
    CHECK(columns_from(blank_document(10, 1), test::by_hand(), left_needle(5), 2) == Columns{10, 9});
    CHECK(columns_from(blank_document(7, 1), test::by_hand(), left_needle(3), 2) == Columns{7, 6});
    const Placement narrow(blank_document(1, 1), test::by_hand());
    CHECK(narrow.x_of(right_needle(1)) == 0);
  }

  TEST_CASE(
      "by hand, first_column puts a drawn column on the first needle, and the drawing runs leftwards from there") {
    Document document = blank_document(10, 1);
    document.piece.stitches = 25;
    document.piece.first_column = 3;
    CHECK(columns_from(document, test::by_hand(), first_needle_of(document), 5) == Columns{3, 2, 1, 10, 9});
    document.piece.first_needle = right_needle(4);
    CHECK(columns_from(document, test::by_hand(), right_needle(4), 3) == Columns{3, 2, 1});
    CHECK(columns_from(document, test::by_hand(), right_needle(3), 1) == Columns{4});
  }

  TEST_CASE("card column 1 holds what the leftmost needle of the reader's repeat knits") {
    for (const int width : {1, 2, 3, 4, 6, 8, 12, 24}) {
      CAPTURE(width);
      const Placement placement(blank_document(width, 1), test::card_machine());
      for (int column = 1; column <= 24; ++column) {
        const Needle needle{-12 + column - 1};
        CHECK(placement.column_on_card(column) == placement.column_of(needle));
        CHECK(placement.column_on_card(column) == placement.column_of(Needle{needle.position + 24}));
      }
    }
  }
}

TEST_SUITE("limits") {
  // 24 divides into 2, 3, 4, 6, 8, 12 (kcguild.org.uk, punch cards and pattern cards), and 1 and 24.
  TEST_CASE("the widths that a card can hold") {
    CHECK(widths_for_card(24) == Columns{1, 2, 3, 4, 6, 8, 12, 24});
    CHECK(widths_for_card(12) == Columns{1, 2, 3, 4, 6, 12});
    CHECK(widths_for_card(8) == Columns{1, 2, 4, 8});
  }

  TEST_CASE("a limit in mm is as many stitches as it holds, the full measure included") {
    Document document = blank_document(24, 1);
    document.rules.longest_float_mm = 25.0; // an inch or 2.5 cm (zpag.net, length of floats)
    const auto limit = [&](double stitches) {
      document.gauge.stitches = stitches;
      return longest_float_of(document, test::card_machine());
    };
    CHECK(limit(16.0) == 4); // 4 × 6.25 mm is 25 mm
    CHECK(limit(15.9) == 3);
    CHECK(limit(28.0) == 7); // 7 × 3.571… mm is 25 mm
    CHECK(limit(20.0) == 5);
    document.rules.longest_float_mm.reset();
    CHECK(limit(16.0) == 5); // the profile's
    document.rules.longest_float = 3;
    CHECK(limit(16.0) == 3);
  }

  TEST_CASE("end needles: the profile's word counts unless the piece has one of its own") {
    Document document = blank_document(24, 1);
    CHECK(end_needles_knit_contrast(document, test::card_machine()));
    CHECK_FALSE(end_needles_knit_contrast(document, test::by_hand()));
    document.piece.end_needles = EndNeedles::always;
    CHECK(end_needles_knit_contrast(document, test::by_hand()));
    document.piece.end_needles = EndNeedles::never;
    CHECK_FALSE(end_needles_knit_contrast(document, test::card_machine()));
  }
}
