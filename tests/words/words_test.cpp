// The reader's language: chosen from what the environment says, with places for values in any order.
#include "words/early_option.hpp"
#include "words/words.hpp"

#include <cstdlib>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <map>
#include <string>
#include <vector>

using namespace punchwright;

namespace {

// The variables that ask for a language, set for the time of a test.
class Environment {
public:
  explicit Environment(const std::map<std::string, std::string>& wishes) {
    for (const char* const name : {"LANGUAGE", "LC_ALL", "LC_MESSAGES", "LANG"}) {
      const char* const value = std::getenv(name);
      if (value != nullptr) {
        before_[name] = value;
      }
      unsetenv(name);
    }
    for (const auto& [name, value] : wishes) {
      setenv(name.c_str(), value.c_str(), 1);
    }
  }
  ~Environment() {
    for (const char* const name : {"LANGUAGE", "LC_ALL", "LC_MESSAGES", "LANG"}) {
      unsetenv(name);
    }
    for (const auto& [name, value] : before_) {
      setenv(name.c_str(), value.c_str(), 1);
    }
  }
  Environment(const Environment&) = delete;
  Environment& operator=(const Environment&) = delete;

private:
  std::map<std::string, std::string> before_;
};

std::string_view asked(const std::map<std::string, std::string>& wishes) {
  const Environment environment(wishes);
  return language_of_environment().code;
}

// A translation of a few words, made by msgfmt.
std::filesystem::path translated_words() {
  const std::filesystem::path folder = std::filesystem::temp_directory_path() / "punchwright-words-test";
  std::filesystem::create_directories(folder / "de" / "LC_MESSAGES");
  std::ofstream(folder / "de.po") << R"(msgid ""
msgstr "Content-Type: text/plain; charset=UTF-8\nPlural-Forms: nplurals=2; plural=n != 1;\n"
msgid "Row {} of {}"
msgstr "Von {1} Reihen die {0}."
msgid "{} stitch in {}"
msgid_plural "{} stitches in {}"
msgstr[0] "{} Masche in {}"
msgstr[1] "{} Maschen in {}"
msgid "Yarn"
msgstr "Garn"
)";
  const std::string command =
      "msgfmt -o '" + (folder / "de/LC_MESSAGES/punchwright.mo").string() + "' '" + (folder / "de.po").string() + "'";
  REQUIRE(std::system(command.c_str()) == 0);
  return folder;
}

// English again, whatever the test does.
struct InGerman {
  InGerman() { choose_language(language_of("de"), translated_words()); }
  ~InGerman() { choose_language(language_of("en"), {}); }
};

} // namespace

TEST_CASE("the environment's language is that of the first variable that says one") {
  CHECK(asked({}) == "en");
  CHECK(asked({{"LANG", "de_DE.UTF-8"}}) == "de");
  CHECK(asked({{"LANG", "de"}}) == "de");
  CHECK(asked({{"LANG", "en_GB.UTF-8"}, {"LC_MESSAGES", "de_AT.UTF-8"}}) == "de");
  CHECK(asked({{"LANG", "de_DE.UTF-8"}, {"LC_MESSAGES", "de_AT.UTF-8"}, {"LC_ALL", "en_US.UTF-8"}}) == "en");
  CHECK(asked({{"LANG", "nb_NO.UTF-8"}}) == "en"); // not spoken
  CHECK(asked({{"LANG", "dex_XX"}}) == "en");
}

TEST_CASE("each language has its code, English first") {
  REQUIRE(codes_of_languages().size() == languages().size());
  CHECK(codes_of_languages().front() == "en");
  for (const std::string& code : codes_of_languages()) {
    CHECK(language_of(code).code == code);
  }
}

TEST_CASE("LANGUAGE names several, the first that is spoken counts, but not in a plain locale") {
  // GNU gettext manual, 2.3.3 "Specifying a Priority List of Languages".
  CHECK(asked({{"LANG", "sv_SE.UTF-8"}, {"LANGUAGE", "sv:de:en"}}) == "de");
  CHECK(asked({{"LANG", "de_DE.UTF-8"}, {"LANGUAGE", "en:de"}}) == "en");
  CHECK(asked({{"LANG", "C"}, {"LANGUAGE", "de"}}) == "en");
  CHECK(asked({{"LC_ALL", "C.UTF-8"}, {"LANG", "de_DE.UTF-8"}, {"LANGUAGE", "de"}}) == "en");
  CHECK(asked({{"LC_ALL", "POSIX"}, {"LANG", "de_DE.UTF-8"}}) == "en");
}

TEST_CASE("English words are those of the source, with or without values") {
  CHECK(std::string(tr("Yarn")) == "Yarn");
  CHECK(said("Row {} of {}", 3, 12) == "Row 3 of 12");
  CHECK(said_count(1, "{} stitch in {}", "{} stitches in {}", "band 2") == "1 stitch in band 2");
  CHECK(said_count(0, "{} stitch in {}", "{} stitches in {}", "band 2") == "0 stitches in band 2");
  CHECK(std::string(tr("")).empty());
}

TEST_CASE("translated words take their values in an order of their own, and the number's own form") {
  const InGerman german;
  CHECK(std::string(tr("Yarn")) == "Garn");
  CHECK(std::string(tr("")).empty()); // and not the head of the file
  CHECK(std::string(tr("not translated")) == "not translated");
  CHECK(said("Row {} of {}", 3, 12) == "Von 12 Reihen die 3.");
  CHECK(said_count(1, "{} stitch in {}", "{} stitches in {}", "A") == "1 Masche in A");
  CHECK(said_count(5, "{} stitch in {}", "{} stitches in {}", "A") == "5 Maschen in A");
}

TEST_CASE("numbers for people have the language's decimal sign") {
  CHECK(decimal(2.5, 2) == "2.50");
  CHECK(short_decimal(2.5, 2) == "2.5");
  CHECK(short_decimal(30, 2) == "30");
  CHECK(short_decimal(30, 0) == "30");
  CHECK(short_decimal(0.004, 2) == "0");
  const InGerman german;
  CHECK(decimal(2.5, 2) == "2,50");
  CHECK(short_decimal(2.5, 2) == "2,5");
  CHECK(short_decimal(-30.04, 1) == "-30");
  CHECK(decimal(-0.25, 2) == "-0,25");
}

TEST_CASE("where a translation is missing, words are English and numbers the language's") {
  choose_language(language_of("de"), "/nowhere");
  CHECK(std::string(tr("Yarn")) == "Yarn");
  CHECK(decimal(0.5, 1) == "0,5");
  choose_language(language_of("en"), {});
  CHECK(decimal(0.5, 1) == "0.5");
}

TEST_CASE("an option is found before the others are known, by itself or joined to its value, and not among files") {
  using Arguments = std::vector<const char*>;
  const auto language = [](const Arguments& arguments) { return early_option(arguments, "--language"); };
  CHECK(language({"punchwright", "check", "--language", "de", "a.repeat"}) == "de");
  CHECK(language({"punchwright", "--language=de", "check"}) == "de");
  CHECK(language({"punchwright", "--language"}) == "");
  CHECK(language({"punchwright", "--languages", "de"}) == std::nullopt);
  CHECK(language({"punchwright", "check", "--", "--language", "de"}) == std::nullopt);
  CHECK(language({}) == std::nullopt);
}
