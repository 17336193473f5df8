// Round the edges of the repeat: the one place where a plane column or row becomes one of the drawing.
#pragma once

#include "design/edits.hpp"

namespace punchwright {

// 0 to divisor - 1, of values below 0 too. `divisor` is 1 or more.
[[nodiscard]] constexpr int remainder_of(int value, int divisor) {
  const int rest = value % divisor;
  return rest < 0 ? rest + divisor : rest;
}

// 0 to size - 1. `size` is 1 or more.
[[nodiscard]] constexpr int round_edge(int place, int size) {
  return remainder_of(place, size);
}

[[nodiscard]] inline Cell round_edges(Cell cell, const Grid& repeat) {
  return Cell{round_edge(cell.column, repeat.width()), round_edge(cell.row, repeat.height())};
}

[[nodiscard]] inline bool at_round_edges(const Grid& repeat, Cell cell) {
  const Cell there = round_edges(cell, repeat);
  return repeat.at(there.column, there.row);
}

} // namespace punchwright
