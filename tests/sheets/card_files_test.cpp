// The card as files: names, forms, refusals, and the same bytes every time.
#include "card_designs.hpp"
#include "sheets/exports.hpp"
#include "sheets/output_names.hpp"
#include "sheets/punch_list.hpp"

#include <algorithm>
#include <cstddef>
#include <doctest/doctest.h>
#include <string>
#include <vector>

using namespace punchwright;

namespace {

std::size_t occurrences(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + part.size())) {
    ++count;
  }
  return count;
}

} // namespace

TEST_CASE("of several files each gets its number before the extension, and their names sort as their pages lie") {
  CHECK(numbered_path("out/card.svg", 1, 1) == "out/card.svg");
  CHECK(numbered_path("out/card.svg", 2, 2) == "out/card-2.svg");
  CHECK(numbered_path("a.b/card", 3, 9) == "a.b/card-3");
  CHECK(numbered_path("card.png", 1, 10) == "card-01.png");
  for (const std::size_t count : {2, 9, 10, 24, 100, 240}) {
    std::vector<std::string> names;
    for (std::size_t number = 1; number <= count; ++number) {
      names.push_back(numbered_path("card.png", number, count));
    }
    CHECK(std::ranges::is_sorted(names));
  }
  CHECK(extension_in("CARD.PDF") == ".pdf");
}

TEST_CASE("PDF is one file, SVG one a card, PNG one a page, the punch list one") {
  const Document document = slanting_design(61);
  const Profile profile = card_machine();
  CHECK(card_files(document, profile, "c.pdf")->size() == 1);
  const auto svg = card_files(document, profile, "c.svg").value();
  REQUIRE(svg.size() == 2);
  CHECK(svg[0].path == "c-1.svg");
  CHECK(svg[1].path == "c-2.svg");
  CHECK(card_files(document, profile, "c.svg", 2)->front().path == "c.svg"); // one of them keeps the plain name
  CHECK(card_files(document, profile, "c.txt")->size() == 1);
  const auto png = card_files(slanting_design(10), profile, "c.png").value();
  REQUIRE(png.size() == 2); // cover and card
  CHECK(png[0].path == "c-1.png");
  CHECK(png[1].bytes.substr(1, 3) == "PNG");
}

TEST_CASE("the same design gives the same bytes") {
  const Document document = slanting_design(61);
  const Profile profile = card_machine();
  for (const char* name : {"c.pdf", "c.svg", "c.txt"}) {
    const auto first = card_files(document, profile, name).value();
    const auto second = card_files(document, profile, name).value();
    REQUIRE(first.size() == second.size());
    for (std::size_t index = 0; index < first.size(); ++index) {
      CHECK(first[index].bytes == second[index].bytes);
    }
  }
}

TEST_CASE("SVG has the three groups, and in cut-holes nothing but circles with their classes") {
  const std::string svg = card_files(slanting_design(10), card_machine(), "c.svg")->front().bytes;
  CHECK(svg.find("viewBox=\"0 0 ") != std::string::npos);
  for (const char* id : {"<g id=\"cut-outline\">", "<g id=\"cut-holes\">", "<g id=\"marks\">"}) {
    CHECK(occurrences(svg, id) == 1);
  }
  const std::size_t from = svg.find("<g id=\"cut-holes\">");
  const std::string holes = svg.substr(from, svg.find("</g>", from) - from);
  CHECK(occurrences(holes, "class=\"pattern\" data-row=\"") == 80);
  CHECK(occurrences(holes, "class=\"overlap\"") == 96);
  CHECK(occurrences(holes, "class=\"clip\"") == 8);
  CHECK(occurrences(holes, "class=\"feed\"") == 28);
  CHECK(occurrences(holes, "<circle ") == 80 + 96 + 8 + 28);
  CHECK(occurrences(holes, "<") == occurrences(holes, "<circle ") + 1);
}

TEST_CASE("SVG takes no notice of paper and print correction") {
  Document document = slanting_design(10);
  const Profile profile = card_machine();
  const std::string plain = card_files(document, profile, "c.svg")->front().bytes;
  document.card.scale_x = 0.9;
  document.card.scale_y = 1.1;
  document.card.paper = Paper::roll;
  CHECK(card_files(document, profile, "c.svg")->front().bytes == plain);
}

TEST_CASE("runs of columns") {
  CHECK(runs_text({3, 4, 5, 9, 20, 21, 22, 23, 24}) == "3-5, 9, 20-24");
  CHECK(runs_text({1, 2}) == "1-2");
  CHECK(runs_text({}).empty());
}

TEST_CASE("the punch list names the columns of each row, the blank's own number, and blank rows") {
  Document document = slanting_design(61);
  for (int column = 0; column < 24; ++column) {
    document.grid.set(column, 8, column < 3);
    document.grid.set(column, 9, false);
  }
  const std::string list = card_files(document, card_machine(7), "c.txt")->front().bytes;
  CHECK(list.find("Column 1 is the leftmost column") != std::string::npos);
  CHECK(list.find("row 9: 22-24   [at 2]\n") != std::string::npos); // drawn columns 1 to 3 are the card's last
  CHECK(list.find("row 10: no hole, a blank row   [at 3]\n") != std::string::npos);
  CHECK(list.find("row 7: ") != std::string::npos);
  CHECK(list.find("[below 1]") != std::string::npos);
  CHECK(list.find("Card 2 of 2: row 61\n") != std::string::npos);
  CHECK(occurrences(list, "overlap, two rows: 1-24\n") == 4);
}

TEST_CASE("the punch list says so where column 1 lies right") {
  Profile profile = card_machine();
  profile.card->face = CardFace::as_knit_side;
  CHECK(card_files(slanting_design(5), profile, "c.txt")->front().bytes.find("Column 1 is the rightmost column") !=
        std::string::npos);
}

TEST_CASE("a machine without a card is refused, and the needle chart named") {
  Profile profile = card_machine();
  profile.card.reset();
  const auto files = card_files(slanting_design(5), profile, "c.pdf");
  REQUIRE_FALSE(files.ok());
  CHECK(files.error().remedy.find("needles") != std::string::npos);
}

TEST_CASE("an unknown extension is refused with those that are allowed") {
  const auto files = card_files(slanting_design(5), card_machine(), "c.docx");
  REQUIRE_FALSE(files.ok());
  CHECK(files.error().text() == "a card can't be written as '.docx'; allowed: .pdf, .svg, .png, .txt");
  CHECK_FALSE(card_files(slanting_design(5), card_machine(), "card").ok());
}

TEST_CASE("thousands of rows are drawn; more than anybody punches only make a list") {
  Document document = slanting_design(2000);
  const Profile profile = card_machine();
  CHECK(card_files(document, profile, "c.pdf").ok());
  document.piece.times = 7;
  const auto files = card_files(document, profile, "c.pdf");
  REQUIRE_FALSE(files.ok());
  CHECK(files.error().remedy.find("loop = true") != std::string::npos);
  CHECK(card_files(document, profile, "c.txt").ok());
}

TEST_CASE("the size of a punch list is known before it is made, and more than 1 GiB is refused") {
  const Profile profile = card_machine();
  Document document = slanting_design(120);
  const RowsToKnit rows = rows_to_knit(document, profile);
  const double told = size_of_punch_list(document, profile, rows, card_plan(document, *profile.card, rows));
  const auto made = static_cast<double>(card_files(document, profile, "c.txt")->front().bytes.size());
  CHECK(told > made / 2);
  CHECK(told < made * 2);

  Profile wide = card_machine();
  wide.card->repeat = 200;
  document = blank_document(200, 2000);
  document.piece.times = 1000;
  for (int row = 0; row < 2000; ++row) {
    for (int column = 0; column < 200; ++column) {
      document.grid.set(column, row, column % 3 != 0); // 67 runs in a row
    }
  }
  const auto files = card_files(document, wide, "c.txt");
  REQUIRE_FALSE(files.ok());
  CHECK(files.error().text() == "the punch list of 2000000 rows would be larger than 1 GiB; set loop = true in [card], "
                                "or lower times in [piece]");
  document.card.loop = true;
  CHECK(card_files(document, wide, "c.txt").ok());
}
