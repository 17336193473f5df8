// Rows and columns of points at equal distances.
#include "sheets/point_runs.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace punchwright {
namespace {

constexpr double keys_in_mm = 1e5;

long key_of(double length) {
  return std::lround(length * keys_in_mm);
}

// Runs along one axis: `across` is what they share, `along` what grows. Points that stay alone are given back.
template <double Point::*along, double Point::*across>
std::vector<Point> take_runs(std::vector<Point> points, std::map<long, std::vector<PointRun>>& runs) {
  std::ranges::sort(points, {}, [](const Point& point) { return std::pair(key_of(point.*across), point.*along); });
  std::vector<Point> alone;
  for (std::size_t begin = 0; begin < points.size();) {
    const auto gap_after = [&](std::size_t index) {
      const bool level =
          index + 1 < points.size() && key_of(points[index].*across) == key_of(points[index + 1].*across);
      return level ? key_of(points[index + 1].*along - points[index].*along) : 0L;
    };
    const long gap = gap_after(begin);
    std::size_t last = begin;
    while (gap > 0 && gap_after(last) == gap) {
      ++last;
    }
    if (last == begin) {
      alone.push_back(points[begin]);
    } else {
      runs[gap].push_back({points[begin], points[last]});
    }
    begin = last + 1;
  }
  return alone;
}

} // namespace

std::map<long, std::vector<PointRun>> point_runs(std::vector<Point> points) {
  std::map<long, std::vector<PointRun>> runs;
  auto alone = take_runs<&Point::y, &Point::x>(take_runs<&Point::x, &Point::y>(std::move(points), runs), runs);
  for (const Point& point : alone) {
    runs[0].push_back({point, point});
  }
  return runs;
}

double distance_of(long key) {
  return static_cast<double>(key) / keys_in_mm;
}

} // namespace punchwright
