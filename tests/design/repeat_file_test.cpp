// The .repeat form: the sample of its description, what may be left out, and that writing loses nothing.
#include "design/repeat_file.hpp"
#include "design/repeat_sample.hpp"

#include <clocale>
#include <doctest/doctest.h>

using namespace punchwright;
using namespace punchwright::test;

namespace {

Document read(std::string_view text) {
  const auto result = read_repeat(text, "test.repeat");
  INFO((result ? std::string() : result.error().text()));
  REQUIRE(result);
  return result->document;
}

} // namespace

TEST_CASE("the sample of the form's description says what it says") {
  const auto result = read_repeat(sample_text(), "sample.repeat");
  REQUIRE(result);
  CHECK(result->notes.empty());
  const Document& document = result->document;
  CHECK(document.title == "Puffin cove");
  CHECK(document.notes.empty());
  CHECK(document.profile == "bulky-card-24");
  CHECK(document.gauge == Gauge{16, 20});
  CHECK(document.yarns == std::vector<Yarn>{{'A', "Oat", {0xe8, 0xdc, 0xc2}}, {'B', "Ink", {0x20, 0x30, 0x4a}}});
  CHECK(document.grid.width() == 24);
  CHECK(document.grid.height() == 1);
  CHECK(document.grid.row_text(0) == "......##......##........");
  CHECK(document.bands == std::vector<Band>{{1, 'A', 'B', 2}});
  CHECK(document.piece == Piece{71, left_needle(36), std::nullopt, 1, Side::right, EndNeedles::as_profile, 1});
  CHECK(document.rules == KnittingRules{5, std::nullopt, 1, ChangeSide::any});
  CHECK(document.card == CardWishes{Paper::a4, false, 1.0, 1.0});
}

TEST_CASE("the sample is saved as it is, comments and all") {
  CHECK(write_repeat(read(sample_text())) == sample_text());
}

TEST_CASE("the last line of the rows is row 1") {
  const Document document = read(least_text);
  CHECK(document.grid.row_text(0) == "#..#");
  CHECK(document.grid.row_text(1) == ".##.");
}

TEST_CASE("what a file leaves out has the form's defaults") {
  const Document document = read(least_text);
  Document expected = blank_document(4, 2);
  expected.yarns[0].name = "A";
  expected.yarns[1].name = "B";
  expected.grid.set_row_text(0, "#..#");
  expected.grid.set_row_text(1, ".##.");
  CHECK(document == expected);
  CHECK(document.profile == "bulky-card-24");
  CHECK(document.gauge == Gauge{16, 20});
  CHECK(document.piece == Piece{});
  CHECK(document.piece.carriage == Side::right);
  CHECK(document.rules.plain_rows == 1);
  CHECK_FALSE(document.rules.longest_float);
  CHECK(document.card.scale_x == 1.0);
}

TEST_CASE("yarns that name no colour get different ones") {
  std::string text(least_text);
  for (const char key : {'C', 'D', 'E', 'F', 'G', 'H'}) {
    text += std::string("[[yarn]]\nkey = \"") + key + "\"\n";
  }
  const Document document = read(text);
  REQUIRE(document.yarns.size() == 8);
  for (std::size_t one = 0; one < 8; ++one) {
    for (std::size_t other = one + 1; other < 8; ++other) {
      CHECK_FALSE(document.yarns[one].colour == document.yarns[other].colour);
    }
  }
}

TEST_CASE("a whole number will do where a fraction is possible, and other ways of writing TOML are read too") {
  CHECK(read(with(sample_text(), "stitches = 16.0", "stitches = 16")).gauge.stitches == 16.0);
  CHECK(read(with(sample_text(), "rows = 20.0", "rows = 2.05e1")).gauge.rows == 20.5);
  const Document document = read("format=1\ngauge={stitches=14,rows=18.5}\nyarn=[{key='A'},{key='B',name=\"Ink\"}]\n"
                                 "band=[{rows=1,main='A',contrast='B'}]\n[repeat]\nwidth=0x3\nrows=['.#.']\n");
  CHECK(document.gauge == Gauge{14, 18.5});
  CHECK(document.yarns[1].name == "Ink");
  CHECK(document.grid.row_text(0) == ".#.");
}

TEST_CASE("line ends of another system and a byte order mark are read") {
  std::string text;
  for (const char letter : sample_text()) {
    text += letter == '\n' ? "\r\n" : std::string(1, letter);
  }
  CHECK(write_repeat(read("\xef\xbb\xbf" + text)) == sample_text());
}

TEST_CASE("a document that was written is read as the same document") {
  Document document = blank_document(200, 3);
  document.title = "A \"quoted\" \\ title, with\ttab, \x01 and \x7f, two\nlines and a puffin: \xf0\x9f\x90\xa7";
  document.notes = "first \"\"\"line\"\"\" \"\n\n  second\\\n\rthird \"\"\n\"";
  document.profile = "machines/ours, \"old\".machine";
  document.gauge = {14.1, 18.049999999999997};
  document.yarns.push_back({'z', "", {1, 2, 3}});
  document.yarns.push_back({'7', "#'", {255, 255, 255}});
  document.grid.set(0, 0, true);
  document.grid.set(199, 2, true);
  document.bands = {{1, 'A', 'B', 0}, {1, 'z', std::nullopt, std::nullopt}, {1, '7', 'z', 99}};
  document.piece = {1000, right_needle(3), 200, 1000, Side::left, EndNeedles::never, 0};
  document.rules = {std::nullopt, 25.4, 0, ChangeSide::right};
  document.card = {Paper::roll, true, 0.987654321, 2};
  for (const int column : {0, 7, 8, 9, 199}) {
    set_mark(document.marks.caught, document.grid, column, 1, true);
    set_mark(document.marks.accepted, document.grid, column, 2, true);
  }
  set_mark(document.marks.kept, document.grid, 4, 0, true);
  const std::string text = write_repeat(document);
  CHECK(text.find("[[catch]]\nrow = 2\ncolumns = \"1, 8-10, 200\"\n") != std::string::npos);
  const Document again = read(text);
  CHECK(again == document);
  CHECK(write_repeat(again) == text);
}

TEST_CASE("comments beside marks stay, also when the last mark is gone") {
  std::string text = write_repeat(blank_document(4, 2));
  text += "\n# lifted\n[[catch]]\nrow = 1 # low\ncolumns = \"2-3\"\n\n[[protect]]\nrow = 1\ncolumns = \"1\"\n"
          "[[protect]]\nrow = 2\ncolumns = \"1-4\"\nwhy = \"an eye\"\n";
  Document document = read(text);
  CHECK(columns_text(document.marks.caught, 0) == "2-3");
  CHECK(columns_text(document.marks.kept, 1) == "1-4");
  CHECK(write_repeat(document) == text);
  document.marks = {};
  const std::string without = write_repeat(document);
  CHECK(without.find("# lifted\n# low\n") != std::string::npos);
  CHECK(write_repeat(read(without)) == without);
}

TEST_CASE("every choice of words is written and read") {
  Document document = blank_document(2, 1);
  for (const EndNeedles end_needles : {EndNeedles::as_profile, EndNeedles::always, EndNeedles::never}) {
    for (const ChangeSide side : {ChangeSide::any, ChangeSide::left, ChangeSide::right}) {
      for (const Paper paper : {Paper::a4, Paper::letter, Paper::roll}) {
        document.piece.end_needles = end_needles;
        document.rules.change_side = side;
        document.card.paper = paper;
        CHECK(read(write_repeat(document)) == document);
      }
    }
  }
}

TEST_CASE("numbers are written short, with a decimal point, whatever the locale") {
  const std::string before = std::setlocale(LC_ALL, nullptr);
  for (const char* name : {"de_DE.UTF-8", "fr_FR.UTF-8", "C"}) {
    std::setlocale(LC_ALL, name); // where the locale isn't installed it stays as it was
    Document document = blank_document(2, 1);
    document.gauge = {16, 3.14159};
    const std::string text = write_repeat(document);
    CHECK(text.find("stitches = 16.0\nrows = 3.14159\n") != std::string::npos);
    CHECK(read(text) == document);
  }
  std::setlocale(LC_ALL, before.c_str());
}

TEST_CASE("text that is no UTF-8 is saved so that it can be read again") {
  Document document = blank_document(2, 1);
  document.title = "a\xff\xc3";
  CHECK(read(write_repeat(document)).title == "a\xef\xbf\xbd\xef\xbf\xbd");
}

TEST_CASE("the reader tells where keys stand") {
  const auto result = read_repeat(sample_text(), "sample.repeat");
  REQUIRE(result);
  CHECK(result->places.at("machine.profile") == KeyPlace{{6, 1}, {6, 11}});
  CHECK(result->places.at("card.scale_y") == KeyPlace{{51, 1}, {51, 11}});
  CHECK_FALSE(result->places.contains("piece.first_column"));
}

TEST_CASE("the largest drawing is read") {
  Document document = blank_document(200, 2000);
  for (int row = 0; row < 2000; ++row) {
    document.grid.set(row % 200, row, true);
  }
  const std::string text = write_repeat(document);
  CHECK(read(text) == document);
}
