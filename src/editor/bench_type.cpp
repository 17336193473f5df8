// Angles to millimetres to pixels.
#include "editor/bench_type.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace punchwright::editor {
namespace {

double half_angle(double arc_minutes) {
  return arc_minutes / 60 * std::numbers::pi / 180 / 2;
}

} // namespace

double height_seen_mm(double distance_m, double arc_minutes) {
  return 2 * distance_m * 1000 * std::tan(half_angle(arc_minutes));
}

double distance_seen_m(double height_mm, double arc_minutes) {
  return height_mm / (2 * std::tan(half_angle(arc_minutes))) / 1000;
}

double pixel_mm(int screen_px, int screen_mm, int measured_mm, double content_scale) {
  const double usual = 25.4 / 96 / std::max(content_scale, 0.5);
  if (screen_px <= 0) {
    return usual;
  }
  const double told = static_cast<double>(measured_mm > 0 ? measured_mm : screen_mm) / screen_px;
  return told > 0.04 && told < 2 ? told : usual; // 635 to 13 pixels an inch: beyond these no screen is looked at
}

BenchType bench_type(double distance_m, double px_mm, double capital) {
  const auto size = [&](double arc_minutes) {
    return static_cast<float>(std::ceil(height_seen_mm(distance_m, arc_minutes) / px_mm / capital));
  };
  return {size(least_arc_minutes), size(good_arc_minutes), size(most_arc_minutes)};
}

} // namespace punchwright::editor
