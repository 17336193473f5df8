// A repeat made wider for a word: which width, and that the drawing and its marks are whole in it.
#include "drawing/turns.hpp"
#include "drawing/widening.hpp"
#include "support/builders.hpp"
#include "support/one_step.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using test::drawn;

namespace {

Document widened(const Document& before, const Widening& widening) {
  return test::done_as_one_step(before, widening_edits(before.grid, widening), "wider");
}

} // namespace

TEST_CASE("the next width that the card repeats over and in which the drawing stays whole") {
  CHECK(widening_for(8, 11, 24) == Widening{24, 3, true}); // 12 would do, and break the drawing
  CHECK(widening_for(6, 11, 24) == Widening{12, 2, true});
  CHECK(widening_for(12, 13, 24) == Widening{24, 2, true});
  CHECK(widening_for(1, 5, 12) == Widening{6, 6, true});
}

TEST_CASE("where no copies fit the card, the next width that it repeats over") {
  CHECK(widening_for(5, 7, 24) == Widening{8, 1, true});
  CHECK(widening_for(10, 13, 24) == Widening{24, 1, true});
}

TEST_CASE("without a card, or where it is too narrow, the next multiple, and that is said") {
  CHECK(widening_for(24, 30, std::nullopt) == Widening{48, 2, true});
  CHECK(widening_for(24, 30, 24) == Widening{48, 2, false});
  CHECK(widening_for(7, 30, std::nullopt) == Widening{35, 5, true});
  CHECK(widening_for(150, 170, std::nullopt) == Widening{170, 1, true}); // 300 stitches are too many
  CHECK(widening_for(150, 170, 24) == Widening{170, 1, false});
}

TEST_CASE("what has room already, or never will, isn't widened") {
  CHECK_FALSE(widening_for(24, 24, 24));
  CHECK_FALSE(widening_for(24, 5, 24));
  CHECK_FALSE(widening_for(24, widest_repeat + 1, std::nullopt));
}

TEST_CASE("every width that is chosen has room, over all drawings, words and usual cards") {
  for (const std::optional<int> card :
       {std::optional<int>(), std::optional(12), std::optional(24), std::optional(40)}) {
    for (int width = 1; width <= widest_repeat; ++width) {
      for (int least = width + 1; least <= widest_repeat; ++least) {
        const auto wider = widening_for(width, least, card);
        REQUIRE(wider.has_value());
        REQUIRE(wider->width >= least);
        REQUIRE(wider->width <= widest_repeat);
        REQUIRE((wider->times == 1 || wider->times * width == wider->width));
        REQUIRE(wider->fits_card == (!card || *card % wider->width == 0));
      }
    }
  }
}

TEST_CASE("the drawing is there so many times, with its marks, and the bands are as they were") {
  Document before = drawn({"#..", ".#.", "###"});
  set_mark(before.marks.kept, before.grid, 1, 1, true);
  const Document after = widened(before, Widening{9, 3, true});
  CHECK(after.grid == repeated(before.grid, 9, 3));
  CHECK(after.marks.kept == repeated(before.marks.kept, 9, 3));
  CHECK(after.bands == before.bands);
}

TEST_CASE("where it can't be whole, the new stitches are main and stand at its right") {
  const Document after = widened(drawn({"###", "#.#"}), Widening{5, 1, true});
  CHECK(test::lines_of(after.grid) == std::vector<std::string>{"###..", "#.#.."});
}
