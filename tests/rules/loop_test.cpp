// What goes wrong only at the machine: a loop that never brings the carriage to the yarn, a card that runs ahead of
// the second yarn, and knitting without an end.
#include "rules/findings.hpp"
#include "rules/found.hpp"
#include "support/builders.hpp"
#include "support/machines.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using test::drawn;
using test::of_kind;

namespace {

// Two contrasts, so that yarn is changed within the circuit and from its last row to its first.
Document two_bands(const std::vector<std::string>& lines, int rows_of_first) {
  Document document = drawn(lines);
  document.yarns = test::five_yarns();
  document.bands = {Band{rows_of_first, 'A', 'B', {}},
                    Band{static_cast<int>(lines.size()) - rows_of_first, 'A', 'C', {}}};
  document.card.loop = true;
  return document;
}

} // namespace

TEST_SUITE("yarn change in a loop") {
  // 1, 2, plain, 3, 4, plain, and the carriage is back on the right, where it began; one row for the side brings it to
  // the left, one more makes the circuit even.
  TEST_CASE("rows that bring the carriage over and back are warned of, with the way out") {
    Document document = two_bands({"#.", "#.", "#.", "#."}, 2);
    document.rules.change_side = ChangeSide::left;
    const auto found = of_kind(FindingId::loop_change_undone, document);
    REQUIRE(found.size() == 1);
    CHECK(found[0].severity == Severity::warning);
    CHECK(found[0].row == 0);
    CHECK(found[0].times == 2);
    const Words words = words_of(found[0], document, test::card_machine());
    CHECK(words.text == "every circuit of the loop begins on the same side, so Ink is threaded on the right for row 1, "
                        "not on the left: 2 plain rows at its end change nothing");
    CHECK(words.remedy == "begin with the carriage on the left (carriage = \"left\"), or set change_side = \"any\"");
  }

  TEST_CASE("whoever does what the remedy says is warned no more") {
    for (const int rows_of_first : {1, 2, 3}) {
      for (const Side carriage : {Side::left, Side::right}) {
        for (const ChangeSide wished : {ChangeSide::left, ChangeSide::right}) {
          Document document = two_bands({"#.", "#.", "#.", "#.", "#."}, rows_of_first);
          document.rules.change_side = wished;
          document.piece.carriage = carriage;
          const bool begins_wrong = (carriage == Side::left) != (wished == ChangeSide::left);
          CHECK(of_kind(FindingId::loop_change_undone, document).size() == (begins_wrong ? 1U : 0U));
          document.piece.carriage = other(carriage);
          CHECK(of_kind(FindingId::loop_change_undone, document).size() == (begins_wrong ? 0U : 1U));
          document.rules.change_side = ChangeSide::any;
          CHECK(of_kind(FindingId::loop_change_undone, document).empty());
        }
      }
    }
  }

  TEST_CASE("a circuit that begins with a row of main is threaded a row later, on the other side") {
    Document document = two_bands({"#.", "#.", "#.", ".."}, 2);
    document.rules.change_side = ChangeSide::left; // the carriage begins on the right, and row 2 begins on the left
    CHECK(of_kind(FindingId::loop_change_undone, document).empty());
    document.rules.change_side = ChangeSide::right;
    CHECK(of_kind(FindingId::loop_change_undone, document).size() == 1);
  }

  TEST_CASE("nothing is threaded where one contrast goes all round, nor without a loop") {
    Document document = drawn({"#.", "#.", "#."});
    document.card.loop = true;
    document.rules.change_side = ChangeSide::left;
    CHECK(of_kind(FindingId::loop_change_undone, document).empty());
    document = two_bands({"#.", "#."}, 1);
    document.rules.change_side = ChangeSide::left;
    document.card.loop = false;
    CHECK(of_kind(FindingId::loop_change_undone, document).empty());
  }
}

TEST_SUITE("one feeder") {
  TEST_CASE("on a card machine the card is held for the second pass of a two-colour row") {
    Profile profile = test::card_machine();
    const Document document = drawn({"#.", "##", "..", "#."});
    CHECK(of_kind(FindingId::card_held, document, profile).empty());
    profile.feeders = 1;
    const auto found = of_kind(FindingId::card_held, document, profile);
    REQUIRE(found.size() == 1);
    CHECK(found[0].severity == Severity::note);
    CHECK(found[0].stitches == 2);
    const Words words = words_of(found[0], document, profile);
    CHECK(words.text == "the carriage has one feeder: 2 rows to knit take two passes each, over the same card row");
    CHECK(words.remedy ==
          "hold the card on its row for the second pass, and let it go on with the next row; the rows to "
          "knit name the yarn of each pass");
    CHECK(of_kind(FindingId::card_held, drawn({"##", ".."}), profile).empty());
    profile.card.reset();
    CHECK(of_kind(FindingId::card_held, document, profile).empty());
  }
}

TEST_SUITE("amount") {
  TEST_CASE("more than four million rows to knit are cut off, and that is a fault") {
    Document document = drawn({"#.", "#."});
    document.piece.times = 1000;
    document.bands = {Band{1, 'A', 'B', 99}, Band{1, 'A', 'B', {}}};
    CHECK(of_kind(FindingId::too_many_rows, document, test::by_hand()).empty());
    document = blank_document(2, 2000);
    document.piece.times = 1000;
    document.bands.assign(2000, Band{1, 'A', 'B', 2});
    const auto found = of_kind(FindingId::too_many_rows, document, test::by_hand());
    REQUIRE(found.size() == 1);
    CHECK(found[0].severity == Severity::fault);
    CHECK(words_of(found[0], document, test::by_hand()).text ==
          "the design comes to more than 4 million rows to knit; only the first are worked out");
  }
}
