// Documents for tests, written as a knitter would draw them: the last line is row 1.
#pragma once

#include "design/document.hpp"

#include <string>
#include <vector>

namespace punchwright::test {

// One band over all rows, A with contrast B, no [piece] or [rules] of its own.
inline Document drawn(const std::vector<std::string>& lines_from_top) {
  Document document =
      blank_document(static_cast<int>(lines_from_top.front().size()), static_cast<int>(lines_from_top.size()));
  int row = static_cast<int>(lines_from_top.size());
  for (const std::string& line : lines_from_top) {
    document.grid.set_row_text(--row, line);
  }
  return document;
}

// The other way round: a drawing as its lines, the highest row first.
inline std::vector<std::string> lines_of(const Grid& grid) {
  std::vector<std::string> text;
  for (int row = grid.height() - 1; row >= 0; --row) {
    text.push_back(grid.row_text(row));
  }
  return text;
}

// Yarns A to E, far enough apart to be told from one another.
inline std::vector<Yarn> five_yarns() {
  return {Yarn{'A', "Oat", Colour{0xe8, 0xdc, 0xc2}}, Yarn{'B', "Ink", Colour{0x20, 0x30, 0x4a}},
          Yarn{'C', "Brick", Colour{0x9c, 0x3b, 0x2a}}, Yarn{'D', "Kelp", Colour{0x2f, 0x4f, 0x3a}},
          Yarn{'E', "Slate", Colour{0x4b, 0x55, 0x60}}};
}

// A generator whose numbers are the same on every machine and in every year: random tests name their seed.
class Dice {
public:
  explicit Dice(std::uint64_t seed) : state_(seed * 2862933555777941757U + 3037000493U) {}

  // 0 to sides - 1.
  int throw_one(int sides) {
    state_ ^= state_ << 13;
    state_ ^= state_ >> 7;
    state_ ^= state_ << 17;
    return static_cast<int>((state_ >> 11) % static_cast<std::uint64_t>(sides));
  }
  bool heads() { return throw_one(2) == 1; }

private:
  std::uint64_t state_;
};

} // namespace punchwright::test
