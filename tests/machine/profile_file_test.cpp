// The .machine form: every machine is written and read back the same, and a faulty file is refused with its place.
// Each faulty file is one change to a good one.
#include "machine/profile_file.hpp"

#include <algorithm>
#include <doctest/doctest.h>
#include <random>
#include <vector>

using namespace punchwright;

namespace {

const std::string good_text = R"(format = 1
name = "ours"
title = "the harbour room's bulky bed"

[bed]
needles = 112
pitch_mm = 9.0

[knitting]
feeders = 2
selects = "next-pass"
end_needles = true
longest_float = 5

# measured on a blank
[card]
repeat = 24
first_needle = "L12"
face = "knit"  # by the swatch
hole = "contrast"
turned = true
reader_offset = 5
blank_rows = 60
loop_rows = 36

[card.geometry]
sheet_width_mm = 142.0
stitch_pitch_mm = 4.52
row_pitch_mm = 5.0
hole_diameter_mm = 3.5
column_1_mm = 19.0
first_row_mm = 12.5
feed_diameter_mm = 3.0
feed_pitch_mm = 5.0
feed_from_side_mm = 6.0
clip_diameter_mm = 3.5
clips_mm = [[6.0, 5.0], [13.0, 5.0]]

[sources]
"bed.needles" = "counted"
"card.geometry.sheet_width_mm" = "measured"

# the end
)";

std::string changed(std::string_view from, std::string_view to) {
  std::string text = good_text;
  const auto at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

struct Malformed {
  std::string from;
  std::string to;
  std::string expected;
};

} // namespace

TEST_CASE("a repeat or a yoke in a machine's place is called what it is") {
  const auto said_of = [](const char* text) { return read_machine(text, "f").error().text(); };
  CHECK(said_of("format = 1\n[repeat]\nwidth = 8\n") ==
        "f:2:1: this is a repeat, not what is wanted here; name a .machine file, or a machine that is built in");
  CHECK(said_of("format = 1\n[[tier]]\nrepeat = 'a.repeat'\n") ==
        "f:2:1: this is a yoke, not what is wanted here; name a .machine file, or a machine that is built in");
}

TEST_CASE("a machine's file says what it says, and is saved as it is") {
  const auto read = read_machine(good_text, "bench/ours.machine");
  INFO((read ? std::string() : read.error().text()));
  REQUIRE(read);
  CHECK(read->name == "ours");
  CHECK(read->needles == 112);
  CHECK(read->selects == Selects::next_pass);
  REQUIRE(read->card);
  CHECK(read->card->face == CardFace::as_knit_side);
  CHECK(read->card->turned);
  CHECK(read->card->reader_offset == 5);
  CHECK(read->card->geometry.stitch_pitch == 4.52);
  CHECK(read->card->geometry.clips == std::vector<ClipHole>{{6, 5}, {13, 5}});
  CHECK(read->sources.at("bed.needles") == "counted");
  CHECK(write_machine(*read) == good_text);
}

TEST_CASE("every built-in machine is the same after writing and reading") {
  for (const Profile& profile : built_in_profiles()) {
    const std::string text = write_machine(profile);
    const auto read = read_machine(text, profile.name + ".machine");
    INFO((read ? std::string() : read.error().text()));
    REQUIRE(read);
    CHECK(*read == profile);
    CHECK(write_machine(*read) == text);
  }
}

TEST_CASE("every choice is written and read back") {
  Profile profile = *built_in_profile("bulky-card-12");
  for (const Selects selects : {Selects::next_pass, Selects::same_pass}) {
    for (const CardFace face : {CardFace::as_knitter_sees, CardFace::as_knit_side}) {
      for (const HoleMeans hole : {HoleMeans::contrast, HoleMeans::main}) {
        for (const bool turned : {false, true}) {
          profile.selects = selects;
          profile.end_needles = turned;
          profile.feeders = turned ? 1 : 2;
          profile.card->face = face;
          profile.card->hole = hole;
          profile.card->turned = turned;
          const auto read = read_machine(write_machine(profile), "x.machine");
          REQUIRE(read);
          CHECK(*read == profile);
        }
      }
    }
  }
}

TEST_CASE("a bed and a card's repeat are enough, the rest has defaults") {
  const auto read =
      read_machine("format = 1\n[bed]\nneedles = 100\npitch_mm = 8\n[card]\nrepeat = 12\n", "a/small bed.machine");
  REQUIRE(read);
  CHECK(read->name == "small bed");
  CHECK(read->title == "8 mm bed, 100 needles, 12-stitch card");
  CHECK(name_of(read->card->first_needle) == "L6");
  CHECK(read->selects == Selects::next_pass);
  CHECK(read->end_needles);
  CHECK(read->card->geometry.column_1 == doctest::Approx((142 - 11 * 4.5) / 2));
  const auto by_hand = read_machine("format = 1\n[bed]\nneedles = 100\npitch_mm = 8\n", "b.machine");
  REQUIRE(by_hand);
  CHECK_FALSE(by_hand->card);
  CHECK(by_hand->selects == Selects::by_hand);
  CHECK_FALSE(by_hand->end_needles);
  CHECK(by_hand->title == "8 mm bed, 100 needles, by hand");
}

TEST_CASE("malformed machines are refused with their place, what was found and what is allowed") {
  const std::string even = "an even number from 2 to 1000, half on each side of the middle";
  const std::string clips = "at most 8 pairs of distances from the side and from the end, 0.25 to 200 mm: [[6.0, 5.0]]";
  const std::vector<Malformed> cases = {
      {"format = 1\n", "", "m:1:1: 'format' is missing; allowed: 1"},
      {"format = 1", "format = 3", "m:1:10: 'format' is 3; allowed: 1"},
      {"name = \"ours\"", "name = 7", "m:2:8: 'name' is 7; allowed: text in quotation marks"},
      {"[bed]\nneedles = 112\npitch_mm = 9.0\n", "",
       "m:1:1: 'bed' is missing; allowed: a table [bed] with 'needles' and 'pitch_mm'"},
      {"needles = 112\n", "", "m:5:1: 'bed.needles' is missing; allowed: " + even},
      {"needles = 112", "needles = 113", "m:6:11: 'bed.needles' is 113; allowed: " + even},
      {"needles = 112", "needles = 0", "m:6:11: 'bed.needles' is 0; allowed: a whole number from 2 to 1000"},
      {"pitch_mm = 9.0", "pitch_mm = \"9 mm\"", "m:7:12: 'bed.pitch_mm' is \"9 mm\"; allowed: a number from 1 to 30"},
      {"pitch_mm = 9.0", "pitch_mm = nan", "m:7:12: 'bed.pitch_mm' is nan; allowed: a number from 1 to 30"},
      {"feeders = 2", "feeders = 3", "m:10:11: 'knitting.feeders' is 3; allowed: a whole number from 1 to 2"},
      {"\"next-pass\"", "\"next\"",
       "m:11:11: 'knitting.selects' is \"next\"; allowed: \"next-pass\", \"same-pass\" or \"by-hand\""},
      {"\"next-pass\"", "\"by-hand\"",
       "m:11:11: 'knitting.selects' is \"by-hand\"; allowed: \"next-pass\" or \"same-pass\" on a machine with a "
       "[card]"},
      {"end_needles = true", "end_needles = \"always\"",
       "m:12:15: 'knitting.end_needles' is \"always\"; allowed: true or false"},
      {"longest_float = 5", "longest_float = 0",
       "m:13:17: 'knitting.longest_float' is 0; allowed: a whole number from 1 to 200"},
      {"longest_float = 5", "longest_flaot = 5",
       "m:13:1: unknown key 'knitting.longest_flaot'; allowed: feeders, selects, end_needles or longest_float"},
      {"[bed]", "[beds]", "m:5:2: unknown key 'beds'; allowed: format, name, title, bed, knitting, card or sources"},
      {"repeat = 24", "repeat = 0", "m:17:10: 'card.repeat' is 0; allowed: a whole number from 1 to 200"},
      {"\"L12\"", "\"left 12\"",
       "m:18:16: 'card.first_needle' is \"left 12\"; allowed: a needle, L or R and its number: \"L36\", \"R1\""},
      {"\"knit\"", "\"front\"", "m:19:8: 'card.face' is \"front\"; allowed: \"purl\" or \"knit\""},
      {"\"contrast\"", "true", "m:20:8: 'card.hole' is true; allowed: \"contrast\" or \"main\""},
      {"turned = true", "turned = 1", "m:21:10: 'card.turned' is 1; allowed: true or false"},
      {"reader_offset = 5", "reader_offset = -1",
       "m:22:17: 'card.reader_offset' is -1; allowed: a whole number from 0 to 30"},
      {"loop_rows = 36", "loop_rows = 36.5",
       "m:24:13: 'card.loop_rows' is 36.5; allowed: a whole number from 1 to 2000"},
      {"[card.geometry]", "[card.sizes]",
       "m:26:7: unknown key 'card.sizes'; allowed: repeat, first_needle, face, hole, turned, reader_offset, "
       "blank_rows, "
       "loop_rows or geometry"},
      {"sheet_width_mm = 142.0", "sheet_width_mm = 14.2",
       "m:27:18: 'card.geometry.sheet_width_mm' is 14.2; allowed: a number from 20 to 400"},
      {"sheet_width_mm = 142.0", "sheet_width_mm = 120.0",
       "m:31:15: 24 columns reach from 17.25 to 124.71 mm on a sheet 120 mm wide; allowed: columns on the sheet"},
      {"hole_diameter_mm = 3.5", "hole_diameter_mm = 4.52",
       "m:30:20: holes of 4.52 mm, 4.52 mm apart, run into one another; allowed: holes smaller than both pitches"},
      {"feed_diameter_mm = 3.0", "feed_diameter_mm = 5.0",
       "m:33:20: feed holes of 5 mm, 5 mm apart, run into one another; allowed: feed holes smaller than their pitch"},
      {"\"L12\"", "\"L57\"",
       "m:18:16: 'card.first_needle' is \"L57\", which is not on the bed; allowed: a needle from \"L56\" to \"R56\""},
      {"\"L12\"", "\"R57\"",
       "m:18:16: 'card.first_needle' is \"R57\", which is not on the bed; allowed: a needle from \"L56\" to \"R56\""},
      {"feed_from_side_mm = 6.0", "feed_from_side_mm = 16.0",
       "m:35:21: 'card.geometry.feed_from_side_mm': the feed holes, 16 mm from the side, run into column 1; allowed: "
       "places beside the pattern's holes"},
      {"[13.0, 5.0]", "[17.0, 11.0]",
       "m:37:12: 'card.geometry.clips_mm': the clip hole 17 mm from the side and 11 mm from the end runs into column "
       "1; "
       "allowed: places beside the pattern's holes"},
      // Higher up, into a row of the pattern.
      {"[13.0, 5.0]", "[19.0, 42.0]",
       "m:37:12: 'card.geometry.clips_mm': the clip hole 19 mm from the side and 42 mm from the end runs into column "
       "1; "
       "allowed: places beside the pattern's holes"},
      {"[13.0, 5.0]", "[13.0]", "m:37:25: 'card.geometry.clips_mm' holds a list; allowed: " + clips},
      {"[13.0, 5.0]", "13.0", "m:37:25: 'card.geometry.clips_mm' holds 13.0; allowed: " + clips},
      {"[[6.0, 5.0], [13.0, 5.0]]", "true", "m:37:12: 'card.geometry.clips_mm' is true; allowed: " + clips},
      {"\"counted\"", "112", "m:40:17: 'sources.bed.needles' is 112; allowed: text in quotation marks"},
      {"\"bed.needles\"", "bed.needles",
       "m:40:1: \"bed\" under 'sources' is no key of this form; allowed: a key in quotation marks with its table's "
       "name, "
       "such as \"bed.needles\""},
      {"[bed]", "[bed", "m:5:5: the end of the line in a table's name; allowed: ']'"},
      {"needles = 112", "needles = ",
       "m:6:11: the end of the line where a value should stand; allowed: text in quotation "
       "marks, a number, true, false, a list in '[' and ']'"},
  };
  for (const Malformed& malformed : cases) {
    CAPTURE(malformed.to);
    const auto result = read_machine(changed(malformed.from, malformed.to), "m");
    REQUIRE_FALSE(result.ok());
    CHECK(result.error().text() == malformed.expected);
  }
}

TEST_CASE("clip and feed holes may come as near to the pattern's as they like, as long as they don't meet") {
  CHECK(read_machine(changed("feed_from_side_mm = 6.0", "feed_from_side_mm = 15.7"), "m").ok());
  CHECK(read_machine(changed("[13.0, 5.0]", "[19.0, 9.0]"), "m").ok());  // 3.5 mm below the lowest row
  CHECK(read_machine(changed("[13.0, 5.0]", "[15.4, 12.5]"), "m").ok()); // level with it, 3.6 mm beside
  CHECK_FALSE(read_machine(changed("[13.0, 5.0]", "[15.6, 12.5]"), "m").ok());
}

TEST_CASE("a card wider than its bed is refused also where its first needle is left to be worked out") {
  const auto result = read_machine("format = 1\n[bed]\nneedles = 20\npitch_mm = 8\n[card]\nrepeat = 24\n", "m");
  REQUIRE_FALSE(result.ok());
  CHECK(result.error().text() == "m:5:1: 'card.first_needle' is \"L12\" where it is left out, which is not on the bed; "
                                 "allowed: a needle from \"L10\" to \"R10\"");
}

TEST_CASE("a machine without a card that selects needles is refused") {
  const auto result =
      read_machine("format = 1\n[bed]\nneedles = 100\npitch_mm = 8\n[knitting]\nselects = 'same-pass'\n", "m");
  REQUIRE_FALSE(result.ok());
  CHECK(result.error().text() ==
        "m:6:11: 'knitting.selects' is \"same-pass\"; allowed: \"by-hand\" on a machine without a [card]");
}

TEST_CASE("no damaged machine file does harm, and what can be read is saved whole") {
  std::mt19937 random(12);
  const auto below = [&](std::size_t limit) {
    return std::uniform_int_distribution<std::size_t>(0, limit - 1)(random);
  };
  int read = 0;
  for (int count = 0; count < 3000; ++count) {
    std::string text = good_text;
    for (std::size_t times = 1 + below(2); times > 0; --times) {
      const std::size_t at = below(text.size());
      switch (below(3)) {
      case 0: text.erase(at, 1 + below(8)); break;
      case 1: text.insert(at, text.substr(below(text.size()), 1 + below(8))); break;
      default: text[at] = static_cast<char>(below(256));
      }
    }
    CAPTURE(text);
    const auto result = read_machine(text, "m");
    if (!result) {
      REQUIRE(result.error().line > 0);
      continue;
    }
    ++read;
    const std::string saved = write_machine(*result);
    const auto again = read_machine(saved, "m");
    REQUIRE(again);
    REQUIRE(*again == *result);
    REQUIRE(write_machine(*again) == saved);
  }
  CHECK(read > 100); // most damage is refused: unknown keys are, in this form
}

TEST_CASE("what a file leaves out is as unsure as the built-in machine that it is taken from") {
  const auto bare = read_machine("format = 1\n[bed]\nneedles = 112\npitch_mm = 9.0\n[card]\nrepeat = 24\n", "mine");
  REQUIRE(bare);
  const std::vector<std::string> unsure = unsure_values(*bare);
  const auto names = [&](const std::string& words) {
    return std::ranges::any_of(unsure, [&](const std::string& sentence) { return sentence.find(words) == 0; });
  };
  CHECK(names("sheet width 142 mm: from memory"));
  CHECK(bare->sources.at("card.geometry.row_pitch_mm") == "from memory");
  CHECK_FALSE(bare->sources.contains("bed.needles")); // stated: the owner's own
  const auto measured = read_machine("format = 1\n[bed]\nneedles = 112\npitch_mm = 9.0\n[card]\nrepeat = "
                                     "24\n[card.geometry]\nsheet_width_mm = 141.5\n",
                                     "mine");
  REQUIRE(measured);
  CHECK_FALSE(measured->sources.contains("card.geometry.sheet_width_mm"));
  // A default that no built-in machine shares.
  const auto narrow = read_machine("format = 1\n[bed]\nneedles = 112\npitch_mm = 9.0\n[card]\nrepeat = 8\n", "mine");
  REQUIRE(narrow);
  CHECK(narrow->sources.at("card.first_needle") == "from memory: taken as is usual");
}
