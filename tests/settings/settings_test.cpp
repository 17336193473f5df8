// The settings file: what it keeps, what it refuses and where, and what a stranger may have written into it.
#include "settings/desktop_appearance.hpp"
#include "settings/settings.hpp"

#include <doctest/doctest.h>
#include <string>

using namespace punchwright;

namespace {

Settings settings_in(std::string_view text) {
  const auto read = read_settings(text, "settings");
  REQUIRE_MESSAGE(read.ok(), (read.ok() ? std::string() : read.error().text()));
  return *read;
}

std::string trouble_in(std::string_view text) {
  const auto read = read_settings(text, "settings");
  REQUIRE(!read.ok());
  return read.error().text();
}

} // namespace

TEST_CASE("settings that are written and read are the same") {
  Settings settings;
  settings.appearance = Appearance::dark;
  settings.language = "de";
  settings.text_percent = 250;
  settings.lengths = LengthUnit::inches;
  settings.paper = Paper::letter;
  settings.motifs_see_through = true;
  settings.window_width = 1024;
  settings.window_height = 640;
  settings.maximized = true;
  settings.settings_panel = 300;
  settings.findings_panel = 410;
  settings.recent = {"/home/quay/puffins.repeat", "/home/quay/\"odd\" \\ nämes.repeat"};
  CHECK(settings_in(write_settings(settings)) == settings);
  CHECK(settings_in(write_settings(Settings{})) == Settings{});
}

TEST_CASE("an empty file means the usual settings, and unknown keys are passed over") {
  CHECK(settings_in("") == Settings{});
  CHECK(settings_in("theme = \"dark\"\nsound = true\n[harbour]\nboats = 3\n").appearance == Appearance::dark);
}

TEST_CASE("what can't be is refused with its place") {
  CHECK(trouble_in("theme = \"purple\"\n").starts_with("settings:1:"));
  CHECK(trouble_in("language = 1\n").starts_with("settings:1:"));
  CHECK(trouble_in("\ntext_percent = 79\n").starts_with("settings:2:"));
  CHECK(trouble_in("text_percent = 251\n").find("text_percent") != std::string::npos);
  CHECK(trouble_in("recent = \"one\"\n").find("recent") != std::string::npos);
  CHECK(trouble_in("recent = [1]\n").find("recent") != std::string::npos);
  CHECK(trouble_in("lengths = \"ells\"\n").find("inches") != std::string::npos);
  CHECK(trouble_in("[window]\nwidth = -3\n").find("window.width") != std::string::npos);
  CHECK(!trouble_in("theme = ").empty());
  CHECK(!trouble_in("[.").empty()); // toml++ 3.3 asserts on it
  CHECK(!trouble_in("\xff\xfe nothing of the kind").empty());
}

TEST_CASE("recent files: the latest first, each once, twelve at most, absolute ones only") {
  Settings settings;
  for (int file = 0; file < 20; ++file) {
    remember_recent(settings, "/loft/" + std::to_string(file) + ".repeat");
  }
  CHECK(settings.recent.size() == most_recent_files);
  CHECK(settings.recent.front() == "/loft/19.repeat");
  remember_recent(settings, "/loft/15.repeat");
  CHECK(settings.recent.front() == "/loft/15.repeat");
  CHECK(settings.recent.size() == most_recent_files);
  forget_recent(settings, "/loft/15.repeat");
  CHECK(settings.recent.front() == "/loft/19.repeat");
  remember_recent(settings, "here.repeat");
  CHECK(settings.recent.front() == "/loft/19.repeat");
  CHECK(settings_in("recent = [\"/a\", \"b\", \"/a\"]\n").recent.size() == 1);
}

TEST_CASE("a file's name that is no UTF-8 does not break the settings") {
  Settings settings;
  settings.recent = {std::string("/loft/\xff.repeat"), std::string("/loft/whole.repeat")};
  CHECK(settings_in(write_settings(settings)).recent.size() == 1);
}

TEST_CASE("text stays within 80 and 250 percent") {
  CHECK(text_percent_after(100, 10) == 110);
  CHECK(text_percent_after(245, 10) == 250);
  CHECK(text_percent_after(80, -10) == 80);
}

TEST_CASE("the desktop's own files say whether it is dark") {
  CHECK(appearance_of({}) == Appearance::light);
  CHECK(appearance_of({"Adwaita:dark", "", ""}) == Appearance::dark);
  CHECK(appearance_of({"", "[Settings]\ngtk-application-prefer-dark-theme = 1\n", ""}) == Appearance::dark);
  CHECK(appearance_of({"", "[Settings]\ngtk-application-prefer-dark-theme=0\n", ""}) == Appearance::light);
  CHECK(appearance_of({"", "[Other]\ngtk-application-prefer-dark-theme=1\n", ""}) == Appearance::light);
  CHECK(appearance_of({"", "[Settings]\r\ngtk-theme-name=Quay-Dark\r\n", ""}) == Appearance::dark);
  // The variable outdoes the files.
  CHECK(appearance_of({"Adwaita", "[Settings]\ngtk-application-prefer-dark-theme=1\n", ""}) == Appearance::light);
  CHECK(appearance_of({"", "", "[Colors:Window]\nBackgroundNormal=42,46,50\n"}) == Appearance::dark);
  CHECK(appearance_of({"", "", "[Colors:Window]\nBackgroundNormal=239,240,241\n"}) == Appearance::light);
  CHECK(appearance_of({"", "", "[Colors:Window]\nBackgroundNormal=no colour\n"}) == Appearance::light);
}
