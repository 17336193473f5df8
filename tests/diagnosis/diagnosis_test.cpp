// From what the knitter sees to what went wrong, and back to the row that is right.
#include "diagnosis/diagnosis.hpp"
#include "diagnosis/fitting.hpp"
#include "diagnosis/marked_slips.hpp"
#include "diagnosis/visible.hpp"
#include "support/demos.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

using namespace punchwright;

namespace {

// A demo with everything that the search asks for.
struct Room {
  explicit Room(const std::string& name, const test::Family* family = nullptr)
      : demo(test::open_demo(PUNCHWRIGHT_SOURCE_DIR "/patterns/" + name + ".repeat")) {
    if (family != nullptr) {
      REQUIRE(test::put_on(demo, *family));
    }
    rows = rows_to_knit(demo.document, demo.profile);
  }
  [[nodiscard]] Setting setting() const { return setting_of(demo.document, demo.profile, rows); }

  // A fabric as marks, `count` rows of it from row 1.
  [[nodiscard]] SeenFabric marked(const Fabric& fabric, int count) const {
    const int below = setting().steps.rows_before;
    SeenFabric seen;
    for (int row = 0; row < count; ++row) {
      std::vector<Mark> marks;
      for (Needle needle = first_needle_of(demo.document); needle <= last_needle_of(demo.document); ++needle.position) {
        const Made& cell = fabric.at(row + below, needle);
        const bool main =
            std::ranges::any_of(demo.document.bands, [&](const Band& band) { return band.main == cell.yarn; });
        marks.push_back(cell.missing || cell.dropped ? Mark::dropped
                        : cell.yarn == 0             ? Mark::not_looked_at
                        : main                       ? Mark::main
                                                     : Mark::contrast);
      }
      seen.rows.push_back(std::move(marks));
    }
    return seen;
  }

  OpenedDocument demo;
  RowsToKnit rows;
};

bool names(const Explanation& explanation, DepartureKind kind, int step) {
  return std::ranges::any_of(explanation.departures, [&](const Departure& departure) {
    return departure.kind == kind && departure.step == step;
  });
}

} // namespace

TEST_CASE("a picture: the top row first, the knit side mirrored against the bed, comments left alone") {
  const auto seen = read_seen("; my piece\n..#\n\n?o.\r\n", "seen.txt", 3, Face::knit);
  REQUIRE(seen.ok());
  REQUIRE(seen->rows.size() == 2);
  CHECK(seen->rows[0] == std::vector{Mark::main, Mark::dropped, Mark::not_looked_at});
  CHECK(seen->rows[1] == std::vector{Mark::contrast, Mark::main, Mark::main});
  const auto purl = read_seen("..#\n", "seen.txt", 3, Face::purl);
  CHECK(purl->rows[0] == std::vector{Mark::main, Mark::main, Mark::contrast});
}

TEST_CASE("pictures that can't be read name line, column and what is allowed") {
  const auto message = [](const std::string& text) {
    return read_seen(text, "seen.txt", 3, Face::knit).error().text();
  };
  CHECK(message("..#\n.x.\n") ==
        "seen.txt:2:2: 'x' is no mark; allowed: '.' main, '#' contrast, 'o' dropped, '?' not looked at");
  CHECK(message("..\n") ==
        "seen.txt:1: 2 marks in this row; the piece has 3 stitches; write '?' for those that were not looked at");
  CHECK(message("; nothing\n") == "seen.txt: the picture has no rows; write a line for each row, the top one first");
}

TEST_CASE("the planned fabric is recognised") {
  const Room room("puffin-cove");
  const Setting setting = room.setting();
  const auto planned = knit_steps(setting.steps, room.demo.document, room.demo.profile, setting.card).knitting.fabric;
  const auto diagnosis = what_went_wrong(setting, room.marked(planned, 45));
  CHECK(diagnosis.as_planned);
  CHECK(diagnosis.explanations.empty());
}

TEST_CASE("end needles not pushed back: the likeliest explanation of two dropped ends, with the way back") {
  const Room room("puffin-cove");
  const Setting setting = room.setting();
  const auto line = action_line(setting.steps);
  const auto found = machine_as_found(room.demo.profile, setting.steps.carriage, setting.card);
  for (const Variation& variation : step_variations(setting.steps, line)) {
    const Step& step = setting.steps.steps[static_cast<std::size_t>(variation.departure.step)];
    if (step.kind != StepKind::needles_back || step.first_row != 9 ||
        variation.departure.kind != DepartureKind::left_out) {
      continue;
    }
    const auto diagnosis = what_went_wrong(setting, room.marked(knit_variation(line, variation, found).fabric, 14));
    REQUIRE_FALSE(diagnosis.explanations.empty());
    const Explanation& first = diagnosis.explanations.front();
    CHECK(names(first, DepartureKind::left_out, variation.departure.step));
    CHECK(first.remedy.back_to_row == 8);
    CHECK(first.remedy.ravel_rows == 6);
    CHECK(first.remedy.carriage == Side::right); // eight rows from the right
    CHECK(first.remedy.card_row == 9);
    CHECK(first.remedy.forward.empty());
  }
}

// Whatever single departure was made, the search names it, unless nothing of it shows.
TEST_CASE("every step left out or done twice is found again from its fabric, on every demo's own machine") {
  int found_again = 0;
  for (const auto& path : test::demo_paths()) {
    const Room room(path.stem().string());
    if (room.rows.rows.size() > 100) {
      continue; // 180 rows of one loop are searched in the usual way, only longer
    }
    const Setting setting = room.setting();
    const auto line = action_line(setting.steps);
    const auto found =
        machine_as_found(room.demo.profile, setting.steps.carriage, setting.card, room.demo.document.card.loop);
    const auto planned = knit_steps(setting.steps, room.demo.document, room.demo.profile, setting.card).knitting.fabric;
    for (const Variation& variation : step_variations(setting.steps, line)) {
      const Knitting knitted = knit_variation(line, variation, found);
      const int rows = std::min(knitted.fabric.rows(), planned.rows()) - setting.steps.rows_before - 1;
      if (knitted.refusal || rows < 3) {
        continue;
      }
      CAPTURE(path.filename().string());
      CAPTURE(words_of(variation.departure, setting.steps));
      const SeenFabric seen = room.marked(knitted.fabric, rows);
      const auto diagnosis = what_went_wrong(setting, seen);
      if (diagnosis.as_planned) {
        continue;
      }
      ++found_again;
      CHECK(std::ranges::any_of(diagnosis.explanations, [&](const Explanation& explanation) {
        return names(explanation, variation.departure.kind, variation.departure.step);
      }));
      for (const Explanation& explanation : diagnosis.explanations) {
        CHECK(explanation.departures.size() == 1); // pairs are sought only where no single one fits
        CHECK_FALSE(explanation.remedy.text.empty());
      }
    }
  }
  CHECK(found_again > 60);
}

TEST_CASE("by hand, a needle forgotten in one row is named") {
  const Room room("shore-crabs");
  const Setting setting = room.setting();
  const auto planned = knit_steps(setting.steps, room.demo.document, room.demo.profile, nullptr).knitting.fabric;
  SeenFabric seen = room.marked(planned, 12);
  const auto needles = needles_in_row(room.demo.document, room.demo.profile, room.rows.rows[2]);
  REQUIRE(needles.size() > 3);
  const auto wrong = static_cast<std::size_t>(needles[3].position - first_needle_of(room.demo.document).position);
  seen.rows[2][wrong] = Mark::main;
  const auto diagnosis = what_went_wrong(setting, seen);
  REQUIRE_FALSE(diagnosis.explanations.empty());
  const Departure& departure = diagnosis.explanations.front().departures.front();
  CHECK(departure.kind == DepartureKind::needle_wrong);
  CHECK(departure.row == 3);
  CHECK(departure.needles == std::vector<Needle>{needles[3]});
  CHECK(diagnosis.explanations.front().remedy.back_to_row == 2);
  CHECK(diagnosis.explanations.front().remedy.forward == needles);
}

TEST_CASE("a hole too many shows in every repeat, and is named by row and column") {
  const Room room("tide-waves");
  const Setting setting = room.setting();
  auto card = std::make_shared<PunchedCard>(*setting.card);
  int column = 1;
  while (card->at(7, column)) {
    ++column;
  }
  card->set(7, column, true);
  const auto real = knit_steps(setting.steps, room.demo.document, room.demo.profile, card).knitting.fabric;
  const auto diagnosis = what_went_wrong(setting, room.marked(real, 30));
  REQUIRE_FALSE(diagnosis.explanations.empty()); // the same needles, wrongly forward in that row alone, come behind it
  const Departure& departure = diagnosis.explanations.front().departures.front();
  CHECK(departure.kind == DepartureKind::hole_wrong);
  CHECK(departure.row == 7);
  CHECK(departure.column == column);
  CHECK(departure.amount == 1);
  CHECK(diagnosis.explanations.front().remedy.card_row == 7);
}

TEST_CASE("two slips at once are found where no single one explains the fabric") {
  const Room room("tide-waves");
  const Setting setting = room.setting();
  auto steps = setting.steps;
  // The card a row too far on, and the length switch at double.
  for (Step& step : steps.steps) {
    if (step.kind == StepKind::card_in) {
      std::get<TurnCard>(step.actions.front()).row = 2;
    }
    if (step.kind == StepKind::length_single) {
      step.actions.clear();
    }
  }
  const auto real = knit_steps(steps, room.demo.document, room.demo.profile, setting.card).knitting.fabric;
  const auto diagnosis = what_went_wrong(setting, room.marked(real, 20));
  REQUIRE_FALSE(diagnosis.explanations.empty());
  CHECK(std::ranges::any_of(diagnosis.explanations, [](const Explanation& explanation) {
    return explanation.departures.size() == 2 && explanation.departures[0].kind == DepartureKind::card_row_off &&
           explanation.departures[0].amount == 1 && explanation.departures[1].kind == DepartureKind::left_out;
  }));
}

// What a slip that is none of a step's own makes of the fabric, and what is then said of it.
TEST_CASE("the work hung beside its needles: the motif lies beside its place, on every family") {
  for (const test::Family& family : test::families()) {
    const Room room("hood-border", &family);
    for (const int by : {1, -2}) {
      CAPTURE(family.name);
      CAPTURE(by);
      // Knitted by a machine whose bed is numbered so many needles beside this one: only its reader stays in place.
      const Setting setting = room.setting();
      const auto other = work_off(setting, action_line(setting.steps), by);
      Knitting knitting = begin_knitting(
          machine_as_found(room.demo.profile, setting.steps.carriage, setting.card, room.demo.document.card.loop));
      for (const MachineAction& action : other.actions) {
        REQUIRE(knit_on(knitting, action));
      }
      SeenFabric seen;
      for (int row = 0; row < 8; ++row) {
        auto& marks = seen.rows.emplace_back();
        for (Needle needle = first_needle_of(room.demo.document); needle <= last_needle_of(room.demo.document);
             ++needle.position) {
          const char yarn = knitting.fabric.at(row + setting.steps.rows_before, Needle{needle.position + by}).yarn;
          marks.push_back(yarn == room.demo.document.bands.front().main ? Mark::main : Mark::contrast);
        }
        // What is drawn for a needle is knitted on the one that the work hangs beside.
        const auto planned =
            stitches_in_row(room.demo.document, room.demo.profile, room.rows.rows[static_cast<std::size_t>(row)]);
        for (std::size_t stitch = 12; stitch + 12 < planned.size(); ++stitch) {
          const auto drawn = static_cast<std::size_t>(static_cast<int>(stitch) + by);
          CHECK((marks[stitch] == Mark::contrast) == planned[drawn]);
        }
      }
      const auto diagnosis = what_went_wrong(setting, seen);
      REQUIRE_FALSE(diagnosis.explanations.empty());
      CHECK(std::ranges::any_of(diagnosis.explanations, [&](const Explanation& explanation) {
        const Departure& departure = explanation.departures.front();
        return departure.kind == DepartureKind::work_off && departure.amount == by &&
               explanation.remedy.back_to_row == 0;
      }));
    }
  }
}

namespace {

// The planned picture of a demo, to be marked otherwise.
SeenFabric planned_picture(const Room& room, int rows) {
  const auto fabric =
      knit_steps(room.setting().steps, room.demo.document, room.demo.profile, room.setting().card).knitting.fabric;
  return room.marked(fabric, rows);
}

const Departure* likeliest(const Diagnosis& diagnosis) {
  return diagnosis.explanations.empty() ? nullptr : &diagnosis.explanations.front().departures.front();
}

} // namespace

TEST_CASE("a row of the wrong colour is a carriage at plain, or needles that stood wrong") {
  const Room room("puffin-cove");
  SeenFabric seen = planned_picture(room, 24);
  seen.rows[19].assign(seen.rows[19].size(), Mark::main);
  auto diagnosis = what_went_wrong(room.setting(), seen);
  REQUIRE(likeliest(diagnosis) != nullptr);
  CHECK(likeliest(diagnosis)->kind == DepartureKind::carriage_plain);
  CHECK(likeliest(diagnosis)->row == 20);
  CHECK(diagnosis.explanations.front().remedy.back_to_row == 19);
  seen.rows[19].assign(seen.rows[19].size(), Mark::contrast);
  diagnosis = what_went_wrong(room.setting(), seen);
  REQUIRE(likeliest(diagnosis) != nullptr);
  CHECK(likeliest(diagnosis)->kind == DepartureKind::needle_wrong);
  CHECK(likeliest(diagnosis)->stood == Stood::all_forward);
}

TEST_CASE(
    "a row of the card that is missing in the middle was passed over, one that is exchanged in colour threaded so") {
  for (const Selects selects : {Selects::next_pass, Selects::same_pass}) {
    const test::Family family{"card", selects, 2};
    const Room room("puffin-cove", &family);
    SeenFabric seen = planned_picture(room, 24);
    seen.rows.erase(seen.rows.begin() + 16);
    auto diagnosis = what_went_wrong(room.setting(), seen);
    REQUIRE(likeliest(diagnosis) != nullptr);
    CHECK(likeliest(diagnosis)->kind == DepartureKind::card_skipped);
    CHECK(likeliest(diagnosis)->row == 17);
    seen = planned_picture(room, 20);
    for (std::size_t row = 13; row < 20; ++row) {
      for (Mark& mark : seen.rows[row]) {
        mark = mark == Mark::main ? Mark::contrast : Mark::main;
      }
    }
    diagnosis = what_went_wrong(room.setting(), seen);
    REQUIRE(likeliest(diagnosis) != nullptr);
    CHECK(likeliest(diagnosis)->kind == DepartureKind::yarns_exchanged);
  }
}

TEST_CASE("by hand, needles counted from the wrong place from a row on") {
  const Room room("shore-crabs");
  SeenFabric seen = planned_picture(room, 9);
  for (std::size_t row = 2; row < 9; ++row) {
    auto& marks = seen.rows[row];
    marks.insert(marks.begin(), 2, Mark::not_looked_at);
    marks.resize(marks.size() - 2);
  }
  const auto diagnosis = what_went_wrong(room.setting(), seen);
  REQUIRE(likeliest(diagnosis) != nullptr);
  CHECK(likeliest(diagnosis)->kind == DepartureKind::counted_off);
  CHECK(likeliest(diagnosis)->amount == 2);
  CHECK(likeliest(diagnosis)->row == 3);
}

TEST_CASE("of two steps that were left out, the way back names the one whose row has come") {
  const Room room("puffin-cove");
  SeenFabric seen = planned_picture(room, 20);
  for (const std::size_t row : {8U, 12U}) {
    seen.rows[row].front() = seen.rows[row].back() = Mark::dropped;
  }
  const auto diagnosis = what_went_wrong(room.setting(), seen);
  REQUIRE(likeliest(diagnosis) != nullptr);
  const Explanation& first = diagnosis.explanations.front();
  REQUIRE(first.departures.size() == 2);
  CHECK(first.remedy.text.find(fmt::format("Do step {} now", first.departures[0].step + 1)) != std::string::npos);
  CHECK(first.remedy.text.find(fmt::format("Do step {} now", first.departures[1].step + 1)) == std::string::npos);
}

TEST_CASE("a search that ends before all pairs were tried says so, and one that tried them all doesn't") {
  const Room room("harbour-lanterns");
  SeenFabric seen;
  for (const std::size_t rows : {std::size_t{180}, std::size_t{20}}) {
    seen.rows.assign(rows,
                     std::vector<Mark>(static_cast<std::size_t>(stitches_of(room.demo.document)), Mark::not_looked_at));
    seen.rows.back().assign(seen.rows.back().size(), Mark::dropped);
    const auto diagnosis = what_went_wrong(room.setting(), seen);
    CHECK(diagnosis.explanations.empty());
    CHECK(diagnosis.complete == (rows == 20));
    CHECK(words_of_search(diagnosis).empty() == diagnosis.complete);
  }
}
