// Lines within the cell of one stitch, for all that is drawn there by distance to lines.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

namespace punchwright {

struct Spot { // in the cell, 0 to 1 both ways, y downwards
  double x = 0;
  double y = 0;
};

// Pixels from a pixel's place to the line through the spots, in a cell of that many pixels.
[[nodiscard]] inline double distance_to(const std::vector<Spot>& spots, double x, double y, int width, int height) {
  double nearest = 1e9;
  for (std::size_t index = 0; index + 1 < spots.size(); ++index) {
    const double from_x = spots[index].x * width;
    const double from_y = spots[index].y * height;
    const double along_x = spots[index + 1].x * width - from_x;
    const double along_y = spots[index + 1].y * height - from_y;
    const double length = along_x * along_x + along_y * along_y;
    const double share =
        length > 0 ? std::clamp(((x - from_x) * along_x + (y - from_y) * along_y) / length, 0.0, 1.0) : 0.0;
    nearest = std::min(nearest, std::hypot(x - from_x - share * along_x, y - from_y - share * along_y));
  }
  return nearest;
}

} // namespace punchwright
