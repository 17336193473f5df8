// The drawn repeat: a grid of bits, one a stitch, packed in 64-bit words row by row.
// Clear is main, set is contrast. Packed, since the checks look at whole words of stitches at once.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

constexpr int widest_repeat = 200;   // stitches
constexpr int tallest_repeat = 2000; // rows

// Columns and rows count from 0 here: column 0 is leftmost as seen on the knit side, row 0 is knitted
// first (row 1 of the drawing, the last line of the file).
//
//     row 2   . # # .      <- first line in the file
//     row 1   # . . #
//     row 0   # . . #      <- last line in the file, "row 1"
//     column  0 1 2 3
class Grid {
public:
  using Word = std::uint64_t;
  static constexpr int bits_in_word = 64;

  Grid() = default;
  // All main. Width 1 to 200, height 0 to 2000.
  Grid(int width, int height);

  [[nodiscard]] int width() const { return width_; }
  [[nodiscard]] int height() const { return height_; }
  [[nodiscard]] int words_in_row() const { return words_in_row_; }

  [[nodiscard]] bool at(int column, int row) const;
  void set(int column, int row, bool contrast);
  void flip(int column, int row) { set(column, row, !at(column, row)); }

  // The words of a row, lowest column in the lowest bit; bits beyond the width are zero, and whoever
  // writes through the second form keeps them so.
  [[nodiscard]] std::span<const Word> row(int row) const;
  [[nodiscard]] std::span<Word> row(int row);

  // '.' and '#', column 0 first.
  [[nodiscard]] std::string row_text(int row) const;
  // `text` holds exactly width() of '.' and '#'.
  void set_row_text(int row, std::string_view text);

  [[nodiscard]] bool all_main(int row) const;
  [[nodiscard]] bool all_contrast(int row) const;
  [[nodiscard]] bool has_contrast(int row) const { return !all_main(row); }
  [[nodiscard]] bool mixed(int row) const { return !all_main(row) && !all_contrast(row); }

  // The bits of the last word that belong to the row.
  [[nodiscard]] Word last_word_mask() const;

  bool operator==(const Grid&) const = default;

private:
  // Of the row's first word.
  [[nodiscard]] std::size_t place_of(int row) const {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(words_in_row_);
  }

  int width_ = 0;
  int height_ = 0;
  int words_in_row_ = 0;
  std::vector<Word> words_;
};

} // namespace punchwright
