// Holes, ladders and open loops, drawn by distance to lines as the stitches are.
#include "sheets/defect_tile.hpp"

#include "sheets/cell_lines.hpp"
#include "sheets/fabric_tile.hpp"

#include <array>
#include <cstdint>
#include <numbers>

namespace punchwright {
namespace {

constexpr Colour hole_dark{46, 49, 56};
constexpr Colour hole_light{150, 156, 166};

void put(std::vector<unsigned char>& tile, std::size_t pixel, Colour colour, double cover) {
  const std::array<std::uint8_t, 3> parts{colour.red, colour.green, colour.blue};
  for (std::size_t part = 0; part < parts.size(); ++part) {
    unsigned char& value = tile[pixel * 3 + part];
    value = static_cast<unsigned char>(std::lround(value * (1 - cover) + parts[part] * cover));
  }
}

Colour hatch(int x, int y, int width, int height) {
  const int step = std::max(3, std::min(width, height) / 4);
  return (x + y) % step == 0 ? hole_light : hole_dark;
}

// A thread with an edge of the yarn's shade.
void draw_thread(std::vector<unsigned char>& tile, int width, int height, const std::vector<Spot>& spots, Colour yarn,
                 double thick) {
  const Colour edge = yarn_tones(yarn).shade;
  const double half = std::max(0.7, thick * std::min(width, height));
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      const double away = distance_to(spots, x + 0.5, y + 0.5, width, height);
      const auto pixel = static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x);
      put(tile, pixel, edge, std::clamp(half + 1.0 - away, 0.0, 1.0));
      put(tile, pixel, yarn, std::clamp(half + 0.1 - away, 0.0, 1.0));
    }
  }
}

//     .-.
//     | |     the round head that a needle held
//     \ /
//     / \     its feet
std::vector<Spot> open_loop() {
  std::vector<Spot> spots{{0.3, 1.05}, {0.42, 0.78}};
  constexpr int pieces = 16;
  for (int piece = 0; piece <= pieces; ++piece) {
    const double angle = std::numbers::pi * (1.25 - 1.5 * piece / pieces);
    spots.push_back({0.5 + 0.27 * std::cos(angle), 0.45 - 0.3 * std::sin(angle)});
  }
  spots.push_back({0.58, 0.78});
  spots.push_back({0.7, 1.05});
  return spots;
}

} // namespace

std::vector<unsigned char> hole_tile(int width, int height) {
  std::vector<unsigned char> tile(static_cast<std::size_t>(width) * static_cast<std::size_t>(height) * 3);
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      put(tile, static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x),
          hatch(x, y, width, height), 1);
    }
  }
  return tile;
}

std::vector<unsigned char> ladder_tile(int width, int height, Colour passing) {
  std::vector<unsigned char> tile = hole_tile(width, height);
  for (const double y : {0.3, 0.75}) {
    draw_thread(tile, width, height, {{-0.1, y - 0.05}, {0.5, y + 0.05}, {1.1, y - 0.05}}, passing, 0.07);
  }
  return tile;
}

std::vector<unsigned char> open_loop_tile(int width, int height, Colour yarn) {
  std::vector<unsigned char> tile = hole_tile(width, height);
  draw_thread(tile, width, height, open_loop(), yarn, 0.1);
  return tile;
}

void add_eyelet(std::vector<unsigned char>& tile, int width, int height) {
  const double radius = std::max(1.0, 0.17 * std::min(width, height));
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      const double away = std::hypot(x + 0.5 - width * 0.5, y + 0.5 - height * 0.8);
      put(tile, static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x), hole_dark,
          std::clamp(radius + 0.5 - away, 0.0, 1.0));
    }
  }
}

} // namespace punchwright
