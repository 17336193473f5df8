// The knitting played thing by thing, and the marks that ask what went wrong.
#include "editor/actions.hpp"
#include "editor/applying.hpp"
#include "editor/play.hpp"
#include "editor/wrong.hpp"
#include "editor/wrong_search.hpp"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>

using namespace punchwright;
using namespace punchwright::editor;

namespace {

App app_with(const std::string& demo) {
  App app = make_app();
  apply(app, DropFile{std::filesystem::path(PUNCHWRIGHT_SOURCE_DIR) / "patterns" / (demo + ".repeat")});
  refresh(app);
  return app;
}

PlayedKnitting played(const App& app) {
  return played_knitting(app.work.design, app.work.profile, app.caches.rows);
}

const WrongAnswer& asked(App& app) {
  apply(app, AskWhatWentWrong{});
  finish_search(app);
  const auto& dialog = std::get<WrongDialog>(app.session.dialog);
  REQUIRE(dialog.answer != nullptr);
  return *dialog.answer;
}

SeenForm& form_of(App& app) {
  return std::get<WrongDialog>(app.session.dialog).form;
}

// Nothing is knitted so: every pair of slips is tried, until the search has taken as much as it may.
void mark_what_nobody_knits(App& app) {
  apply(app, Run{Command::what_went_wrong});
  SeenForm& form = form_of(app);
  form.rest_unseen = true;
  form.rows.back().marks.assign(form.rows.back().marks.size(), 'o');
}

} // namespace

TEST_CASE("each moment is the machine that waits for what comes next, and the last one has all the fabric") {
  for (const char* const demo : {"hood-border", "puffin-cove", "shore-crabs", "harbour-lanterns"}) {
    CAPTURE(demo);
    const App app = app_with(demo);
    const PlayedKnitting knitting = played(app);
    REQUIRE(knitting.passes() > 10);
    for (const int passes : {0, 1, 5, knitting.passes() - 1}) {
      const PlayMoment moment = moment_at(knitting, knitting.ready_after(passes));
      CHECK(moment.passes == passes);
      CHECK(moment.refused_step == -1);
      CHECK(moment.knits);
      CHECK_FALSE(moment.to_do.empty());
      CHECK(moment.knitting.state.counter == passes);
    }
    const PlayMoment last = moment_at(knitting, knitting.count());
    CHECK(last.passes == knitting.passes());
    CHECK(last.to_do.empty());
    CHECK(last.knitting.fabric.rows() ==
          knit_steps(knitting.list, knitting.document, knitting.profile, knitting.card).knitting.fabric.rows());
  }
}

TEST_CASE("every step is told alone, in its order, none left out; a step of several rows once for each") {
  for (const char* const demo : {"hood-border", "puffin-cove", "shore-crabs", "harbour-lanterns"}) {
    CAPTURE(demo);
    const App app = app_with(demo);
    const PlayedKnitting knitting = played(app);
    std::vector<std::string> told;
    for (int moves = 0; moves < knitting.count(); ++moves) {
      const PlayMoment moment = moment_at(knitting, moves);
      if (!told.empty()) {
        CHECK(moment_at(knitting, moves - 1).then == moment.to_do);
      }
      told.push_back(moment.to_do);
    }
    std::size_t place = 0;
    for (std::size_t step = 0; step < knitting.list.steps.size(); ++step) {
      const auto rows = std::ranges::count(knitting.steps_of_passes, static_cast<int>(step));
      if (rows > 1) {
        place += static_cast<std::size_t>(rows);
      } else {
        REQUIRE(place < told.size());
        CHECK(told[place++] == knitting.list.steps[step].text);
      }
    }
    CHECK(place == told.size());
  }
}

TEST_CASE("what hands do before a pass is counted") {
  const App app = app_with("hood-border");
  const PlayedKnitting knitting = played(app);
  const int first_pass = knitting.ready_after(0);
  CHECK(first_pass == 6); // on the bed, yarn, tension, weights, counter, card
  for (int moves = 0; moves < first_pass; ++moves) {
    const PlayMoment moment = moment_at(knitting, moves);
    CHECK_FALSE(moment.knits);
    CHECK(moment.by_hand == moves + 1);
    CHECK(moment.all_by_hand == first_pass);
  }
  // The machine is as it is before the thing to do, not after it.
  CHECK(moment_at(knitting, 1).to_do == "Thread Sailcloth into the first feeder (main).");
  CHECK(moment_at(knitting, 1).knitting.state.feeders[0] == 0);
  CHECK(moment_at(knitting, 2).knitting.state.feeders[0] != 0);
}

TEST_CASE("before a pattern row its needles stand forward, and the yarns are in the feeders") {
  const App app = app_with("hood-border"); // selects for the next pass
  const PlayedKnitting knitting = played(app);
  const PlayMoment moment = moment_at(knitting, knitting.ready_after(2));
  CHECK(moment.to_do == "Knit row 1, ending on the right.");
  CHECK(needles_forward(moment.knitting.state) ==
        needles_in_row(app.work.design, app.work.profile, app.caches.rows.rows.front()));
  CHECK(moment.knitting.state.feeders[0] != 0);
  CHECK(moment.knitting.state.feeders[1] != 0);
  CHECK(words_of(moment.knitting.state.settings) == "two-colour knitting, selects from the card, end needles too");
  CHECK(card_words(knitting, moment.knitting.state) == "Row 1 is under the reader; released");
}

TEST_CASE("by hand there is no card") {
  const App app = app_with("shore-crabs");
  for (const int moves : {0, 8}) {
    CHECK(card_words(played(app), moment_at(played(app), moves).knitting.state).empty());
  }
}

TEST_CASE("the card is in the machine from the step on that puts it in, and not before") {
  for (const bool loop : {false, true}) {
    App app = app_with("hood-border");
    app.work.design.card.loop = loop;
    refresh(app);
    const PlayedKnitting knitting = played(app);
    const int put_in = knitting.ready_after(0) - 1; // the last thing that hands do before the first pass
    REQUIRE(moment_at(knitting, put_in).to_do.find("Put the card in") == 0);
    for (int moves = 0; moves <= knitting.count(); ++moves) {
      CAPTURE(moves);
      const MachineState state = moment_at(knitting, moves).knitting.state;
      CHECK((state.card.card != nullptr) == (moves > put_in)); // no step takes it out again
      CHECK((card_words(knitting, state) == "Not in the machine yet") == (moves <= put_in));
    }
    const CardInReader in = moment_at(knitting, put_in + 1).knitting.state.card;
    CHECK(in.joined == loop);
    CHECK(in.double_length); // as it is found; a later step turns the switch
    CHECK(card_words(knitting, moment_at(knitting, put_in + 1).knitting.state) ==
          "Row 1 is under the reader; locked, at double length");
  }
}

TEST_CASE("with the card put in where the steps say so, the knitting is the same as with the card that is in from the "
          "beginning") {
  for (const char* const name : {"hood-border", "puffin-cove"}) {
    const App app = app_with(name);
    const PlayedKnitting knitting = played(app);
    const StepsKnitted whole = knit_steps(knitting.list, knitting.document, knitting.profile, knitting.card);
    const PlayMoment end = moment_at(knitting, knitting.count());
    CHECK(end.refused_step == whole.refused_step);
    CHECK(end.knitting.state == whole.knitting.state);
  }
}

TEST_CASE("a piece that isn't on the bed can't be played, and that is said; back it is undone") {
  App app = app_with("hood-border");
  app.work.design.piece.stitches = 900;
  CHECK(moment_at(played(app), 0).refused_step == -1);
  for (const int moves : {1, 2, 20}) {
    const PlayMoment moment = moment_at(played(app), moves);
    CHECK(moment.refused_step == 0);
    CHECK(moment.moves == 1);
  }
}

TEST_CASE("the slider's ends are the beginning and the end") {
  App app = app_with("hood-border");
  apply(app, Run{Command::play});
  apply(app, PlayTo{1'000'000});
  const auto& dialog = std::get<PlayDialog>(app.session.dialog);
  CHECK(dialog.moment->moves == dialog.knitting->count());
  CHECK(dialog.moment->passes == dialog.knitting->passes());
  apply(app, PlayTo{-3});
  CHECK(std::get<PlayDialog>(app.session.dialog).moment->moves == 0);
}

TEST_CASE("without marks the fabric is as planned") {
  App app = app_with("puffin-cove");
  apply(app, Run{Command::what_went_wrong});
  CHECK(marked_stitches(form_of(app)) == 0);
  CHECK(asked(app).as_planned);
}

TEST_CASE("dropped stitches at both ends of a plain row: the end needles were not pushed back") {
  App app = app_with("puffin-cove");
  apply(app, Run{Command::what_went_wrong});
  SeenForm& form = form_of(app);
  int plain = 0; // the first plain row; below it the end stitches drop
  while (app.caches.rows.rows[static_cast<std::size_t>(plain)].contrast != 0) {
    ++plain;
  }
  REQUIRE(plain > 0);
  form = with_height(form, plain + 1);
  for (const int row : {plain}) {
    for (const int column : {0, form.width() - 1}) {
      form.cursor = {column, row};
      form = with_change(form, SeenChange::dropped);
    }
  }
  form.rest_unseen = true;
  const WrongAnswer& answer = asked(app);
  REQUIRE_FALSE(answer.explanations.empty());
  bool found = false;
  for (const Explained& told : answer.explanations) {
    found = found || told.causes.front().find("back to working position") != std::string::npos;
    CHECK_FALSE(told.remedy.empty());
  }
  CHECK(found);
}

TEST_CASE("a row that is missing: all above it sits lower") {
  App app = app_with("hood-border");
  apply(app, Run{Command::what_went_wrong});
  SeenForm& form = form_of(app);
  const int before = form.height();
  form.cursor = {0, 4};
  form = with_change(form, SeenChange::row_missing);
  CHECK(form.height() == before - 1);
  CHECK(form.rows[4].planned == 5);
  CHECK(marked_stitches(form) > 0);
  CHECK_FALSE(asked(app).as_planned);
}

TEST_CASE("a row that stands twice in the whole piece: it has one row more than planned, and that is explained") {
  App app = app_with("hood-border");
  apply(app, Run{Command::what_went_wrong});
  SeenForm& form = form_of(app);
  const int planned = form.height();
  form.cursor = {0, 5};
  form = with_change(form, SeenChange::row_twice);
  CHECK(form.height() == planned + 1);
  const WrongAnswer& answer = asked(app);
  REQUIRE_FALSE(answer.explanations.empty());
  CHECK(answer.explanations.front().causes.front().find("card") != std::string::npos);
}

TEST_CASE("marks: other yarn, whole rows, twice, shifted as it is looked at, and back") {
  const App app = app_with("hood-border");
  const SeenForm planned = seen_form(app.work.design, app.work.profile, app.caches.rows, 12);
  SeenForm form = planned;
  form.cursor = {3, 2};
  form = with_change(form, SeenChange::other_yarn);
  CHECK(marked_stitches(form) == 1);
  CHECK(is_marked(form, 3, 2));
  CHECK(with_change(form, SeenChange::other_yarn).rows == planned.rows);
  CHECK(with_change(form, SeenChange::as_planned).rows == planned.rows);
  form.rest_unseen = true;
  const auto picture = picture_of(form);
  int seen = 0;
  for (const std::string& row : picture) {
    seen += static_cast<int>(row.size()) - static_cast<int>(std::ranges::count(row, '?'));
  }
  CHECK(seen == 1);
  CHECK(with_change(form, SeenChange::row_main).rows[2].marks.find('#') == std::string::npos);
  CHECK(with_change(form, SeenChange::row_contrast).rows[2].marks.find('.') == std::string::npos);
  const SeenForm twice = with_change(planned, SeenChange::row_twice);
  CHECK(twice.height() == planned.height() + 1);
  CHECK(twice.rows[static_cast<std::size_t>(planned.cursor.row)] ==
        twice.rows[static_cast<std::size_t>(planned.cursor.row) + 1]);
  SeenForm low = planned;
  low.cursor = {0, 0};
  const SeenForm right = with_change(low, SeenChange::shift_right);
  const std::string& moved = right.rows[3].marks;
  CHECK(moved.substr(2, moved.size() - 3) == low.rows[3].marks.substr(1, moved.size() - 3));
  CHECK(moved.substr(0, 2) == "??"); // what came in, and the end stitches, were not looked at
  CHECK(moved.back() == '?');
  low.face = Face::knit; // left and right are exchanged there
  CHECK(with_change(low, SeenChange::shift_left).rows == right.rows);
  CHECK(with_change(right, SeenChange::all_as_planned).rows == planned.rows);
}

TEST_CASE("the rows that are seen are those that the bench says are knitted") {
  App app = app_with("hood-border");
  apply(app, Run{Command::at_the_bench});
  while (app.bench.place.rows < 7) {
    apply(app, StepBench{1});
  }
  apply(app, Run{Command::what_went_wrong});
  CHECK(form_of(app).height() == 7);
  CHECK(with_height(form_of(app), 3).height() == 3);
  CHECK(with_height(form_of(app), 99).height() == 12);
}

TEST_CASE("a search that ended before all pairs of slips were tried is told of") {
  App app = app_with("harbour-lanterns");
  mark_what_nobody_knits(app);
  CHECK(asked(app).trouble.find("Not every pair of slips was tried") == 0);
  form_of(app) = with_height(form_of(app), 20);
  form_of(app).rows.back().marks.assign(form_of(app).rows.back().marks.size(), 'o');
  CHECK(asked(app).tried > 0);
  CHECK(asked(app).trouble.empty());
}

TEST_CASE("the search doesn't hold up the window: the answer comes while other things are done") {
  App app = app_with("harbour-lanterns");
  mark_what_nobody_knits(app);
  apply(app, AskWhatWentWrong{});
  const auto& dialog = std::get<WrongDialog>(app.session.dialog);
  REQUIRE(dialog.search != nullptr); // asked, and not answered within the action
  CHECK(dialog.answer == nullptr);
  const auto* const first = dialog.search.get();
  apply(app, AskWhatWentWrong{}); // once more is the same search
  CHECK(dialog.search.get() == first);
  for (Progress progress = follow_search(app); !progress.taken; progress = follow_search(app)) {
    REQUIRE(progress.look_again.has_value());
  }
  CHECK(dialog.search == nullptr);
  REQUIRE(dialog.answer != nullptr);
  CHECK(dialog.answer->tried > 100);
  CHECK_FALSE(follow_search(app).look_again.has_value());
}

TEST_CASE("a search that is told to stop tries next to nothing more") {
  App app = app_with("harbour-lanterns");
  mark_what_nobody_knits(app);
  SeenFabric seen;
  for (const std::string& line : picture_of(form_of(app))) {
    auto& marks = seen.rows.emplace_back();
    std::ranges::transform(line, std::back_inserter(marks),
                           [](char mark) { return static_cast<punchwright::Mark>(mark); });
  }
  const WrongQuestion question{app.work.design, app.work.profile, app.caches.rows, seen};
  std::stop_source stopped;
  stopped.request_stop();
  CHECK(answer_to(question, stopped.get_token()).tried < answer_to(question).tried / 10);
}

TEST_CASE("closing the dialog ends the search, and so does whatever takes the dialog's place") {
  App app = app_with("harbour-lanterns");
  for (const bool replaced : {false, true}) {
    mark_what_nobody_knits(app);
    apply(app, AskWhatWentWrong{});
    const std::weak_ptr<WrongSearch> search = std::get<WrongDialog>(app.session.dialog).search;
    REQUIRE_FALSE(search.expired());
    editor::apply(app, replaced ? editor::Action(Run{Command::play}) : editor::Action(SetDialog{NoDialog{}}));
    CHECK(search.expired());
    CHECK_FALSE(follow_search(app).taken);
  }
}
