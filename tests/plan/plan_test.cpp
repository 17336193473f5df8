// Needles, runs, what hands do between rows, and what is punched.
#include "plan/plan.hpp"
#include "support/builders.hpp"
#include "support/machines.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using test::drawn;

namespace {

std::string needles(const Document& document, const Profile& profile, std::size_t row = 0) {
  const auto rows = rows_to_knit(document, profile);
  return text_of(runs_of(needles_in_row(document, profile, rows.rows.at(row))));
}

// "3: Ink out, end needles back; 4: Ink in", without what is done behind the plain row at the end; "3b" is the second
// pass of row 3.
std::string actions(const Document& document, const Profile& profile) {
  std::string text;
  const RowsToKnit rows = rows_to_knit(document, profile);
  for (const RowActions& row : actions_of(document, profile, rows)) {
    if (row.row > static_cast<int>(rows.rows.size()) + 1) {
      continue;
    }
    text += (text.empty() ? "" : "; ") + std::to_string(row.row) + (row.pass == 2 ? "b:" : ":");
    for (const Action& action : row.actions) {
      text += (text.back() == ':' ? " " : ", ") + text_of(action, document);
    }
  }
  return text;
}

} // namespace

TEST_SUITE("needles of a row") {
  TEST_CASE("left to right as the knitter sees them: mirrored against the drawing; L1 next to R1") {
    Document document = drawn({"##....#."});
    CHECK(needles(document, test::by_hand()) == "L3 R3–R4");
    Document middle = drawn({"...##..."});
    CHECK(needles(middle, test::by_hand()) == "L1–R1");
    CHECK(needles(drawn({"........"}), test::by_hand()) == "none");
  }

  TEST_CASE("end needles are among them where they knit contrast, in pattern rows only") {
    Document document = drawn({"........", "...##..."});
    document.piece.end_needles = EndNeedles::always;
    CHECK(needles(document, test::by_hand(), 0) == "L4 L1–R1 R4");
    CHECK(needles(document, test::by_hand(), 1) == "none");
  }

  TEST_CASE("the sample of the file form: 71 stitches from L36") {
    Document document = drawn({"......##......##........"});
    document.piece.stitches = 71;
    document.piece.first_needle = left_needle(36);
    // Drawn columns 7, 8, 15, 16 are x = 17, 16, 9, 8 (mod 24), and the piece's ends are L36 and R35.
    CHECK(needles(document, test::card_machine()) == "L36 L28–L27 L20–L19 L4–L3 R5–R6 R21–R22 R29–R30 R35");
  }

  TEST_CASE("runs are counted") {
    const auto runs = runs_of({Needle{-2}, Needle{-1}, Needle{0}, Needle{5}});
    REQUIRE(runs.size() == 2);
    CHECK(runs[0].count() == 3);
    CHECK(runs[1].count() == 1);
  }
}

TEST_SUITE("between the rows") {
  // Before a plain row the contrast comes out and the selected end needles go back; a selected needle whose feeder is
  // empty drops its stitch (common practice).
  TEST_CASE("a plain row on a machine that selects for the next pass") {
    CHECK(actions(drawn({"#.", "..", "#."}), test::card_machine()) ==
          "1: Ink in; 2: Ink out, end needles back; 3: Ink in; 4: Ink out, all needles back");
  }

  TEST_CASE("end needles go back before every plain row, not only the first") {
    CHECK(actions(drawn({"#.", "..", "..", "#."}), test::card_machine()) ==
          "1: Ink in; 2: Ink out, end needles back; 3: end needles back; 4: Ink in; 5: Ink out, all needles back");
  }

  TEST_CASE("no needle to push back where end needles don't knit contrast, or nothing is selected beforehand") {
    CHECK(actions(drawn({"#.", "..", "#."}), test::by_hand()) == "1: Ink in; 2: Ink out; 3: Ink in; 4: Ink out");
    Profile same_pass = test::card_machine();
    same_pass.selects = Selects::same_pass;
    CHECK(actions(drawn({"..", "#."}), same_pass) == "1: Ink in; 2: Ink out");
  }

  TEST_CASE("main comes out before an all-contrast row, and goes back after it") {
    CHECK(actions(drawn({"#.", "##", "#."}), test::by_hand()) == "1: Ink in; 2: Oat out; 3: Oat in; 4: Ink out");
  }

  TEST_CASE("a change of contrast over an inserted row, and of main") {
    Document document = drawn({"#.", "#."});
    document.yarns = test::five_yarns();
    document.bands = {Band{1, 'A', 'B', {}}, Band{1, 'D', 'C', {}}};
    CHECK(actions(document, test::by_hand()) == "1: Ink in; 2: Ink out; 3: Oat out, Kelp in, Brick in; 4: Brick out");
  }

  TEST_CASE("one feeder: yarns change between the passes, and what hangs on the carriage's side goes first") {
    Profile one_feeder = test::card_machine();
    one_feeder.feeders = 1;
    // Row 1: Oat, Ink. Row 2: Ink, Oat. Row 3 is plain: Oat is in the feeder. The carriage is set to plain for it, so
    // that no needle has to go back.
    CHECK(actions(drawn({"....", "#...", "#..."}), one_feeder) == "1b: Oat out, Ink in; 2b: Ink out, Oat in");
    CHECK(actions(drawn({"#...", "....", "####", "#..."}), one_feeder) ==
          "1b: Oat out, Ink in; 3: Ink out, Oat in; 4b: Oat out, Ink in; 5: Ink out, Oat in");
  }

  TEST_CASE("a yarn that is taken out hangs where it is wanted again, or is cut") {
    const Document document = drawn({"#...", "....", "....", "#...", "....", "#..."});
    const Profile profile = test::card_machine();
    std::vector<std::string> out;
    for (const RowActions& row : actions_of(document, profile, rows_to_knit(document, profile))) {
      for (const Action& action : row.actions) {
        if (action.doing == Doing::contrast_out) {
          out.emplace_back(action.hangs ? "hangs" : action.far_side ? "wanted on the far side" : "cut");
        }
      }
    }
    // After one row without it the carriage stands on the other side, after two on the same.
    CHECK(out == std::vector<std::string>{"wanted on the far side", "hangs", "cut"});
  }
}

TEST_SUITE("what is punched") {
  std::vector<int> punched(const Document& document, const Profile& profile, int row) {
    return punched_columns(document, profile, rows_to_knit(document, profile), row);
  }
  using Columns = std::vector<int>;

  TEST_CASE("card column 1 selects the leftmost needle of the repeat, so the drawing is mirrored") {
    CHECK(punched(drawn({"##......................"}), test::card_machine(), 1) == Columns{23, 24});
    CHECK(punched(drawn({"#......."}), test::card_machine(), 1) == Columns{8, 16, 24});
  }

  TEST_CASE("where a hole means main, all else is punched") {
    Profile profile = test::card_machine();
    profile.card->hole = HoleMeans::main;
    CHECK(punched(drawn({"####....####....####...."}), profile, 1) ==
          Columns{1, 2, 3, 4, 9, 10, 11, 12, 17, 18, 19, 20});
  }

  TEST_CASE("inserted rows are blank, and a loop's circuit comes again") {
    Document document = drawn({"#...", "..#."});
    document.yarns = test::five_yarns();
    document.bands = {Band{1, 'A', 'B', {}}, Band{1, 'A', 'C', {}}};
    document.card.loop = true; // 1 + 2 +
    CHECK(punched(document, test::card_machine(), 2).empty());
    CHECK(punched(document, test::card_machine(), 1) == punched(document, test::card_machine(), 5));
    CHECK(punched(document, test::card_machine(), 3) != punched(document, test::card_machine(), 1));
  }

  TEST_CASE("end needles are the carriage's business and not on the card") {
    Document document = drawn({"........................"});
    document.grid.set(11, 0, true);
    CHECK(punched(document, test::card_machine(), 1) == Columns{13});
  }

  TEST_CASE("no card, nothing to punch") {
    CHECK(punched(drawn({"#."}), test::by_hand(), 1).empty());
  }
}
