// The .yoke form: read, written, and refused with file, line, column, what was found and what is allowed.
// Every faulty file is one change to a good one.
#include "pieces/yoke_file.hpp"
#include "pieces/yoke_sample.hpp"

#include <doctest/doctest.h>
#include <fstream>
#include <iterator>
#include <random>
#include <sstream>

using namespace punchwright;
using namespace punchwright::test;

namespace {

Yoke read(const std::string& text) {
  const auto found = read_yoke(text, "harbour.yoke");
  INFO((found ? std::string() : found.error().text()));
  REQUIRE(found);
  return found->yoke;
}

struct Fault {
  std::string from;
  std::string to;
  std::string said;
};

const std::vector<Fault> faults = {
    {"format = 1", "format = 2", R"(harbour.yoke:1:10: 'format' is 2; allowed: 1)"},
    {"format = 1\n", "", R"(harbour.yoke:1:1: 'format' is missing; allowed: 1)"},
    {"sizes = [\"small\", \"medium\", \"large\"]\n", "",
     R"(harbour.yoke:1:1: 'sizes' is missing; allowed: a list of 1 to 20 names, such as ["small", "large"])"},
    {"[\"small\", \"medium\", \"large\"]", "[]",
     R"(harbour.yoke:3:9: 'sizes' is a list of 0; allowed: a list of 1 to 20 names, such as ["small", "large"])"},
    {"\"medium\"", "\"small\"", R"(harbour.yoke:3:19: 'sizes' holds "small" twice; allowed: each name once)"},
    {"\"medium\"", "7",
     R"(harbour.yoke:3:19: 'sizes' holds 7; allowed: a list of 1 to 20 names, such as ["small", "large"])"},
    {"edge = 1", "edge = 51", R"(harbour.yoke:4:8: 'edge' is 51; allowed: a whole number from 0 to 50)"},
    {"profile = \"bulky-card-24\"", "profile = \"\"",
     R"(harbour.yoke:7:11: 'machine.profile' is ""; allowed: the name of a built-in profile, or the path of a .machine file)"},
    {"stitches = 14.0", "stitches = 0",
     R"(harbour.yoke:10:12: 'gauge.stitches' is 0; allowed: a number from 1 to 200)"},
    {"rows = 19.5", "rows = nan", R"(harbour.yoke:15:8: 'gauge.plain.rows' is nan; allowed: a number from 1 to 200)"},
    {"key = \"B\"", "key = \"A\"",
     R"(harbour.yoke:23:7: 'key' of yarn 2 is "A"; allowed: one letter a to z or A to Z, or one digit, that no yarn above has)"},
    {"key = \"B\"\n", "",
     R"(harbour.yoke:22:1: 'key' of yarn 2 is missing; allowed: one letter a to z or A to Z, or one digit, that no yarn above has)"},
    {"loop_mm = 21.0", "loop_mm = \"long\"",
     R"(harbour.yoke:20:11: 'loop_mm' of yarn 1 is "long"; allowed: a number from 1 to 200)"},
    {"name = \"back\"", "name = \"front\"",
     R"(harbour.yoke:32:8: 'name' of piece 2 is "front"; allowed: a name that no piece above has)"},
    {"like = \"front\"", "like = \"back\"",
     R"(harbour.yoke:33:8: 'like' of piece 2 is "back"; allowed: the name of a piece that has widths of its own)"},
    {"like = \"front\"", "like = \"hood\"",
     R"(harbour.yoke:33:8: 'like' of piece 2 is "hood"; allowed: the name of a piece that has widths of its own)"},
    {"like = \"front\"", "like = \"front\"\ntop_cm = 20",
     R"(harbour.yoke:34:1: 'top_cm' of piece 2 beside 'like'; allowed: the widths, or 'like' and the piece that has them)"},
    {"top_cm = 22.0", "top_cm = [22.0, 23.0]",
     R"(harbour.yoke:29:10: 'top_cm' of piece 1 has 2 numbers, and there are 3 sizes; allowed: a number from 0.5 to 500, or a list of 3 such numbers, one for each size)"},
    {"[48.0, 52.0, 56.0]", "[48.0, true, 56.0]",
     R"(harbour.yoke:28:20: 'bottom_cm' of piece 1 holds true; allowed: a number from 0.5 to 500)"},
    {"top_cm = 22.0\n", "",
     R"(harbour.yoke:26:1: 'top_cm' of piece 1 is missing; allowed: a number from 0.5 to 500, or a list of 3 such numbers, one for each size)"},
    {"cm = [22.0, 23.5, 25.0]", "cm = 0.2",
     R"(harbour.yoke:36:6: 'depth.cm' is 0.2; allowed: a number from 1 to 200, or a list of 3 such numbers, one for each size)"},
    {"plain_above = 4", "plain_above = 4.0",
     R"(harbour.yoke:40:15: 'plain_above' of tier 1 is 4.0; allowed: a whole number from 0 to 99, or a list of 3 such numbers, one for each size)"},
    {"[2, 4, 6]", "[2, 4, 600]",
     R"(harbour.yoke:44:22: 'plain_above' of tier 2 holds 600; allowed: a whole number from 0 to 99)"},
    {"repeat = \"buoys.repeat\"\n", "",
     R"(harbour.yoke:38:1: 'repeat' of tier 1 is missing; allowed: the path of a .repeat file)"},
    {"seams = \"continuous\"", "seams = \"some\"",
     R"(harbour.yoke:48:9: 'fit.seams' is "some"; allowed: "continuous", "centred" or "free")"},
    {"tolerance = 0.06", "tolerance = 0.6",
     R"(harbour.yoke:47:13: 'fit.tolerance' is 0.6; allowed: a number from 0 to 0.5)"},
    {"way = \"gathered\"", "way = 1",
     R"(harbour.yoke:51:7: 'decreases.way' is 1; allowed: "gathered", "spread" or "half-steps")"},
    {"[fit]", "[[fit]]", R"(harbour.yoke:46:1: 'fit' is a list of tables; allowed: a table, [fit])"},
};

} // namespace

TEST_CASE("a yoke is read") {
  const Yoke yoke = read(good_yoke);
  CHECK(yoke.title == "Harbour poncho");
  CHECK(yoke.sizes == std::vector<std::string>{"small", "medium", "large"});
  CHECK(yoke.profile == "bulky-card-24");
  CHECK(yoke.gauge.stitches == 14.0);
  CHECK(yoke.gauge.plain_rows == 19.5);
  CHECK(yoke.yarns.at(0) == YokeYarn{'A', 180.0, 21.0, 6.1, std::nullopt});
  CHECK(yoke.pieces.at(0).bottom_cm.at(2) == 56.0);
  CHECK(yoke.pieces.at(0).top_cm.at(2) == 22.0);
  CHECK(widths_of(yoke, 1) == 0);
  CHECK(yoke.depth_cm.at(1) == 23.5);
  CHECK(yoke.tiers.at(0).plain_above.at(2) == 4);
  CHECK(yoke.tiers.at(1).plain_above.at(2) == 6);
  CHECK(yoke.fit == YokeFit{0.06, YokeSeams::continuous});
}

TEST_CASE("what may be left out has a value") {
  const Yoke yoke = read("format = 1\nsizes = ['one']\n[[piece]]\nname = 'all'\nbottom_cm = 50\ntop_cm = 20\n"
                         "[depth]\ncm = 20\n[[tier]]\nrepeat = 'a.repeat'\nplain_above = 2\n");
  CHECK(yoke.edge == 1);
  CHECK_FALSE(yoke.profile);
  CHECK(yoke.gauge == YokeGauge{});
  CHECK(yoke.fit.tolerance == 0.06);
  CHECK(yoke.fit.seams == YokeSeams::continuous);
  CHECK(yoke.decreases == YokeDecreases{});
  CHECK(read(write_yoke(yoke)) == yoke);
}

TEST_CASE("a file that was written, loaded and saved has the identical bytes") {
  CHECK(write_yoke(read(good_yoke)) == good_yoke);
}

TEST_CASE("comments and unknown keys and tables are kept") {
  std::string text =
      changed_yoke("[[tier]]\nrepeat = \"waves", "# above the second tier\n[[tier]] # here\nrepeat = \"waves");
  text.replace(text.find("edge = 1\n"), 9, "# how wide a seam is\nedge = 1 # one\nshade = \"dusk\"\n");
  text.replace(text.find("like = \"front\"\n"), 15, "like = \"front\"\nbuttons = 3\n");
  text += "\n[shop]\nopen = true\n\n# the end\n";
  const auto found = read_yoke(text, "harbour.yoke");
  REQUIRE(found);
  CHECK(write_yoke(found->yoke) == text);
  std::vector<std::string> notes;
  for (const ReadingNote& note : found->notes) {
    notes.push_back(note.text);
  }
  CHECK(notes == std::vector<std::string>{"unknown key 'shade' is kept as it is",
                                          "unknown key 'piece.buttons' is kept as it is",
                                          "unknown table 'shop' is kept as it is"});
}

TEST_CASE("a faulty file is refused with its place") {
  for (const Fault& fault : faults) {
    const std::string text = changed_yoke(fault.from, fault.to);
    CAPTURE(fault.to);
    REQUIRE(!text.empty());
    const auto found = read_yoke(text, "harbour.yoke");
    REQUIRE_FALSE(found);
    CHECK(found.error().text() == fault.said);
  }
}

// Damaged at random, a file is read or refused with a place, and what is read survives saving.
TEST_CASE("thousands of damaged files") {
  constexpr unsigned seed = 7;
  std::mt19937 dice(seed);
  const std::string signs = "\"'[]{}=,.#\n\\ 0aé-";
  int read_well = 0;
  for (int round = 0; round < 3000; ++round) {
    std::string text = good_yoke;
    for (unsigned change = 0; change <= dice() % 3; ++change) {
      const std::size_t at = dice() % text.size();
      const std::size_t length = dice() % 2 == 0 ? 0 : std::min<std::size_t>(1 + dice() % 20, text.size() - at);
      text.replace(at, length,
                   dice() % 2 == 0 ? std::string(1, signs[dice() % signs.size()])
                                   : text.substr(dice() % text.size(), 12));
    }
    const auto found = read_yoke(text, "x.yoke");
    CAPTURE(text);
    if (!found) {
      CHECK(found.error().line > 0);
      CHECK(!found.error().message.empty());
      continue;
    }
    ++read_well;
    const std::string written = write_yoke(found->yoke);
    CAPTURE(written);
    const auto again = read_yoke(written, "y.yoke");
    REQUIRE(again);
    CHECK(write_yoke(again->yoke) == written);
  }
  CHECK(read_well > 100);
}

TEST_CASE("the example of docs/file-forms.md loads, and the page names every key") {
  std::ifstream file(PUNCHWRIGHT_SOURCE_DIR "/docs/file-forms.md");
  const std::string page{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
  const std::string heading = "## `.yoke`";
  REQUIRE(page.find(heading) != std::string::npos);
  const std::string section =
      page.substr(page.find(heading), page.find("\n## ", page.find(heading)) - page.find(heading));
  std::istringstream lines(section);
  std::string example;
  for (std::string line; std::getline(lines, line);) {
    example += line.starts_with("    ") ? line.substr(4) + '\n' : "";
  }
  const Yoke yoke = read(example);
  CHECK(yoke.pieces.size() == 2);
  std::istringstream keys(write_yoke(read(good_yoke)));
  std::string table;
  for (std::string line; std::getline(keys, line);) {
    if (line.starts_with("[")) {
      table = line.substr(line.find_last_of('[') + 1, line.find(']') - line.find_last_of('[') - 1) + '.';
    } else if (const auto equals = line.find(" = "); equals != std::string::npos) {
      CAPTURE(table + line);
      CHECK(section.find('`' + table + line.substr(0, equals) + '`') != std::string::npos);
    }
  }
}

TEST_CASE("a repeat or a machine in a yoke's place is called what it is, with what takes it") {
  CHECK(
      read_yoke("format = 1\n[repeat]\nwidth = 4\n[[band]]\nrows = 1\n[piece]\nedge = 1\n", "f").error().text() ==
      "f:2:1: this is a repeat, not what is wanted here; see it with punchwright check or punchwright rows; a yoke of "
      "it is begun with punchwright yoke --new and --tier");
  CHECK(read_yoke("format = 1\n[bed]\nneedles = 40\n", "f").error().message ==
        "this is a machine, not what is wanted here");
  CHECK(read_yoke(std::string(good_yoke) + "[repeat]\nwidth = 4\n", "f")); // an unknown table of a yoke
}

TEST_CASE("a gauge that is taken away leaves its comments, and put back the file is as before") {
  std::string text(good_yoke);
  const std::string rows = "[gauge.plain]\nstitches = 14.5\nrows = 19.5\n";
  REQUIRE(text.find(rows) != std::string::npos);
  text.replace(text.find(rows), rows.size(), "# washed\n[gauge.plain]\nrows = 19.5 # the blue one\ntension = 7\n");
  Yoke yoke = read(text);
  yoke.gauge.plain_rows.reset();
  const std::string without = write_yoke(yoke);
  for (const char* const kept : {"# washed", "# the blue one", "tension = 7"}) {
    CHECK(without.find(kept) != std::string::npos);
  }
  CHECK(read(without).gauge.plain_rows == std::nullopt);
  yoke.gauge.plain_rows = 19.5;
  CHECK(write_yoke(yoke) == text);
}
