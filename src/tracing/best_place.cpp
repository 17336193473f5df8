// Every place is traced as it would be knitted, on the picture made small enough to do that a thousand times.
#include "tracing/best_place.hpp"

#include "design/wrap.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright {
namespace {

constexpr int small_width = 400; // px

// Whole pixels of `factor` × `factor`, their mean light; what is left over at the right and the bottom is dropped.
Photo smaller(const Photo& photo, const std::optional<IgnoredColour>& ignored, int factor) {
  const Lattice pixels{
      0, 0, static_cast<double>(factor), static_cast<double>(factor), photo.width / factor, photo.height / factor};
  const std::vector<double> light = light_in(photo, pixels, ignored);
  Photo small{pixels.columns, pixels.rows, {}, std::vector<std::uint16_t>(light.size())};
  for (int y = 0; y < small.height; ++y) {
    for (int x = 0; x < small.width; ++x) {
      const auto from = static_cast<std::size_t>(small.height - 1 - y) * static_cast<std::size_t>(small.width) +
                        static_cast<std::size_t>(x);
      const auto to = static_cast<std::size_t>(y) * static_cast<std::size_t>(small.width) + static_cast<std::size_t>(x);
      small.light[to] = static_cast<std::uint16_t>(std::lround(light[from] * whole_light));
    }
  }
  return small;
}

// Light summed from the top left corner, so that the light in any rectangle is four looks: between pixels it is
// bilinear, which is exact, as a pixel's light is even.
class SummedLight {
public:
  explicit SummedLight(const Photo& photo)
      : width_(photo.width), height_(photo.height),
        sums_(static_cast<std::size_t>(photo.width + 1) * static_cast<std::size_t>(photo.height + 1)) {
    for (int y = 0; y < height_; ++y) {
      double line = 0;
      for (int x = 0; x < width_; ++x) {
        line +=
            photo.light[static_cast<std::size_t>(y) * static_cast<std::size_t>(width_) + static_cast<std::size_t>(x)] /
            static_cast<double>(whole_light);
        sums_[index(x + 1, y + 1)] = sums_[index(x + 1, y)] + line;
      }
    }
  }

  // Mean light; beyond the picture all is white.
  [[nodiscard]] double mean(double left, double top, double right, double bottom) const {
    const double area = (right - left) * (bottom - top);
    const double x0 = std::clamp(left, 0.0, static_cast<double>(width_));
    const double x1 = std::clamp(right, 0.0, static_cast<double>(width_));
    const double y0 = std::clamp(top, 0.0, static_cast<double>(height_));
    const double y1 = std::clamp(bottom, 0.0, static_cast<double>(height_));
    const double inside = up_to(x1, y1) - up_to(x0, y1) - up_to(x1, y0) + up_to(x0, y0);
    return std::clamp((inside + area - (x1 - x0) * (y1 - y0)) / area, 0.0, 1.0);
  }

private:
  [[nodiscard]] std::size_t index(int x, int y) const {
    return static_cast<std::size_t>(y) * static_cast<std::size_t>(width_ + 1) + static_cast<std::size_t>(x);
  }
  [[nodiscard]] double up_to(double x, double y) const {
    const int column = std::min(static_cast<int>(x), width_ - 1);
    const int line = std::min(static_cast<int>(y), height_ - 1);
    const double across = x - column;
    const double down = y - line;
    return (sums_[index(column, line)] * (1 - across) + sums_[index(column + 1, line)] * across) * (1 - down) +
           (sums_[index(column, line + 1)] * (1 - across) + sums_[index(column + 1, line + 1)] * across) * down;
  }

  int width_;
  int height_;
  std::vector<double> sums_;
};

double error_at(const SummedLight& sums, const Lattice& lattice, const TraceWishes& wishes) {
  const int beside = std::max(1, lattice.columns / 4);
  const int wide = lattice.columns + 2 * beside;
  std::vector<double> own;
  std::vector<double> all; // with what lies beside it
  for (int row = 0; row < lattice.rows; ++row) {
    const double top = lattice.top + (lattice.rows - 1 - row) * lattice.row_height;
    for (int column = -beside; column < lattice.columns + beside; ++column) {
      const double left = lattice.left + column * lattice.stitch_width;
      const double light = sums.mean(left, top, left + lattice.stitch_width, top + lattice.row_height);
      all.push_back(light);
      if (column >= 0 && column < lattice.columns) {
        own.push_back(light);
      }
    }
  }
  TraceWishes upright = wishes;
  upright.mirrored = false; // tiles as well as its mirror image
  const Traced traced = trace(own, lattice.columns, upright);
  double off = 0;
  for (std::size_t place = 0; place < all.size(); ++place) {
    const int row = static_cast<int>(place) / wide;
    const int column = round_edge(static_cast<int>(place) % wide - beside, lattice.columns);
    const double darkness = wishes.light_is_contrast ? all[place] : 1 - all[place];
    const double difference = darkness - (traced.drawing.at(column, row) ? 1 : 0);
    off += difference * difference;
  }
  return off / static_cast<double>(all.size());
}

} // namespace

std::vector<Place> best_places(const Photo& photo, const Lattice& from, const Gauge& gauge,
                               const std::optional<IgnoredColour>& ignored, const TraceWishes& wishes,
                               std::size_t most) {
  const int factor = std::max(1, photo.width / small_width);
  const SummedLight sums(smaller(photo, ignored, factor));
  const double middle = from.top + from.rows * from.row_height / 2;
  std::vector<Place> places;
  for (double width = photo.width; width >= photo.width / 4.0; width *= 11.0 / 12) {
    const Lattice sized = lattice_at(0, 0, width, from.columns, from.rows, gauge);
    const double top = middle - sized.row_height * sized.rows / 2;
    for (double left = 0; left + width <= photo.width + 0.5; left += sized.stitch_width / 2) {
      const Lattice here = lattice_at(left, top, width, from.columns, from.rows, gauge);
      const Lattice small{left / factor, top / factor, here.stitch_width / factor, here.row_height / factor,
                          here.columns,  here.rows};
      places.push_back({here, error_at(sums, small, wishes)});
    }
  }
  std::ranges::stable_sort(places, {}, &Place::error);
  std::vector<Place> chosen;
  for (const Place& place : places) {
    const bool near = std::ranges::any_of(chosen, [&](const Place& other) {
      const double stitch = other.lattice.stitch_width;
      return std::abs(other.lattice.left - place.lattice.left) < stitch &&
             std::abs(other.lattice.stitch_width - place.lattice.stitch_width) * place.lattice.columns < stitch;
    });
    if (!near) {
      chosen.push_back(place);
    }
    if (chosen.size() == most) {
      break;
    }
  }
  return chosen;
}

} // namespace punchwright
