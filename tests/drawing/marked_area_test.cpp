// The marked area: lifted and set down round the edges, as text, and every edit of it undone again.
#include "drawing/marked_area.hpp"
#include "drawing/turns.hpp"
#include "support/builders.hpp"

#include <doctest/doctest.h>
#include <functional>

using namespace punchwright;
using test::Dice;
using test::drawn;
using test::lines_of;
using Lines = std::vector<std::string>;

namespace {

Grid grid(const Lines& text) {
  return drawn(text).grid;
}

Lines after(const Lines& before, const AreaEdit& work) {
  Document document = drawn(before);
  REQUIRE(apply_edit(document, work.edit).ok());
  return lines_of(document.grid);
}

Grid any_grid(Dice& dice, int width, int height) {
  Grid drawing(width, height);
  for (int row = 0; row < height; ++row) {
    for (int column = 0; column < width; ++column) {
      drawing.set(column, row, dice.heads());
    }
  }
  return drawing;
}

std::string refused(std::string_view text) {
  const auto drawing = drawing_from_text(text);
  REQUIRE_FALSE(drawing.ok());
  return drawing.error().text();
}

const Lines shore = {"....", "...#", "#...", "##.."};
const Area round_the_corner{{3, 3}, 2, 2}; // columns 4 and 1, rows 4 and 1

} // namespace

TEST_SUITE("turned drawings") {
  // Against the definition, stitch by stitch.
  TEST_CASE("a patch of any size set down anywhere covers what lies under it round the edges, and is lifted again") {
    Dice dice(20261128);
    for (int round = 0; round < 400; ++round) {
      CAPTURE(round);
      const Grid repeat = any_grid(dice, 1 + dice.throw_one(round % 2 == 0 ? 200 : 12), 1 + dice.throw_one(9));
      // One that was turned may be as wide as a repeat is high.
      const Grid patch = any_grid(dice, 1 + dice.throw_one(round % 5 == 0 ? 2000 : 200), 1 + dice.throw_one(12));
      const Cell corner{dice.throw_one(500) - 250, dice.throw_one(30) - 15};
      Grid wanted = repeat;
      for (int row = 0; row < std::min(patch.height(), repeat.height()); ++row) {
        for (int column = 0; column < std::min(patch.width(), repeat.width()); ++column) {
          const int there = ((corner.column + column) % repeat.width() + repeat.width()) % repeat.width();
          const int up = ((corner.row + row) % repeat.height() + repeat.height()) % repeat.height();
          wanted.set(there, up, patch.at(column, row));
        }
      }
      const Grid down = set_down(repeat, corner, patch);
      REQUIRE(down == wanted);
      const Grid again = lifted(down, Area{corner, patch.width(), patch.height()});
      REQUIRE(again.width() == std::min(patch.width(), repeat.width()));
      REQUIRE(again.height() == std::min(patch.height(), repeat.height()));
      for (int row = 0; row < again.height(); ++row) {
        REQUIRE(again.row_text(row) == patch.row_text(row).substr(0, static_cast<std::size_t>(again.width())));
      }
    }
  }

  TEST_CASE("by hand") {
    const Grid hook = grid({"##", "#.", "#."});
    CHECK(lines_of(turned(hook, 1)) == Lines{"#..", "###"});
    CHECK(lines_of(turned(hook, 2)) == Lines{".#", ".#", "##"});
    CHECK(lines_of(turned(hook, -1)) == Lines{"###", "..#"});
    CHECK(lines_of(mirrored_left_right(hook)) == Lines{"##", ".#", ".#"});
    CHECK(lines_of(mirrored_upside_down(hook)) == Lines{"#.", "#.", "##"});
    CHECK(lines_of(inverted(hook)) == Lines{"..", ".#", ".#"});
    CHECK(lines_of(shifted(hook, 1, 1)) == Lines{".#", ".#", "##"});
    CHECK(lines_of(repeated(hook, 3, 4)) == Lines{"#.#", "###", "#.#", "#.#"});
  }

  TEST_CASE("four quarters, two mirrors, an inversion twice and a shift all round give the drawing back") {
    for (std::uint64_t seed = 1; seed <= 100; ++seed) {
      Dice dice(seed);
      const Grid drawing = any_grid(dice, 1 + dice.throw_one(90), 1 + dice.throw_one(9));
      CHECK(turned(turned(turned(turned(drawing, 1), 1), 1), 1) == drawing);
      CHECK(turned(turned(drawing, 1), 1) == turned(drawing, 2));
      CHECK(turned(turned(drawing, 1), 3) == drawing);
      CHECK(mirrored_left_right(mirrored_upside_down(drawing)) == turned(drawing, 2));
      CHECK(mirrored_left_right(mirrored_left_right(drawing)) == drawing);
      CHECK(inverted(inverted(drawing)) == drawing);
      CHECK(shifted(shifted(drawing, 5, -3), -5, 3) == drawing);
    }
  }
}

TEST_SUITE("marked area") {
  TEST_CASE("lifted round the edges") {
    CHECK(lines_of(lifted(grid(shore), round_the_corner)) == Lines{".#", ".."});
    CHECK(lines_of(lifted(grid(shore), {{0, 0}, 9, 9})) == shore);
    CHECK(lines_of(lifted(grid(shore), {{-1, 2}, 2, 1})) == Lines{"#."});
  }

  TEST_CASE("from a drag, in any direction") {
    const Grid repeat = grid(shore);
    CHECK(area_between({2, 1}, {1, 3}, repeat) == Area{{1, 1}, 2, 3});
    CHECK(area_between({-1, -1}, {0, 0}, repeat) == Area{{3, 3}, 2, 2});
    CHECK(area_between({0, 0}, {40, 0}, repeat) == Area{{0, 0}, 4, 1});
    CHECK(lies_in({0, 0}, round_the_corner, repeat));
    CHECK(lies_in({3, 4}, round_the_corner, repeat));
    CHECK_FALSE(lies_in({1, 0}, round_the_corner, repeat));
    CHECK_FALSE(lies_in({0, 2}, round_the_corner, repeat));
  }

  TEST_CASE("cut, moved, pasted, repeated") {
    CHECK(after(shore, cut_area(grid(shore), {{0, 0}, 2, 1})) == Lines{"....", "...#", "#...", "...."});
    const auto moved = move_area(grid(shore), {{0, 0}, 2, 2}, -1, -1);
    CHECK(after(shore, moved) == Lines{"#..#", "...#", "....", "...#"});
    CHECK(moved.area == Area{{3, 3}, 2, 2});
    CHECK(name_of(moved.edit) == "move");
    CHECK(after(shore, move_area(grid(shore), {{0, 0}, 2, 2}, 1, 0)) == Lines{"....", "...#", ".#..", ".##."});
    const auto pasted = paste_at(grid(shore), {-1, 0}, grid({"##"}));
    CHECK(after(shore, pasted) == Lines{"....", "...#", "#...", "##.#"});
    CHECK(pasted.area == Area{{3, 0}, 2, 1});
    CHECK(after(shore, fill_area_with(grid(shore), {{1, 1}, 3, 2}, grid({"#."}))) ==
          Lines{"....", ".#.#", "##.#", "##.."});
  }

  TEST_CASE("turned about its lowest left corner") {
    const auto work = turn_area(grid(shore), {{0, 0}, 2, 3}, 1);
    REQUIRE(work.ok());
    CHECK(after(shore, *work) == Lines{"....", "...#", "..#.", ".##."});
    CHECK(work->area == Area{{0, 0}, 3, 2});
    CHECK(turn_area(grid({"##.."}), {{0, 0}, 2, 1}, 1).error().text() ==
          "turned, the marked area is 1 stitches wide and 2 rows high, more than the repeat's 4 stitches and 1 rows; "
          "mark "
          "less, or make the repeat larger");
  }

  TEST_CASE("mirrored, inverted and shifted within its edges") {
    CHECK(after(shore, mirror_area_left_right(grid(shore), {{0, 0}, 3, 2})) == Lines{"....", "...#", "..#.", ".##."});
    CHECK(after(shore, mirror_area_upside_down(grid(shore), {{0, 0}, 2, 3})) == Lines{"....", "##.#", "#...", "...."});
    CHECK(after(shore, invert_area(grid(shore), {{3, 3}, 2, 2})) == Lines{"#..#", "...#", "#...", ".#.#"});
    CHECK(after(shore, shift_in_area(grid(shore), {{0, 0}, 3, 2}, 1, 0)) == Lines{"....", "...#", ".#..", ".##."});
  }

  TEST_CASE("outside the area nothing changes; undone, the identical document") {
    const std::vector<std::function<Result<AreaEdit>(Dice&, const Grid&, const Area&)>> works = {
        [](Dice&, const Grid& g, const Area& a) { return cut_area(g, a); },
        [](Dice&, const Grid& g, const Area& a) { return mirror_area_left_right(g, a); },
        [](Dice&, const Grid& g, const Area& a) { return mirror_area_upside_down(g, a); },
        [](Dice&, const Grid& g, const Area& a) { return invert_area(g, a); },
        [](Dice& dice, const Grid& g, const Area& a) { return shift_in_area(g, a, dice.throw_one(9) - 4, 1); },
        [](Dice& dice, const Grid& g, const Area& a) { return fill_area_with(g, a, any_grid(dice, 3, 2)); },
        [](Dice&, const Grid& g, const Area& a) { return turn_area(g, a, 2); },
        [](Dice&, const Grid& g, const Area& a) { return turn_area(g, a, 1); },
        [](Dice& dice, const Grid& g, const Area& a) { return move_area(g, a, dice.throw_one(50) - 25, 3); },
        [](Dice& dice, const Grid& g, const Area& a) { return paste_at(g, a.corner, any_grid(dice, 3, 2)); },
    };
    constexpr std::size_t within = 7; // of them work within the area
    int applied = 0;
    for (std::uint64_t seed = 1; seed <= 600; ++seed) {
      Dice dice(seed);
      CAPTURE(seed);
      Document document = blank_document(1 + dice.throw_one(70), 1 + dice.throw_one(12));
      document.grid = any_grid(dice, document.grid.width(), document.grid.height());
      const Document before = document;
      const Area area{
          {dice.throw_one(140) - 70, dice.throw_one(24) - 12}, 1 + dice.throw_one(70), 1 + dice.throw_one(12)};
      const auto kind = static_cast<std::size_t>(dice.throw_one(10));
      const auto work = works[kind](dice, document.grid, area);
      if (!work) {
        continue;
      }
      auto change = apply_edit(document, work->edit);
      REQUIRE(change.ok());
      ++applied;
      for (int row = 0; row < document.grid.height(); ++row) {
        for (int column = 0; column < document.grid.width(); ++column) {
          if (!lies_in({column, row}, area, before.grid) && !lies_in({column, row}, work->area, before.grid)) {
            REQUIRE(document.grid.at(column, row) == before.grid.at(column, row));
          }
        }
      }
      if (kind < within) {
        REQUIRE(work->area == marked(area, before.grid));
      }
      exchange(document, *change);
      REQUIRE(document == before);
    }
    CHECK(applied > 500);
  }

  TEST_CASE("a move onto itself changes nothing") {
    Document document = drawn(shore);
    CHECK(apply_edit(document, move_area(document.grid, round_the_corner, 4, -8).edit)->nothing());
  }
}

TEST_SUITE("drawing as text") {
  TEST_CASE("the highest row first, and back") {
    CHECK(text_of(grid({".#", "##"})) == ".#\n##\n");
    for (std::uint64_t seed = 1; seed <= 100; ++seed) {
      Dice dice(seed);
      const Grid drawing = any_grid(dice, 1 + dice.throw_one(200), 1 + dice.throw_one(20));
      CHECK(*drawing_from_text(text_of(drawing)) == drawing);
    }
  }

  TEST_CASE("line ends of any kind, and empty lines at the end") {
    for (const auto* text : {".#\n##", ".#\r\n##\r\n", ".#\r##\r", ".#\n##\n\n\r\n"}) {
      CHECK(lines_of(*drawing_from_text(text)) == Lines{".#", "##"});
    }
  }

  TEST_CASE("from a mail, a page or a list: empty lines, quotation marks and blanks that all rows begin with") {
    for (const auto* text : {"\n\n.#\n##", ".#\n\n##\n", ".#\r\n \r\n##\r\n", "  .#\n  ##", "\t.#\n\t##\n",
                             "    .#\n\n    ##\n", "> .#\n> ##\n", ">.#\n>##", "> .#\n>\n> ##\n>", ">> .#\n>> ##",
                             "> > .#\n> > ##", ".# \n##  \n", "\u00a0\u00a0.#\n\u00a0\u00a0##", "\ufeff.#\n##"}) {
      CAPTURE(text);
      const auto drawing = drawing_from_text(text);
      REQUIRE(drawing.ok());
      CHECK(lines_of(*drawing) == Lines{".#", "##"});
    }
  }

  TEST_CASE("what is no drawing") {
    const std::string allowed = "; lines of '.' for main and '#' for contrast, all of one length";
    CHECK(refused("") == "text: the text holds no stitches" + allowed);
    CHECK(refused("\n\r\n") == "text: the text holds no stitches" + allowed);
    CHECK(drawing_from_text(".#\n# ").error() == Error{"text", 2, 2, "a blank is no stitch", allowed.substr(2)});
    CHECK(drawing_from_text("..\n.\t").error().message == "a tab is no stitch");
    CHECK(drawing_from_text("..\n.ä").error().message == "'ä' is no stitch");
    CHECK(drawing_from_text("..\n.\xff").error().message == "the byte 0xff is no stitch");
    CHECK(drawing_from_text(std::string_view("..\n.\0", 5)).error().message ==
          "the control character 0x00 is no stitch");
    CHECK(drawing_from_text("..\n...\n").error() ==
          Error{"text", 2, 0, "the line has 3 stitches, the first one 2", allowed.substr(2)});
    CHECK(refused(">.#\n##") == "text:1:1: '>' is no stitch" + allowed); // no mail: only one row is marked
    CHECK(drawing_from_text("> .#\n>  ##").error() == Error{"text", 2, 3, "a blank is no stitch", allowed.substr(2)});
    CHECK(drawing_from_text("\n..\n\n.").error() ==
          Error{"text", 4, 0, "the line has 1 stitches, the first one 2", allowed.substr(2)});
    CHECK(refused("The gull:\n.#\n##") == "text:1:1: 'T' is no stitch" + allowed);
    CHECK(refused(std::string(201, '.')) ==
          "text:1:201: the line has 201 stitches; a drawing has 200 stitches at most");
    std::string tall;
    for (int row = 0; row < 2001; ++row) {
      tall += ".\n";
    }
    CHECK(refused(tall) == "text:2001: the text has 2001 lines; a drawing has 2000 rows at most");
  }
}
