// The movements that make up a frieze group, besides going on by whole repeats.
// For frieze*.cpp of this room only.
#pragma once

#include "drawing/frieze.hpp"

namespace punchwright {

enum class Turned { no, yes };

// Column c goes to c + across, or to across - c; row r to r + up, or to up - r.
struct Movement {
  Turned left_right = Turned::no;
  int across = 0;
  Turned upside_down = Turned::no;
  int up = 0;

  [[nodiscard]] Cell of(Cell cell) const {
    return {left_right == Turned::yes ? across - cell.column : across + cell.column,
            upside_down == Turned::yes ? up - cell.row : up + cell.row};
  }
};

// One of each kind, staying among them: 1, 2 or 4. All others follow by whole repeats.
using Movements = std::vector<Movement>;
[[nodiscard]] Movements movements_of(const Frieze& frieze);

[[nodiscard]] Error odd_repeat(FriezeGroup group, int repeat);

} // namespace punchwright
