// Which language the editor speaks: what is asked for on the command line goes before the settings, and they before the
// system; another one that is chosen in the settings is spoken at once.
#include "editor/actions.hpp"
#include "editor/help_text.hpp"
#include "editor/language.hpp"
#include "editor/user_settings.hpp"
#include "support/folder.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <fstream>
#include <memory>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

using namespace punchwright;
using namespace punchwright::editor;
using punchwright::test::Folder;

namespace fs = std::filesystem;

namespace {

// A user whose system asks for English, and whose settings are those.
struct User {
  Folder folder;
  fs::path settings = folder.path / "punchwright" / "settings";

  explicit User(const std::string& text) {
    fs::create_directories(settings.parent_path());
    std::ofstream(settings) << text;
    setenv("XDG_CONFIG_HOME", folder.path.c_str(), 1);
    setenv("LC_ALL", "en_GB.UTF-8", 1);
    setenv("LANGUAGE", "", 1);
  }
};

LanguageAtStart start_with(std::vector<const char*> arguments) {
  arguments.insert(arguments.begin(), "punchwright-editor");
  return language_at_start(static_cast<int>(arguments.size()), arguments.data());
}

std::string_view language_for(const std::vector<const char*>& arguments) {
  return start_with(arguments).chosen->code;
}

// English again at its end, as all other tests expect.
struct Afterwards {
  ~Afterwards() { choose_language(language_of("en"), {}); }
};

// German as this source has it, whatever is installed.
class InGerman {
public:
  InGerman() {
    const fs::path there = folder_.path / "de" / "LC_MESSAGES";
    fs::create_directories(there);
    const std::string command = fmt::format("msgfmt -o '{}' '{}'", (there / "punchwright.mo").string(),
                                            PUNCHWRIGHT_SOURCE_DIR "/src/words/de.po");
    REQUIRE(std::system(command.c_str()) == 0); // NOLINT(concurrency-mt-unsafe)
    choose_language(language_of("de"), folder_.path);
  }

private:
  Folder folder_;
  Afterwards english_;
};

} // namespace

TEST_CASE("without settings and options the system's language is spoken") {
  const User user("");
  CHECK(language_for({}) == "en");
  setenv("LC_ALL", "de_AT.UTF-8", 1);
  CHECK(language_for({}) == "de");
  CHECK(language_for({"puffins.repeat"}) == "de");
  setenv("LC_ALL", "C", 1);
  CHECK(language_for({}) == "en");
}

TEST_CASE("the settings' language goes before the system's, and the option before both") {
  const User user("language = \"de\"\n");
  CHECK(language_for({}) == "de");
  CHECK(language_for({"--language", "en"}) == "en");
  CHECK(language_for({"puffins.repeat", "--language=en"}) == "en");
  CHECK(language_for({"--", "--language=en"}) == "de"); // the name of a file
}

TEST_CASE("settings that the command line names are the ones that count") {
  const User user("language = \"de\"\n");
  const fs::path other = user.folder.path / "others";
  std::ofstream(other) << "text_percent = 120\n";
  CHECK(language_for({"--settings", other.c_str()}) == "en");
  std::ofstream(other) << "language = \"de\"\n";
  CHECK(language_for({"--settings", other.c_str()}) == "de");
}

TEST_CASE("the settings are read once: those that tell the language are the ones that the window takes") {
  const User user("language = \"de\"\n");
  const LanguageAtStart start = start_with({"puffins.repeat"});
  fs::remove(user.settings);
  REQUIRE(start.settings.has_value());
  CHECK(start.settings->path == user.settings);
  App app = make_app();
  CHECK(load_settings(app, *start.settings).empty());
  CHECK(app.settings.language == "de");
  CHECK_FALSE(start_with({"--picture", "window.png"}).settings.has_value());
}

TEST_CASE("settings that can't be read don't keep the editor from speaking") {
  const User user("language = [[[ no\n");
  CHECK(language_for({}) == "en");
}

TEST_CASE("a language that isn't spoken is English") {
  const User user("language = \"kw\"\n");
  setenv("LC_ALL", "de_DE.UTF-8", 1);
  CHECK(language_for({}) == "en");
}

TEST_CASE("pictures and figures don't depend on who makes them") {
  const User user("language = \"de\"\n");
  CHECK(language_for({"--picture", "window.png"}) == "en");
  CHECK(language_for({"--frames-benchmark=10"}) == "en");
  CHECK(language_for({"--picture", "window.png", "--language", "de"}) == "de");
}

TEST_CASE("a language chosen in the settings is spoken at once, and the system's again when that is chosen") {
  const Afterwards english;
  App app = make_app();
  app.settings_file.system_language = "de";
  Settings wishes = app.settings;
  wishes.language = "en";
  apply(app, ChangeUserSettings{wishes});
  CHECK(chosen_language().code == "en");
  wishes.language = "";
  apply(app, ChangeUserSettings{wishes});
  CHECK(chosen_language().code == "de");
}

TEST_CASE("other settings leave the language that the command line asked for") {
  const Afterwards english;
  App app = make_app();
  choose_language(language_of("de"), {});
  Settings wishes = app.settings;
  wishes.text_percent = 120;
  apply(app, ChangeUserSettings{wishes});
  CHECK(chosen_language().code == "de");
}

TEST_CASE("another language has the motifs, the pages and the steps at the bench made anew") {
  const Afterwards english;
  App app = make_app();
  refresh(app);
  app.caches.motifs_stale = false;
  app.caches.preview.made_for = PreviewCache::Key{};
  static_cast<void>(bench_moves_now(app));
  const std::shared_ptr<const BenchMoves> moves = app.bench.moves;
  Settings wishes = app.settings;
  wishes.language = "de";
  apply(app, ChangeUserSettings{wishes});
  CHECK(app.caches.motifs_stale);
  CHECK_FALSE(app.caches.preview.made_for.has_value());
  REQUIRE(app.bench.moves != nullptr); // the bench may be open
  CHECK(app.bench.moves != moves);
}

TEST_CASE("the guide is there in German, to the letter") {
  const Afterwards english;
  choose_language(language_of("de"), {});
  std::ifstream file(fs::path(PUNCHWRIGHT_SOURCE_DIR) / "docs" / "guide.de.md");
  std::stringstream all;
  all << file.rdbuf();
  CHECK(guide_text() == all.str());
  CHECK_FALSE(guide_text().empty());
}

TEST_CASE("in German commands are found by the words that a German types for them, and by their English names") {
  const InGerman german;
  struct Typed {
    const char* words;
    Command command;
  };
  constexpr std::array all = {
      Typed{"radieren", Command::pen_main},
      Typed{"radiergummi", Command::pen_main},
      Typed{"drehen", Command::turn},
      Typed{"spiegeln", Command::mirror_sideways},
      Typed{"kreis", Command::tool_ellipse},
      Typed{"eimer", Command::tool_flood},
      Typed{"ausmalen", Command::tool_flood},
      Typed{"Buchstaben", Command::type_lettering},
      Typed{"Wörter", Command::type_lettering},
      Typed{"schließen", Command::quit},
      Typed{"Sprache", Command::settings},
      Typed{"dunkel", Command::settings},
      Typed{"foto", Command::import_picture},
      Typed{"Tastenkürzel", Command::keys},
      Typed{"reparieren", Command::mend},
      Typed{"zurücknehmen", Command::undo},
      Typed{"löschen", Command::clear},
      Typed{"farbenblind", Command::sight_deutan},
      Typed{"vorlesen", Command::say_step},
      Typed{"Reihenzähler", Command::at_the_bench},
      Typed{"sperren", Command::protect_marked},
      Typed{"straight line", Command::tool_line},
  };
  for (const Typed& typed : all) {
    CAPTURE(typed.words);
    CHECK(std::ranges::count(commands_found(typed.words), &info_of(typed.command)) == 1);
  }
  CHECK(commands_found("radiergummi").size() == 1);
  CHECK(commands_found("hotkeys").empty()); // an English word that isn't a name
}
