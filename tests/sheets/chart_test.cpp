// The needle chart, as the knitter reads it. A small chart stands here in full, in each form: it is the specification.
#include "sheets/chart_forms.hpp"
#include "sheets/exports.hpp"
#include "support/builders.hpp"
#include "support/machines.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <set>

using namespace punchwright;
using test::drawn;

namespace {

// Twelve stitches on L6 to R6 of a machine with a 24-stitch card, whose column 1 selects L12. L12 knits drawn column
// 12, L11 column 11, and so on round: the piece's needles knit, from left to right, the drawn columns
//
//     needle   L6 L5 L4 L3 L2 L1 | R1 R2 R3 R4 R5 R6
//     column    6  5  4  3  2  1   12 11 10  9  8  7
Document small_band() {
  Document document = drawn({
      "############", // all contrast, in Brick: main is taken out before
      "..........##",
      "#...........",
  });
  document.title = "Small band";
  document.yarns = test::five_yarns();
  document.bands = {Band{2, 'A', 'B', std::nullopt}, Band{1, 'A', 'C', std::nullopt}};
  return document;
}

Profile titled(Profile profile) {
  profile.title = profile.card ? "bulky bed, 24-stitch card" : "plastic bed, by hand";
  return profile;
}

std::string bytes_of(const Document& document, const Profile& profile, const std::string& path,
                     const ChartWishes& wishes = {}) {
  const auto files = needle_files(document, profile, path, wishes);
  REQUIRE(files.ok());
  REQUIRE(files->size() == 1);
  CHECK(files->front().path == path);
  return files->front().bytes;
}

// The lines that start with a box to tick.
std::vector<std::string> rows_in(const std::string& text) {
  std::vector<std::string> rows;
  for (std::size_t start = 0; start < text.size();) {
    const std::size_t end = std::min(text.find('\n', start), text.size());
    if (text.compare(start, 3, "[ ]") == 0) {
      rows.push_back(text.substr(start, end - start));
    }
    start = end + 1;
  }
  return rows;
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

template <class Wanted> std::vector<Wanted> shapes_in(const Sheet& sheet) {
  std::vector<Wanted> found;
  for (const Group& group : sheet.groups) {
    for (const Shape& shape : group.shapes) {
      if (const auto* wanted = std::get_if<Wanted>(&shape)) {
        found.push_back(*wanted);
      }
    }
  }
  return found;
}

// A band tall enough for several pages.
Document tall_band(int rows) {
  Document document = blank_document(24, rows);
  for (int row = 0; row < rows; ++row) {
    for (int column = row % 3; column < 24; column += 3) {
      document.grid.set(column, row, true);
    }
  }
  document.title = "Tall band";
  document.piece.stitches = 71;
  document.piece.first_needle = left_needle(36);
  return document;
}

} // namespace

TEST_SUITE("needle chart") {
  TEST_CASE("a small chart as text, in full") {
    CHECK(
        bytes_of(small_band(), titled(test::card_machine()), "small.txt") ==
        "Small band\n"
        "bulky bed, 24-stitch card\n"
        "Piece L6–R6, 12 needles; 4 rows, the carriage begins on the right\n"
        "\n"
        "As you see the bed: its left is on the left, the purl side faces you. The knit side shows the mirror image.\n"
        "The card brings the needles forward in the pass before: compare before you knit.\n"
        "'#' comes forward and knits contrast, '.' stays back, '|' is the middle of the bed\n"
        "Care: mind eyes and fingers near latch needles. Weights come off before the work does. The maker's manual "
        "goes "
        "before this sheet.\n"
        "\n"
        "[ ]  S1        ← Oat               setting up: plain row\n"
        "[ ]  S2        → Oat               setting up: knits plain and selects card row 1\n"
        "    row  card  carriage     count   '    |    '   needles to bring forward\n"
        "    -- before row 1: Ink in\n"
        "[ ]   1     1  ← Oat + Ink      3  #....#|.....#  L6 L1 R6\n"
        "[ ]   2     2  → Oat + Ink      4  #.....|##...#  L6 R1–R2 R6\n"
        "    -- before row 3: Ink out, end needles back\n"
        "[ ]   3     3  ← Oat            0  ......|......  none; plain row: the contrast yarn changes\n"
        "    -- before row 4: Oat out, Brick in\n"
        "[ ]   4     4  → Brick         12  ######|######  L6–R6; all knit Brick\n"
        "    -- at the end: Brick out, Oat in, all needles back; plain row; all needles back\n");
  }

  TEST_CASE("the same as comma-separated values, in full (RFC 4180: CR LF, quotes where needed)") {
    Document document = small_band();
    document.yarns[2].name = "Brick, \"aran\"";
    CHECK(bytes_of(document, titled(test::card_machine()), "small.csv") ==
          "row,drawn,why,travel,main,contrast,count,needles,all_needles,before,after,card_row,passes,main_name,"
          "contrast_name\r\n"
          "1,1,drawn,leftwards,A,B,3,L6 L1 R6,L6 L1 R6,setting up: leftwards plain row in Oat; rightwards knits plain "
          "and "
          "selects card row 1 in Oat; Ink in,,1,AB leftwards,Oat,Ink\r\n"
          "2,2,drawn,rightwards,A,B,4,L6 R1–R2 R6,L6 R1 R2 R6,,,2,AB rightwards,Oat,Ink\r\n"
          "3,,yarn-change,leftwards,A,,0,,,\"Ink out, end needles back\",,3,A leftwards,Oat,\r\n"
          "4,3,drawn,rightwards,A,C,12,L6–R6,L6 L5 L4 L3 L2 L1 R1 R2 R3 R4 R5 R6,\"Oat out, Brick, \"\"aran\"\" in\","
          "\"Brick, \"\"aran\"\" out, Oat in, all needles back; plain row; all needles back\",4,C "
          "rightwards,Oat,\"Brick, \"\"aran\"\"\"\r\n");
  }

  TEST_CASE("by hand the chart has no card rows, and the needles are brought forward by hand") {
    Document document = small_band();
    document.piece.first_column = 1; // on L6; drawn columns run on leftwards: 1, 12, 11, …
    const std::string text = bytes_of(document, titled(test::by_hand()), "hand.txt");
    CHECK(has(text, "Bring the listed needles forward by hand before the carriage passes.\n"));
    CHECK_FALSE(has(text, "card"));
    const std::vector<std::string> rows = rows_in(text);
    REQUIRE(rows.size() == 5);
    CHECK(rows[0] == "[ ]  S1  → Oat               setting up: plain row");
    CHECK(rows[1] == "[ ]   1  ← Oat + Ink      1  #.....|......  L6");
    CHECK(rows[2] == "[ ]   2  → Oat + Ink      2  .##...|......  L5–L4");
  }

  TEST_CASE("with one feeder a row lists both passes, each with its yarn") {
    Profile one_feeder = test::by_hand();
    one_feeder.feeders = 1;
    const std::vector<std::string> rows = rows_in(bytes_of(drawn({"#..."}), one_feeder, "chart.txt"));
    REQUIRE(rows.size() == 2);
    CHECK(rows[1] == "[ ]   1  ← Oat, → Ink      1  ..|.#  R2"); // L2 knits column 4, R2 column 1
    CHECK(has(bytes_of(drawn({"#..."}), one_feeder, "chart.csv"), ",A leftwards; B rightwards,"));
  }

  TEST_CASE("the needles that stay back are listed where they are fewer, if wished") {
    // L2 knits column 4, L1 column 3, R1 column 2, R2 column 1.
    const Document document = drawn({"####", "##..", ".###", "#..."});
    const auto lists = [&](const ChartWishes& wishes) {
      std::vector<std::string> found;
      for (const std::string& row : rows_in(bytes_of(document, test::by_hand(), "chart.txt", wishes))) {
        found.push_back(row.substr(row.rfind("  ") + 2));
      }
      found.erase(found.begin()); // setting up
      return found;
    };
    CHECK(lists({}) == std::vector<std::string>{"R2", "L2–R1", "R1–R2", "L2–R2; all knit Ink"});
    // As many stay back as come forward in row 3: it is listed as usual.
    CHECK(lists({true}) == std::vector<std::string>{"R2", "all but R2", "R1–R2", "all; all knit Ink"});
  }

  TEST_CASE("the ruler names every tenth needle, marks every fifth, and comes again every ten rows") {
    Document document = tall_band(21);
    document.piece.stitches = 24;
    document.piece.first_needle = left_needle(12);
    const std::string text = bytes_of(document, test::by_hand(), "chart.txt");
    const std::string ruler = "                             L10                 R10\n"
                              "    row  carriage     count    +    '    |    '    +    needles to bring forward\n";
    std::size_t found = 0;
    std::vector<std::string> after;
    for (std::size_t at = text.find(ruler); at != std::string::npos; at = text.find(ruler, at + 1)) {
      ++found;
      const std::size_t row = text.find("[ ]", at);
      after.push_back(text.substr(row, 8));
    }
    CHECK(found == 3);
    CHECK(after == std::vector<std::string>{"[ ]   1 ", "[ ]  11 ", "[ ]  21 "});
  }

  TEST_CASE("each reason for an inserted row is told") {
    Document document = small_band();
    document.rules.change_side = ChangeSide::right;
    CHECK(has(bytes_of(document, test::card_machine(), "a.txt"), "none; plain row: the contrast yarn changes\n"));
    CHECK(has(bytes_of(document, test::card_machine(), "a.txt"),
              "none; plain row: the contrast is changed on the other side\n"));
    document.bands[1].plain_below = 2;
    CHECK(has(bytes_of(document, test::card_machine(), "a.txt"), "none; plain row: asked for below the next band\n"));
  }

  TEST_CASE("titles and names stand on one line in every form, whatever they hold") {
    Document document = small_band();
    document.title = "Two\nlines\x01";
    document.yarns[1].name = "In\tk";
    CHECK(bytes_of(document, test::by_hand(), "a.txt").rfind("Two lines \n", 0) == 0);
    CHECK(has(bytes_of(document, test::by_hand(), "a.html"), "<h1>Two lines </h1>"));
    CHECK(has(bytes_of(document, test::by_hand(), "a.csv"), ",Oat,In k\r\n"));
    document.title = "<&\"> & more";
    CHECK(has(bytes_of(document, test::by_hand(), "a.html"), "<h1>&lt;&amp;\"&gt; &amp; more</h1>"));
  }

  TEST_CASE("the web page has a box to tick, arrows, yarns, counts, lists and lines between rows") {
    const std::string page = bytes_of(small_band(), titled(test::card_machine()), "small.html");
    CHECK(has(page, "<input type=\"checkbox\" aria-label=\"row 2 done\" />"));
    CHECK(has(page, "<div>L6 R1–R2 R6</div>"));
    CHECK(has(page, "before row 3: Ink out, end needles back"));
    CHECK(has(page, "at the end: Brick out, Oat in, all needles back; plain row; all needles back"));
    CHECK(has(page, "fill=\"#20304a\""));
    // Row 2's strip: needle cells are 10 wide; L6 is the first, R1 the seventh, R6 the twelfth.
    CHECK(has(page, "d=\"M0 6h10v18h-10zM60 6h20v18h-20zM110 6h10v18h-10z\""));
    CHECK_FALSE(has(page, "<script"));
    CHECK_FALSE(has(page, "http://www.w3.org/2000")); // nothing but the page's own name space is named
  }

  TEST_CASE("every printed page repeats title, machine, piece and heads, and says which of how many it is") {
    const Document document = tall_band(40);
    const Profile profile = titled(test::card_machine());
    const std::vector<Sheet> sheets = chart_sheets(ChartRows(document, profile, {}));
    REQUIRE(sheets.size() > 2);
    for (std::size_t index = 0; index < sheets.size(); ++index) {
      std::set<std::string> words;
      for (const TextShape& text : shapes_in<TextShape>(sheets[index])) {
        words.insert(text.text);
      }
      const std::string number = std::to_string(index + 1);
      for (const std::string& wanted :
           {std::string("Tall band"), std::string("bulky bed, 24-stitch card"),
            std::string("Piece L36–R35, 71 needles; 40 rows, the carriage begins on the right"), std::string("row"),
            std::string("carriage, yarns"), std::string("count"), std::string("L30"), std::string("R30"),
            std::string("stays back"), "page " + number + " of " + std::to_string(sheets.size())}) {
        CAPTURE(wanted);
        CHECK(words.count(wanted) == 1);
      }
    }
  }

  TEST_CASE("printed rows come once each, in order, and nothing leaves the page's printable part") {
    for (const Paper paper : {Paper::a4, Paper::letter, Paper::roll}) {
      Document document = tall_band(40);
      document.card.paper = paper;
      const Profile profile = test::card_machine();
      std::vector<std::string> numbers;
      for (const Sheet& sheet : chart_sheets(ChartRows(document, profile, {}))) {
        CHECK(sheet.width == (paper == Paper::letter ? 215.9 : 210.0));
        CHECK(sheet.height == (paper == Paper::letter ? 279.4 : 297.0));
        for (const TextShape& text : shapes_in<TextShape>(sheet)) {
          const double wide = width_of(text.text, text.height_mm, text.bold);
          const double left = text.at.x - (text.anchor == Anchor::start ? 0.0
                                           : text.anchor == Anchor::end ? wide
                                                                        : wide / 2);
          CHECK(left >= 9.9);
          CHECK(left + wide <= sheet.width - 3.9); // the name of a needle at the edge may stand out a little
          CHECK(text.at.y <= sheet.height - 9.9);
          if (text.anchor == Anchor::end && text.bold &&
              text.text.find_first_not_of("0123456789") == std::string::npos && text.height_mm > 5) {
            numbers.push_back(text.text);
          }
        }
      }
      REQUIRE(numbers.size() == 40);
      for (std::size_t row = 0; row < numbers.size(); ++row) {
        CHECK(numbers[row] == std::to_string(row + 1));
      }
    }
  }

  TEST_CASE("numbers, needles and yarn names are printed 4 mm high or more") {
    const Document document = tall_band(5);
    const Profile profile = test::card_machine();
    for (const TextShape& text : shapes_in<TextShape>(chart_sheets(ChartRows(document, profile, {})).front())) {
      const bool below_head = text.at.y > 60 && text.at.y < 270;
      CHECK((!below_head || text.height_mm >= 4.0));
    }
  }

  TEST_CASE("the printed strip fills the cells of the needles that come forward, as the knitter sees the bed") {
    const Document document = small_band();
    const Profile profile = test::card_machine();
    const Sheet sheet = chart_sheets(ChartRows(document, profile, {})).front();
    // A strip is an outlined rectangle; the filled ones at its height are its runs.
    std::vector<std::string> strips;
    const std::vector<RectangleShape> boxes = shapes_in<RectangleShape>(sheet);
    for (const RectangleShape& frame : boxes) {
      if (frame.paint.fill || frame.width < 40) {
        continue;
      }
      std::string strip(12, '.');
      for (const RectangleShape& run : boxes) {
        if (run.paint.fill && !run.paint.stroke && run.corner.y == frame.corner.y && run.height == frame.height) {
          const double cell = frame.width / 12;
          const auto first = static_cast<std::size_t>(std::lround((run.corner.x - frame.corner.x) / cell));
          const auto count = static_cast<std::size_t>(std::lround(run.width / cell));
          strip.replace(first, count, count, '#');
        }
      }
      strips.push_back(strip);
    }
    CHECK(strips == std::vector<std::string>{"#....#.....#", "#.....##...#", "............", "############"});
  }

  TEST_CASE("what is done before a row stays on the row's page") {
    Document document = tall_band(60);
    document.yarns = test::five_yarns();
    document.bands.clear();
    for (int band = 0; band < 30; ++band) {
      document.bands.push_back(Band{2, 'A', band % 2 == 0 ? 'B' : 'C', std::nullopt});
    }
    const Profile profile = test::card_machine();
    for (const Sheet& sheet : chart_sheets(ChartRows(document, profile, {}))) {
      std::vector<RectangleShape> bars = shapes_in<RectangleShape>(sheet); // narrow, at the left of each such line
      std::erase_if(bars,
                    [](const RectangleShape& box) { return box.width > 2 || box.height < 7 || box.corner.x > 11; });
      CHECK_FALSE(bars.empty());
      double lowest_row = 0;
      double lowest_action = 0;
      for (const TextShape& text : shapes_in<TextShape>(sheet)) {
        if (text.text.rfind("Before row", 0) == 0) {
          lowest_action = std::max(lowest_action, text.at.y);
        } else if (text.anchor == Anchor::end && text.height_mm > 5) {
          lowest_row = std::max(lowest_row, text.at.y);
        }
        for (const RectangleShape& bar : bars) {
          const bool on_bar = text.at.y > bar.corner.y && text.at.y < bar.corner.y + bar.height;
          CHECK((!on_bar || text.text.rfind("Before row", 0) == 0 || text.text.rfind("At the end", 0) == 0));
        }
      }
      CHECK(lowest_row > lowest_action);
    }
  }

  TEST_CASE("what is done before a row is told to its end, over as many lines as it takes") {
    Document document = tall_band(6);
    document.yarns = test::five_yarns();
    document.yarns[1].name = "Harbour Blue of the first dyeing, with the knots that were left in it";
    document.yarns[2].name = "Rowanberry Red of the second dyeing, from the drawer under the window";
    document.bands = {Band{3, 'A', 'B', std::nullopt}, Band{3, 'A', 'C', std::nullopt}};
    document.rules.plain_rows = 0;
    const auto sheets = chart_sheets(ChartRows(document, test::card_machine(), {}));
    std::string words;
    for (const TextShape& text : shapes_in<TextShape>(sheets.front())) {
      if (text.bold && text.height_mm == 4.0) { // the lines between rows
        words += text.text + ' ';
        CHECK(text.at.x + width_of(text.text, text.height_mm, true) <= 200);
      }
    }
    CHECK(words.find("Before row 4: " + document.yarns[1].name + " out, " + document.yarns[2].name + " in") !=
          std::string::npos);
  }

  TEST_CASE("an unknown form is refused with those that there are") {
    const auto files = needle_files(small_band(), test::card_machine(), "chart.odt", {});
    REQUIRE_FALSE(files.ok());
    CHECK(files.error().text() == "chart.odt: '.odt' is no form of the needle chart; allowed: .pdf, .html, .csv, .txt");
  }

  TEST_CASE("very long knittings go to text, and only there") {
    Document document = tall_band(501);
    document.piece.times = 10;
    const auto pdf = needle_files(document, test::by_hand(), "long.pdf", {});
    REQUIRE_FALSE(pdf.ok());
    CHECK(pdf.error().text() ==
          "long.pdf: 5010 rows to knit are too many for this form of the needle chart; up to 5000 "
          "are allowed; write .html, .txt or .csv, or knit fewer times");
    document.piece.times = 100;
    CHECK_FALSE(needle_files(document, test::by_hand(), "long.html", {}).ok());
    const std::string csv = bytes_of(document, test::by_hand(), "long.csv");
    CHECK(std::ranges::count(csv, '\n') == 50'101);
  }

  TEST_CASE("a text that would fill the memory is refused") {
    Document document = blank_document(200, 2000);
    for (int row = 0; row < 2000; ++row) {
      for (int column = 0; column < 200; column += 2) {
        document.grid.set(column, row, true);
      }
    }
    document.piece.times = 1000;
    const auto files = needle_files(document, test::by_hand(), "endless.csv", {});
    REQUIRE_FALSE(files.ok());
    CHECK(files.error().text() ==
          "endless.csv: the needle chart of 2000000 rows would be larger than 1 GiB; knit fewer times");
  }
}
