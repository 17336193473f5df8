// Rows as rings of whole words, against the same stitch by stitch.
#include "design/row_ring.hpp"
#include "support/builders.hpp"

#include <doctest/doctest.h>

using namespace punchwright;

namespace {

std::string text_of(const RowWords& row, int width) {
  std::string text;
  for (int column = 0; column < width; ++column) {
    const auto word = row[static_cast<std::size_t>(column / Grid::bits_in_word)];
    text += ((word >> (column % Grid::bits_in_word)) & 1U) != 0 ? '#' : '.';
  }
  return text;
}

} // namespace

TEST_CASE("turned and read backwards as its text is, in every width, with nothing beyond the width") {
  test::Dice dice(64);
  for (int width = 1; width <= widest_repeat; ++width) {
    CAPTURE(width);
    Grid grid(width, 1);
    for (int column = 0; column < width; ++column) {
      grid.set(column, 0, dice.heads());
    }
    const std::string row = grid.row_text(0);
    const auto none_beyond = [&](const RowWords& words) {
      Grid again(width, 1);
      again.set_row_text(0, text_of(words, width));
      return words == words_of(again.row(0));
    };
    for (int places = 0; places <= width; ++places) {
      const RowWords turned = turned_ring(words_of(grid.row(0)), width, places);
      const auto split = static_cast<std::size_t>(places);
      REQUIRE(text_of(turned, width) == row.substr(split) + row.substr(0, split));
      REQUIRE(none_beyond(turned));
    }
    const RowWords backwards = read_backwards(words_of(grid.row(0)), width);
    REQUIRE(text_of(backwards, width) == std::string(row.rbegin(), row.rend()));
    REQUIRE(none_beyond(backwards));
  }
}
