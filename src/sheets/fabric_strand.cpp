// Strands worked out column of pixels by column: where the yarn's middle lies, and its three tones.
#include "sheets/fabric_strand.hpp"

#include "sheets/fabric_tile.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>

namespace punchwright {
namespace {

constexpr int least_height = 9;  // pixels; in lower cells a strand would hide the stitches
constexpr double lies_at = 0.79; // of the cell's height, below its middle
constexpr double comes_out_at = 0.66;
constexpr double edge = 1.1;         // pixels of the yarn's shade on each side
constexpr double half_width = 0.075; // of the cell's height
constexpr double bend = 0.45;        // of a cell's width, over which the yarn comes out of a stitch

double smooth(double share) {
  const double part = std::clamp(share, 0.0, 1.0);
  return part * part * (3 - 2 * part);
}

class StrandPainter {
public:
  StrandPainter(std::vector<unsigned char>& rgb, const FabricSize& size, int height, const Strand& strand)
      : rgb_(rgb), size_(size), height_(height), strand_(strand), tones_(yarn_tones(strand.colour)),
        from_(strand.first > 0 ? middle_of(strand.first - 1) : 0.0),
        to_(strand.last + 1 < size.columns ? middle_of(strand.last + 1) : static_cast<double>(size.width)),
        cell_(static_cast<double>(size.width) / size.columns), half_(std::max(0.75, half_width * height)) {}

  void paint() {
    for (int x = static_cast<int>(from_); x < static_cast<int>(std::ceil(to_)) && x < size_.width; ++x) {
      paint_column(x);
    }
  }

private:
  [[nodiscard]] double middle_of(int column) const { return (size_.left_of(column) + size_.left_of(column + 1)) / 2.0; }

  // Pixels from the cell's top. Where the yarn comes out of a stitch, or is caught on one, it rises; never so high that
  // its edge would touch the middle of the cell, which is measured.
  [[nodiscard]] double place_at(double x) const {
    double low = smooth(std::min(x - from_, to_ - x) / (bend * cell_));
    for (const int column : strand_.caught) {
      low = std::min(low, smooth(std::abs(x - middle_of(column)) / (0.5 * cell_)));
    }
    const double risen = std::max(comes_out_at * height_, height_ / 2.0 + half_ + edge + 0.6);
    return risen + (std::max(lies_at * height_, risen) - risen) * low;
  }

  void paint_column(int x) {
    const double middle = place_at(x + 0.5);
    for (int y = static_cast<int>(middle - half_ - 2); y <= static_cast<int>(middle + half_ + 2); ++y) {
      if (y < 0 || y >= height_) {
        continue;
      }
      const double away = std::abs(y + 0.5 - middle);
      // An edge of the yarn's shade, so that it shows on stitches of its own colour's lightness too.
      put(x, y, tones_.shade, std::clamp(half_ + edge - away, 0.0, 1.0));
      put(x, y, strand_.colour, std::clamp(half_ + 0.1 - away, 0.0, 1.0));
    }
  }

  void put(int x, int y, Colour colour, double cover) {
    const auto at =
        3 * (static_cast<std::size_t>(y) * static_cast<std::size_t>(size_.width) + static_cast<std::size_t>(x));
    const std::array<std::uint8_t, 3> parts{colour.red, colour.green, colour.blue};
    for (std::size_t part = 0; part < parts.size(); ++part) {
      rgb_[at + part] = static_cast<unsigned char>(std::lround(rgb_[at + part] * (1 - cover) + parts[part] * cover));
    }
  }

  std::vector<unsigned char>& rgb_;
  const FabricSize& size_;
  int height_;
  const Strand& strand_;
  YarnTones tones_;
  double from_; // pixels
  double to_;
  double cell_;
  double half_;
};

} // namespace

void draw_strand(std::vector<unsigned char>& rgb, const FabricSize& size, int height, const Strand& strand) {
  if (height >= least_height) {
    StrandPainter(rgb, size, height, strand).paint();
  }
}

} // namespace punchwright
