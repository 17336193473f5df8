// The way back, taken literally: whatever row was wrong, the machine as the remedy says it must stand knits the drawing
// on.
#include "diagnosis/marked_slips.hpp"
#include "diagnosis/remedy.hpp"
#include "support/demos.hpp"

#include <doctest/doctest.h>

using namespace punchwright;

namespace {

constexpr int rows_knitted_on = 3;

// Every needle back, those forward that the remedy names; the carriage, the counter and the card where it says.
void put_right(Knitting& knitting, const Remedy& remedy, const Setting& setting) {
  MachineState& state = knitting.state;
  for (BedNeedle& needle : state.needles) {
    if (needle.position == NeedlePosition::upper) {
      needle.position = NeedlePosition::working;
    }
  }
  for (const Needle needle : remedy.forward) {
    state.at(needle).position = NeedlePosition::upper;
  }
  state.carriage = remedy.carriage;
  state.counter = remedy.counter;
  if (remedy.card_row == 0) {
    return;
  }
  state.card.row = remedy.card_row;
  if (setting.profile.selects == Selects::same_pass) {
    state.has_stored = false;
    for (const MachineAction& action :
         std::vector<MachineAction>{LockCard{true}, KnitPass{true}, KnitPass{true}, LockCard{false}}) {
      REQUIRE(knit_on(knitting, action));
    }
    state.counter = remedy.counter;
  }
}

} // namespace

TEST_CASE("the way back to each row of each demo, on every family, knits the drawing on") {
  int checked = 0;
  for (const auto& path : test::demo_paths()) {
    for (const test::Family& family : test::families()) {
      auto demo = test::open_demo(path);
      if (!test::put_on(demo, family)) {
        continue;
      }
      const RowsToKnit rows = rows_to_knit(demo.document, demo.profile);
      const Setting setting = setting_of(demo.document, demo.profile, rows);
      const ActionLine line = action_line(setting.steps);
      const auto whole = knit_steps(setting.steps, demo.document, demo.profile, setting.card).knitting;
      Knitting knitting =
          begin_knitting(machine_as_found(demo.profile, setting.steps.carriage, setting.card, demo.document.card.loop));
      std::size_t at = 0;
      const int most = std::min(static_cast<int>(rows.rows.size()), 70);
      for (int row = 1; row < most; ++row) {
        CAPTURE(path.filename().string());
        CAPTURE(family.name);
        CAPTURE(row);
        // The steps up to the last pass of the row that is right.
        const auto pass = pass_of(setting, line, row);
        REQUIRE(pass);
        std::size_t begin = *pass;
        while (begin > 0 && !std::holds_alternative<KnitPass>(line.actions[begin - 1])) {
          --begin;
        }
        for (; at < begin; ++at) {
          REQUIRE(knit_on(knitting, line.actions[at]));
        }
        const int wrong = row + setting.steps.rows_before; // of the fabric
        const Remedy remedy = remedy_for(setting, wrong, most, false, {});
        CHECK(remedy.back_to_row == row);
        CHECK(remedy.counter == knitting.state.counter);
        Knitting on = knitting;
        put_right(on, remedy, setting);
        for (std::size_t next = begin; next < line.actions.size() && on.fabric.rows() <= wrong + rows_knitted_on;
             ++next) {
          REQUIRE(knit_on(on, line.actions[next]));
        }
        const int done = std::min(on.fabric.rows() - 1, wrong + rows_knitted_on);
        CHECK(first_difference(whole.fabric, on.fabric, done) < 0);
        ++checked;
      }
    }
  }
  CHECK(checked > 500);
}
