// The steps: complete, in the trade's order, and the same for the eye and for the machine.
#include "plan/knit_steps.hpp"
#include "support/demos.hpp"

#include <algorithm>
#include <doctest/doctest.h>
#include <fmt/format.h>

using namespace punchwright;

namespace {

StepList steps_for(const OpenedDocument& demo) {
  return steps_of(demo.document, demo.profile, rows_to_knit(demo.document, demo.profile));
}

OpenedDocument demo(const std::string& name) {
  return test::open_demo(PUNCHWRIGHT_SOURCE_DIR "/patterns/" + name + ".repeat");
}

std::vector<StepKind> kinds_of(const StepList& list) {
  std::vector<StepKind> kinds;
  for (const Step& step : list.steps) {
    kinds.push_back(step.kind);
  }
  return kinds;
}

const Step& first_of(const StepList& list, StepKind kind) {
  const auto found = std::ranges::find(list.steps, kind, &Step::kind);
  REQUIRE(found != list.steps.end());
  return *found;
}

} // namespace

// Line by line against the procedure for two-colour knitting on a machine that selects for the next pass: common
// practice; tension: alessandrina.com on Fair Isle; the peg: lacecarriage.com, two-colour knitting.
TEST_CASE("hood border: the steps are the trade's procedure, line by line") {
  const StepList list = steps_for(demo("hood-border"));
  const std::vector<std::pair<std::string, std::string>> procedure = {
      // 1. Work hung on, weights, card locked on its first row, carriage, plain knitting.
      {"Starting position: the work hangs on 62 needles, L31 to R31,",
       "the carriage stands on the left, set to plain knitting"},
      {"Thread Sailcloth into the first feeder (main).", ""},
      {"Tension: at least one whole number looser than for plain knitting", ""},
      {"Hang weights on both edges", ""},
      {"Set the row counter to zero.", ""},
      {"Put the card in and lock it on its first row", ""},
      // 2. One plain row.
      {"Knit one plain row, to the right.", ""},
      // 3. Set to select, knit back: plain, selecting row 1.
      {"Set the carriage to select from the card, end needles too.", ""},
      {"Knit back to the left: it knits plain and selects the needles of row 1.", ""},
      // 4. Single length, released.
      {"See that the card's length switch stands at single, not at double.", ""},
      {"Release the card", ""},
      // 5. Two-colour knitting, contrast into the second feeder.
      {"Set the carriage to two-colour knitting.", ""},
      {"Thread Dulse into the second feeder (contrast); hang a peg on its end", ""},
      // 6. The pattern rows.
      {"Knit 12 rows (rows 1 to 12), ending on the left. The counter shows 14.", ""},
      // 9. Contrast out and cut, needles back, one plain row, needles back again; plain before anything else. The
      // needles
      // are all of them: behind its last row the open card shows its fully punched overlap rows.
      {"Take Dulse out of the feeder and cut it.", ""},
      {"Push every needle, L31 to R31, back to working position", "overlap rows"},
      {"Knit one plain row, to the right.", ""},
      {"Push every needle, L31 to R31, back to working position.", ""},
      {"Set the carriage to plain knitting, selecting nothing", ""},
  };
  REQUIRE(list.steps.size() == procedure.size());
  for (std::size_t index = 0; index < procedure.size(); ++index) {
    CAPTURE(list.steps[index].text);
    CHECK(list.steps[index].text.starts_with(procedure[index].first));
    CHECK(list.steps[index].text.find(procedure[index].second) != std::string::npos);
  }
}

// Line 7 of the same procedure: before a blank card row contrast out and the end needles back; contrast in behind it.
TEST_CASE(
    "a plain row: contrast out, the end needles back and which, what is selected meanwhile, the next contrast in") {
  const StepList list = steps_for(demo("puffin-cove"));
  const auto back = std::ranges::find(list.steps, StepKind::needles_back, &Step::kind);
  REQUIRE(back != list.steps.end());
  CHECK((back - 1)->kind == StepKind::contrast_out);
  CHECK(back->text == "Push L37 and R37 back to working position: row 9 has no contrast stitch.");
  CHECK((back + 1)->text ==
        "Knit one row plain in Oat (row 9), ending on the left. The carriage selects row 10 meanwhile. "
        "The counter shows 11.");
  CHECK((back + 2)->text == "Thread Rowanberry into the second feeder (contrast); hang a peg on its end as a weight.");
}

TEST_CASE("where the same pass selects: a free pass stores row 1, and no needle is ever pushed back") {
  OpenedDocument puffin = demo("puffin-cove");
  REQUIRE(test::put_on(puffin, test::families()[1]));
  const StepList list = steps_for(puffin);
  CHECK(first_of(list, StepKind::selecting_row).text ==
        "Take the carriage to the right in a free pass, without knitting: it stores row 1 of the card.");
  const auto kinds = kinds_of(list);
  CHECK(std::ranges::find(kinds, StepKind::needles_back) == kinds.end());
  CHECK(list.rows_before == 1);
  // What it stored is not wanted: plain before the last row.
  const auto plain = std::ranges::find(kinds, StepKind::set_plain);
  CHECK(*(plain + 1) == StepKind::end_row);
}

// The line in sight lies seven rows beyond the one that is read (trade-notes: the reader's offset), and two overlap
// rows follow the last one: number 1 has a line from six rows on.
TEST_CASE("a card that ends before the number 1 is put in by the mark on its first row") {
  for (const int rows : {5, 6}) {
    CAPTURE(rows);
    OpenedDocument short_card{blank_document(24, rows), *built_in_profile("bulky-card-24"), {}};
    for (int row = 0; row < rows; ++row) {
      short_card.document.grid.set(row, row, true);
    }
    for (const bool loop : {false, true}) {
      short_card.document.card.loop = loop;
      const std::string words = first_of(steps_for(short_card), StepKind::card_in).text;
      const bool number = words.find("the number 1 in its margin is in sight") != std::string::npos;
      const bool mark = words.find("the row marked \"knitting starts here\"") != std::string::npos;
      CHECK(number == (loop || rows == 6));
      CHECK(mark != number);
    }
  }
}

TEST_CASE("by hand: the needles of every row, no card, plain rows as they come") {
  const OpenedDocument crabs = demo("shore-crabs");
  const StepList list = steps_for(crabs);
  const auto kinds = kinds_of(list);
  CHECK(std::ranges::count(kinds, StepKind::knit_by_hand) == 19);
  CHECK(std::ranges::count(kinds, StepKind::card_in) == 0);
  CHECK(std::ranges::count(kinds, StepKind::selection_on) == 0);
  const auto rows = rows_to_knit(crabs.document, crabs.profile);
  for (const Step& step : list.steps) {
    if (step.kind == StepKind::knit_by_hand) {
      const auto needles =
          needles_in_row(crabs.document, crabs.profile, rows.rows[static_cast<std::size_t>(step.first_row - 1)]);
      CAPTURE(step.text);
      CHECK(step.text.find("bring forward " + text_of(runs_of(needles)) + " (") != std::string::npos);
    }
  }
}

TEST_CASE(
    "one yarn a pass: main and contrast take turns in going first, and no yarn crosses the piece to be threaded") {
  OpenedDocument crabs = demo("shore-crabs");
  test::put_on(crabs, test::families()[3]);
  const StepList list = steps_for(crabs);
  const auto knitted = knit_steps(list, crabs.document, crabs.profile, nullptr);
  CHECK(knitted.refused_step < 0);
  for (int row = 0; row < knitted.knitting.fabric.rows(); ++row) {
    CHECK(knitted.knitting.fabric.loose(row).empty());
  }
  int passes = 0;
  for (const Step& step : list.steps) {
    passes += static_cast<int>(std::ranges::count_if(
        step.actions, [](const MachineAction& action) { return std::holds_alternative<KnitPass>(action); }));
  }
  CHECK(passes == 1 + 2 * 19 + 2 + 1); // setting-up, two a row of two colours, two plain rows, the last one
}

// Between passes no needle stands forward where the same pass selects; a plain row still has to select the next one.
TEST_CASE("one feeder by card: the words fit how the machine selects, and the card is locked for the row that comes") {
  for (const auto& [family, chosen, not_said] : {std::tuple{4U, "needles standing forward", "that the card selects"},
                                                 std::tuple{5U, "needles that the card selects", "standing forward"}}) {
    OpenedDocument puffin = demo("puffin-cove");
    REQUIRE(test::put_on(puffin, test::families()[family]));
    const StepList list = steps_for(puffin);
    int plain = 0;
    for (std::size_t place = 0; place < list.steps.size(); ++place) {
      const Step& step = list.steps[place];
      CAPTURE(step.text);
      CHECK(step.text.find(not_said) == std::string::npos);
      if (step.text.starts_with("Row ") && step.text.find(" pass, ") != std::string::npos) {
        CHECK(step.text.find(chosen) != std::string::npos);
      }
      if (step.text.find("every needle knits") != std::string::npos) {
        ++plain;
        CHECK(step.text.find("plain knitting, still selecting from the card, and knit") != std::string::npos);
      }
      if (step.kind == StepKind::card_locked) {
        const auto next = std::find_if(list.steps.begin() + static_cast<std::ptrdiff_t>(place), list.steps.end(),
                                       [](const Step& later) { return later.text.starts_with("Row "); });
        REQUIRE(next != list.steps.end());
        CHECK(step.text == fmt::format("Lock the card: row {} takes two passes, and is read in both.",
                                       next->text.substr(4, next->text.find(',') - 4)));
      }
    }
    CHECK(plain == 3);
  }
}

TEST_CASE("before an all-contrast row main is taken out, and put back behind it") {
  Document document = blank_document(4, 3);
  for (int column = 0; column < 4; ++column) {
    document.grid.set(column, 1, true);
    document.grid.set(column, column % 2 == 0 ? 0 : 2, true);
  }
  document.grid.set(0, 2, false);
  document.piece.stitches = 20;
  for (const int family : {0, 1, 2}) {
    OpenedDocument design{document, *built_in_profile("standard-card-24"), {}};
    REQUIRE(test::put_on(design, test::families()[static_cast<std::size_t>(family)]));
    const auto kinds = kinds_of(steps_for(design));
    const auto out = std::ranges::find(kinds, StepKind::main_out);
    REQUIRE(out != kinds.end());
    CHECK(std::find(out, kinds.end(), StepKind::main_in) != kinds.end());
  }
}

TEST_CASE("counter, carriage and rows told with each step are the machine's own") {
  for (const auto& path : test::demo_paths()) {
    for (const test::Family& family : test::families()) {
      OpenedDocument design = test::open_demo(path);
      if (!test::put_on(design, family)) {
        continue;
      }
      CAPTURE(path.filename().string());
      CAPTURE(family.name);
      const auto rows = rows_to_knit(design.document, design.profile);
      const StepList list = steps_for(design);
      const auto card = family.selects == Selects::by_hand
                            ? nullptr
                            : std::make_shared<const PunchedCard>(planned_card(design.document, design.profile, rows));
      Knitting knitting =
          begin_knitting(machine_as_found(design.profile, list.carriage, card, design.document.card.loop));
      int row = 0;
      for (const Step& step : list.steps) {
        CAPTURE(step.text);
        for (const MachineAction& action : step.actions) {
          REQUIRE(knit_on(knitting, action));
        }
        CHECK(step.counter == knitting.state.counter);
        CHECK(step.carriage == knitting.state.carriage);
        if (step.first_row > 0) { // rows come in order, none left out
          CHECK(step.first_row >= row);
          CHECK(step.first_row <= row + 1);
          row = step.last_row;
        }
      }
      CHECK(row == static_cast<int>(rows.rows.size()));
    }
  }
}

namespace {

// Two rows of which the first has a float of eleven stitches, on 24 needles of a machine of its own kind.
OpenedDocument with_catches(const std::string& profile) {
  OpenedDocument design = demo("hood-border");
  design.document.bands = {Band{2, 'A', 'D', std::nullopt}};
  design.document.yarns = {Yarn{'A', "Oat", {}}, Yarn{'D', "Ink", {}}};
  design.document.grid = Grid(12, 2);
  design.document.grid.set_row_text(0, "#...........");
  design.document.grid.set_row_text(1, "#..#..#..#..");
  design.document.piece.stitches = 24;
  design.document.piece.times = 2;
  design.document.piece.first_needle.reset();
  set_mark(design.document.marks.caught, design.document.grid, 6, 0, true);
  design.profile = *built_in_profile(profile);
  return design;
}

} // namespace

TEST_CASE("a float is lifted when its row is knitted and before the next one is, by card and by hand") {
  for (const std::string profile : {"bulky-card-24", "standard-card-24", "plastic-by-hand"}) {
    CAPTURE(profile);
    const OpenedDocument design = with_catches(profile);
    const StepList list = steps_for(design);
    std::vector<int> passes_before; // rows of the piece that are knitted when a float is lifted
    int passes = 0;
    for (const Step& step : list.steps) {
      for (const MachineAction& action : step.actions) {
        passes += std::holds_alternative<KnitPass>(action) && step.part == StepPart::knitting ? 1 : 0;
      }
      if (step.kind == StepKind::lift_float) {
        passes_before.push_back(passes);
        // By hand no end needle knits contrast: the float of the outer repeat has no end, and is none.
        const bool by_hand = design.profile.selects == Selects::by_hand;
        CHECK(step.text.find(fmt::format("of row {}:", passes)) != std::string::npos);
        REQUIRE(step.actions.size() == (by_hand ? 1 : 2));
        CHECK(std::get<LiftFloat>(step.actions.back()).needle.position -
                  std::get<LiftFloat>(step.actions.front()).needle.position ==
              (by_hand ? 0 : 12)); // a repeat
      }
    }
    CHECK(passes_before == std::vector{1, 3});
  }
}

TEST_CASE("no float is lifted at the edges, where the yarn has no stitch beyond") {
  OpenedDocument design = with_catches("plastic-by-hand");
  design.document.piece.stitches = 12; // one repeat: its one contrast stitch has no other beside it
  const StepList list = steps_for(design);
  CHECK(std::ranges::find(list.steps, StepKind::lift_float, &Step::kind) == list.steps.end());
}
