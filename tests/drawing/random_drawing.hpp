// Drawings without any order, for properties that all drawings have.
#pragma once

#include "design/grid.hpp"
#include "support/builders.hpp"

namespace punchwright::test {

inline Grid random_drawing(Dice& dice, int width, int height, int contrast_of_ten) {
  Grid drawing(width, height);
  for (int row = 0; row < height; ++row) {
    for (int column = 0; column < width; ++column) {
      drawing.set(column, row, dice.throw_one(10) < contrast_of_ten);
    }
  }
  return drawing;
}

} // namespace punchwright::test
