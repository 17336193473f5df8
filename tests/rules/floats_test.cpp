// Floats: the number of consecutive stitches of the other colour that a yarn passes behind.
#include "rules/findings.hpp"
#include "rules/float_runs.hpp"
#include "rules/found.hpp"
#include "support/builders.hpp"
#include "support/machines.hpp"
#include "support/xbm.hpp"

#include <algorithm>
#include <doctest/doctest.h>
#include <set>

using namespace punchwright;
using test::Dice;
using test::drawn;

namespace {

std::vector<Finding> floats(const Document& document, const Profile& profile, bool on_piece) {
  std::vector<Finding> found = check(document, profile);
  std::erase_if(found, [&](const Finding& finding) {
    return finding.id != FindingId::float_too_long || finding.on_piece != on_piece;
  });
  return found;
}

std::vector<Finding> on_repeat(const Document& document) {
  return floats(document, test::by_hand(), false);
}

Document with_limit(Document document, int limit) {
  document.rules.longest_float = limit;
  return document;
}

// Longest run of one colour in any row that has both, counted stitch by stitch on three copies side by side.
int longest_run(const Grid& grid) {
  int longest = 0;
  for (int row = 0; row < grid.height(); ++row) {
    const std::string line = grid.row_text(row);
    if (line.find('#') == std::string::npos || line.find('.') == std::string::npos) {
      continue;
    }
    const std::string tiled = line + line + line;
    int run = 0;
    for (std::size_t place = 0; place < tiled.size(); ++place) {
      run = place > 0 && tiled[place] == tiled[place - 1] ? run + 1 : 1;
      longest = std::max(longest, run);
    }
  }
  return longest;
}

// What the check says is the longest: the smallest limit under which it is silent.
int longest_by_check(const Grid& grid) {
  Document document = blank_document(grid.width(), grid.height());
  document.grid = grid;
  int limit = 1;
  while (!on_repeat(with_limit(document, limit)).empty()) {
    ++limit;
  }
  return limit;
}

} // namespace

TEST_SUITE("floats caught by hand, or accepted") {
  TEST_CASE("a caught float counts in its parts, and the stitch that it hangs on in neither") {
    Document document = with_limit(drawn({"#..........#"}), 4);
    CHECK(on_repeat(document).size() == 1);
    set_mark(document.marks.caught, document.grid, 5, 0, true);
    const auto parts = on_repeat(document);
    REQUIRE(parts.size() == 1);
    CHECK(parts[0].stitches == 5);
    CHECK(parts[0].first_column == 6);
    CHECK(parts[0].last_column == 10);
    set_mark(document.marks.caught, document.grid, 8, 0, true);
    CHECK(on_repeat(document).empty());
  }

  TEST_CASE("accepted floats are notes, as far as they were accepted") {
    Document document = with_limit(drawn({"..#.......#."}), 5);
    for (int column = 3; column < 10; ++column) {
      set_mark(document.marks.accepted, document.grid, column, 0, true);
    }
    CHECK(on_repeat(document).empty());
    const auto notes = test::of_kind(FindingId::float_accepted, document, test::by_hand());
    REQUIRE(!notes.empty());
    CHECK(notes[0].severity == Severity::note);
    CHECK(words_of(notes[0], document, test::by_hand()).text ==
          "row 1: Ink floats behind 7 stitches of Oat (43.8 mm), columns 4 to 10; 5 at most are allowed, and this one "
          "is accepted");
    document.grid.set(10, 0, false); // it grows, and nobody has accepted that
    CHECK(on_repeat(document).size() == 1);
  }

  TEST_CASE("catches where no float is too long are told, in rows of one colour too") {
    Document document = with_limit(drawn({"....", "#..#", "#.#."}), 2);
    set_mark(document.marks.caught, document.grid, 1, 0, true);
    set_mark(document.marks.caught, document.grid, 3, 0, true);
    set_mark(document.marks.caught, document.grid, 0, 2, true);
    auto found = test::of_kind(FindingId::catch_not_needed, document, test::by_hand());
    REQUIRE(found.size() == 2);
    CHECK(words_of(found[0], document, test::by_hand()).text ==
          "row 1: 2 catches by hand, in columns 2 and 4, where no float that is too long passes");
    CHECK(words_of(found[1], document, test::by_hand()).remedy ==
          "the row is of one colour and nothing is lifted: take the catch away");
  }

  TEST_CASE("any row with any marks: what is too long, counted stitch by stitch on three copies side by side") {
    int told = 0;
    for (std::uint64_t seed = 1; seed <= 3000; ++seed) {
      Dice dice(seed);
      CAPTURE(seed);
      const int width = 1 + dice.throw_one(40);
      const int limit = 1 + dice.throw_one(6);
      Document document = with_limit(blank_document(width, 1), limit);
      std::string line;
      for (int column = 0; column < width; ++column) {
        document.grid.set(column, 0, dice.throw_one(5) == 0);
        set_mark(document.marks.caught, document.grid, column, 0, dice.throw_one(7) == 0);
        line += is_marked(document.marks.caught, column, 0) ? 'o' : document.grid.at(column, 0) ? '#' : '.';
      }
      std::set<std::pair<int, int>> wanted; // first column and length
      const std::string tiled = line + line + line;
      for (std::size_t first = 0; document.grid.mixed(0) && first < line.size(); ++first) {
        const std::size_t begin = first + line.size();
        std::size_t end = begin;
        // In one run of one colour: the marks hide it, so it is looked up in the drawing.
        const auto colour = [&](std::size_t place) {
          return document.grid.at(static_cast<int>(place % line.size()), 0);
        };
        const bool starts = tiled[begin - 1] == 'o' || colour(begin - 1) != colour(begin);
        while (end < tiled.size() && tiled[end] != 'o' && colour(end) == colour(begin)) {
          ++end;
        }
        if (starts && tiled[begin] != 'o' && static_cast<int>(end - begin) > limit) {
          wanted.emplace(static_cast<int>(first), static_cast<int>(end - begin));
        }
      }
      std::set<std::pair<int, int>> found;
      for (const Finding& finding : on_repeat(document)) {
        found.emplace(finding.first_column, finding.stitches);
      }
      REQUIRE(found == wanted);
      told += static_cast<int>(found.size());
    }
    CHECK(told > 500);
  }
}

TEST_SUITE("floats on the repeat") {
  TEST_CASE("longer than the limit is a fault, equal is allowed; both yarns are looked at") {
    CHECK(on_repeat(with_limit(drawn({"#....#"}), 4)).empty());
    CHECK(on_repeat(with_limit(drawn({".####."}), 4)).empty());
    const auto contrast_floats = on_repeat(with_limit(drawn({"#....#"}), 3));
    REQUIRE(contrast_floats.size() == 1);
    CHECK(contrast_floats[0].severity == Severity::fault);
    CHECK(contrast_floats[0].yarn == 'B');
    CHECK(contrast_floats[0].other == 'A');
    CHECK(contrast_floats[0].stitches == 4);
    CHECK(contrast_floats[0].first_column == 1);
    CHECK(contrast_floats[0].last_column == 4);
    CHECK(contrast_floats[0].row == 0);
    const auto main_floats = on_repeat(with_limit(drawn({".####."}), 3));
    REQUIRE(main_floats.size() == 1);
    CHECK(main_floats[0].yarn == 'A');
  }

  TEST_CASE("a run may go round the edge of the repeat") {
    // 6 stitches from column 22 to 3 of 24: at 16 stitches to 10 cm they are 37.5 mm wide.
    const auto found = on_repeat(with_limit(drawn({"...#.#.#.#.#.#.#.#.#.#..."}), 5));
    REQUIRE(found.size() == 1);
    CHECK(found[0].stitches == 6);
    CHECK(found[0].first_column + 1 == 23);
    CHECK(found[0].last_column + 1 == 3);
  }

  TEST_CASE("one that runs all the way round is a single-colour row and no float") {
    CHECK(on_repeat(with_limit(drawn({"........", "########"}), 1)).empty());
  }

  TEST_CASE("words name row, yarn, stitches, mm and place") {
    const Document document = with_limit(drawn({"...#.#.#.#.#.#.#.#.#.#...", "........................."}), 5);
    const auto found = on_repeat(document);
    REQUIRE(found.size() == 1);
    CHECK(
        words_of(found[0], document, test::by_hand()).text ==
        "row 2: Ink floats behind 6 stitches of Oat (37.5 mm), columns 23 to 3 round the edge of the repeat; 5 at most "
        "are allowed");
  }

  TEST_CASE("a float behind one stitch has one column") {
    const Document document = with_limit(drawn({".#.", "..."}), 0);
    const auto found = on_repeat(document);
    REQUIRE(found.size() == 2);
    CHECK(words_of(found[0], document, test::by_hand()).text ==
          "row 2: Oat floats behind 1 stitch of Ink (6.2 mm), column 2; 0 at most are allowed");
  }

  TEST_CASE("a limit in millimetres is told in millimetres, with the stitches it comes to") {
    Document document = drawn({"#.....#."});
    document.rules.longest_float_mm = 25.0; // 16 stitches to 10 cm: four of them
    const auto found = on_repeat(document);
    REQUIRE(found.size() == 1);
    CHECK(
        words_of(found[0], document, test::by_hand()).text ==
        "row 1: Ink floats behind 5 stitches of Oat (31.2 mm), columns 2 to 6; 25 mm, 4 stitches, at most are allowed");
  }

  // Never over more than 5 stitches (knittingmagic.biz, guide 8, stranding); 6 needles at most (Spencer, Knitting
  // Technology, the float stitch). The default here is 5.
  TEST_CASE("the default limit is five stitches") {
    CHECK(on_repeat(drawn({"#.....#.#"})).empty());
    CHECK(on_repeat(drawn({"#......#.#"})).size() == 1);
  }

  // A row described in words (scarf leaflet 70533AD, counts only): row 5 has contrast, then 7 main, throughout: floats
  // of 7; row 3 has contrast every fourth stitch: floats of 3.
  TEST_CASE("a leaflet's rows") {
    Document leaflet = drawn({"#.......", "#...#..."});
    CHECK(longest_by_check(leaflet.grid) == 7);
    for (const int limit : {5, 6}) {
      const auto found = on_repeat(with_limit(leaflet, limit));
      REQUIRE(found.size() == 1);
      CHECK(found[0].row == 1);
      CHECK(found[0].stitches == 7);
    }
    CHECK(longest_by_check(drawn({"#...#..."}).grid) == 3);
  }

  TEST_CASE("pictures of Debian's xbitmaps 1.1.1 as repeats") {
    CHECK(longest_by_check(test::read_xbm("cross_weave")) == 3);
    CHECK(longest_by_check(test::read_xbm("boxes")) == 4);
    CHECK(longest_by_check(test::read_xbm("scales")) == 7);
    CHECK(longest_by_check(test::read_xbm("wide_weave")) == 5);
    CHECK(longest_by_check(test::read_xbm("menu12")) == 10);
    CHECK(longest_by_check(test::read_xbm("plaid")) == 13);
    const Grid scales = test::read_xbm("scales");
    Document document = blank_document(scales.width(), scales.height());
    document.grid = scales;
    std::set<int> rows;
    for (const Finding& finding : on_repeat(with_limit(document, 6))) {
      CHECK(finding.stitches == 7);
      rows.insert((scales.height() - 1 - finding.row) % 8); // counted from the top of the picture, period 8
    }
    CHECK(rows == std::set<int>{0, 1, 4, 5});
  }

  TEST_CASE("whole words of stitches and one stitch at a time agree, at every width and limit") {
    for (std::uint64_t seed = 1; seed <= 3000; ++seed) {
      Dice dice(seed);
      CAPTURE(seed);
      const int width = 1 + dice.throw_one(200);
      Grid grid(width, 1);
      const int rarity = 1 + dice.throw_one(40);
      for (int column = 0; column < width; ++column) {
        grid.set(column, 0, dice.throw_one(rarity) == 0);
      }
      const int limit = 1 + dice.throw_one(40);
      const bool found = grid.mixed(0) && (has_run_beyond(grid.row(0), width, limit, true) ||
                                           has_run_beyond(grid.row(0), width, limit, false));
      REQUIRE(found == (longest_run(grid) > limit));
      int longest = 0;
      for (const StitchRun& run : runs_beyond(grid, 0, limit)) {
        longest = std::max(longest, run.stitches);
        for (int stitch = 0; stitch < run.stitches; ++stitch) {
          REQUIRE(grid.at((run.first + stitch) % width, 0) == run.contrast);
        }
      }
      REQUIRE(longest == (longest_run(grid) > limit ? longest_run(grid) : 0));
    }
  }
}

TEST_SUITE("floats on the piece") {
  TEST_CASE("a run that reaches the piece's edge is no float") {
    Document document = with_limit(drawn({"#......."}), 5);
    document.piece.stitches = 8; // by hand the repeat begins on L4 with column 8: ".......#" on the bed
    CHECK(floats(document, test::by_hand(), true).empty());
    CHECK(on_repeat(document).size() == 1);
  }

  TEST_CASE("where end needles knit contrast they are contrast stitches") {
    Document document = with_limit(drawn({"#......."}), 5);
    document.piece.stitches = 8;
    document.piece.end_needles = EndNeedles::always; // "#......#" on the bed
    const auto found = floats(document, test::by_hand(), true);
    REQUIRE(found.size() == 1);
    CHECK(found[0].stitches == 6);
    CHECK(name_of(*found[0].first_needle) == "L3");
    CHECK(name_of(*found[0].last_needle) == "R3");
    CHECK(found[0].yarn == 'B');
  }

  TEST_CASE("each distinct run is reported once, with its first place and how often") {
    Document document = with_limit(drawn({"#......."}), 5);
    document.piece.stitches = 41; // L20 to R21; contrast on every eighth needle from L13
    const auto found = floats(document, test::by_hand(), true);
    REQUIRE(found.size() == 1);
    CHECK(found[0].times == 4);
    CHECK(found[0].stitches == 7);
    CHECK(name_of(*found[0].first_needle) == "L12");
    CHECK(name_of(*found[0].last_needle) == "L6");
    document.piece.end_needles = EndNeedles::always;
    CHECK(floats(document, test::by_hand(), true).size() == 2); // and six between L20 and L13
  }

  TEST_CASE("words say what the piece adds: which needles, how often, which columns they knit") {
    Document document = with_limit(drawn({"#......."}), 5);
    document.piece.stitches = 41;
    Words words = words_of(floats(document, test::by_hand(), true).front(), document, test::by_hand());
    CHECK(words.text ==
          "row 1 on the piece: Ink floats behind 7 stitches of Oat (43.8 mm) in 4 places, first at needles "
          "L12 to L6, which knit columns 2 to 8; 5 at most are allowed");
    CHECK(words.remedy == "mended once in the drawing it is mended in all 4 places; or catch it by hand in each");
    document.piece.stitches = 18; // L9 to R9
    words = words_of(floats(document, test::by_hand(), true).front(), document, test::by_hand());
    CHECK(words.text == "row 1 on the piece: Ink floats behind 7 stitches of Oat (43.8 mm) once: at needles L4 to R3, "
                        "which knit columns 2 to 8; 5 at most are allowed");
    CHECK(words.remedy == "mended in the drawing it is mended here; or catch it by hand at needles L4 to R3");
  }

  TEST_CASE("on the piece as on the repeat: as many as counted needle by needle, on random pieces") {
    int pieces_with_floats = 0;
    for (std::uint64_t seed = 1; seed <= 1500; ++seed) {
      Dice dice(seed);
      CAPTURE(seed);
      const int width = 1 + dice.throw_one(24);
      Document document = with_limit(blank_document(width, 1), 1 + dice.throw_one(6));
      for (int column = 0; column < width; ++column) {
        document.grid.set(column, 0, dice.throw_one(4) == 0);
      }
      document.piece.stitches = 1 + dice.throw_one(90);
      document.piece.end_needles = dice.heads() ? EndNeedles::always : EndNeedles::never;
      const Profile profile = dice.heads() ? test::card_machine() : test::by_hand();
      const int origin = profile.card ? -12 : -(width / 2);
      std::string line;
      for (int stitch = 0; stitch < *document.piece.stitches; ++stitch) {
        const int x = first_needle_of(document).position + stitch - origin;
        const int column = width - 1 - ((x % width) + width) % width;
        line += document.grid.at(column, 0) ? '#' : '.';
      }
      if (document.piece.end_needles == EndNeedles::always && document.grid.has_contrast(0)) {
        line.front() = line.back() = '#';
      }
      int expected = 0;
      std::set<std::pair<int, int>> places; // first stitch and length
      for (std::size_t begin = 0; document.grid.mixed(0) && begin < line.size();) {
        std::size_t end = begin;
        while (end < line.size() && line[end] == line[begin]) {
          ++end;
        }
        const bool inside = begin > 0 && end < line.size();
        if (inside && static_cast<int>(end - begin) > *document.rules.longest_float) {
          ++expected;
          places.emplace(static_cast<int>(begin), static_cast<int>(end - begin));
        }
        begin = end;
      }
      int counted = 0;
      int before = -1;
      for (const Finding& finding : floats(document, profile, true)) {
        counted += finding.times;
        const int first = finding.first_needle->position - first_needle_of(document).position;
        REQUIRE(places.contains({first, finding.stitches}));
        REQUIRE(first > before); // from left to right, each where it is leftmost
        before = first;
        for (const auto& [begin, length] : places) {
          const int columns_apart = (begin - first) % width;
          REQUIRE((begin >= first || columns_apart != 0 || length != finding.stitches));
        }
      }
      REQUIRE(counted == expected);
      pieces_with_floats += expected > 0 ? 1 : 0;
    }
    CHECK(pieces_with_floats > 300);
  }
}
