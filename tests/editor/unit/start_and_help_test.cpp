// What the start page, the file chooser and the page of help are made of, without a window.
#include "drawing/alphabet.hpp"
#include "editor/demos.hpp"
#include "editor/help_text.hpp"
#include "editor/small_picture.hpp"
#include "editor/style.hpp"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <unistd.h>

using namespace punchwright;
using namespace punchwright::editor;

namespace fs = std::filesystem;

namespace {

using Kind = HelpBlock::Kind;
using Style = HelpRun::Style;

std::string text_of(const fs::path& path) {
  std::ifstream file(path);
  std::stringstream all;
  all << file.rdbuf();
  return all.str();
}

} // namespace

TEST_CASE("the guide in the program is the guide of the docs, to the letter") {
  CHECK(guide_text() == text_of(fs::path(PUNCHWRIGHT_SOURCE_DIR) / "docs" / "guide.md"));
}

TEST_CASE("every sign of the guides is in the type face that the window loads") {
  const fs::path docs = fs::path(PUNCHWRIGHT_SOURCE_DIR) / "docs";
  for (const HelpBlock& block : help_blocks(text_of(docs / "guide.md") + "\n\n" + text_of(docs / "guide.de.md"))) {
    for (std::size_t at = 0; at < block.plain.size();) {
      const auto first = static_cast<unsigned char>(block.plain[at]);
      const std::size_t length = first < 0x80 ? 1 : first < 0xe0 ? 2 : first < 0xf0 ? 3 : 4;
      unsigned code = length == 1 ? first : first & (0xffU >> (length + 1));
      for (std::size_t more = 1; more < length; ++more) {
        code = code << 6 | (static_cast<unsigned char>(block.plain[at + more]) & 0x3fU);
      }
      CAPTURE(block.plain);
      CAPTURE(code);
      CHECK(is_loaded(code));
      at += length;
    }
  }
}

TEST_CASE("whatever can be lettered can be read where it is typed: every sign of the alphabet is loaded") {
  for (const LetterHeight height : {LetterHeight::five, LetterHeight::seven}) {
    for (const char32_t sign : Alphabet(height).characters()) {
      CAPTURE(static_cast<unsigned>(sign));
      CHECK(is_loaded(sign));
    }
  }
}

TEST_CASE("headings, paragraphs, lists, tables and what is typed, each as a block of its own") {
  const auto blocks =
      help_blocks("# The guide\n\n1. [Draw](#draw)\n2. [Knit\n   it](#knit-it)\n\n## Draw\nOne line\nand "
                  "**two**.\n\n- press *Open*\n  or `o`\n- wait\n\n    punchwright a.repeat\n\n"
                  "![A picture](a.png)\n| It says | It means |\n|---|---|\n| **a** | b |\n");
  REQUIRE(blocks.size() == 8);
  CHECK(blocks[0].kind == Kind::heading);
  CHECK(blocks[0].level == 1);
  CHECK(blocks[1].level == 2);
  CHECK(blocks[2].kind == Kind::paragraph);
  CHECK(blocks[2].plain == "One line and two. ");
  CHECK(blocks[2].cells[0] ==
        std::vector<HelpRun>{{"One line and ", Style::plain}, {"two", Style::strong}, {".", Style::plain}});
  CHECK(blocks[3].kind == Kind::item);
  CHECK(blocks[3].mark == "•");
  CHECK(blocks[3].cells[0] ==
        std::vector<HelpRun>{
            {"press ", Style::plain}, {"Open", Style::soft}, {" or ", Style::plain}, {"o", Style::code}});
  CHECK(blocks[5].kind == Kind::code);
  CHECK(blocks[5].plain == "punchwright a.repeat ");
  CHECK(blocks[6].kind == Kind::table_head);
  CHECK(blocks[7].kind == Kind::table_row);
  CHECK(blocks[7].cells.size() == 2);
}

TEST_CASE("marks that nothing closes are text, and a link is its words") {
  const auto blocks = help_blocks("2 * 3 ** 4 ` [here](there.md) [not a link]\n");
  REQUIRE(blocks.size() == 1);
  CHECK(blocks[0].plain == "2 * 3 ** 4 ` here [not a link] ");
}

TEST_CASE("the search goes from place to place, round the end, and back") {
  const auto blocks = help_blocks("# Cards\n\nA card is punched.\n\nThe needles wait.\n\n- cards are joined\n");
  REQUIRE(blocks.size() == 4);
  CHECK(next_block_with(blocks, "card", -1, 1) == 0);
  CHECK(next_block_with(blocks, "card", 0, 1) == 1);
  CHECK(next_block_with(blocks, "card", 1, 1) == 3);
  CHECK(next_block_with(blocks, "card", 3, 1) == 0);
  CHECK(next_block_with(blocks, "card", 0, -1) == 3);
  CHECK(next_block_with(blocks, "carriage", 0, 1) == -1);
  CHECK(count_blocks_with(blocks, "card", 4) == 3);
  CHECK(count_blocks_with(blocks, "card", 2) == 2);
}

TEST_CASE("every demo has a picture; what is missing or broken has a word instead") {
  const fs::path patterns = fs::path(PUNCHWRIGHT_SOURCE_DIR) / "patterns";
  const auto demos = demos_in(patterns);
  CHECK(demos.size() >= 6);
  CHECK(std::ranges::is_sorted(demos));
  for (const fs::path& path : demos) {
    const DesignCard card = design_card(path, 1.7);
    CAPTURE(path.string());
    CHECK(card.trouble.empty());
    CHECK(card.picture.columns > 0);
    CHECK(card.yarns.size() >= 2);
  }
  CHECK(design_card(patterns / "gone.repeat", 1).missing);
  CHECK(design_card(patterns, 1).trouble == "No file that can be read");
  CHECK(design_card(fs::path(PUNCHWRIGHT_SOURCE_DIR) / "CMakeLists.txt", 1).trouble == "Can't be read");
}

TEST_CASE("the demos are found beside the program: installed, or in its own tree") {
  const fs::path root = fs::temp_directory_path() / ("punchwright-demos-" + std::to_string(::getpid()));
  fs::create_directories(root / "usr" / "share" / "punchwright" / "patterns");
  fs::create_directories(root / "tree" / "patterns");
  fs::create_directories(root / "tree" / "build");
  CHECK(demos_folder(root / "usr" / "bin" / "punchwright-editor") ==
        root / "usr" / "share" / "punchwright" / "patterns");
  CHECK(demos_folder(root / "tree" / "build" / "punchwright-editor") == root / "tree" / "patterns");
  CHECK(demos_in(root / "nowhere").empty());
  fs::remove_all(root);
}
