// Turned, mirrored, inverted, shifted and repeated drawings.
#include "drawing/turns.hpp"

#include "design/wrap.hpp"

namespace punchwright {
namespace {

// A drawing of that size whose stitch (column, row) is the old one's at from(column, row).
template <class From> Grid rearranged(const Grid& before, int width, int height, From&& from) {
  Grid after(width, height);
  for (int row = 0; row < height; ++row) {
    for (int column = 0; column < width; ++column) {
      const Cell source = from(column, row);
      if (before.at(source.column, source.row)) {
        after.set(column, row, true);
      }
    }
  }
  return after;
}

} // namespace

Grid mirrored_left_right(const Grid& drawing) {
  return rearranged(drawing, drawing.width(), drawing.height(), [&](int column, int row) {
    return Cell{drawing.width() - 1 - column, row};
  });
}

Grid mirrored_upside_down(const Grid& drawing) {
  return rearranged(drawing, drawing.width(), drawing.height(), [&](int column, int row) {
    return Cell{column, drawing.height() - 1 - row};
  });
}

//     # .   quarter to the left   . .
//     # .   ------------------>   . .     the top of the drawing becomes its left side
//     # .                         # # #
Grid turned(const Grid& drawing, int quarters) {
  const int width = drawing.width();
  const int height = drawing.height();
  switch (round_edge(quarters, 4)) {
  case 1:
    return rearranged(drawing, height, width, [&](int column, int row) { return Cell{row, height - 1 - column}; });
  case 2:
    return rearranged(drawing, width, height, [&](int column, int row) {
      return Cell{width - 1 - column, height - 1 - row};
    });
  case 3: return rearranged(drawing, height, width, [&](int column, int row) { return Cell{width - 1 - row, column}; });
  default: return drawing;
  }
}

Grid inverted(const Grid& drawing) {
  Grid after = drawing;
  for (int row = 0; row < drawing.height(); ++row) {
    for (Grid::Word& word : after.row(row)) {
      word = ~word;
    }
    after.row(row).back() &= drawing.last_word_mask();
  }
  return after;
}

Grid shifted(const Grid& drawing, int columns, int rows) {
  const int right = drawing.width() > 0 ? round_edge(columns, drawing.width()) : 0;
  const int up = drawing.height() > 0 ? round_edge(rows, drawing.height()) : 0;
  return rearranged(drawing, drawing.width(), drawing.height(), [&](int column, int row) {
    return Cell{round_edge(column - right, drawing.width()), round_edge(row - up, drawing.height())};
  });
}

Grid repeated(const Grid& drawing, int width, int height) {
  return rearranged(drawing, width, height, [&](int column, int row) {
    return Cell{column % drawing.width(), row % drawing.height()};
  });
}

} // namespace punchwright
