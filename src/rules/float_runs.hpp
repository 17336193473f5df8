// Runs of one colour in a row, as it tiles round its edge: the heart of the float check.
// Whole words of stitches at once, since the check runs at every stroke of the pen.
#pragma once

#include "design/grid.hpp"
#include "design/marks.hpp"

#include <span>
#include <vector>

namespace punchwright {

struct StitchRun {
  int first = 0; // column from 0; the run goes on to the right, round the edge where it must
  int stitches = 0;
  bool contrast = false; // colour of the run: the other yarn floats behind it

  bool operator==(const StitchRun&) const = default;
};

// True where the row, as it tiles, has a run of the given colour of more than `limit` stitches (limit >= 0). A row of
// one colour is one endless run.
[[nodiscard]] bool has_run_beyond(std::span<const Grid::Word> row, int width, int limit, bool contrast);

// The runs of more than `limit` stitches of a row that has both colours, as it tiles, in order of their first column.
[[nodiscard]] std::vector<StitchRun> runs_beyond(const Grid& grid, int row, int limit);

// A part of a float between catches, by its place from the float's beginning.
struct FloatPart {
  int first = 0;
  int stitches = 0;
  bool accepted = true; // behind every one of its stitches
};

// Gives `take` the parts of more than `limit` stitches of a float behind so many stitches; `column_at` tells the drawn
// column of each. A stitch onto whose needle the float is lifted belongs to neither part.
template <class ColumnAt, class Take>
void each_part_beyond(const StitchMarks& marks, int row, int stitches, int limit, ColumnAt&& column_at, Take&& take) {
  if (!any_marked(marks.caught, row) && !any_marked(marks.accepted, row)) {
    if (stitches > limit) {
      take(FloatPart{0, stitches, false});
    }
    return;
  }
  FloatPart part;
  for (int place = 0; place <= stitches; ++place) {
    const int column = place < stitches ? column_at(place) : -1;
    if (column >= 0 && !is_marked(marks.caught, column, row)) {
      ++part.stitches;
      part.accepted = part.accepted && is_marked(marks.accepted, column, row);
      continue;
    }
    if (part.stitches > limit) {
      take(part);
    }
    part = {place + 1, 0, true};
  }
}

} // namespace punchwright
