// Which frieze group a strip has, exactly; quick enough for every stitch of a stroke on the largest drawing.
// Rows are looked at as rings of whole words, and all places of an upright axis at once, as one number and a step: what
// a row allows is never more than that.
#include "design/row_ring.hpp"
#include "drawing/frieze.hpp"

namespace punchwright {
namespace {

RowWords ring(const Grid& strip, int row) {
  return words_of(strip.row(row));
}

// The smallest multiple of `step` that divides the width and after which the row recurs. `step` divides the width.
int recurs_after(const RowWords& row, int width, int step) {
  for (int places = step; places < width; places += step) {
    if (width % places == 0 && row == turned_ring(row, width, places)) {
      return places;
    }
  }
  return width;
}

int smallest_repeat(const Grid& strip) {
  int repeat = 1;
  for (int row = 0; row < strip.height() && repeat < strip.width(); ++row) {
    repeat = recurs_after(ring(strip, row), strip.width(), repeat);
  }
  return repeat;
}

struct Rows {
  int first = 0;
  int last = -1;
};

// The rows from the lowest to the highest with contrast; none without contrast.
Rows rows_with_contrast(const Grid& strip) {
  Rows rows{0, strip.height() - 1};
  while (rows.first <= rows.last && strip.all_main(rows.first)) {
    ++rows.first;
  }
  while (rows.last > rows.first && strip.all_main(rows.last)) {
    --rows.last;
  }
  return rows;
}

// The lowest upright axis that turns each row over onto its partner, `sum` of both rows, or onto itself where there is
// no sum. Places of axes that one row allows lie as far apart as the row recurs, so that those that all rows until now
// allow are `lowest`, `lowest` + `step` and so on: a row keeps all of them, or one of some, or none.
std::optional<int> lowest_upright(const Grid& strip, Rows rows, std::optional<int> sum) {
  const int width = strip.width();
  int lowest = 0;
  int step = 1;
  for (int row = rows.first; row <= rows.last; ++row) {
    const RowWords here = ring(strip, row);
    const RowWords backwards = read_backwards(ring(strip, sum ? *sum - row : row), width);
    const int next = recurs_after(here, width, step);
    while (lowest < next && here != turned_ring(backwards, width, width - 1 - lowest)) {
      lowest += step;
    }
    if (lowest >= next) {
      return std::nullopt;
    }
    step = next;
  }
  return lowest;
}

// Each row as its partner above or below, `along` further on.
bool is_turned_over(const Grid& strip, Rows rows, int sum, int along) {
  for (int row = rows.first; row <= rows.last; ++row) {
    if (ring(strip, row) != turned_ring(ring(strip, sum - row), strip.width(), along)) {
      return false;
    }
  }
  return true;
}

} // namespace

Frieze classify(const Grid& strip) {
  const Rows rows = rows_with_contrast(strip);
  if (rows.first > rows.last) {
    return {FriezeGroup::p2mm, 1, 0, strip.height() - 1};
  }
  const int repeat = smallest_repeat(strip);
  const int level = rows.first + rows.last; // with main above and below, no other level axis can be
  const auto mirror = lowest_upright(strip, rows, std::nullopt);
  if (is_turned_over(strip, rows, level, 0)) {
    return mirror ? Frieze{FriezeGroup::p2mm, repeat, *mirror, level} : Frieze{FriezeGroup::p11m, repeat, 0, level};
  }
  if (repeat % 2 == 0 && is_turned_over(strip, rows, level, repeat / 2)) {
    return mirror ? Frieze{FriezeGroup::p2mg, repeat, *mirror, level} : Frieze{FriezeGroup::p11g, repeat, 0, level};
  }
  if (mirror) {
    return {FriezeGroup::p1m1, repeat, *mirror, 0};
  }
  if (const auto half_turn = lowest_upright(strip, rows, level)) {
    return {FriezeGroup::p2, repeat, *half_turn, level};
  }
  return {FriezeGroup::p1, repeat, 0, 0};
}

} // namespace punchwright
