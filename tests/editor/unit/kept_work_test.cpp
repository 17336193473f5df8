// Keeping the work and finding it again, with a clock of the test's own: when a journal is written, when it goes, and
// what is said where it can't be kept.
#include "editor/actions.hpp"
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
