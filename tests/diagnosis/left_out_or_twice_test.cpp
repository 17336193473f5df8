// Each step of each demo left out, and each done twice, on every family: what a knitter would see.
// The table says what is expected and why; a step may show in one of several ways, depending on the drawing.
#include "diagnosis/departures.hpp"
#include "diagnosis/visible.hpp"
#include "support/demos.hpp"

#include <doctest/doctest.h>
#include <map>
#include <set>

using namespace punchwright;

namespace {

using V = Visible;
using K = StepKind;

enum class Done { left_out, twice };

struct Expected {
  StepKind kind;
  Done done;
  std::vector<Visible> seen; // one of these
  const char* why;
};

const std::vector<Expected>& table() {
  static const std::vector<Expected> expected = {
      {K::hang_on, Done::left_out, {V::refused}, "there is no work on the needles"},
      {K::hang_on, Done::twice, {V::refused}, "the needles hold loops already"},
      {K::main_in,
       Done::left_out,
       {V::refused, V::dropped_stitches},
       "with no yarn at all everything would fall off; where contrast is threaded, all main stitches drop"},
      {K::main_in, Done::twice, {V::nothing}, "it is in the feeder already"},
      {K::main_out,
       Done::left_out,
       {V::refused, V::loose_yarn},
       "one feeder: it is taken when the next yarn comes; two: main lies across an all-contrast row"},
      {K::main_out, Done::twice, {V::nothing}, "a yarn that is out can't be taken out; a thread cut twice is cut"},
      {K::counter, Done::left_out, {V::nothing}, "it only counts"},
      {K::counter, Done::twice, {V::nothing}, "it only counts"},
      {K::card_in,
       Done::left_out,
       {V::motif_low, V::row_missing, V::dropped_stitches, V::wrong_pattern},
       "the card isn't locked and runs on before it is wanted: the motif a row or two low, blank rows of the card meet "
       "rows that are knitted in two colours"},
      {K::card_in, Done::twice, {V::nothing}, "it is locked on its first row already"},
      {K::plain_row, Done::left_out, {V::row_missing}, "a plain row too few below the motif"},
      {K::plain_row, Done::twice, {V::row_too_many}, "a plain row too many below the motif"},
      {K::selection_on, Done::left_out, {V::no_pattern}, "nothing is selected, all knit main"},
      {K::selection_on, Done::twice, {V::nothing}, "it is set already"},
      {K::selecting_row,
       Done::left_out,
       {V::row_missing, V::wrong_pattern, V::dropped_stitches},
       "row 1 was never selected, and knits plain or not at all: the motif a row low"},
      {K::selecting_row,
       Done::twice,
       {V::row_too_many, V::nothing},
       "over the locked card: a plain row too many; a free pass knits none"},
      {K::length_single,
       Done::left_out,
       {V::twice_tall, V::wrong_pattern},
       "every card row is read twice; one feeder: rows of one pass among those of two mix it up"},
      {K::length_single, Done::twice, {V::nothing}, "it is set already"},
      {K::card_released,
       Done::left_out,
       {V::one_row_only, V::motif_low, V::row_missing, V::wrong_pattern, V::dropped_stitches, V::dropped_ends,
        V::nothing},
       "the card stays on its row: the same row over and over; one feeder: for one pass, so that the motif lags by a "
       "row; "
       "nothing behind the last row"},
      {K::card_released, Done::twice, {V::nothing}, "it is released already"},
      {K::card_locked,
       Done::left_out,
       {V::dropped_stitches, V::wrong_pattern, V::dropped_ends, V::motif_low},
       "one feeder: the second pass of the row knits the needles of the next one"},
      {K::card_locked, Done::twice, {V::nothing}, "it is locked already"},
      {K::two_colour_on, Done::left_out, {V::no_pattern}, "set to plain, all knit main"},
      {K::two_colour_on, Done::twice, {V::nothing}, "it is set already"},
      {K::contrast_in,
       Done::left_out,
       {V::dropped_stitches, V::refused},
       "selected needles meet an empty feeder; with one feeder no yarn is left at all"},
      {K::contrast_in, Done::twice, {V::nothing}, "it is in the feeder already"},
      {K::contrast_out,
       Done::left_out,
       {V::refused, V::loose_yarn},
       "the feeder is taken when the next yarn comes; else contrast lies across the plain row"},
      {K::contrast_out, Done::twice, {V::nothing}, "a yarn that is out can't be taken out; a thread cut twice is cut"},
      {K::needles_back,
       Done::left_out,
       {V::dropped_ends, V::dropped_stitches, V::nothing},
       "the end needles meet an empty feeder; behind the last row the card has selected every needle; nothing where no "
       "row follows"},
      {K::needles_back, Done::twice, {V::nothing}, "they stand back already"},
      {K::knit_rows,
       Done::left_out,
       {V::row_missing, V::dropped_stitches, V::dropped_ends, V::motif_low, V::wrong_pattern, V::loose_yarn},
       "rows missing; where the card and the yarns then disagree, needles meet an empty feeder"},
      {K::knit_rows,
       Done::twice,
       {V::row_too_many, V::dropped_stitches, V::dropped_ends, V::motif_low, V::wrong_pattern, V::loose_yarn},
       "rows too many; where the card and the yarns then disagree, needles meet an empty feeder"},
      {K::knit_by_hand,
       Done::left_out,
       {V::row_missing, V::dropped_stitches, V::wrong_pattern},
       "two feeders: a row missing; one: half a row, the other pass is knitted on every needle's own"},
      {K::knit_by_hand,
       Done::twice,
       {V::row_too_many, V::dropped_stitches, V::loose_yarn, V::wrong_pattern},
       "two feeders: a row twice; one: the same needles knit twice, or the yarn passes all by"},
      {K::set_plain,
       Done::left_out,
       {V::nothing, V::dropped_stitches, V::row_missing},
       "nothing follows; or the plain row is still knitted by the card or on some needles only"},
      {K::set_plain, Done::twice, {V::nothing}, "it is set already"},
      {K::end_row, Done::left_out, {V::row_missing}, "no plain row behind the last"},
      {K::end_row,
       Done::twice,
       {V::row_too_many, V::dropped_stitches, V::dropped_ends},
       "a plain row too many; by a carriage that still selects, every needle drops in it"},
  };
  return expected;
}

// What else is seen where rows in contrast alone are knitted, main being out of its feeder.
const std::vector<Expected>& table_with_contrast_rows() {
  static const std::vector<Expected> expected = {
      {K::selection_on,
       Done::left_out,
       {V::dropped_stitches, V::all_contrast},
       "needles that weren't selected meet main's empty feeder; one feeder: of the pattern only the rows in contrast "
       "alone are there"},
      {K::length_single, Done::left_out, {V::dropped_stitches}, "an earlier card row meets main's empty feeder"},
      {K::two_colour_on, Done::left_out, {V::dropped_stitches}, "set to plain, all needles meet main's empty feeder"},
      {K::knit_rows,
       Done::left_out,
       {V::all_contrast},
       "one feeder: the row in contrast alone is missing, and the next one comes in its place"},
      {K::knit_rows, Done::twice, {V::all_contrast}, "one feeder: the whole width in contrast once more"},
  };
  return expected;
}

const Expected* expected_for(const std::vector<Expected>& table, StepKind kind, Done done) {
  const auto found =
      std::ranges::find_if(table, [&](const Expected& one) { return one.kind == kind && one.done == done; });
  return found == table.end() ? nullptr : &*found;
}

bool is_seen(const Expected* expected, Visible what) {
  return expected != nullptr && std::ranges::find(expected->seen, what) != expected->seen.end();
}

constexpr const char* contrast_rows = "rows in contrast alone";

bool has_card(const test::Family& family) {
  return family.selects != Selects::by_hand;
}

// Ends with the fault that each variation of the steps shows.
template <class Use>
void vary_steps(const std::string& name, const OpenedDocument& opened, const test::Family& family, Use&& use) {
  const Document& document = opened.document;
  const Profile& profile = opened.profile;
  const RowsToKnit rows = rows_to_knit(document, profile);
  const StepList list = steps_of(document, profile, rows);
  const auto card =
      has_card(family) ? std::make_shared<const PunchedCard>(planned_card(document, profile, rows)) : nullptr;
  const auto found = machine_as_found(profile, list.carriage, card, document.card.loop);
  const auto line = action_line(list);
  const Fabric planned = knit_steps(list, document, profile, card).knitting.fabric;
  for (const Variation& variation : step_variations(list, line)) {
    const Knitting knitted = knit_variation(line, variation, found);
    const auto fault = visible_fault(planned, knitted.fabric, first_needle_of(document), last_needle_of(document),
                                     knitted.refusal.has_value());
    use(name, family, list, variation, fault);
  }
}

template <class Choose, class Use> void each_variation(Choose&& chosen, Use&& use) {
  for (const auto& path : test::demo_paths()) {
    for (const test::Family& family : test::families()) {
      OpenedDocument demo = test::open_demo(path);
      if (!chosen(path.stem().string(), family) || !test::put_on(demo, family)) {
        continue;
      }
      demo.document.piece.times = std::min(demo.document.piece.times, 2); // the rest is more of the same
      vary_steps(path.stem().string(), demo, family, use);
    }
  }
}

// No demo has rows of contrast alone: one, and two together, between rows of two colours.
OpenedDocument with_contrast_rows() {
  OpenedDocument opened = test::open_demo(PUNCHWRIGHT_SOURCE_DIR "/patterns/hood-border.repeat");
  const std::vector<std::string> drawn = {"#..#..#..#..", "##..##..##..", "############",
                                          "..##..##..##", ".#..#..#..#.", "############",
                                          "############", "#....#.#....", "..#.....#.#."};
  opened.document.grid = Grid(12, static_cast<int>(drawn.size()));
  for (std::size_t row = 0; row < drawn.size(); ++row) {
    opened.document.grid.set_row_text(static_cast<int>(row), drawn[row]);
  }
  opened.document.bands = {{static_cast<int>(drawn.size()), 'A', 'B', {}}};
  opened.document.piece.times = 1;
  return opened;
}

} // namespace

TEST_CASE("each step left out or done twice shows what the table says, on every demo and family") {
  std::set<std::pair<StepKind, Done>> met;
  std::set<std::pair<StepKind, Done>> met_there;
  int shown = 0;
  const auto as_told = [&](const std::string& demo, const test::Family& family, const StepList& list,
                           const Variation& variation, const VisibleFault& fault) {
    const Step& step = list.steps[static_cast<std::size_t>(variation.departure.step)];
    const Done done = variation.departure.kind == DepartureKind::left_out ? Done::left_out : Done::twice;
    CAPTURE(demo);
    CAPTURE(family.name);
    CAPTURE(step.text);
    CAPTURE(word_for(variation.departure.kind));
    CAPTURE(words_of(fault.what));
    const Expected* const expected = expected_for(table(), step.kind, done);
    REQUIRE(expected != nullptr);
    const std::string why = expected->why;
    CAPTURE(why);
    const bool as_there =
        demo == contrast_rows && is_seen(expected_for(table_with_contrast_rows(), step.kind, done), fault.what);
    CHECK((is_seen(expected, fault.what) || as_there));
    if (as_there) {
      met_there.insert({step.kind, done});
    }
    met.insert({step.kind, done});
    shown += fault.what != V::nothing && fault.what != V::refused ? 1 : 0;
  };
  each_variation([](const std::string&, const test::Family&) { return true; }, as_told);
  for (const test::Family& family : test::families()) {
    OpenedDocument opened = with_contrast_rows();
    REQUIRE(test::put_on(opened, family));
    vary_steps(contrast_rows, opened, family, as_told);
  }
  CHECK(met.size() == table().size());
  CHECK(met_there.size() == table_with_contrast_rows().size());
  CHECK(shown > 1000);
}

namespace {

bool is_last(const StepList& list, const Step& step) {
  const auto later =
      std::find_if(list.steps.rbegin(), list.steps.rend(), [&](const Step& other) { return other.kind == step.kind; });
  return &*later == &step;
}

} // namespace

// Main out before a row in contrast alone, and back behind it, exactly, on every family.
TEST_CASE("main left in before a row in contrast alone, or left out behind it, has one look on each family") {
  struct Look {
    StepKind kind;
    Done done;
    Visible two_feeders;
    Visible one_feeder;
    const char* why;
  };
  const std::vector<Look> looks = {
      {K::main_out, Done::left_out, V::loose_yarn, V::refused,
       "two feeders: main lies across the piece, no needle takes it; one: the feeder is taken when contrast comes"},
      {K::main_out, Done::twice, V::nothing, V::nothing, "it is out, and cut or hanging, already"},
      {K::main_in, Done::left_out, V::dropped_stitches, V::refused,
       "two feeders: every main stitch of the next rows drops; one: no yarn is left to knit with"},
      {K::main_in, Done::twice, V::nothing, V::nothing, "it is in the feeder already"}};
  for (const test::Family& family : test::families()) {
    OpenedDocument opened = with_contrast_rows();
    REQUIRE(test::put_on(opened, family));
    int met = 0;
    vary_steps("", opened, family,
               [&](const std::string&, const test::Family&, const StepList& list, const Variation& variation,
                   const VisibleFault& fault) {
                 const Step& step = list.steps[static_cast<std::size_t>(variation.departure.step)];
                 const Done done = variation.departure.kind == DepartureKind::left_out ? Done::left_out : Done::twice;
                 for (const Look& look : looks) {
                   if (step.part == StepPart::knitting && step.kind == look.kind && done == look.done) {
                     CAPTURE(family.name);
                     CAPTURE(step.text);
                     const std::string why = look.why;
                     CAPTURE(why);
                     CAPTURE(words_of(fault.what));
                     // Where main never comes again, the plain row at the end has no yarn at all.
                     const bool no_yarn = look.kind == K::main_in && done == Done::left_out && is_last(list, step);
                     CHECK(fault.what == (no_yarn || family.feeders == 1 ? look.one_feeder : look.two_feeders));
                     ++met;
                   }
                 }
               });
    CAPTURE(family.name);
    CHECK(met >= 8); // out and in again, at two places, each left out and twice
  }
}

// The rest of the table: what the model of the machine can't tell, and why it makes no difference to which stitch is
// knitted in which yarn (common practice).
TEST_CASE("tension and weights, left out or done twice, make no difference to the fabric's stitches") {
  const std::map<StepKind, const char*> without_difference = {
      {K::tension, "stitches come out larger or smaller: the gauge differs, not the pattern"},
      {K::weights, "stitches may ride up and tuck anywhere: chance, not a row that could be named"},
      {K::weights_up, "the same, later"}};
  std::set<StepKind> met;
  for (const auto& path : test::demo_paths()) {
    for (const test::Family& family : test::families()) {
      OpenedDocument demo = test::open_demo(path);
      if (!test::put_on(demo, family)) {
        continue;
      }
      const StepList list = steps_of(demo.document, demo.profile, rows_to_knit(demo.document, demo.profile));
      for (const Step& step : list.steps) {
        CAPTURE(step.text);
        // A step without actions is one of these, and each of these is without: nothing that the machine would do.
        CHECK(step.actions.empty() == without_difference.contains(step.kind));
        if (step.actions.empty()) {
          met.insert(step.kind);
        }
      }
    }
  }
  CHECK(met.size() == without_difference.size());
}

// The usual family, exactly: the classic slips and what each looks like.
TEST_CASE("on the machine that selects for the next pass every slip has its own look") {
  std::map<std::pair<StepKind, Done>, std::set<Visible>> seen;
  // One contrast throughout: no plain row hides what the card does.
  const auto chosen = [](const std::string& demo, const test::Family& family) {
    return demo == "tide-waves" && family.selects == Selects::next_pass && family.feeders == 2;
  };
  each_variation(chosen, [&](const std::string&, const test::Family&, const StepList& list, const Variation& variation,
                             const VisibleFault& fault) {
    const Step& step = list.steps[static_cast<std::size_t>(variation.departure.step)];
    const Done done = variation.departure.kind == DepartureKind::left_out ? Done::left_out : Done::twice;
    seen[{step.kind, done}].insert(fault.what);
    if (step.kind == K::selecting_row && done == Done::left_out) {
      CHECK(fault.rows == 1); // the motif a row low
    }
  });
  const auto only = [&](StepKind kind, Done done, Visible what) {
    return seen[{kind, done}] == std::set<Visible>{what};
  };
  CHECK(only(K::card_released, Done::left_out, V::one_row_only));
  CHECK(only(K::length_single, Done::left_out, V::twice_tall));
  CHECK(only(K::selecting_row, Done::left_out, V::row_missing));
  CHECK(only(K::plain_row, Done::twice, V::row_too_many));
  CHECK(only(K::two_colour_on, Done::left_out, V::no_pattern));
  CHECK(only(K::contrast_in, Done::left_out, V::dropped_stitches));
  CHECK(only(K::contrast_out, Done::left_out, V::loose_yarn));
  CHECK(only(K::contrast_out, Done::twice, V::nothing));
}

// The whole width in contrast: every needle stands forward over a loaded second feeder, and main was left in or out.
TEST_CASE("needles left forward behind the last row with contrast still threaded knit the whole width in contrast") {
  OpenedDocument demo = test::open_demo(PUNCHWRIGHT_SOURCE_DIR "/patterns/tide-waves.repeat");
  const RowsToKnit rows = rows_to_knit(demo.document, demo.profile);
  StepList list = steps_of(demo.document, demo.profile, rows);
  const auto card = std::make_shared<const PunchedCard>(planned_card(demo.document, demo.profile, rows));
  const Fabric planned = knit_steps(list, demo.document, demo.profile, card).knitting.fabric;
  std::erase_if(list.steps, [](const Step& step) {
    return step.part == StepPart::end && (step.kind == K::contrast_out || step.kind == K::needles_back);
  });
  const auto knitted = knit_steps(list, demo.document, demo.profile, card);
  REQUIRE(knitted.refused_step < 0);
  const auto fault =
      visible_fault(planned, knitted.knitting.fabric, first_needle_of(demo.document), last_needle_of(demo.document));
  CHECK(fault.what == V::all_contrast);
  CHECK(fault.row == planned.rows() - 1);
}
