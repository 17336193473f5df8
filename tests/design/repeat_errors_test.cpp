// Malformed .repeat files and what is said about each: file, line, column, what was found, what is allowed.
// Each case is one change to a good file, or a whole text of its own.
#include "design/repeat_file.hpp"
#include "design/repeat_sample.hpp"

#include <doctest/doctest.h>
#include <string>
#include <vector>

using namespace punchwright;
using namespace punchwright::test;
using namespace std::string_literals;

namespace {

const std::string good_text = R"(format = 1
title = "Waves"
notes = ""
[machine]
profile = "fine-card-24"
[gauge]
stitches = 16.0
rows = 20.0
[[yarn]]
key = "A"
name = "Oat"
[[yarn]]
key = "B"
colour = "#20304a"
[repeat]
width = 4
rows = [
  ".##.",
  "#..#",
  "....",
]
[[band]]
rows = 1
main = "A"
[[band]]
rows = 2
main = "A"
contrast = "B"
plain_below = 2
[piece]
stitches = 8
first_needle = "L4"
times = 1
carriage = "right"
end_needles = "profile"
edge = 1
[rules]
longest_float = 5
plain_rows = 1
change_side = "any"
[card]
paper = "a4"
loop = false
scale_x = 1.0
scale_y = 1.0
)";

struct Malformed {
  std::string from; // in the good text; empty: `to` is the whole text
  std::string to;
  std::string expected;
};

const std::vector<Malformed> head_to_yarns = {
    {"format = 1\n", "", "f.repeat:1:1: 'format' is missing; allowed: 1"},
    {"format = 1", "format = 2", "f.repeat:1:10: 'format' is 2; allowed: 1"},
    {"format = 1", "format = \"1\"", "f.repeat:1:10: 'format' is \"1\"; allowed: 1"},
    {"format = 1", "format = 1.0", "f.repeat:1:10: 'format' is 1.0; allowed: 1"},
    {"title = \"Waves\"", "title = 7", "f.repeat:2:9: 'title' is 7; allowed: text in quotation marks"},
    {"notes = \"\"", "notes = [\"a\"]", "f.repeat:3:9: 'notes' is a list; allowed: text in quotation marks"},
    {"profile = \"fine-card-24\"", "profile = 24",
     "f.repeat:5:11: 'machine.profile' is 24; allowed: the name of a built-in profile, or the path of a .machine file"},
    {"profile = \"fine-card-24\"", "profile = \"\"",
     "f.repeat:5:11: 'machine.profile' is \"\"; allowed: the name of a built-in profile, or the path of a .machine "
     "file"},
    {"[machine]\nprofile = \"fine-card-24\"", "machine = \"fine-card-24\"",
     "f.repeat:4:11: 'machine' is \"fine-card-24\"; allowed: a table, [machine]"},
    {"stitches = 16.0", "stitches = \"sixteen\"",
     "f.repeat:7:12: 'gauge.stitches' is \"sixteen\"; allowed: a number from 1 to 200"},
    {"stitches = 16.0", "stitches = 0.5", "f.repeat:7:12: 'gauge.stitches' is 0.5; allowed: a number from 1 to 200"},
    {"rows = 20.0", "rows = nan", "f.repeat:8:8: 'gauge.rows' is nan; allowed: a number from 1 to 200"},
    {"rows = 20.0", "rows = inf", "f.repeat:8:8: 'gauge.rows' is inf; allowed: a number from 1 to 200"},
    {"rows = 20.0", "rows = 200.5", "f.repeat:8:8: 'gauge.rows' is 200.5; allowed: a number from 1 to 200"},
    {"rows = 20.0", "rows = 2024-01-01",
     "f.repeat:8:8: 'gauge.rows' is a date or time; allowed: a number from 1 to 200"},
    {"key = \"B\"", "name = \"B\"",
     "f.repeat:12:1: 'key' of yarn 2 is missing; allowed: one letter a to z or A to Z, or one digit"},
    {"key = \"B\"", "key = \"A\"",
     "f.repeat:13:7: 'key' of yarn 2 is \"A\"; allowed: a key that no yarn above has; taken: \"A\""},
    {"key = \"B\"", "key = \"BB\"",
     "f.repeat:13:7: 'key' of yarn 2 is \"BB\"; allowed: one letter a to z or A to Z, or one digit"},
    {"key = \"B\"", "key = \"é\"",
     "f.repeat:13:7: 'key' of yarn 2 is \"é\"; allowed: one letter a to z or A to Z, or one digit"},
    {"key = \"B\"", "key = \"\"",
     "f.repeat:13:7: 'key' of yarn 2 is \"\"; allowed: one letter a to z or A to Z, or one digit"},
    {"key = \"B\"", "key = 2",
     "f.repeat:13:7: 'key' of yarn 2 is 2; allowed: one letter a to z or A to Z, or one digit"},
    {"name = \"Oat\"", "name = false", "f.repeat:11:8: 'name' of yarn 1 is false; allowed: text in quotation marks"},
    {"\"#20304a\"", "\"#20304\"",
     "f.repeat:14:10: 'colour' of yarn 2 is \"#20304\"; allowed: '#' and six hexadecimal digits: \"#e8dcc2\""},
    {"\"#20304a\"", "\"dark blue\"",
     "f.repeat:14:10: 'colour' of yarn 2 is \"dark blue\"; allowed: '#' and six hexadecimal digits: \"#e8dcc2\""},
    {"\"#20304a\"", "0x20304a",
     "f.repeat:14:10: 'colour' of yarn 2 is 2109514; allowed: '#' and six hexadecimal digits: \"#e8dcc2\""},
    {"[[yarn]]\nkey = \"B\"\ncolour = \"#20304a\"\n", "",
     "f.repeat:9:1: there is one yarn only; allowed: two [[yarn]] or more, each with a key"},
    {"[[yarn]]\nkey = \"A\"\nname = \"Oat\"\n[[yarn]]\nkey = \"B\"\ncolour = \"#20304a\"\n", "",
     "f.repeat:1:1: 'yarn' is missing; allowed: two [[yarn]] or more, each with a key"},
    {"[[yarn]]\nkey = \"A\"\nname = \"Oat\"\n[[yarn]]\nkey = \"B\"\ncolour = \"#20304a\"\n", "[yarn]\nkey = \"A\"\n",
     "f.repeat:9:1: 'yarn' is a table; allowed: two [[yarn]] or more, each with a key"},
    {"[[yarn]]\nkey = \"A\"\nname = \"Oat\"\n[[yarn]]\nkey = \"B\"\ncolour = \"#20304a\"\n", "[bed]\n",
     "f.repeat:1:1: 'yarn' is missing; allowed: two [[yarn]] or more, each with a key"},
};

const std::vector<Malformed> drawing_and_bands = {
    {"[repeat]\nwidth = 4\nrows = [\n  \".##.\",\n  \"#..#\",\n  \"....\",\n]\n", "",
     "f.repeat:1:1: 'repeat' is missing; allowed: a table [repeat] with 'width' and 'rows'"},
    {"width = 4\n", "", "f.repeat:15:1: 'repeat.width' is missing; allowed: a whole number from 1 to 200"},
    {"width = 4", "width = 0", "f.repeat:16:9: 'repeat.width' is 0; allowed: a whole number from 1 to 200"},
    {"width = 4", "width = 201", "f.repeat:16:9: 'repeat.width' is 201; allowed: a whole number from 1 to 200"},
    {"width = 4", "width = 4.0", "f.repeat:16:9: 'repeat.width' is 4.0; allowed: a whole number from 1 to 200"},
    {"width = 4", "width = 99999999999999999999",
     "f.repeat:16:9: not TOML: decimal integer: '99999999999999999999' is not representable in 64 bits; allowed: a "
     "number such as 16, 16.5 or -1; text needs quotation marks"},
    {"width = 4", "\"ä\" = -99_999_999_999_999_999_999 # ü",
     "f.repeat:16:7: not TOML: decimal integer: '99999999999999999999' is not representable in 64 bits; allowed: a "
     "number such as 16, 16.5 or -1; text needs quotation marks"},
    {"width = 4", "width = 5", "f.repeat:18:8: row 3 has 4 stitches, 'repeat.width' is 5; allowed: rows of 5 stitches"},
    {"width = 4", "width = 3", "f.repeat:18:7: row 3 has 4 stitches, 'repeat.width' is 3; allowed: rows of 3 stitches"},
    {"rows = [\n  \".##.\",\n  \"#..#\",\n  \"....\",\n]\n", "",
     "f.repeat:15:1: 'repeat.rows' is missing; allowed: a list of 1 to 2000 rows of '.' and '#'"},
    {"rows = [\n  \".##.\",\n  \"#..#\",\n  \"....\",\n]\n", "rows = []\n",
     "f.repeat:17:8: 'repeat.rows' has 0 rows; allowed: a list of 1 to 2000 rows of '.' and '#'"},
    {"rows = [\n  \".##.\",\n  \"#..#\",\n  \"....\",\n]\n", "rows = \".##.\"\n",
     "f.repeat:17:8: 'repeat.rows' is \".##.\"; allowed: a list of 1 to 2000 rows of '.' and '#'"},
    {"\".##.\"", "\".#x.\"", "f.repeat:18:6: 'x' in row 3; allowed: '.' for main and '#' for contrast"},
    {"\".##.\"", "\".#é.\"", "f.repeat:18:6: 'é' in row 3; allowed: '.' for main and '#' for contrast"},
    {"\".##.\"", "\".#.. \"", "f.repeat:18:8: ' ' in row 3; allowed: '.' for main and '#' for contrast"},
    {"\".##.\"", "\".\\u0023.#.\"",
     "f.repeat:18:3: row 3 has 5 stitches, 'repeat.width' is 4; allowed: rows of 4 stitches"},
    {"\".##.\"", "\"\"", "f.repeat:18:4: row 3 has 0 stitches, 'repeat.width' is 4; allowed: rows of 4 stitches"},
    {"\".##.\"", "46", "f.repeat:18:3: row 3 is 46; allowed: '.' and '#' in quotation marks"},
    {"\"#..#\"", "\"#..#.#\"", "f.repeat:19:8: row 2 has 6 stitches, 'repeat.width' is 4; allowed: rows of 4 stitches"},
    {"[[band]]\nrows = 1\nmain = \"A\"\n[[band]]\nrows = 2\nmain = \"A\"\ncontrast = \"B\"\nplain_below = 2\n", "",
     "f.repeat:1:1: 'band' is missing; allowed: [[band]] with 'rows' and 'main', from row 1 upwards"},
    {"[[band]]\nrows = 1\nmain = \"A\"\n[[band]]\nrows = 2\nmain = \"A\"\ncontrast = \"B\"\nplain_below = 2\n",
     "[band]\nrows = 3\nmain = \"A\"\n",
     "f.repeat:22:1: 'band' is a table; allowed: [[band]] with 'rows' and 'main', from row 1 upwards"},
    {"rows = 2\n", "", "f.repeat:25:1: 'rows' of band 2 is missing; allowed: a whole number from 1 to 2000"},
    {"rows = 2\n", "rows = 0\n", "f.repeat:26:8: 'rows' of band 2 is 0; allowed: a whole number from 1 to 2000"},
    {"rows = 2\n", "rows = 3\n",
     "f.repeat:26:8: the bands together have 4 rows, the drawing has 3; allowed: bands that cover every row of the "
     "drawing, and no more"},
    {"rows = 2\n", "rows = 1\n",
     "f.repeat:26:8: the bands together have 2 rows, the drawing has 3; allowed: bands that cover every row of the "
     "drawing, and no more"},
    {"main = \"A\"\ncontrast", "contrast",
     "f.repeat:25:1: 'main' of band 2 is missing; allowed: a yarn of this file: \"A\" or \"B\""},
    {"main = \"A\"\ncontrast", "main = \"Z\"\ncontrast",
     "f.repeat:27:8: 'main' of band 2 is \"Z\"; allowed: a yarn of this file: \"A\" or \"B\""},
    {"contrast = \"B\"", "contrast = \"A\"",
     "f.repeat:28:12: 'contrast' of band 2 is \"A\"; allowed: another yarn than the band's main; or no 'contrast', for "
     "a band of one yarn"},
    {"contrast = \"B\"", "contrast = \"Ink\"",
     "f.repeat:28:12: 'contrast' of band 2 is \"Ink\"; allowed: a yarn of this file: \"A\" or \"B\""},
    {"contrast = \"B\"\n", "",
     "f.repeat:18:5: '#' in row 3, which lies in band 2, a band of one yarn; allowed: '.' in such a band, or a "
     "'contrast' for it"},
    {"contrast = \"B\"", "contrast = true",
     "f.repeat:28:12: 'contrast' of band 2 is true; allowed: a yarn of this file: \"A\" or \"B\""},
    {"plain_below = 2", "plain_below = 100",
     "f.repeat:29:15: 'plain_below' of band 2 is 100; allowed: a whole number from 0 to 99"},
    {"plain_below = 2", "plain_below = -1",
     "f.repeat:29:15: 'plain_below' of band 2 is -1; allowed: a whole number from 0 to 99"},
    {"\"....\"", "\"..##\"",
     "f.repeat:20:6: '#' in row 1, which lies in band 1, a band of one yarn; allowed: '.' in such a band, or a "
     "'contrast' for it"},
};

const std::vector<Malformed> piece_to_card = {
    {"stitches = 8", "stitches = 0", "f.repeat:31:12: 'piece.stitches' is 0; allowed: a whole number from 1 to 1000"},
    {"stitches = 8", "stitches = 1001",
     "f.repeat:31:12: 'piece.stitches' is 1001; allowed: a whole number from 1 to 1000"},
    {"stitches = 8", "stitches = 8.5",
     "f.repeat:31:12: 'piece.stitches' is 8.5; allowed: a whole number from 1 to 1000"},
    {"first_needle = \"L4\"", "first_needle = \"L0\"",
     "f.repeat:32:16: 'piece.first_needle' is \"L0\"; allowed: a needle, L or R and its number: \"L36\", \"R1\""},
    {"first_needle = \"L4\"", "first_needle = \"4\"",
     "f.repeat:32:16: 'piece.first_needle' is \"4\"; allowed: a needle, L or R and its number: \"L36\", \"R1\""},
    {"first_needle = \"L4\"", "first_needle = -4",
     "f.repeat:32:16: 'piece.first_needle' is -4; allowed: a needle, L or R and its number: \"L36\", \"R1\""},
    {"first_needle = \"L4\"", "first_column = 5",
     "f.repeat:32:16: 'piece.first_column' is 5; allowed: a whole number from 1 to 4"},
    {"times = 1", "times = 1001", "f.repeat:33:9: 'piece.times' is 1001; allowed: a whole number from 1 to 1000"},
    {"times = 1", "times = \"once\"",
     "f.repeat:33:9: 'piece.times' is \"once\"; allowed: a whole number from 1 to 1000"},
    {"carriage = \"right\"", "carriage = \"middle\"",
     "f.repeat:34:12: 'piece.carriage' is \"middle\"; allowed: \"left\" or \"right\""},
    {"carriage = \"right\"", "carriage = \"Right\"",
     "f.repeat:34:12: 'piece.carriage' is \"Right\"; allowed: \"left\" or \"right\""},
    {"end_needles = \"profile\"", "end_needles = true",
     "f.repeat:35:15: 'piece.end_needles' is true; allowed: \"profile\", \"always\" or \"never\""},
    {"edge = 1", "edge = 51", "f.repeat:36:8: 'piece.edge' is 51; allowed: a whole number from 0 to 50"},
    {"longest_float = 5", "longest_float = 0",
     "f.repeat:38:17: 'rules.longest_float' is 0; allowed: a whole number from 1 to 200"},
    {"longest_float = 5", "longest_float = 5\nlongest_float_mm = 25.0",
     "f.repeat:39:1: both 'rules.longest_float' and 'rules.longest_float_mm' are given; allowed: one of the two, or "
     "neither"},
    {"longest_float = 5", "longest_float_mm = 0",
     "f.repeat:38:20: 'rules.longest_float_mm' is 0; allowed: a number from 1 to 1000"},
    {"plain_rows = 1", "plain_rows = 10",
     "f.repeat:39:14: 'rules.plain_rows' is 10; allowed: a whole number from 0 to 9"},
    {"change_side = \"any\"", "change_side = \"both\"",
     "f.repeat:40:15: 'rules.change_side' is \"both\"; allowed: \"any\", \"left\" or \"right\""},
    {"paper = \"a4\"", "paper = \"a3\"",
     "f.repeat:42:9: 'card.paper' is \"a3\"; allowed: \"a4\", \"letter\" or \"roll\""},
    {"loop = false", "loop = \"no\"", "f.repeat:43:8: 'card.loop' is \"no\"; allowed: true or false"},
    {"scale_x = 1.0", "scale_x = 0", "f.repeat:44:11: 'card.scale_x' is 0; allowed: a number from 0.5 to 2"},
    {"scale_y = 1.0", "scale_y = -nan", "f.repeat:45:11: 'card.scale_y' is nan; allowed: a number from 0.5 to 2"},
    {"scale_y = 1.0", "scale_y = 2.001", "f.repeat:45:11: 'card.scale_y' is 2.001; allowed: a number from 0.5 to 2"},
    {"[card]", "[[card]]", "f.repeat:41:1: 'card' is a list of tables; allowed: a table, [card]"},
};

const std::vector<Malformed> marks = {
    {"scale_y = 1.0\n", "scale_y = 1.0\n[[catch]]\ncolumns = \"1\"\n",
     "f.repeat:46:1: 'row' of catch 1 is missing; allowed: a whole number from 1 to 3"},
    {"scale_y = 1.0\n", "scale_y = 1.0\n[[catch]]\nrow = 1\n",
     "f.repeat:46:1: 'columns' of catch 1 is missing; allowed: columns 1 to 4 in ascending order: \"4\", or \"4, "
     "9-12\""},
    {"scale_y = 1.0\n", "scale_y = 1.0\n[[accept]]\nrow = 4\ncolumns = \"1\"\n",
     "f.repeat:47:7: 'row' of accept 1 is 4; allowed: a whole number from 1 to 3"},
    {"scale_y = 1.0\n", "scale_y = 1.0\n[[catch]]\nrow = 1\ncolumns = \"\"\n",
     "f.repeat:48:11: 'columns' of catch 1 is \"\"; allowed: columns 1 to 4 in ascending order: \"4\", or \"4, 9-12\""},
    {"scale_y = 1.0\n", "scale_y = 1.0\n[[catch]]\nrow = 1\ncolumns = \"5\"\n",
     "f.repeat:48:11: 'columns' of catch 1 is \"5\"; allowed: columns 1 to 4 in ascending order: \"4\", or \"4, "
     "9-12\""},
    {"scale_y = 1.0\n", "scale_y = 1.0\n[[catch]]\nrow = 1\ncolumns = \"0\"\n",
     "f.repeat:48:11: 'columns' of catch 1 is \"0\"; allowed: columns 1 to 4 in ascending order: \"4\", or \"4, "
     "9-12\""},
    {"scale_y = 1.0\n", "scale_y = 1.0\n[[catch]]\nrow = 1\ncolumns = \"3-2\"\n",
     "f.repeat:48:11: 'columns' of catch 1 is \"3-2\"; allowed: columns 1 to 4 in ascending order: \"4\", or \"4, "
     "9-12\""},
    {"scale_y = 1.0\n", "scale_y = 1.0\n[[catch]]\nrow = 1\ncolumns = \"2, 1\"\n",
     "f.repeat:48:11: 'columns' of catch 1 is \"2, 1\"; allowed: columns 1 to 4 in ascending order: \"4\", or \"4, "
     "9-12\""},
    {"scale_y = 1.0\n", "scale_y = 1.0\n[[catch]]\nrow = 1\ncolumns = \"1-\"\n",
     "f.repeat:48:11: 'columns' of catch 1 is \"1-\"; allowed: columns 1 to 4 in ascending order: \"4\", or \"4, "
     "9-12\""},
    {"scale_y = 1.0\n", "scale_y = 1.0\n[[catch]]\nrow = 1\ncolumns = \"1,\"\n",
     "f.repeat:48:11: 'columns' of catch 1 is \"1,\"; allowed: columns 1 to 4 in ascending order: \"4\", or \"4, "
     "9-12\""},
    {"scale_y = 1.0\n", "scale_y = 1.0\n[[catch]]\nrow = 1\ncolumns = \"-1\"\n",
     "f.repeat:48:11: 'columns' of catch 1 is \"-1\"; allowed: columns 1 to 4 in ascending order: \"4\", or \"4, "
     "9-12\""},
    {"scale_y = 1.0\n", "scale_y = 1.0\n[[catch]]\nrow = 1\ncolumns = \"1;2\"\n",
     "f.repeat:48:11: 'columns' of catch 1 is \"1;2\"; allowed: columns 1 to 4 in ascending order: \"4\", or \"4, "
     "9-12\""},
    {"scale_y = 1.0\n", "scale_y = 1.0\n[[catch]]\nrow = 1\ncolumns = \"1 2\"\n",
     "f.repeat:48:11: 'columns' of catch 1 is \"1 2\"; allowed: columns 1 to 4 in ascending order: \"4\", or \"4, "
     "9-12\""},
    {"scale_y = 1.0\n", "scale_y = 1.0\n[[catch]]\nrow = 1\ncolumns = \"1-2-3\"\n",
     "f.repeat:48:11: 'columns' of catch 1 is \"1-2-3\"; allowed: columns 1 to 4 in ascending order: \"4\", or \"4, "
     "9-12\""},
    {"scale_y = 1.0\n", "scale_y = 1.0\n[[catch]]\nrow = 1\ncolumns = \"x\"\n",
     "f.repeat:48:11: 'columns' of catch 1 is \"x\"; allowed: columns 1 to 4 in ascending order: \"4\", or \"4, "
     "9-12\""},
    {"scale_y = 1.0\n", "scale_y = 1.0\n[[catch]]\nrow = 1\ncolumns = \"0001\"\n",
     "f.repeat:48:11: 'columns' of catch 1 is \"0001\"; allowed: columns 1 to 4 in ascending order: \"4\", or \"4, "
     "9-12\""},
    {"scale_y = 1.0\n", "scale_y = 1.0\n[[protect]]\nrow = 1\ncolumns = 3\n",
     "f.repeat:48:11: 'columns' of protect 1 is 3; allowed: columns 1 to 4 in ascending order: \"4\", or \"4, 9-12\""},
    {"scale_y = 1.0\n", "scale_y = 1.0\n[[protect]]\nrow = 2\ncolumns = \"1\"\n[[protect]]\nrow = 2\ncolumns = \"3\"\n",
     "f.repeat:50:7: 'row' of protect 2 is 2; allowed: each row once, the lowest first: here a row above 2"},
    {"[card]", "[catch]\nrow = 1\n[card]",
     "f.repeat:41:1: 'catch' is a table; allowed: [[catch]] with 'row' and 'columns', from row 1 upwards"},
};

const std::vector<Malformed> no_toml = {
    {"title = \"Waves\"", "title = \"Waves",
     "f.repeat:2:9: text without its closing quotation mark; allowed: \"text\" on one line, or \"\"\"text\"\"\" over "
     "several"},
    {"title = \"Waves\"", "title = \"\"\"Waves",
     "f.repeat:2:9: text without its closing quotation mark; allowed: \"text\" on one line, or \"\"\"text\"\"\" over "
     "several"},
    {"title = \"Waves\"", "title = Waves",
     "f.repeat:2:9: 'Waves' without quotation marks; allowed: text in quotation marks, a number, true, false, a list "
     "in '[' and ']'"},
    {"title = \"Waves\"", "title \"Waves\"", "f.repeat:2:7: '\"' after the key 'title'; allowed: '=' and a value"},
    {"title = \"Waves\"", "title =",
     "f.repeat:2:8: the end of the line where a value should stand; allowed: text in quotation marks, a number, true, "
     "false, a list in '[' and ']'"},
    {"title = \"Waves\"", "title = \"Waves\" \"Wind\"",
     "f.repeat:2:17: '\"' after the value; allowed: a comment, or the end of the line"},
    {"title = \"Waves\"", "title = \"Wa\\ves\"",
     "f.repeat:2:13: not TOML: string: unknown escape sequence '\\v'; allowed: \\\\ for a backslash, \\\" for a "
     "quotation mark, or text in single quotation marks"},
    {"title = \"Waves\"", "title = \"Waves\"\ntitle = \"Wind\"",
     "f.repeat:3:9: not TOML: key-value pair: cannot redefine existing string 'title'; allowed: each key and each "
     "table once"},
    {"title = \"Waves\"", "größe = 3",
     "f.repeat:2:3: 'ö' in a key; allowed: a key of the letters a to z, digits, '-' and '_', or in quotation marks"},
    {"title = \"Waves\"", "= 3",
     "f.repeat:2:1: '=' where a key should stand; allowed: a key of the letters a to z, digits, '-' and '_', or in "
     "quotation marks"},
    {"title = \"Waves\"", "a.b.c.d.e.f.g.h.i = 1",
     "f.repeat:2:1: a key of more than 8 parts; allowed: at most 8 parts between dots"},
    {"title = \"Waves\"",
     "title = \"Wa\x07"
     "ves\"",
     "f.repeat:2:12: control character U+0007; allowed: '\\u0007' written out, in quoted text"},
    {"title = \"Waves\"", "title = \"Wa\0ves\""s,
     "f.repeat:2:12: control character U+0000; allowed: '\\u0000' written out, in quoted text"},
    {"title = \"Waves\"", "x = [1 2]", "f.repeat:2:8: '2' in the list that begins in line 2; allowed: ',' or ']'"},
    {"title = \"Waves\"", "x = {a = 1",
     "f.repeat:2:11: the end of the line in a table on one line; allowed: ',' or '}'"},
    {"title = \"Waves\"", "x = [[[[[[[[[[[[[[[[[[",
     "f.repeat:2:22: lists or tables more than 16 deep; allowed: fewer levels"},
    {"[machine]", "[machine", "f.repeat:4:9: the end of the line in a table's name; allowed: ']'"},
    {"[machine]", "[.",
     "f.repeat:4:2: '.' where a key should stand; allowed: a key of the letters a to z, digits, '-' and '_', or in "
     "quotation marks"},
    {"[machine]", "[]",
     "f.repeat:4:2: ']' where a key should stand; allowed: a key of the letters a to z, digits, '-' and '_', or in "
     "quotation marks"},
    {"[machine]", "[[machine]", "f.repeat:4:10: ']' in a table's name; allowed: ']]'"},
    {"[machine]", "[gauge]",
     "f.repeat:6:1: not TOML: table header: cannot redefine existing table 'gauge'; allowed: each key and each table "
     "once"},
    {"\"....\",\n]", "\"....\",\n",
     "f.repeat:17:8: a list without its closing ']'; allowed: values with ',' between them, then ']'"},
    {"\".##.\",", "\".##.\"", "f.repeat:19:3: '\"' in the list that begins in line 17; allowed: ',' or ']'"},
    {"width = 4", "width = 4rows",
     "f.repeat:16:10: not TOML: decimal integer: expected digit, saw 'r'; allowed: a number such as 16, 16.5 or -1; "
     "text needs quotation marks"},
    {"", "", "f.repeat:1:1: 'format' is missing; allowed: 1"},
    {"", "[.",
     "f.repeat:1:2: '.' where a key should stand; allowed: a key of the letters a to z, digits, '-' and '_', or in "
     "quotation marks"},
    {"", "a\rb", "f.repeat:1:2: control character U+000D; allowed: '\\u000D' written out, in quoted text"},
    {"", "\0"s, "f.repeat:1:1: control character U+0000; allowed: '\\u0000' written out, in quoted text"},
};

void check_all(const std::vector<Malformed>& cases) {
  for (const Malformed& malformed : cases) {
    const std::string text = malformed.from.empty() ? malformed.to : with(good_text, malformed.from, malformed.to);
    CAPTURE(malformed.to);
    REQUIRE((malformed.from.empty() || !text.empty()));
    const auto result = read_repeat(text, "f.repeat");
    REQUIRE_FALSE(result.ok());
    CHECK(result.error().text() == malformed.expected);
  }
}

} // namespace

TEST_CASE("the good file of these tests is good") {
  CHECK(read_repeat(good_text, "f.repeat").ok());
}

TEST_CASE("head, machine, gauge and yarns that are not as they should be") {
  check_all(head_to_yarns);
}
TEST_CASE("drawings and bands that are not as they should be") {
  check_all(drawing_and_bands);
}
TEST_CASE("piece, rules and card that are not as they should be") {
  check_all(piece_to_card);
}
TEST_CASE("catches and other marks that are not as they should be") {
  check_all(marks);
}
TEST_CASE("texts that are no TOML, or a TOML that the parser could not bear") {
  check_all(no_toml);
}

TEST_CASE("the lists of malformed files hold more than a hundred") {
  CHECK(head_to_yarns.size() + drawing_and_bands.size() + piece_to_card.size() + no_toml.size() > 100);
}

TEST_CASE("a text beyond 8 MiB is not even looked at") {
  const std::string text(largest_toml_text + 1, '\n');
  const auto result = read_repeat(text, "f.repeat");
  REQUIRE_FALSE(result.ok());
  CHECK(result.error().text() == "f.repeat:1:1: the file has 8388609 bytes; allowed: at most 8388608 bytes (8 MiB)");
}

TEST_CASE("a text of very many values is refused before it takes memory") {
  std::string text = "x = [";
  for (int value = 0; value < 100'001; ++value) {
    text += "1,";
  }
  const auto result = read_repeat(text, "f.repeat");
  REQUIRE_FALSE(result.ok());
  CHECK(result.error().text() == "f.repeat:1:200004: more than 100000 values; allowed: fewer");
}

TEST_CASE("bytes that are no UTF-8 are refused with their place") {
  // Well-formed byte sequences: the Unicode standard, table 3-7.
  for (const std::string bad :
       {"\xff", "\xc0\xaf", "\xe0\x80\x80", "\xed\xa0\x80", "\xf4\x90\x80\x80", "\xc3", "\x80"}) {
    const auto result = read_repeat("# \xc3\xa9" + bad + "\n", "f.repeat");
    REQUIRE_FALSE(result.ok());
    CHECK(result.error().line == 1);
    CHECK(result.error().column == 4);
    CHECK(result.error().remedy == "allowed: a text file, saved as UTF-8");
  }
}

TEST_CASE("a file of another form is called what it is, with what takes it, before any key is missing in it") {
  const auto said_of = [](const char* text) { return read_repeat(text, "f").error().text(); };
  CHECK(said_of("format = 1\nsizes = ['one']\n[[piece]]\nname = 'front'\n[[tier]]\nrepeat = 'a.repeat'\n") ==
        "f:3:1: this is a yoke, not what is wanted here; see it with punchwright yoke, from a file whose name ends in "
        ".yoke; or take the .repeat file of one of its tiers");
  CHECK(
      said_of("format = 1\nname = 'toy'\n[bed]\nneedles = 40\n") ==
      "f:3:1: this is a machine, not what is wanted here; name it as 'profile' under [machine] in the file of a repeat "
      "or a yoke");
  CHECK(said_of("format = 1\n[piece]\nstitches = 8\n").find("'yarn' is missing") != std::string::npos);
}
