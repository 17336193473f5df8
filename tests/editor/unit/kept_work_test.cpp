// Keeping the work and finding it again, with a clock of the test's own: when a journal is written, when it goes, and
// what is said where it can't be kept.
#include "editor/actions.hpp"
#include "editor/applying.hpp"
#include "editor/kept_steps.hpp"
#include "editor/kept_work.hpp"
#include "support/folder.hpp"

#include <doctest/doctest.h>
#include <fstream>
#include <thread>

using namespace punchwright;
using namespace punchwright::editor;
using namespace std::chrono_literals;
namespace fs = std::filesystem;

namespace {

using Clock = WorkKeeper::Clock;

std::size_t journals_in(const fs::path& folder) {
  std::size_t count = 0;
  std::error_code ignored;
  for (const auto& entry : fs::directory_iterator(folder, ignored)) {
    count += entry.path().extension() == ".journal" ? 1 : 0;
  }
  return count;
}

void draw(App& app, int column) {
  apply(app, EditDesign{SetCells{{{column, 0}}, true}});
}

// The demo's poncho; at that place, if one is named and nothing lies there yet.
App with_poncho(const fs::path& place = {}) {
  const fs::path demo = PUNCHWRIGHT_SOURCE_DIR "/patterns/puffin-poncho.yoke";
  App app = make_app();
  if (place.empty() || fs::exists(place)) {
    apply(app, DropFile{place.empty() ? demo : place});
  } else {
    apply(app, DropFile{demo});
    REQUIRE(write_yoke_there(app, place, {}));
  }
  REQUIRE(app.yoke.opened);
  return app;
}

// A step of its own: the depth of all sizes grows by 1 cm.
void deepen(App& app, int step) {
  Yoke yoke = app.yoke.opened->yoke;
  for (double& cm : yoke.depth_cm.values) {
    cm += 1;
  }
  apply(app, ChangeYoke{yoke, "depth " + std::to_string(step)});
}

// Until the writing that was begun has ended.
void finish(WorkKeeper& keeper, App& app, Clock::time_point now) {
  while (keeper.follow(app, now) == 50ms) {
    std::this_thread::sleep_for(1ms);
  }
}

} // namespace

TEST_SUITE("kept work") {
  TEST_CASE("is written two seconds after the first change, and goes when it is saved") {
    const test::Folder folder;
    App app = make_app();
    WorkKeeper keeper(folder.path / "journals");
    const Clock::time_point start{};
    CHECK(!keeper.follow(app, start));
    draw(app, 1);
    CHECK(keeper.follow(app, start) == 2000ms);
    draw(app, 2); // a hand that never rests doesn't put it off
    CHECK(keeper.follow(app, start + 1500ms) == 500ms);
    CHECK(journals_in(folder.path / "journals") == 0);
    finish(keeper, app, start + 2000ms);
    CHECK(journals_in(folder.path / "journals") == 1);
    CHECK(!keeper.follow(app, start + 9000ms));
    app.work.history.mark_saved();
    CHECK(!keeper.follow(app, start + 9100ms));
    CHECK(journals_in(folder.path / "journals") == 0);
  }

  TEST_CASE("many changes are written at once") {
    const test::Folder folder;
    App app = make_app();
    WorkKeeper keeper(folder.path / "journals");
    for (std::uint64_t change = 0; change < WorkKeeper::most_changes; ++change) {
      apply(app, EditDesign{Invert{{{0, 0}, 1, 1}}});
    }
    finish(keeper, app, Clock::time_point{});
    CHECK(journals_in(folder.path / "journals") == 1);
  }

  TEST_CASE("is found by another window once this one is gone, with its steps; and never while it lives") {
    const test::Folder folder;
    App app = make_app();
    {
      WorkKeeper keeper(folder.path / "journals");
      draw(app, 3);
      draw(app, 4);
      (void)keeper.follow(app, Clock::time_point{});
      finish(keeper, app, Clock::time_point{} + 2s);
      CHECK(find_works(folder.path / "journals").works.empty());
    } // as after a kill: not closed
    FoundWorks found = find_works(folder.path / "journals");
    REQUIRE(found.works.size() == 1);
    CHECK(found.remarks.empty());
    CHECK(find_works(folder.path / "journals").works.empty()); // one window at a time offers it
    App other = make_app();
    offer_recovery(other, found.works);
    found.works.clear();
    REQUIRE(std::holds_alternative<RecoveryDialog>(other.session.dialog));
    apply(other, AnswerRecovery{RecoveryAnswer::open});
    CHECK(other.work.design == app.work.design);
    CHECK(other.work.history.done() == 2);
    CHECK(!other.work.history.saved());
    CHECK(journals_in(folder.path / "journals") == 1); // until it is kept anew
    WorkKeeper keeper(folder.path / "journals");
    finish(keeper, other, Clock::time_point{});
    CHECK(journals_in(folder.path / "journals") == 1);
    CHECK(other.session.recovered == nullptr);
    keeper.close(other);
    CHECK(fs::is_empty(folder.path / "journals"));
  }

  TEST_CASE("that was found stays where it lies while it can't be kept anew") {
    const test::Folder folder;
    App app = make_app();
    {
      WorkKeeper keeper(folder.path / "journals");
      draw(app, 3);
      (void)keeper.follow(app, Clock::time_point{});
      finish(keeper, app, Clock::time_point{} + 2s);
    }
    std::ofstream(folder.path / "no folder") << "a file";
    App other = make_app();
    offer_recovery(other, find_works(folder.path / "journals").works);
    apply(other, AnswerRecovery{RecoveryAnswer::open});
    WorkKeeper keeper(folder.path / "no folder");
    finish(keeper, other, Clock::time_point{});
    CHECK(other.session.message.find("can't be kept") != std::string::npos);
    CHECK(other.session.recovered != nullptr);
    CHECK(journals_in(folder.path / "journals") == 1);
    CHECK(other.work.design == app.work.design);
  }

  TEST_CASE("of a yoke is found with its steps, beside that of the design") {
    const test::Folder folder;
    App app = with_poncho();
    const Yoke at_first = app.yoke.opened->yoke;
    {
      WorkKeeper designs(folder.path / "journals", KeptSide::design);
      WorkKeeper yokes(folder.path / "journals", KeptSide::yoke);
      CHECK(!yokes.follow(app, Clock::time_point{})); // nothing was changed yet
      for (const int step : {1, 2, 3, 4}) {
        deepen(app, step);
      }
      apply(app, Run{Command::undo});
      apply(app, Run{Command::undo});
      (void)yokes.follow(app, Clock::time_point{});
      finish(yokes, app, Clock::time_point{} + 2s);
      (void)designs.follow(app, Clock::time_point{});
      finish(designs, app, Clock::time_point{} + 2s);
      CHECK(journals_in(folder.path / "journals") == 1); // the design is as it was
    }
    App other = make_app();
    offer_recovery(other, find_works(folder.path / "journals").works);
    apply(other, AnswerRecovery{RecoveryAnswer::open});
    REQUIRE(other.yoke.opened);
    CHECK(other.yoke.shown);
    CHECK(other.yoke.path == app.yoke.path);
    CHECK(!other.yoke.saved());
    CHECK(other.yoke.opened->yoke == app.yoke.opened->yoke);
    const auto depth_after = [&](Command command) {
      apply(other, Run{command});
      return other.yoke.opened->yoke.depth_cm.at(0) - at_first.depth_cm.at(0);
    };
    CHECK(depth_after(Command::undo) == doctest::Approx(1));
    CHECK(depth_after(Command::redo) == doctest::Approx(2));
    CHECK(depth_after(Command::redo) == doctest::Approx(3));
    CHECK(depth_after(Command::redo) == doctest::Approx(4));
    CHECK(depth_after(Command::undo) == doctest::Approx(3));
    for (int step = 0; step < 3; ++step) {
      apply(other, Run{Command::undo});
    }
    CHECK(other.yoke.opened->yoke == at_first);
    CHECK(!other.yoke.saved()); // the file may be another one by now
    WorkKeeper yokes(folder.path / "journals", KeptSide::yoke);
    finish(yokes, other, Clock::time_point{});
    CHECK(other.yoke.recovered == nullptr);
    CHECK(journals_in(folder.path / "journals") == 1);
    yokes.close(other);
    CHECK(fs::is_empty(folder.path / "journals"));
  }

  TEST_CASE("of a yoke whose tier is gone stays kept, and what is wrong is said") {
    const test::Folder folder;
    App app = with_poncho();
    Journal journal = journal_of(app, KeptSide::yoke);
    std::get<KeptYoke>(journal.work).yoke.tiers.front().repeat = folder.path / "gone.repeat";
    App other = make_app();
    const auto work = std::make_shared<FoundWork>(FoundWork{folder.path / "1.journal", std::nullopt, journal});
    std::ofstream(work->path) << write_journal(journal);
    offer_recovery(other, {work});
    apply(other, AnswerRecovery{RecoveryAnswer::open});
    const auto* const trouble = std::get_if<TroubleDialog>(&other.session.dialog);
    REQUIRE(trouble != nullptr);
    CHECK(trouble->text.find("gone.repeat") != std::string::npos);
    CHECK(!other.yoke.opened);
    CHECK(fs::exists(work->path));
  }

  TEST_CASE("of a yoke put aside is a yoke's file that names the same tiers") {
    const test::Folder folder;
    const App app = with_poncho();
    const Journal journal = journal_of(app, KeptSide::yoke);
    App other = make_app();
    offer_recovery(other, {std::make_shared<FoundWork>(FoundWork{folder.path / "1.journal", std::nullopt, journal})});
    apply(other, AnswerRecovery{RecoveryAnswer::aside});
    const fs::path aside = fs::directory_iterator(folder.path / "set-aside")->path();
    CHECK(aside.extension() == ".yoke");
    App again = make_app();
    apply(again, DropFile{aside});
    REQUIRE(again.yoke.opened);
    CHECK(again.yoke.opened->yoke == app.yoke.opened->yoke);
  }

  TEST_CASE("steps of a yoke go on after it was saved and closed, while its file is the same") {
    const test::Folder folder;
    App app = with_poncho(folder.path / "poncho.yoke");
    {
      StepKeeper keeper(folder.path / "steps", KeptSide::yoke);
      keeper.follow(app);
      deepen(app, 1);
      apply(app, Run{Command::save});
      keeper.follow(app);
    }
    const auto opened_again = [&] {
      App again = with_poncho(folder.path / "poncho.yoke");
      StepKeeper keeper(folder.path / "steps", KeptSide::yoke);
      keeper.follow(again);
      return again;
    };
    App again = opened_again();
    CHECK(again.yoke.saved());
    REQUIRE(again.yoke.done == 1);
    apply(again, Run{Command::undo});
    CHECK(again.yoke.opened->yoke.depth_cm.at(0) == doctest::Approx(app.yoke.opened->yoke.depth_cm.at(0) - 1));
    std::ofstream(folder.path / "poncho.yoke", std::ios::app) << "# by another program\n";
    CHECK(opened_again().yoke.steps.empty());
  }

  TEST_CASE("that can't be saved stays marked as not saved, and what is wrong is said") {
    App app = make_app();
    draw(app, 1);
    app.session.path = "/dev/full";
    apply(app, Run{Command::save});
    const auto* const trouble = std::get_if<TroubleDialog>(&app.session.dialog);
    REQUIRE(trouble != nullptr);
    CHECK(trouble->text.find("No space left on device") != std::string::npos);
    CHECK(!app.work.history.saved());
    CHECK(app.session.saves == 0);
  }

  TEST_CASE("that can't be kept is said once, and kept as soon as it can be") {
    const test::Folder folder;
    std::ofstream(folder.path / "journals") << "no folder";
    App app = make_app();
    WorkKeeper keeper(folder.path / "journals");
    draw(app, 1);
    Clock::time_point now{};
    (void)keeper.follow(app, now);
    finish(keeper, app, now += 2s);
    CHECK(app.session.message.find("can't be kept") != std::string::npos);
    apply(app, Say{});
    draw(app, 2);
    finish(keeper, app, now += 2s);
    CHECK(app.session.message.empty());
    fs::remove(folder.path / "journals");
    finish(keeper, app, now += 2s);
    CHECK(journals_in(folder.path / "journals") == 1);
  }

  TEST_CASE("without a folder nothing is kept") {
    App app = make_app();
    WorkKeeper keeper({});
    draw(app, 1);
    CHECK(!keeper.follow(app, Clock::time_point{} + 10s));
    CHECK(find_works({}).works.empty());
  }
}
