// A file that another program writes while it is open: what is asked when the window has the keys again, for the repeat
// and for the yoke beside it, and what each answer leaves.
#include "design/repeat_file.hpp"
#include "editor/actions.hpp"
#include "editor/applying.hpp"
#include "files/files.hpp"
#include "pieces/yoke_file.hpp"
#include "support/folder.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using namespace punchwright::editor;
using namespace punchwright::test;
namespace fs = std::filesystem;

namespace {

std::string text_in(const fs::path& path) {
  const auto text = read_file(path, std::size_t{1} << 20U);
  return text ? *text : std::string();
}

// As another program does it: a file of its own in the other's place.
void write_elsewhere(const fs::path& path, const std::string& text) {
  REQUIRE(!write_file(path, text));
}

// What another window makes of the file: that stitch drawn.
std::string with_stitch(const fs::path& path, int column) {
  auto read = read_repeat(text_in(path), path.string());
  REQUIRE(read);
  read->document.grid.set(column, 0, true);
  return write_repeat(read->document);
}

const ChangedDialog* question(const App& app) {
  return std::get_if<ChangedDialog>(&app.session.dialog);
}

struct Cove {
  Folder folder;
  fs::path path = folder.path / "cove.repeat";
  App app = make_app();

  Cove() {
    apply(app, EditDesign{SetCells{{{2, 0}}, true}});
    REQUIRE(write_design(app, path));
    apply(app, LookAtFiles{});
    REQUIRE(!is_open(app.session.dialog));
  }
};

} // namespace

TEST_CASE("a file that is as it was is not asked about, nor one that was written again with the same bytes") {
  Cove cove;
  apply(cove.app, LookAtFiles{});
  CHECK(!is_open(cove.app.session.dialog));
  write_elsewhere(cove.path, text_in(cove.path));
  apply(cove.app, LookAtFiles{});
  CHECK(!is_open(cove.app.session.dialog));
  CHECK(cove.app.work.history.saved());
}

TEST_CASE("a file that another program wrote is asked about once, with what differs") {
  Cove cove;
  write_elsewhere(cove.path, with_stitch(cove.path, 5));
  apply(cove.app, LookAtFiles{});
  REQUIRE(question(cove.app) != nullptr);
  CHECK(!question(cove.app)->at_saving);
  CHECK(!question(cove.app)->unsaved);
  REQUIRE(!question(cove.app)->differences.empty());
  CHECK(question(cove.app)->differences.front().find("1 stitch") != std::string::npos);
  apply(cove.app, AnswerChanged{ChangedAnswer::mine});
  CHECK(cove.app.work.design.grid.at(2, 0));
  CHECK(!cove.app.work.design.grid.at(5, 0));
  CHECK(!cove.app.work.history.saved()); // what is here is in no file now
  apply(cove.app, LookAtFiles{});
  CHECK(!is_open(cove.app.session.dialog));
  apply(cove.app, Run{Command::save}); // not done unasked
  REQUIRE(question(cove.app) != nullptr);
  CHECK(question(cove.app)->at_saving);
}

TEST_CASE("the file as it is now is opened, after the guard where something isn't saved") {
  Cove cove;
  write_elsewhere(cove.path, with_stitch(cove.path, 5));
  SUBCASE("nothing was drawn since") {
    apply(cove.app, LookAtFiles{});
    apply(cove.app, AnswerChanged{ChangedAnswer::theirs});
  }
  SUBCASE("something was") {
    apply(cove.app, EditDesign{SetCells{{{7, 0}}, true}});
    apply(cove.app, LookAtFiles{});
    REQUIRE(question(cove.app) != nullptr);
    CHECK(question(cove.app)->unsaved);
    apply(cove.app, AnswerChanged{ChangedAnswer::theirs});
    REQUIRE(std::holds_alternative<GuardDialog>(cove.app.session.dialog));
    CHECK(cove.app.work.design.grid.at(7, 0));
    apply(cove.app, AnswerGuard{GuardAnswer::discard});
    CHECK(!cove.app.work.design.grid.at(7, 0));
  }
  CHECK(!is_open(cove.app.session.dialog));
  CHECK(cove.app.work.design.grid.at(5, 0));
  CHECK(cove.app.work.history.saved());
  apply(cove.app, LookAtFiles{});
  CHECK(!is_open(cove.app.session.dialog));
}

TEST_CASE("a file that is gone is said, and what is open counts as not saved") {
  Cove cove;
  fs::remove(cove.path);
  apply(cove.app, LookAtFiles{});
  CHECK(cove.app.session.message == "“cove.repeat” is no longer where it was; saving puts it there again");
  CHECK(!cove.app.work.history.saved());
  apply(cove.app, Run{Command::save});
  CHECK(cove.app.work.history.saved());
  CHECK(fs::exists(cove.path));
}

TEST_CASE("the repeat and the yoke are asked about one after the other") {
  Cove cove;
  const fs::path demo = PUNCHWRIGHT_SOURCE_DIR "/patterns/puffin-poncho.yoke";
  apply(cove.app, DropFile{demo});
  REQUIRE(cove.app.yoke.opened);
  const fs::path path = cove.folder.path / "poncho.yoke";
  REQUIRE(write_yoke_there(cove.app, path, {}));
  apply(cove.app, LookAtFiles{});
  REQUIRE(!is_open(cove.app.session.dialog));

  auto other = read_yoke(text_in(path), path.string());
  REQUIRE(other);
  other->yoke.depth_cm.values.front() += 1;
  write_elsewhere(path, write_yoke(other->yoke));
  write_elsewhere(cove.path, with_stitch(cove.path, 5));
  apply(cove.app, LookAtFiles{});
  REQUIRE(question(cove.app) != nullptr);
  CHECK(!question(cove.app)->yoke);
  apply(cove.app, AnswerChanged{ChangedAnswer::mine});
  apply(cove.app, LookAtFiles{});
  REQUIRE(question(cove.app) != nullptr);
  CHECK(question(cove.app)->yoke);
  CHECK(question(cove.app)->differences == std::vector<std::string>{"The depth differs."});
  const double before = cove.app.yoke.opened->yoke.depth_cm.values.front();
  apply(cove.app, AnswerChanged{ChangedAnswer::theirs});
  CHECK(cove.app.yoke.opened->yoke.depth_cm.values.front() == before + 1);
  CHECK(cove.app.yoke.saved());
  CHECK(!cove.app.work.history.saved());
}
