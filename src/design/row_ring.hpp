// A row of the repeat as a ring of stitches, in whole words: turned round, and read backwards.
// Floats and symmetries go round the repeat's edge, and both look at 64 stitches at once.
#pragma once

#include "design/grid.hpp"

#include <array>
#include <span>

namespace punchwright {

// The words of a row of any width, those beyond its own zero; as in Grid, bits beyond the width are zero.
using RowWords = std::array<Grid::Word, (widest_repeat + Grid::bits_in_word - 1) / Grid::bits_in_word>;

[[nodiscard]] inline RowWords words_of(std::span<const Grid::Word> row) {
  RowWords words{};
  for (std::size_t index = 0; index < row.size(); ++index) {
    words[index] = row[index];
  }
  return words;
}

// What `Grid::last_word_mask` says, for any row of `width` stitches (1 to 200).
[[nodiscard]] constexpr Grid::Word last_word_mask(int width) {
  const int used = (width - 1) % Grid::bits_in_word + 1;
  return used == Grid::bits_in_word ? ~Grid::Word{0} : (Grid::Word{1} << used) - 1;
}

// Bit c becomes bit c - places; what falls off is gone. `places`: 0 or more; `words`: how many are in use.
[[nodiscard]] inline RowWords moved_down(const RowWords& row, int words, int places) {
  RowWords moved{};
  const int whole = places / Grid::bits_in_word;
  const int part = places % Grid::bits_in_word;
  for (int index = whole; index < words; ++index) {
    Grid::Word word = row[static_cast<std::size_t>(index)] >> part;
    if (part != 0 && index + 1 < words) {
      word |= row[static_cast<std::size_t>(index + 1)] << (Grid::bits_in_word - part);
    }
    moved[static_cast<std::size_t>(index - whole)] = word;
  }
  return moved;
}

// Bit c becomes bit c + places; what goes beyond the words in use is gone.
[[nodiscard]] inline RowWords moved_up(const RowWords& row, int words, int places) {
  RowWords moved{};
  const int whole = places / Grid::bits_in_word;
  const int part = places % Grid::bits_in_word;
  for (int index = whole; index < words; ++index) {
    Grid::Word word = row[static_cast<std::size_t>(index - whole)] << part;
    if (part != 0 && index > whole) {
      word |= row[static_cast<std::size_t>(index - whole - 1)] >> (Grid::bits_in_word - part);
    }
    moved[static_cast<std::size_t>(index)] = word;
  }
  return moved;
}

// The ring of `width` stitches turned by `places` (0 to width): column c shows what column c + places had.
[[nodiscard]] inline RowWords turned_ring(const RowWords& row, int width, int places) {
  const int words = (width + Grid::bits_in_word - 1) / Grid::bits_in_word;
  RowWords turned = moved_down(row, words, places);
  const RowWords round = moved_up(row, words, width - places);
  for (int index = 0; index < words; ++index) {
    turned[static_cast<std::size_t>(index)] |= round[static_cast<std::size_t>(index)];
  }
  turned[static_cast<std::size_t>(words - 1)] &= last_word_mask(width);
  return turned;
}

// Bit 0 becomes bit 63.
[[nodiscard]] constexpr Grid::Word bits_backwards(Grid::Word word) {
  constexpr std::array<Grid::Word, 6> lower_halves{0x5555'5555'5555'5555, 0x3333'3333'3333'3333, 0x0F0F'0F0F'0F0F'0F0F,
                                                   0x00FF'00FF'00FF'00FF, 0x0000'FFFF'0000'FFFF, 0x0000'0000'FFFF'FFFF};
  for (std::size_t step = 0; step < lower_halves.size(); ++step) {
    const int places = 1 << step;
    word = ((word >> places) & lower_halves[step]) | ((word & lower_halves[step]) << places);
  }
  return word;
}

// The row read backwards: column c shows what column width - 1 - c had.
[[nodiscard]] inline RowWords read_backwards(const RowWords& row, int width) {
  const int words = (width + Grid::bits_in_word - 1) / Grid::bits_in_word;
  RowWords backwards{};
  for (int index = 0; index < words; ++index) {
    backwards[static_cast<std::size_t>(words - 1 - index)] = bits_backwards(row[static_cast<std::size_t>(index)]);
  }
  return moved_down(backwards, words, words * Grid::bits_in_word - width);
}

} // namespace punchwright
