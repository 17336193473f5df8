// Whole words at once, since all forms of a row are held against all forms of the next.
#include "mending/changes.hpp"

#include <algorithm>
#include <bit>

namespace punchwright {

Changes::Changes(int width, int height)
    : width_(width), in_row_(static_cast<std::size_t>((width + bits - 1) / bits)),
      words_(in_row_ * static_cast<std::size_t>(height)) {}

void Changes::set(int row, std::span<const char> before, std::span<const char> after) {
  Word* const words = words_.data() + static_cast<std::size_t>(row) * in_row_;
  std::fill_n(words, in_row_, Word{});
  const auto mark = [&](int column, Side side) {
    words[column / bits].sides[side] |= std::uint64_t{1} << (column % bits);
  };
  for (int column = 0; column < width_; ++column) {
    if (before[static_cast<std::size_t>(column)] == after[static_cast<std::size_t>(column)]) {
      continue;
    }
    mark(column, here);
    // In a repeat of two the neighbours to the left and to the right are one, and of one there is none.
    if (width_ > 1) {
      mark((column + 1) % width_, left);
    }
    if (width_ > 2) {
      mark((column + width_ - 1) % width_, right);
    }
  }
}

bool Changes::at(int row, int column, Side side) const {
  return (row_of(row)[column / bits].sides[side] >> (column % bits) & 1) != 0;
}

std::int64_t Changes::pairs(int row, const Changes& others, int other) const {
  const Word* const own = row_of(row);
  const Word* const its = others.row_of(other);
  std::int64_t count = 0;
  for (std::size_t word = 0; word < in_row_; ++word) {
    for (const Side side : {here, left, right}) {
      count += std::popcount(own[word].sides[here] & its[word].sides[side]);
    }
  }
  return count;
}

void Changes::add_pairs(int row, std::span<std::int16_t> counts) const {
  for (int column = 0; column < width_; ++column) {
    for (const Side side : {here, left, right}) {
      if (at(row, column, side)) {
        ++counts[static_cast<std::size_t>(column)];
      }
    }
  }
}

} // namespace punchwright
