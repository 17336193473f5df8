// The packed grid, needles' names, and small questions to a document.
#include "design/document.hpp"
#include "design/grid.hpp"
#include "support/builders.hpp"

#include <doctest/doctest.h>

using namespace punchwright;

TEST_SUITE("grid") {
  TEST_CASE("stitches are kept at every width, also across words") {
    for (const int width : {1, 24, 63, 64, 65, 127, 128, 129, 192, 200}) {
      CAPTURE(width);
      Grid grid(width, 3);
      for (int column = 0; column < width; ++column) {
        CHECK(grid.all_main(1));
        grid.set(column, 1, true);
        CHECK(grid.at(column, 1));
        CHECK(grid.row_text(1).find('#') == static_cast<std::size_t>(column));
        CHECK((width == 1 || grid.mixed(1)));
        grid.flip(column, 1);
      }
      grid.set_row_text(2, std::string(static_cast<std::size_t>(width), '#'));
      CHECK(grid.all_contrast(2));
      CHECK_FALSE(grid.mixed(2));
      CHECK(grid.all_main(0));
      CHECK(grid.all_main(1));
    }
  }

  TEST_CASE("bits beyond the width stay zero") {
    Grid grid(65, 1);
    grid.set_row_text(0, std::string(65, '#'));
    CHECK(grid.row(0)[1] == 1);
    CHECK(grid.last_word_mask() == 1);
    CHECK(Grid(64, 1).last_word_mask() == ~Grid::Word{0});
  }
}

TEST_SUITE("needles") {
  // Numbered outwards from the middle, no needle 0 (common practice).
  TEST_CASE("L1 is next to R1") {
    CHECK(name_of(Needle{-1}) == "L1");
    CHECK(name_of(Needle{0}) == "R1");
    CHECK(right_needle(1).position - left_needle(1).position == 1);
    CHECK(left_needle(12).position == -12);
    for (int position = -200; position <= 200; ++position) {
      CHECK(needle_named(name_of(Needle{position})) == Needle{position});
    }
  }

  TEST_CASE("no other name is a needle") {
    for (const char* name :
         {"", "L", "R", "L0", "R0", "L01", "l5", "X5", "L-1", "L1 ", " L1", "L1.5", "L99999", "5L"}) {
      CAPTURE(name);
      CHECK_FALSE(needle_named(name));
    }
  }

  // An odd number of stitches has its extra needle on the right: 63 stitches stand on L31 to R32, 81 on L40 to R41
  // (common practice).
  TEST_CASE("a piece stands in the middle of the bed") {
    Document document = blank_document(24, 1);
    const auto range = [&](int stitches) {
      document.piece.stitches = stitches;
      return name_of(first_needle_of(document)) + "-" + name_of(last_needle_of(document));
    };
    CHECK(range(63) == "L31-R32");
    CHECK(range(81) == "L40-R41");
    CHECK(range(24) == "L12-R12");
    CHECK(range(1) == "R1-R1");
    document.piece.first_needle = left_needle(36);
    CHECK(range(71) == "L36-R35");
  }
}

TEST_SUITE("document") {
  TEST_CASE("colours as six hexadecimal digits") {
    CHECK(colour_from_hex("#e8dcc2") == Colour{0xe8, 0xdc, 0xc2});
    CHECK(colour_from_hex("#E8DCC2") == Colour{0xe8, 0xdc, 0xc2});
    CHECK(hex_of(Colour{0x0a, 0xff, 0x00}) == "#0aff00");
    for (const char* text : {"", "e8dcc2", "#e8dcc", "#e8dcc2a", "#e8dcg2", "#-1+2 3", "# 12345"}) {
      CAPTURE(text);
      CHECK_FALSE(colour_from_hex(text));
    }
  }

  TEST_CASE("each row belongs to the band that covers it") {
    Document document = blank_document(2, 6);
    document.bands = {Band{2, 'A', 'B', {}}, Band{1, 'A', 'B', {}}, Band{3, 'A', 'B', {}}};
    std::vector<std::size_t> bands;
    for (int row = 0; row < 6; ++row) {
      bands.push_back(band_index_at(document, row));
    }
    CHECK(bands == std::vector<std::size_t>{0, 0, 1, 2, 2, 2});
  }
}
