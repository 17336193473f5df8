// What a person or a later version wrote into a .repeat file and this one does not know: it stays, at its place.
#include "design/repeat_file.hpp"
#include "design/repeat_sample.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using namespace punchwright::test;

namespace {

ReadDocument read_all(std::string_view text) {
  const auto result = read_repeat(text, "test.repeat");
  INFO((result ? std::string() : result.error().text()));
  REQUIRE(result);
  return *result;
}

std::string saved(std::string_view text) {
  return write_repeat(read_all(text).document);
}

const std::string kept_text = R"(# Knitted for the regatta.

# The form's number:
format = 1
title = "Buoys"  # two of them
notes = ""
season = "spring"
# root ends here

# where it is knitted
[machine] # ours
profile = "bulky-card-24"
# end of machine

[gauge]
stitches = 16.0
# measured twice

# with weights
rows = 20.0
# of a swatch
swatch = [
  1, # one
  2,
]

# first yarn
[[yarn]]
key = "A"
name = "Oat"
colour = "#e8dcc2"
dye_lot = 12
# end of A

[yarn.supplier]
town = "harbour"
# clings to the town

[[yarn]]
key = "B"
name = "Ink"
colour = "#20304a"

[repeat]
width = 4
rows = [ # knit side
  # the beak
  ".##.", # row 2
  # the feet
  # of it
  "#..#",
  # below row 1
] # drawn by hand

[[band]]
rows = 2
main = "A"
# why not C?
contrast = "B"

[piece]
times = 1
carriage = "right"
end_needles = "profile"
edge = 1

[rules]
plain_rows = 1
change_side = "any"

[card]
paper = "a4"
loop = false
scale_x = 1.0
scale_y = 1.0
margin.left = 3.5
# end of card

# a table of a later version
[tension]
dial = 7

[[steam]]
note = """
two
lines"""
# clings to the note

# the file ends here
)";

} // namespace

TEST_CASE("comments and unknown keys in every kind of place survive, byte for byte") {
  CHECK(saved(kept_text) == kept_text);
}

TEST_CASE("unknown keys and tables are named with their lines") {
  CHECK(read_all(kept_text).notes == std::vector<ReadingNote>{{7, "unknown key 'season' is kept as it is"},
                                                              {22, "unknown key 'gauge.swatch' is kept as it is"},
                                                              {32, "unknown key 'yarn.dye_lot' is kept as it is"},
                                                              {35, "unknown table 'yarn.supplier' is kept as it is"},
                                                              {76, "unknown key 'card.margin.left' is kept as it is"},
                                                              {80, "unknown table 'tension' is kept as it is"},
                                                              {83, "unknown table 'steam' is kept as it is"}});
}

TEST_CASE("unknown keys move behind the known ones of their table, unknown tables to the end") {
  const std::string text =
      saved("format = 1\n[odd]\nx = 1\n[repeat]\nshade = 0.5 # half\nwidth = 2\n# which one?\nrows = ['.#']\n"
            "[[band]]\nrows = 1\nmain = 'A'\ncontrast = 'B'\n"
            "[[yarn]]\nkey = 'A'\n[[yarn]]\nkey = 'B'\n[other]\n[gauge]\n'wet rows' = 19\n"
            "[card.colours]\na = 1\n\n");
  CHECK(text.find("[repeat]\nwidth = 2\n# which one?\nrows = [\n  \".#\",\n]\nshade = 0.5 # half\n") !=
        std::string::npos);
  CHECK(text.find("rows = 20.0\n'wet rows' = 19\n") != std::string::npos);
  CHECK(text.ends_with("scale_y = 1.0\n\n[odd]\nx = 1\n\n[other]\n\n[card.colours]\na = 1\n"));
}

TEST_CASE("unknown keys of tables written on one line are kept too") {
  const std::string text = saved("format = 1\ngauge = { stitches = 14, wet.rows = 19 } # a swatch\n"
                                 "yarn = [ { key = 'A', lot = 12 },\n # the second\n { key = 'B' } ]\n"
                                 "card.loop = true # joined\ncard.back = { colour = \"white\" }\n"
                                 "[repeat]\nwidth = 1\nrows = ['.', '#'] # two\n[[band]]\nrows = 2\nmain = 'A'\n"
                                 "contrast = 'B'\n");
  CHECK(text.find("[gauge] # a swatch\nstitches = 14.0\nrows = 20.0\nwet.rows = 19\n") != std::string::npos);
  CHECK(text.find("# the second\n[[yarn]]\nkey = \"A\"\nname = \"A\"\ncolour = \"#e8dcc2\"\nlot = 12\n") !=
        std::string::npos);
  CHECK(text.find("loop = true # joined\n") != std::string::npos);
  CHECK(text.find("scale_y = 1.0\nback = { colour = \"white\" }\n") != std::string::npos);
  CHECK(text.find("] # two\n") != std::string::npos);
  CHECK(saved(text) == text);
}

TEST_CASE("a known key in quotation marks is that key, and an unknown one keeps them") {
  const std::string text =
      saved(std::string("\"t\\u0069tle\" = 'Waves'\n'my key' = 1\n'' = 2\n") + std::string(least_text));
  CHECK(text.starts_with("format = 1\ntitle = \"Waves\"\nnotes = \"\"\n'my key' = 1\n'' = 2\n\n"));
  CHECK(saved(text) == text);
}

TEST_CASE("a comment whose row, yarn, band or key is gone stands at the end of its table") {
  Document document = read_all(kept_text).document;
  document.grid = Grid(4, 1);
  document.bands = {{1, 'A', std::nullopt, std::nullopt}};
  document.yarns[0].key = 'C';
  document.bands[0].main = 'C';
  const std::string text = write_repeat(document);
  CHECK(text.find("rows = [ # knit side\n  # the feet\n  # of it\n  \"....\",\n  # the beak\n  # row 2\n"
                  "  # below row 1\n] # drawn by hand\n") != std::string::npos);
  CHECK(text.find("main = \"C\"\n# why not C?\n\n[piece]") != std::string::npos);
  CHECK(text.find("colour = \"#20304a\"\n# first yarn\n# end of A\n\n[repeat]") != std::string::npos);
  CHECK(saved(text) == text);
}

TEST_CASE("comments follow their rows when rows are inserted, copied, turned over or deleted") {
  Extras extras;
  extras.comments_before = {{"repeat.rows.1", {"# one"}}, {"repeat.rows.3", {"# three"}}, {"repeat.rows.$", {"# end"}}};
  extras.comments_after = {{"repeat.rows.2", "  # two"}, {"title", " # title"}};
  SUBCASE("nothing moved") {
    CHECK(extras_for_rows(extras, {0, 1, 2}) == extras);
  }
  SUBCASE("a new row above row 1, a copy of it") {
    const Extras moved = extras_for_rows(extras, {0, 0, 1, 2});
    CHECK(moved.comments_before.at("repeat.rows.1") == std::vector<std::string>{"# one"});
    CHECK(moved.comments_before.at("repeat.rows.4") == std::vector<std::string>{"# three"});
    CHECK(moved.comments_after.at("repeat.rows.3") == "  # two");
    CHECK(moved.comments_after.at("title") == " # title");
  }
  SUBCASE("new rows have no comments, and take none over from a row that is gone") {
    const Extras moved = extras_for_rows(extras, {-1, 1, 2, -1});
    CHECK(moved.comments_before.at("repeat.rows.$") == std::vector<std::string>{"# one", "# end"});
    CHECK(moved.comments_before.at("repeat.rows.3") == std::vector<std::string>{"# three"});
    CHECK(moved.comments_before.size() == 2);
    CHECK(moved.comments_after.at("repeat.rows.2") == "  # two");
  }
  SUBCASE("turned upside down") {
    const Extras moved = extras_for_rows(extras, {2, 1, 0});
    CHECK(moved.comments_before.at("repeat.rows.3") == std::vector<std::string>{"# one"});
    CHECK(moved.comments_before.at("repeat.rows.1") == std::vector<std::string>{"# three"});
  }
  SUBCASE("rows 2 and 3 deleted: their comments go to row 1, the higher first") {
    const Extras moved = extras_for_rows(extras, {0});
    CHECK(moved.comments_before.at("repeat.rows.1") == std::vector<std::string>{"# three", "# two", "# one"});
    CHECK(moved.comments_after.size() == 1);
  }
  SUBCASE("row 1 deleted: its comment goes to the end, before what is there") {
    const Extras moved = extras_for_rows(extras, {1, 2});
    CHECK(moved.comments_before.at("repeat.rows.$") == std::vector<std::string>{"# one", "# end"});
    CHECK(moved.comments_before.at("repeat.rows.2") == std::vector<std::string>{"# three"});
    CHECK(moved.comments_after.at("repeat.rows.1") == "  # two");
  }
}

TEST_CASE(
    "a comment with blank lines on both sides stands before the next table, one that clings ends the table above") {
  const Extras apart = read_all("format = 1\n\n# apart\n\n" + std::string(least_text.substr(11))).document.extras;
  CHECK(apart.comments_before.at("yarn.A") == std::vector<std::string>{"# apart", ""});
  CHECK_FALSE(apart.comments_before.contains("$"));
  const Extras clinging = read_all("format = 1\n# clings\n\n" + std::string(least_text.substr(11))).document.extras;
  CHECK(clinging.comments_before.at("$") == std::vector<std::string>{"# clings"});
  CHECK_FALSE(clinging.comments_before.contains("yarn.A"));
}
