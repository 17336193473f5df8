// In which stitches drawings differ, row by row, and which of these lie together.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace punchwright {

class Changes {
public:
  // Nothing is changed yet. Width 1 to 200.
  Changes(int width, int height);

  void set(int row, std::span<const char> before, std::span<const char> after);
  // How many pairs a row's changed stitches make with those of another: two on the same needle or on the next, round
  // the edge too.
  [[nodiscard]] std::int64_t pairs(int row, const Changes& others, int other) const;
  // With how many changed stitches of that row each stitch beside it would make a pair; added to `counts`.
  void add_pairs(int row, std::span<std::int16_t> counts) const;

private:
  // Of each stitch: is it changed, is the one to its left, is the one to its right?
  enum Side { here, left, right };
  struct Word {
    std::array<std::uint64_t, 3> sides{};
  };
  static constexpr int bits = 64;
  [[nodiscard]] const Word* row_of(int row) const { return words_.data() + static_cast<std::size_t>(row) * in_row_; }
  [[nodiscard]] bool at(int row, int column, Side side) const;

  int width_;
  std::size_t in_row_;
  std::vector<Word> words_;
};

} // namespace punchwright
