// The stitches that a shape covers. All in whole numbers: twice the place where halves are needed.
#include "drawing/shapes.hpp"

#include "design/row_ring.hpp"
#include "design/wrap.hpp"

#include <algorithm>
#include <cstdint>
#include <cstdlib>

namespace punchwright {
namespace {

void sort_once(std::vector<Cell>& cells) {
  std::ranges::sort(cells);
  const auto repeated = std::ranges::unique(cells);
  cells.erase(repeated.begin(), repeated.end());
}

// `step` of `length` steps along, the line has risen by step * rise / length: the nearest whole number, of two the
// lower one.
int risen(std::int64_t step, std::int64_t rise, std::int64_t length) {
  const std::int64_t above = 2 * step * rise - length; // over 2 * length, rounded up
  const std::int64_t below = 2 * length;
  const std::int64_t whole = above / below;
  return static_cast<int>(above % below > 0 ? whole + 1 : whole);
}

struct Box {
  int left = 0;
  int right = 0;
  int bottom = 0;
  int top = 0;
};

Box box_of(Cell corner, Cell opposite) {
  return {std::min(corner.column, opposite.column), std::max(corner.column, opposite.column),
          std::min(corner.row, opposite.row), std::max(corner.row, opposite.row)};
}

// The cells of the box for which `inside` holds, or those of them with a neighbour for which it doesn't.
template <class Inside> std::vector<Cell> cells_of(const Box& box, Interior interior, Inside&& inside) {
  std::vector<Cell> cells;
  for (int column = box.left; column <= box.right; ++column) {
    for (int row = box.bottom; row <= box.top; ++row) {
      const bool enclosed =
          inside(column - 1, row) && inside(column + 1, row) && inside(column, row - 1) && inside(column, row + 1);
      if (inside(column, row) && !(interior == Interior::outline && enclosed)) {
        cells.push_back({column, row});
      }
    }
  }
  return cells;
}

} // namespace

std::vector<Cell> line_cells(Cell from, Cell to) {
  const bool steep = std::abs(to.row - from.row) > std::abs(to.column - from.column);
  if (steep ? to.row < from.row : to.column < from.column) {
    std::swap(from, to);
  }
  const int length = steep ? to.row - from.row : to.column - from.column;
  const int rise = steep ? to.column - from.column : to.row - from.row;
  std::vector<Cell> cells{from};
  for (int step = 1; step <= length; ++step) {
    const int aside = risen(step, rise, length);
    cells.push_back(steep ? Cell{from.column + aside, from.row + step} : Cell{from.column + step, from.row + aside});
  }
  sort_once(cells);
  return cells;
}

std::vector<Cell> stroke_cells(std::span<const Cell> points) {
  std::vector<Cell> cells;
  for (std::size_t point = 0; point < points.size(); ++point) {
    const auto part = line_cells(points[point == 0 ? 0 : point - 1], points[point]);
    cells.insert(cells.end(), part.begin(), part.end());
  }
  sort_once(cells);
  return cells;
}

std::vector<Cell> rectangle_cells(Cell corner, Cell opposite, Interior interior) {
  const Box box = box_of(corner, opposite);
  return cells_of(box, interior, [&](int column, int row) {
    return column >= box.left && column <= box.right && row >= box.bottom && row <= box.top;
  });
}

std::vector<Cell> ellipse_cells(Cell corner, Cell opposite, Interior interior) {
  const Box box = box_of(corner, opposite);
  const std::int64_t width = box.right - box.left + 1;
  const std::int64_t height = box.top - box.bottom + 1;
  // Within the ellipse of these diameters; all lengths from the centre, in half stitches.
  const auto within = [](std::int64_t across, std::int64_t up, std::int64_t wide, std::int64_t high) {
    return across * across * high * high + up * up * wide * wide <= wide * wide * high * high;
  };
  return cells_of(box, interior, [&](int column, int row) {
    const std::int64_t across = std::abs(2 * column - box.left - box.right);
    const std::int64_t up = std::abs(2 * row - box.bottom - box.top);
    const std::int64_t nearer_across = std::max<std::int64_t>(across - 1, 0);
    const std::int64_t nearer_up = std::max<std::int64_t>(up - 1, 0);
    return across < width && up < height &&
           (within(across, up, width, height) || within(nearer_across, up, width - 1, height - 1) ||
            within(across, nearer_up, width - 1, height - 1));
  });
}

std::vector<Cell> on_repeat(std::span<const Cell> plane, const Grid& repeat) {
  if (repeat.width() < 1 || repeat.height() < 1) {
    return {};
  }
  if (are_many(plane.size(), repeat.width(), repeat.height())) {
    Grid covered(repeat.width(), repeat.height());
    for (const Cell cell : plane) {
      const Cell there = round_edges(cell, repeat);
      covered.set(there.column, there.row, true);
    }
    return contrast_cells(covered);
  }
  std::vector<Cell> cells;
  cells.reserve(plane.size());
  std::ranges::transform(plane, std::back_inserter(cells), [&](Cell cell) { return round_edges(cell, repeat); });
  sort_once(cells);
  return cells;
}

bool are_many(std::size_t cells, int width, int height) {
  constexpr std::size_t share = 32; // of a drawing, below which sorting takes less time than looking at all of it
  return cells * share > static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
}

std::vector<Cell> contrast_cells(const Grid& drawing) {
  std::vector<Cell> cells;
  for (int column = 0; column < drawing.width(); ++column) {
    for (int row = 0; row < drawing.height(); ++row) {
      if (drawing.at(column, row)) {
        cells.push_back({column, row});
      }
    }
  }
  return cells;
}

namespace {

// All that hangs together in the row, a ring, with a stitch of `reached`: a run fills in as many doublings as its
// length takes, from both ends.
RowWords filled(RowWords reached, const RowWords& yarn, int width) {
  for (const bool leftwards : {true, false}) {
    RowWords open = yarn;
    for (int step = 1; step < width; step *= 2) {
      const int places = leftwards ? step : width - step;
      const RowWords beside = turned_ring(reached, width, places);
      const RowWords further = turned_ring(open, width, places);
      for (std::size_t word = 0; word < reached.size(); ++word) {
        reached[word] |= open[word] & beside[word];
        open[word] &= further[word];
      }
    }
  }
  return reached;
}

// The row's stitches of that yarn.
RowWords of_yarn(const Grid& repeat, int row, bool contrast) {
  RowWords words = words_of(repeat.row(row));
  if (!contrast) {
    const auto used = static_cast<std::size_t>(repeat.words_in_row());
    for (std::size_t word = 0; word < used; ++word) {
      words[word] = ~words[word];
    }
    words[used - 1] &= repeat.last_word_mask();
  }
  return words;
}

} // namespace

// Row by row in whole words: a row that has grown is looked at by the rows above and below it, until none grows.
std::vector<Cell> flood_cells(const Grid& repeat, Cell start) {
  if (repeat.width() < 1 || repeat.height() < 1) {
    return {};
  }
  const bool yarn = at_round_edges(repeat, start);
  const Cell first = round_edges(start, repeat);
  Grid reached(repeat.width(), repeat.height());
  reached.set(first.column, first.row, true);
  std::vector<int> open{first.row};
  const auto grow = [&](int row, const RowWords& from) {
    const RowWords there = of_yarn(repeat, row, yarn);
    const std::span<Grid::Word> before = reached.row(row);
    RowWords seeds = words_of(before);
    for (std::size_t word = 0; word < seeds.size(); ++word) {
      seeds[word] |= from[word] & there[word];
    }
    const RowWords after = filled(seeds, there, repeat.width());
    if (!std::equal(before.begin(), before.end(), after.begin())) {
      std::copy_n(after.begin(), before.size(), before.begin());
      open.push_back(row);
    }
  };
  grow(first.row, words_of(reached.row(first.row)));
  while (!open.empty()) {
    const int row = open.back();
    open.pop_back();
    const RowWords here = words_of(reached.row(row));
    grow(round_edge(row + 1, repeat.height()), here);
    grow(round_edge(row - 1, repeat.height()), here);
  }
  return contrast_cells(reached);
}

} // namespace punchwright
