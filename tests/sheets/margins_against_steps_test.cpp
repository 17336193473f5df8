// What hands do between the rows: the card's margins and the needle chart against the list of steps, which is read step
// by step as a knitter would.
#include "plan/steps.hpp"
#include "sheets/card_notes.hpp"
#include "sheets/chart_rows.hpp"
#include "support/demos.hpp"

#include <doctest/doctest.h>
#include <map>

using namespace punchwright;

namespace {

// "Take Ink out of the feeder…" is "Ink out", "Thread Ink into…" is "Ink in".
std::string short_words(const Step& step) {
  const auto between = [&](const std::string& from, const std::string& to) {
    const std::size_t start = from.size();
    return step.text.substr(start, step.text.find(to) - start);
  };
  switch (step.kind) {
  case StepKind::contrast_out:
  case StepKind::main_out: return between("Take ", " out of the feeder") + " out";
  case StepKind::contrast_in:
  case StepKind::main_in: return between("Thread ", " into ") + " in";
  case StepKind::needles_back: return step.part == StepPart::end ? "all needles back" : "end needles back";
  default: return "";
  }
}

// By the row before which they are done; 0: at the end, with the plain row where something follows it.
std::map<int, std::string> hands_in(const StepList& list) {
  std::map<int, std::string> hands;
  bool knitted = false; // the first pass of the row
  bool plain_row = false;
  int row = 0;
  for (const Step& step : list.steps) {
    if (step.part == StepPart::setting_up) {
      continue;
    }
    const int number = step.part == StepPart::end ? 0 : step.first_row;
    knitted = knitted && number == row;
    row = number;
    plain_row = plain_row || step.kind == StepKind::end_row;
    if (step.kind == StepKind::knit_rows || step.kind == StepKind::knit_by_hand) {
      knitted = true; // what is done before its second pass is said by the passes
    }
    const std::string words = short_words(step);
    if (words.empty() || (knitted && number != 0)) {
      continue;
    }
    std::string& all = hands[number];
    if (std::exchange(plain_row, false)) {
      all += all.empty() ? "plain row" : "; plain row";
      all += "; " + words;
    } else {
      all += (all.empty() ? "" : ", ") + words;
    }
  }
  return hands;
}

} // namespace

TEST_CASE("margins of card and chart say what the steps say, row by row and at the end, on every demo and family") {
  int told = 0;
  int behind_the_plain_row = 0;
  for (const auto& path : test::demo_paths()) {
    for (const test::Family& family : test::families()) {
      OpenedDocument demo = test::open_demo(path);
      if (!test::put_on(demo, family)) {
        continue;
      }
      CAPTURE(path.stem().string());
      CAPTURE(family.name);
      demo.document.card.loop = false; // a loop's margin gathers its circuits
      const RowsToKnit rows = rows_to_knit(demo.document, demo.profile);
      auto hands = hands_in(steps_of(demo.document, demo.profile, rows));
      const ChartRows chart(demo.document, demo.profile, {});
      CHECK(chart.done_at_end() == hands[0]);
      for (int row = 1; row <= static_cast<int>(rows.rows.size()); ++row) {
        CAPTURE(row);
        CHECK(chart.done_before(row) == hands[row]);
        told += hands[row].empty() ? 0 : 1;
      }
      behind_the_plain_row += hands[0].find("plain row; all needles back") != std::string::npos ? 1 : 0;
      if (!demo.profile.card || demo.profile.feeders == 1) {
        continue; // one feeder: the card's margin names the yarn of the second pass as well
      }
      const CardNotes notes =
          card_notes(demo.document, demo.profile, rows, card_plan(demo.document, *demo.profile.card, rows));
      CHECK(notes.at_end == hands[0]);
      std::map<int, std::string> beside(notes.all.begin(), notes.all.end());
      for (int row = 1; row <= static_cast<int>(rows.rows.size()); ++row) {
        CAPTURE(row);
        CHECK(beside[row] == hands[row]);
      }
    }
  }
  CHECK(told > 50);
  CHECK(behind_the_plain_row > 0);
}
