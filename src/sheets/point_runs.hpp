// Points at equal distances, gathered into lines: a card's holes are hundreds of points in rows, and a dashed line with
// a round pen draws a row of them in one stroke.
#pragma once

#include "sheets/drawing.hpp"

#include <map>
#include <vector>

namespace punchwright {

struct PointRun {
  Point first;
  Point last; // the same as `first` for a point alone
};

// By the distance between neighbours in hundredths of a micrometre, 0 for points alone.
using PointRuns = std::map<long, std::vector<PointRun>>;

// Every point in exactly one run. Level ones are taken first, then upright ones, or the other way about where that
// makes fewer.
[[nodiscard]] PointRuns point_runs(const std::vector<Point>& points);

// Such a key for a distance in mm, and back.
[[nodiscard]] long key_of(double distance);
[[nodiscard]] double distance_of(long key);

} // namespace punchwright
