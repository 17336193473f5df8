// Stitches mixed down to a picture's cells.
#include "pictures/small_picture.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace punchwright {

namespace {

Colour mean_of(const std::vector<Colour>& colours) {
  std::array<double, 3> sum{};
  for (const Colour colour : colours) {
    sum[0] += colour.red;
    sum[1] += colour.green;
    sum[2] += colour.blue;
  }
  const auto count = static_cast<double>(std::max<std::size_t>(1, colours.size()));
  const auto part = [count](double value) { return static_cast<std::uint8_t>(std::lround(value / count)); };
  return {part(sum[0]), part(sum[1]), part(sum[2])};
}

} // namespace

SmallPicture small_picture(const Document& design, double width_by_height, int most) {
  const Grid& grid = design.grid;
  const double wide = grid.width() * design.gauge.stitch_mm();
  const double tall = grid.height() * design.gauge.row_mm();
  const int times = std::clamp(static_cast<int>(std::lround(width_by_height * tall / wide)), 1, 6);
  const int stitches = grid.width() * times;
  SmallPicture picture;
  picture.columns = std::min(most, stitches);
  picture.rows = std::min(most, grid.height());
  picture.shape = static_cast<float>(tall / picture.rows / (wide * times / picture.columns));
  picture.cells.reserve(static_cast<std::size_t>(picture.columns) * static_cast<std::size_t>(picture.rows));
  std::vector<Colour> under;
  for (int row = 0; row < picture.rows; ++row) {
    const int low = row * grid.height() / picture.rows;
    const int high = std::max(low + 1, (row + 1) * grid.height() / picture.rows);
    for (int column = 0; column < picture.columns; ++column) {
      const int left = column * stitches / picture.columns;
      const int right = std::max(left + 1, (column + 1) * stitches / picture.columns);
      under.clear();
      for (int drawn = low; drawn < high; ++drawn) {
        const Band& band = design.bands[band_index_at(design, drawn)];
        for (int stitch = left; stitch < right; ++stitch) {
          const bool contrast = grid.at(stitch % grid.width(), drawn);
          under.push_back(yarn_of(design, contrast ? band.contrast.value_or(band.main) : band.main).colour);
        }
      }
      picture.cells.push_back(mean_of(under));
    }
  }
  return picture;
}

} // namespace punchwright
