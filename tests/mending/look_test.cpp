// Chains of mended rows with more forms than are tried together: what is found there can't be bettered row by row, and
// says that it isn't proved.
#include "mending/look.hpp"
#include "mending/mend.hpp"
#include "support/builders.hpp"

#include <algorithm>
#include <doctest/doctest.h>

using namespace punchwright;
using test::Dice;

namespace {

// Of `floats` floats that are one to three stitches too long, short runs between them.
void draw_row(Grid& drawing, int row, int floats, int limit, Dice& dice) {
  const int every = drawing.width() / floats;
  for (int column = 0; column < drawing.width(); ++column) {
    const int along = column % every;
    drawing.set(column, row, along > limit + dice.throw_one(3) && along % 2 == 0);
  }
  drawing.set(0, row, false);
  drawing.set(drawing.width() - 1, row, true);
}

// Rows with so many floats that their forms aren't all tried, and rows with few beside them; gaps without a float.
Grid drawing_with_gaps(Dice& dice, int width, int height, int limit) {
  Grid drawing(width, height);
  for (int row = 0; row < height; ++row) {
    switch (dice.throw_one(6)) {
    case 0: // short runs: nothing to mend, and the chain ends
      for (int column = 0; column < width; ++column) {
        drawing.set(column, row, column / 2 % 2 == 0);
      }
      break;
    case 1:
    case 2: draw_row(drawing, row, 12, limit, dice); break;
    default: draw_row(drawing, row, 1 + dice.throw_one(3), limit, dice);
    }
  }
  return drawing;
}

bool is_better(std::int64_t pairs, std::int64_t squares, std::int64_t than_pairs, std::int64_t than_squares) {
  return pairs < than_pairs || (pairs == than_pairs && squares < than_squares);
}

std::vector<char> stitches_of(const Grid& drawing, int row) {
  std::vector<char> stitches;
  for (int column = 0; column < drawing.width(); ++column) {
    stitches.push_back(drawing.at(column, row) ? 1 : 0);
  }
  return stitches;
}

} // namespace

TEST_CASE("where the rows of a chain have more forms than are tried together, none has a better one for itself") {
  constexpr int width = 120;
  int unproved = 0;
  int looked_at = 0;
  for (int seed = 1; seed <= 60; ++seed) {
    CAPTURE(seed);
    Dice dice(static_cast<std::uint64_t>(seed));
    MendWishes wishes;
    wishes.limit = 4;
    wishes.stacked = dice.heads();
    const Grid drawing = drawing_with_gaps(dice, width, 3 + dice.throw_one(9), wishes.limit);
    const Mended mended = mend(drawing, wishes);
    unproved += mended.proved ? 0 : 1;
    for (int row = 0; row < drawing.height(); ++row) {
      const auto forms = forms_of_row(drawing, mended.drawing, row, wishes, 2000);
      if (forms.empty()) {
        continue; // nothing to mend, or too many
      }
      ++looked_at;
      CAPTURE(row);
      Grid other = mended.drawing;
      for (int column = 0; column < width; ++column) {
        other.set(column, row, forms.front()[static_cast<std::size_t>(column)] != 0);
      }
      CHECK_FALSE(is_better(pairs_of_changes(drawing, other, wishes.stacked), squares_of(forms.front()), mended.pairs,
                            squares_of(stitches_of(mended.drawing, row))));
    }
  }
  CHECK(unproved > 20);
  CHECK(looked_at > 100);
}
