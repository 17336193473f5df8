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

// Every point in exactly one run, level ones first, then upright ones; by the distance between neighbours in hundredths
// of a micrometre, 0 for points alone.
[[nodiscard]] std::map<long, std::vector<PointRun>> point_runs(std::vector<Point> points);

// The distance that such a key stands for, in mm.
[[nodiscard]] double distance_of(long key);

} // namespace punchwright
