// Strokes to dashes. A stroke is known by its middle, its length and its direction; where the middles stand in a row,
// the strokes do too: end to end (dashes of a thin line) or side by side (dashes of a line as broad as they are long).
//
//     end to end   --- --- --- ---        side by side   | | | | | | |
#include "sheets/short_strokes.hpp"

#include "sheets/point_runs.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>
#include <utility>

namespace punchwright {
namespace {

constexpr std::size_t fewest_dashes = 3; // fewer are drawn sooner than their pen is described
constexpr double least_gap = 0.02;       // mm; below that dashes would flow together

enum class Direction { level, upright };
using Kind = std::pair<Direction, long>; // and the length, as point_runs counts it

Stroke stroke_about(Point middle, const Kind& kind) {
  const double half = distance_of(kind.second) / 2;
  const double across = kind.first == Direction::level ? half : 0;
  const double down = half - across;
  return {{middle.x - across, middle.y - down}, {middle.x + across, middle.y + down}};
}

bool is_level(const PointRun& run) {
  return run.last.x - run.first.x > run.last.y - run.first.y;
}

// From the first dash's outer edge to the last one's.
Stroke longer_by(const PointRun& run, double half_dash) {
  const double across = is_level(run) ? half_dash : 0;
  const double down = half_dash - across;
  return {{run.first.x - across, run.first.y - down}, {run.last.x + across, run.last.y + down}};
}

class Gathering {
public:
  explicit Gathering(double pen_mm) : pen_mm_(pen_mm) {}

  void add(const Kind& kind, const std::vector<Point>& middles) {
    for (const auto& [key, runs] : point_runs(middles)) {
      for (const PointRun& run : runs) {
        add_run(kind, run, distance_of(key));
      }
    }
  }
  void add_alone(const Stroke& stroke) { alone_.push_back({stroke, pen_mm_, 0, 0}); }

  [[nodiscard]] std::vector<DashedLine> lines() && {
    const auto pen = [](const DashedLine& line) { return std::tuple(line.pen_mm, line.dash_mm, line.gap_mm); };
    std::ranges::stable_sort(dashed_, {}, pen);
    alone_.insert(alone_.end(), dashed_.begin(), dashed_.end());
    return std::move(alone_);
  }

private:
  void add_run(const Kind& kind, const PointRun& run, double distance) {
    const double extent = (run.last.x - run.first.x) + (run.last.y - run.first.y);
    const auto count = distance > 0 ? static_cast<std::size_t>(std::lround(extent / distance)) + 1 : 1;
    const double length = distance_of(kind.second);
    const bool end_to_end = is_level(run) == (kind.first == Direction::level);
    const double dash = end_to_end ? length : pen_mm_;
    if (count >= fewest_dashes && distance - dash >= least_gap) {
      dashed_.push_back({longer_by(run, dash / 2), end_to_end ? pen_mm_ : length, dash, distance - dash});
      return;
    }
    for (std::size_t index = 0; index < count; ++index) {
      const double share = count > 1 ? static_cast<double>(index) / static_cast<double>(count - 1) : 0;
      add_alone(
          stroke_about({std::lerp(run.first.x, run.last.x, share), std::lerp(run.first.y, run.last.y, share)}, kind));
    }
  }

  double pen_mm_;
  std::vector<DashedLine> alone_;
  std::vector<DashedLine> dashed_;
};

} // namespace

std::vector<DashedLine> dashed_lines(const std::vector<Stroke>& strokes, double pen_mm) {
  Gathering gathering(pen_mm);
  std::map<Kind, std::vector<Point>> middles;
  for (const auto& [from, to] : strokes) {
    const bool level = from.y == to.y;
    if (!level && from.x != to.x) {
      gathering.add_alone({from, to});
      continue;
    }
    const double length = std::abs(to.x - from.x) + std::abs(to.y - from.y);
    middles[{level ? Direction::level : Direction::upright, key_of(length)}].push_back(
        {(from.x + to.x) / 2, (from.y + to.y) / 2});
  }
  for (const auto& [kind, places] : middles) {
    gathering.add(kind, places);
  }
  return std::move(gathering).lines();
}

} // namespace punchwright
