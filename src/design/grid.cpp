// The packed grid of stitches.
#include "design/grid.hpp"

#include "design/row_ring.hpp"

#include <algorithm>
#include <cassert>

namespace punchwright {

Grid::Grid(int width, int height)
    : width_(width), height_(height), words_in_row_((width + bits_in_word - 1) / bits_in_word),
      words_(static_cast<std::size_t>(words_in_row_) * static_cast<std::size_t>(height), 0) {}

bool Grid::at(int column, int row) const {
  assert(column >= 0 && column < width_ && row >= 0 && row < height_);
  const auto word = place_of(row) + static_cast<std::size_t>(column / bits_in_word);
  return ((words_[word] >> (column % bits_in_word)) & 1U) != 0;
}

void Grid::set(int column, int row, bool contrast) {
  assert(column >= 0 && column < width_ && row >= 0 && row < height_);
  const auto word = place_of(row) + static_cast<std::size_t>(column / bits_in_word);
  const Word bit = Word{1} << (column % bits_in_word);
  words_[word] = contrast ? words_[word] | bit : words_[word] & ~bit;
}

std::span<const Grid::Word> Grid::row(int row) const {
  assert(row >= 0 && row < height_);
  return std::span(words_).subspan(place_of(row), static_cast<std::size_t>(words_in_row_));
}

std::span<Grid::Word> Grid::row(int row) {
  assert(row >= 0 && row < height_);
  return std::span(words_).subspan(place_of(row), static_cast<std::size_t>(words_in_row_));
}

std::string Grid::row_text(int row) const {
  std::string text(static_cast<std::size_t>(width_), '.');
  for (int column = 0; column < width_; ++column) {
    if (at(column, row)) {
      text[static_cast<std::size_t>(column)] = '#';
    }
  }
  return text;
}

void Grid::set_row_text(int row, std::string_view text) {
  assert(std::ssize(text) == width_);
  for (int column = 0; column < width_; ++column) {
    set(column, row, text[static_cast<std::size_t>(column)] == '#');
  }
}

bool Grid::all_main(int row) const {
  return std::ranges::all_of(this->row(row), [](Word word) { return word == 0; });
}

bool Grid::all_contrast(int row) const {
  const auto words = this->row(row);
  return std::all_of(words.begin(), words.end() - 1, [](Word word) { return word == ~Word{0}; }) &&
         words.back() == last_word_mask();
}

Grid::Word Grid::last_word_mask() const {
  return punchwright::last_word_mask(width_);
}

} // namespace punchwright
