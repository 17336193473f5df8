// The piece on the bed: needles enough, where the repeat falls, where it is cut, and what to set so that it is whole.
#include "machine/placement.hpp"
#include "rules/findings.hpp"
#include "rules/found.hpp"
#include "rules/whole_repeats.hpp"
#include "support/builders.hpp"
#include "support/machines.hpp"

#include <algorithm>
#include <doctest/doctest.h>

using namespace punchwright;
using test::Dice;
using test::of_kind;
using test::only_words;

namespace {

Words cut_words(const Document& document, const Profile& profile = test::card_machine()) {
  return only_words(FindingId::repeat_cut_at_edges, document, profile);
}

bool is_cut(const Document& document, const Profile& profile = test::card_machine()) {
  return !of_kind(FindingId::repeat_cut_at_edges, document, profile).empty();
}

// A repeat of 24 and a piece from that needle of the left half.
Document piece(int stitches, int first_left_needle, int edge) {
  Document document = blank_document(24, 1);
  document.piece.stitches = stitches;
  document.piece.first_needle = left_needle(first_left_needle);
  document.piece.edge = edge;
  return document;
}

void set(Document& document, const WholeRepeats& whole) {
  document.piece.stitches = whole.stitches;
  document.piece.first_needle = whole.first_needle;
  document.piece.first_column = whole.first_column;
}

} // namespace

TEST_SUITE("piece") {
  TEST_CASE("more stitches than needles") {
    Document document = blank_document(24, 1);
    document.piece.stitches = 250;
    const Words words = only_words(FindingId::piece_wider_than_bed, document, test::card_machine());
    CHECK(words.text == "the piece has 250 stitches, the bed 200 needles");
    CHECK(words.remedy == "knit it in 2 pieces, or choose a bed with more needles");
    document.piece.stitches = 200;
    CHECK(of_kind(FindingId::piece_wider_than_bed, document, test::card_machine()).empty());
    CHECK(of_kind(FindingId::piece_off_bed, document, test::card_machine()).empty());
  }

  TEST_CASE("a first needle off the bed, or a last one") {
    Document document = blank_document(24, 1);
    document.piece.first_needle = left_needle(101);
    CHECK(only_words(FindingId::piece_off_bed, document, test::card_machine()).text ==
          "the piece would stand on L101 to L78, the bed ends at L100 and R100");
    document.piece.first_needle = right_needle(78);
    CHECK(of_kind(FindingId::piece_off_bed, document, test::card_machine()).size() == 1);
    document.piece.first_needle = right_needle(77);
    CHECK(of_kind(FindingId::piece_off_bed, document, test::card_machine()).empty());
  }

  TEST_CASE("where the repeat falls on the needles") {
    Document document = blank_document(24, 1);
    document.piece.stitches = 71;
    document.piece.first_needle = left_needle(36);
    CHECK(only_words(FindingId::repeat_on_needles, document, test::card_machine()).text ==
          "71 stitches, on L36 to R35: as the knitter sees it, from drawn column 24 on the left to 2 on the right");
  }
}

TEST_SUITE("repeat cut at the edges") {
  TEST_CASE("where it is cut, and how much of it is there") {
    CHECK(cut_words(piece(71, 36, 0)).text ==
          "the repeat is cut at the right edge of the piece: of its 24 stitches there are 23");
    CHECK(cut_words(piece(70, 35, 0)).text ==
          "the repeat is cut at both edges of the piece: of its 24 stitches there are 23 on the left and 23 on the "
          "right");
    CHECK(cut_words(piece(9, 12, 0)).text == "the piece shows 9 of the repeat's 24 stitches");
    CHECK_FALSE(is_cut(piece(72, 36, 0)));
  }

  TEST_CASE("selvedge stitches are taken up by the seam: only what shows between them counts") {
    CHECK_FALSE(is_cut(piece(74, 37, 1)));
    CHECK_FALSE(is_cut(piece(78, 39, 3)));
    CHECK(is_cut(piece(74, 37, 0)));
    CHECK(cut_words(piece(72, 36, 1)).text ==
          "the repeat is cut at both edges of the piece, beside the selvedge: of its "
          "24 stitches there are 23 on the left and 23 on the right");
    CHECK(cut_words(piece(12, 12, 1)).text == "the piece shows 10 of the repeat's 24 stitches between its selvedges");
    CHECK_FALSE(is_cut(piece(2, 36, 1))); // nothing shows
    const auto found = of_kind(FindingId::repeat_cut_at_edges, piece(72, 36, 1), test::card_machine());
    CHECK(found.front().first_needle == left_needle(35));
    CHECK(found.front().last_needle == right_needle(35));
    CHECK(found.front().stitches == 70);
  }

  TEST_CASE("the remedy names the nearest pieces that cut nothing: stitches in work and first needle") {
    CHECK(cut_words(piece(71, 36, 0)).remedy ==
          "take 48 stitches in work from first needle L36 (2 whole repeats), or 72 from L36 (3)");
    CHECK(cut_words(piece(70, 36, 1)).remedy ==
          "take 50 stitches in work from first needle L37 (2 whole repeats between the edges), or 74 from L37 (3)");
    // As many stitches as whole repeats have, but in the wrong place.
    CHECK(cut_words(piece(48, 35, 0)).remedy == "take 48 stitches in work from first needle L36 (2 whole repeats)");
    CHECK(cut_words(piece(10, 36, 0)).remedy == "take 24 stitches in work from first needle L36 (1 whole repeat)");
  }

  TEST_CASE("a bed without room for a whole repeat says so") {
    Document document = blank_document(160, 1);
    document.piece.stitches = 100;
    CHECK(cut_words(document, test::by_hand()).remedy ==
          "the bed has no room for a whole repeat between the edges: it is cut in any case");
  }

  TEST_CASE("by hand with first_column the drawing moves to the piece") {
    Document document = piece(30, 10, 2);
    document.piece.first_column = 5;
    CHECK(cut_words(document, test::by_hand()).remedy ==
          "take 28 stitches in work from first needle L10 (1 whole repeat between the edges), or 52 from L10 (2), with "
          "first_column = 2");
  }

  TEST_CASE("by hand the piece stays in the middle of the bed, and the drawing moves") {
    Document document = blank_document(24, 1);
    document.piece.edge = 0;
    document.piece.stitches = 50;
    CHECK(
        cut_words(document, test::by_hand()).remedy ==
        "take 48 stitches in work from first needle L24 (2 whole repeats), or 72 from L36 (3), with first_column = 24");
    for (const WholeRepeats& whole : nearest_whole_repeats(document, test::by_hand())) {
      CHECK(whole.first_needle == centred_first_needle(whole.stitches));
    }
    document.piece.stitches = 30;
    const auto found = nearest_whole_repeats(document, test::by_hand());
    REQUIRE(found.size() == 2);
    CHECK(found[1] == WholeRepeats{2, 48, left_needle(24), 24});
    document.grid = Grid(100, 1);
    document.piece.stitches = 110;
    CHECK(cut_words(document, test::by_hand()).remedy ==
          "take 100 stitches in work from first needle L50 (1 whole repeat)");
  }

  TEST_CASE("by hand from a first needle of one's own the piece stays there") {
    Document document = piece(50, 60, 1);
    CHECK(cut_words(document, test::by_hand()).remedy ==
          "take 50 stitches in work from first needle L60 (2 whole repeats between the edges), with first_column = 1");
  }

  TEST_CASE("whoever does what the remedy says has nothing cut, and stays on the bed") {
    Dice dice(23);
    int suggestions = 0;
    for (int throws = 0; throws < 500; ++throws) {
      const bool card = dice.heads();
      Document document = blank_document(card ? 12 : 1 + dice.throw_one(60), 1);
      document.piece.stitches = 1 + dice.throw_one(150);
      document.piece.edge = dice.throw_one(6);
      if (dice.heads()) {
        document.piece.first_needle = Needle{-75 + dice.throw_one(100)};
      }
      if (!card && dice.heads()) {
        document.piece.first_column = 1 + dice.throw_one(document.grid.width());
      }
      const Profile profile = card ? test::card_machine() : test::by_hand();
      for (const WholeRepeats& whole : nearest_whole_repeats(document, profile)) {
        ++suggestions;
        Document mended = document;
        set(mended, whole);
        CAPTURE(throws);
        CHECK_FALSE(is_cut(mended, profile));
        CHECK(of_kind(FindingId::piece_off_bed, mended, profile).empty());
        if (!card && !document.piece.first_needle) {
          CHECK(whole.first_needle == centred_first_needle(whole.stitches));
        }
        CHECK(whole.stitches == whole.repeats * document.grid.width() + 2 * document.piece.edge);
      }
    }
    CHECK(suggestions > 500);
  }

  TEST_CASE("the fewest whole repeats in the middle of the bed are never cut, and fewer would be") {
    for (const Profile& profile : built_in_profiles()) {
      for (const int width : {1, 2, 3, 4, 6, 8, 12, 24}) {
        if (profile.card && profile.card->repeat % width != 0) {
          continue;
        }
        CAPTURE(profile.name);
        CAPTURE(width);
        Document document = blank_document(width, 4);
        document.grid.set(0, 1, true);
        const auto stitches = whole_repeats_in_the_middle(document, profile);
        REQUIRE(stitches.has_value());
        CHECK((*stitches - 2 * document.piece.edge) % width == 0);
        document.piece.stitches = *stitches;
        CHECK_FALSE(is_cut(document, profile));
        document.piece.stitches = *stitches - width;
        CHECK((*stitches == width + 2 * document.piece.edge || is_cut(document, profile)));
      }
    }
    // A card of 24 begins twelve needles left of the middle (common practice): 12 stitches lie whole twice, not once.
    CHECK(whole_repeats_in_the_middle(blank_document(12, 4), test::card_machine()) == 26);
    CHECK(whole_repeats_in_the_middle(blank_document(24, 4), test::card_machine()) == 26);
    CHECK_FALSE(whole_repeats_in_the_middle(blank_document(200, 4), test::card_machine()).has_value());
  }

  TEST_CASE("a row of two colours of which the piece shows one only leaves the other yarn loose across it") {
    Document document = test::drawn({
        "####........", // on the piece main alone
        "............", // a row of one colour is another finding
        "........####", // on the piece contrast alone
        "#.#.#.#.#.#.",
    });
    document.yarns = {{'A', "Oat", {232, 220, 194}}, {'B', "Ink", {32, 48, 74}}};
    document.bands = {Band{4, 'A', 'B', std::nullopt}};
    document.piece.end_needles = EndNeedles::never;
    document.piece.stitches = 4;
    document.piece.first_needle = left_needle(12); // drawn columns 12 to 9
    const Profile profile = test::card_machine();
    const auto found = of_kind(FindingId::yarn_loose_on_piece, document, profile);
    REQUIRE(found.size() == 2);
    CHECK(found[0].severity == Severity::warning);
    CHECK(found[0].row == 1);
    CHECK(found[0].yarn == 'A');
    CHECK(found[1].row == 3);
    CHECK(found[1].yarn == 'B');
    const Words words = words_of(found[1], document, profile);
    CHECK(words.text ==
          "row 4 is drawn in two colours, but on the piece, L12 to L9, it is Oat alone: Ink would lie loose "
          "across the whole piece");
    CHECK(words.remedy ==
          "take Ink out of the feeder before that row and put it back after it, or move the piece along "
          "the bed until the row shows both");
    // End needles that knit contrast hold it at both ends: then it floats, and isn't loose; main is as before.
    document.piece.end_needles = EndNeedles::always;
    REQUIRE(of_kind(FindingId::yarn_loose_on_piece, document, profile).size() == 1);
    CHECK(of_kind(FindingId::yarn_loose_on_piece, document, profile)[0].row == 1);
    // Two stitches, both of them end needles: main knits nowhere in any row of two colours.
    document.piece.stitches = 2;
    CHECK(of_kind(FindingId::yarn_loose_on_piece, document, profile).size() == 3);
    // As soon as the piece shows a stitch of each, or all of the repeat, nothing is loose.
    document.piece.end_needles = EndNeedles::never;
    document.piece.stitches = 9;
    CHECK(of_kind(FindingId::yarn_loose_on_piece, document, profile).empty());
    document.piece.stitches.reset();
    CHECK(of_kind(FindingId::yarn_loose_on_piece, document, profile).empty());
  }

  TEST_CASE("what lies loose is what the rows to knit say, stitch by stitch") {
    Dice dice(11);
    int loose = 0;
    for (int time = 0; time < 400; ++time) {
      Document document = blank_document(1 + dice.throw_one(130), 6);
      document.bands = {Band{6, 'A', 'B', std::nullopt}};
      for (int row = 0; row < 6; ++row) {
        const int from = dice.throw_one(document.grid.width());
        for (int column = from; column < document.grid.width() && column < from + 40; ++column) {
          document.grid.set(column, row, true);
        }
      }
      document.piece.stitches = 1 + dice.throw_one(60);
      document.piece.first_needle = Needle{dice.throw_one(80) - 60};
      document.piece.end_needles = time % 2 == 0 ? EndNeedles::always : EndNeedles::never;
      const Profile profile = test::by_hand();
      const Placement placement(document, profile);
      const int last = *document.piece.stitches - 1;
      for (int row = 0; row < 6; ++row) {
        int contrast = 0;
        for (int stitch = 0; stitch <= last; ++stitch) {
          const bool at_end = time % 2 == 0 && (stitch == 0 || stitch == last);
          const int column = placement.column_of(Needle{document.piece.first_needle->position + stitch});
          contrast += at_end || document.grid.at(column, row) ? 1 : 0;
        }
        const bool expected = document.grid.mixed(row) && (contrast == 0 || contrast == last + 1);
        const auto found = of_kind(FindingId::yarn_loose_on_piece, document, profile);
        CHECK(std::ranges::any_of(found, [&](const Finding& one) { return one.row == row; }) == expected);
        loose += expected ? 1 : 0;
      }
    }
    CHECK(loose > 100);
  }
}
