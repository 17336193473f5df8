// The settings' file on the disk: kept, set aside when broken, and no hindrance when it can't be written.
#include "editor/actions.hpp"
#include "editor/user_settings.hpp"
#include "support/folder.hpp"

#include <cstdlib>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <unistd.h>

using namespace punchwright;
using namespace punchwright::editor;
using punchwright::test::Folder;

namespace fs = std::filesystem;

namespace {

std::string text_of(const fs::path& path) {
  std::ifstream file(path);
  std::stringstream all;
  all << file.rdbuf();
  return all.str();
}

void write(const fs::path& path, const std::string& text) {
  std::ofstream(path) << text;
}

} // namespace

TEST_CASE("what is changed is kept, and there again at the next start") {
  const Folder folder;
  const fs::path path = folder.path / "config" / "punchwright" / "settings";
  App app = make_app();
  CHECK(load_settings(app, found_settings(path)).empty());
  keep_settings(app, false);
  CHECK_FALSE(fs::exists(path)); // nothing changed, nothing written
  Settings wishes = app.settings;
  wishes.appearance = Appearance::dark;
  wishes.lengths = LengthUnit::inches;
  apply(app, ChangeUserSettings{wishes});
  CHECK(app.theme == dark_palette());
  apply(app, ResizePanel{ResizePanel::Which::settings, 300});
  keep_settings(app, false);

  App again = make_app();
  CHECK(load_settings(again, found_settings(path)).empty());
  CHECK(again.theme == dark_palette());
  CHECK(again.settings.lengths == LengthUnit::inches);
  CHECK(again.view.settings_width == 300);
  CHECK(again.session.message.empty());
}

TEST_CASE("a broken file is set aside with a note, each under a name of its own") {
  const Folder folder;
  const fs::path path = folder.path / "settings";
  for (const char* const aside : {"settings.broken", "settings.broken-2"}) {
    write(path, "theme = \"purple\"\n");
    App app = make_app();
    const std::string note = load_settings(app, found_settings(path));
    CHECK(app.settings == Settings{});
    CHECK(note.find(aside) != std::string::npos);
    apply(app, Say{"Opened cove.repeat", Tone::plain});
    say_at_start(app, note);
    CHECK(app.session.message == "Opened cove.repeat. " + note);
    CHECK(app.session.tone == Tone::trouble);
    CHECK_FALSE(fs::exists(path));
    CHECK(text_of(folder.path / aside) == "theme = \"purple\"\n");
    app.settings.text_percent = 120;
    keep_settings(app, false);
    CHECK(text_of(path).find("text_percent = 120") != std::string::npos);
  }
}

TEST_CASE("where nothing can be written it is said once, and the wishes hold until the end") {
  const Folder folder;
  write(folder.path / "no-folder", "");
  App app = make_app();
  CHECK(load_settings(app, found_settings(folder.path / "no-folder" / "settings")).empty());
  app.settings.text_percent = 130;
  keep_settings(app, false);
  CHECK(app.session.message.starts_with("The settings can't be kept"));
  CHECK(app.session.tone == Tone::trouble);
  app.session.message.clear();
  app.settings.text_percent = 140;
  keep_settings(app, false);
  CHECK(app.session.message.empty());
  CHECK(app.settings.text_percent == 140);
}

TEST_CASE("what is no file is neither read nor written over") {
  const Folder folder;
  fs::create_directories(folder.path / "settings" / "inside");
  App app = make_app();
  CHECK(load_settings(app, found_settings(folder.path / "settings")).find("stay as they are") != std::string::npos);
  CHECK(app.settings == Settings{});
  app.settings.text_percent = 120;
  keep_settings(app, true);
  CHECK(fs::is_directory(folder.path / "settings" / "inside"));
}

TEST_CASE("two editors don't take files from each other's list") {
  const Folder folder;
  const fs::path path = folder.path / "settings";
  App one = make_app();
  App two = make_app();
  CHECK(load_settings(one, found_settings(path)).empty());
  CHECK(load_settings(two, found_settings(path)).empty());
  remember_recent(one.settings, "/loft/one.repeat");
  keep_settings(one, false);
  remember_recent(two.settings, "/loft/two.repeat");
  keep_settings(two, false);
  const auto kept = read_settings(text_of(path), "settings");
  REQUIRE(kept.ok());
  CHECK(kept->recent == std::vector<fs::path>{"/loft/two.repeat", "/loft/one.repeat"});
  // What is taken off the list stays off it.
  apply(two, ForgetRecent{"/loft/two.repeat"});
  keep_settings(two, false);
  CHECK(read_settings(text_of(path), "settings")->recent == std::vector<fs::path>{"/loft/one.repeat"});
}

TEST_CASE("the missing ones go off the list together, the others stay") {
  const Folder folder;
  write(folder.path / "here.repeat", "");
  App app = make_app();
  remember_recent(app.settings, folder.path / "here.repeat");
  remember_recent(app.settings, folder.path / "gone.repeat");
  apply(app, ForgetRecent{});
  CHECK(app.settings.recent == std::vector<fs::path>{folder.path / "here.repeat"});
}

TEST_CASE("a relative folder in the variable is ignored, as XDG's specification says") {
  const char* const before = std::getenv("XDG_CONFIG_HOME");
  const std::string kept = before != nullptr ? before : "";
  ::setenv("XDG_CONFIG_HOME", "/quay/config", 1);
  CHECK(usual_settings_path() == "/quay/config/punchwright/settings");
  ::setenv("XDG_CONFIG_HOME", "config", 1);
  CHECK(usual_settings_path() != "config/punchwright/settings");
  before != nullptr ? ::setenv("XDG_CONFIG_HOME", kept.c_str(), 1) : ::unsetenv("XDG_CONFIG_HOME");
}
