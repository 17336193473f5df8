// Work that can't be written where it was: it is saved elsewhere, or there once that can be, and what waited goes on.
#include "editor/actions.hpp"
#include "editor/applying.hpp"
#include "files/files.hpp"
#include "support/folder.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using namespace punchwright::editor;
using namespace punchwright::test;
namespace fs = std::filesystem;

namespace {

// A design on a stick that was pulled, with a stitch that no file has.
struct PulledStick {
  Folder folder;
  fs::path stick = folder.path / "stick";
  fs::path path = stick / "cove.repeat";
  App app = make_app();

  PulledStick() {
    fs::create_directory(stick);
    REQUIRE(write_design(app, path));
    fs::remove_all(stick);
    apply(app, EditDesign{SetCells{{{2, 0}}, true}});
  }
};

bool not_saved(const App& app) {
  const auto* const trouble = std::get_if<TroubleDialog>(&app.session.dialog);
  return trouble != nullptr && trouble->not_saved.has_value();
}

} // namespace

TEST_CASE("a design that can't be written is saved elsewhere, and then the window closes as was wished") {
  PulledStick kept;
  App& app = kept.app;
  apply(app, Run{Command::quit});
  apply(app, AnswerGuard{GuardAnswer::save});
  REQUIRE(not_saved(app));
  CHECK_FALSE(app.session.quit);
  apply(app, SaveAfterTrouble{SavedAgain::elsewhere});
  auto* const dialog = std::get_if<PathDialog>(&app.session.dialog);
  REQUIRE(dialog != nullptr);
  CHECK(dialog->purpose == Purpose::save);
  dialog->name = (kept.folder.path / "safe").string();
  apply(app, ChoosePath{false});
  CHECK(fs::exists(kept.folder.path / "safe.repeat"));
  CHECK(app.work.history.saved());
  CHECK(app.session.quit);
}

TEST_CASE("tried again it is asked again as long as it can't be written, and saved as soon as it can") {
  PulledStick kept;
  App& app = kept.app;
  apply(app, Run{Command::save});
  REQUIRE(not_saved(app));
  apply(app, SaveAfterTrouble{SavedAgain::there});
  REQUIRE(not_saved(app));
  CHECK_FALSE(app.work.history.saved());
  fs::create_directory(kept.stick);
  apply(app, SaveAfterTrouble{SavedAgain::there});
  CHECK_FALSE(is_open(app.session.dialog));
  CHECK(fs::exists(kept.path));
  CHECK(app.work.history.saved());
}

TEST_CASE("the question closed leaves the work as it is, not saved") {
  PulledStick kept;
  App& app = kept.app;
  apply(app, Run{Command::save});
  apply(app, SetDialog{NoDialog{}});
  apply(app, SaveAfterTrouble{SavedAgain::elsewhere}); // asks nothing any more
  CHECK_FALSE(is_open(app.session.dialog));
  CHECK_FALSE(app.work.history.saved());
  CHECK(app.work.design.grid.at(2, 0));
}

TEST_CASE("a yoke that can't be written is saved elsewhere, too") {
  const Folder folder;
  App app = make_app();
  const fs::path stick = folder.path / "stick";
  fs::create_directory(stick);
  apply(app, DropFile{fs::path(PUNCHWRIGHT_SOURCE_DIR) / "patterns" / "harbour-pullover.yoke"});
  REQUIRE(app.yoke.opened.has_value());
  REQUIRE(write_yoke_there(app, stick / "pullover.yoke", {}));
  fs::remove_all(stick);
  apply(app, Run{Command::save});
  REQUIRE(not_saved(app));
  apply(app, SaveAfterTrouble{SavedAgain::elsewhere});
  auto* const dialog = std::get_if<PathDialog>(&app.session.dialog);
  REQUIRE(dialog != nullptr);
  CHECK(dialog->purpose == Purpose::save_yoke);
  dialog->name = (folder.path / "safe").string();
  apply(app, ChoosePath{false});
  CHECK(fs::exists(folder.path / "safe.yoke"));
}
