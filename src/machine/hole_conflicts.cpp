// Every column is compared with the feed holes, which stand level with the rows at the card's end, and with the clip
// holes of a corner. The other corners mirror it.
#include "machine/hole_conflicts.hpp"

#include "design/lengths.hpp"
#include "words/words.hpp"

#include <cmath>

namespace punchwright {
namespace {

bool meet(double distance, double one, double another) {
  constexpr double rounding = 1e-9;
  return distance < (one + another) / 2 - rounding;
}

// Distance of a column from the sheet's left edge, on a face whose column 1 lies left.
double from_left(const CardGeometry& geometry, int column) {
  return geometry.column_1 + (column - 1) * geometry.stitch_pitch;
}

// Of the rows at the end of a card, the nearest to that distance from the end.
double nearest_row(const CardGeometry& geometry, double from_end) {
  const double rows = std::round((from_end - geometry.first_row) / geometry.row_pitch);
  return geometry.first_row + std::max(rows, 0.0) * geometry.row_pitch;
}

} // namespace

std::optional<HoleConflict> hole_conflict(const CardGeometry& geometry, int repeat) {
  for (int column = 1; column <= repeat; ++column) {
    // Left side and right side: feed and clip holes stand at both.
    for (const double place : {from_left(geometry, column), geometry.sheet_width - from_left(geometry, column)}) {
      if (meet(std::abs(place - geometry.feed_from_side), geometry.feed_diameter, geometry.hole_diameter)) {
        return HoleConflict{"feed_from_side_mm", said("the feed holes, {} mm from the side, run into column {}",
                                                      plain_number(geometry.feed_from_side), column)};
      }
      for (const ClipHole& clip : geometry.clips) {
        const double distance =
            std::hypot(place - clip.from_side, nearest_row(geometry, clip.from_end) - clip.from_end);
        if (meet(distance, geometry.clip_diameter, geometry.hole_diameter)) {
          return HoleConflict{"clips_mm", said("the clip hole {} mm from the side and {} mm from the end runs into "
                                               "column {}",
                                               plain_number(clip.from_side), plain_number(clip.from_end), column)};
        }
      }
    }
  }
  return std::nullopt;
}

} // namespace punchwright
