// Rows and columns of points at equal distances.
#include "sheets/point_runs.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace punchwright {
namespace {

constexpr double keys_in_mm = 1e5;

// A point with its place as whole numbers, which can be compared.
struct Place {
  Point point;
  long x = 0;
  long y = 0;
};

// One of the two ways in which a run can lie: `along` grows, `across` is what its points share.
struct Axis {
  double Point::*along;
  long Place::*along_key;
  long Place::*across_key;
};
constexpr Axis level{&Point::x, &Place::x, &Place::y};
constexpr Axis upright{&Point::y, &Place::y, &Place::x};

// Points that stay alone are given back.
template <Axis axis> std::vector<Place> take_runs(std::vector<Place> places, PointRuns& runs) {
  std::ranges::sort(places, {},
                    [](const Place& place) { return std::pair(place.*axis.across_key, place.*axis.along_key); });
  std::vector<Place> alone;
  for (std::size_t begin = 0; begin < places.size();) {
    const auto gap_after = [&](std::size_t index) {
      const bool in_line =
          index + 1 < places.size() && places[index].*axis.across_key == places[index + 1].*axis.across_key;
      return in_line ? key_of(places[index + 1].point.*axis.along - places[index].point.*axis.along) : 0L;
    };
    const long gap = gap_after(begin);
    std::size_t last = begin;
    while (gap > 0 && gap_after(last) == gap) {
      ++last;
    }
    if (last == begin) {
      alone.push_back(places[begin]);
    } else {
      runs[gap].push_back({places[begin].point, places[last].point});
    }
    begin = last + 1;
  }
  return alone;
}

template <Axis first, Axis then> PointRuns all_runs(const std::vector<Place>& places) {
  PointRuns runs;
  for (const Place& place : take_runs<then>(take_runs<first>(places, runs), runs)) {
    runs[0].push_back({place.point, place.point});
  }
  return runs;
}

std::size_t count_of(const PointRuns& runs) {
  std::size_t count = 0;
  for (const auto& [key, lines] : runs) {
    count += lines.size();
  }
  return count;
}

} // namespace

PointRuns point_runs(const std::vector<Point>& points) {
  std::vector<Place> places;
  places.reserve(points.size());
  for (const Point& point : points) {
    places.push_back({point, key_of(point.x), key_of(point.y)});
  }
  PointRuns level_first = all_runs<level, upright>(places);
  PointRuns upright_first = all_runs<upright, level>(places);
  return count_of(upright_first) < count_of(level_first) ? upright_first : level_first;
}

long key_of(double distance) {
  return static_cast<long>(std::floor(distance * keys_in_mm + 0.5));
}

double distance_of(long key) {
  return static_cast<double>(key) / keys_in_mm;
}

} // namespace punchwright
