// One pass over the pixels: each line's light is added up between the stitches' edges, and the lines by the part of a
// row that they cover. A pixel that an edge cuts is shared by the length on either side, so the sums are exact.
#include "tracing/coverage.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright {
namespace {

// The pixels from one edge to the next: a part of the first, whole ones, a part of the last.
struct Stretch {
  int first = 0;     // of the whole pixels
  int last = 0;      // behind them
  double before = 0; // part of pixel first - 1
  double behind = 0; // part of pixel last
};

// Cut off at 0 and at `size`.
Stretch stretch_between(double from, double to, int size) {
  from = std::clamp(from, 0.0, static_cast<double>(size));
  to = std::clamp(to, from, static_cast<double>(size));
  Stretch stretch{static_cast<int>(std::ceil(from)), static_cast<int>(std::floor(to)), 0, 0};
  if (stretch.first > stretch.last) { // both edges cut one pixel
    stretch.before = to - from;
    stretch.last = stretch.first;
    return stretch;
  }
  stretch.before = stretch.first - from;
  stretch.behind = to - stretch.last;
  return stretch;
}

double sum_of(const std::uint16_t* line, const Stretch& stretch) {
  std::uint64_t whole = 0;
  for (int from = stretch.first; from < stretch.last;) {
    const int to = std::min(stretch.last, from + 65536); // so many fit into 32 bits
    std::uint32_t some = 0;
    for (int x = from; x < to; ++x) {
      some += line[x];
    }
    whole += some;
    from = to;
  }
  auto sum = static_cast<double>(whole);
  if (stretch.before > 0) {
    sum += stretch.before * line[stretch.first - 1];
  }
  if (stretch.behind > 0) {
    sum += stretch.behind * line[stretch.last];
  }
  return sum;
}

// The line with white in place of what is ignored.
void without_ignored(const Photo& photo, int y, const IgnoredColour& ignored, std::vector<std::uint16_t>& line) {
  const auto width = static_cast<std::size_t>(photo.width);
  const std::size_t start = static_cast<std::size_t>(y) * width;
  const std::uint8_t* colours = photo.colours.data() + start * 3;
  const std::uint16_t* const light = photo.light.data() + start;
  const int red = ignored.colour.red;
  const int green = ignored.colour.green;
  const int blue = ignored.colour.blue;
  const int reach = ignored.within * ignored.within;
  for (std::size_t x = 0; x < width; ++x, colours += 3) {
    const int r = colours[0] - red;
    const int g = colours[1] - green;
    const int b = colours[2] - blue;
    line[x] = r * r + g * g + b * b <= reach ? whole_light : light[x];
  }
}

} // namespace

Lattice lattice_at(double left, double top, double width, int columns, int rows, const Gauge& gauge) {
  const double stitch = width / columns;
  return {left, top, stitch, stitch * gauge.row_mm() / gauge.stitch_mm(), columns, rows};
}

Lattice largest_lattice(int photo_width, int photo_height, int columns, int rows, const Gauge& gauge) {
  const double proportion = columns * gauge.stitch_mm() / (rows * gauge.row_mm()); // width by height
  const double width = std::min(static_cast<double>(photo_width), photo_height * proportion);
  const Lattice lattice = lattice_at(0, 0, width, columns, rows, gauge);
  return lattice_at((photo_width - width) / 2, (photo_height - lattice.row_height * rows) / 2, width, columns, rows,
                    gauge);
}

std::vector<double> light_in(const Photo& photo, const Lattice& lattice, const std::optional<IgnoredColour>& ignored) {
  const auto columns = static_cast<std::size_t>(lattice.columns);
  std::vector<Stretch> stretches;
  std::vector<double> covered; // px of each column that lie on the picture
  for (int column = 0; column < lattice.columns; ++column) {
    const Stretch stretch = stretch_between(lattice.left + column * lattice.stitch_width,
                                            lattice.left + (column + 1) * lattice.stitch_width, photo.width);
    stretches.push_back(stretch);
    covered.push_back(stretch.before + (stretch.last - stretch.first) + stretch.behind);
  }
  std::vector<double> light(columns * static_cast<std::size_t>(lattice.rows));
  std::vector<double> line_sums(columns);
  std::vector<std::uint16_t> own_line(ignored ? static_cast<std::size_t>(photo.width) : 0);
  int summed = -1; // the line that line_sums holds: one that is cut by a row's edge serves twice
  const double area = lattice.stitch_width * lattice.row_height;
  for (int row = 0; row < lattice.rows; ++row) {
    const double top = lattice.top + (lattice.rows - 1 - row) * lattice.row_height;
    const double bottom = top + lattice.row_height;
    double* const out = light.data() + static_cast<std::size_t>(row) * columns;
    // Rows go upwards and lines downwards; a row's lines are gone through from the bottom, so that the cut one comes
    // last in one row and first in the next.
    const int last_line = std::min(photo.height, static_cast<int>(std::ceil(bottom))) - 1;
    const int first_line = std::max(0, static_cast<int>(std::floor(top)));
    double height = 0; // px of the row that lie on the picture
    for (int y = last_line; y >= first_line; --y) {
      const double part = std::min(bottom, y + 1.0) - std::max(top, static_cast<double>(y));
      if (part <= 0) {
        continue;
      }
      height += part;
      if (y != summed) {
        const std::uint16_t* line =
            photo.light.data() + static_cast<std::size_t>(y) * static_cast<std::size_t>(photo.width);
        if (ignored) {
          without_ignored(photo, y, *ignored, own_line);
          line = own_line.data();
        }
        for (std::size_t column = 0; column < columns; ++column) {
          line_sums[column] = sum_of(line, stretches[column]);
        }
        summed = y;
      }
      for (std::size_t column = 0; column < columns; ++column) {
        out[column] += part * line_sums[column];
      }
    }
    for (std::size_t column = 0; column < columns; ++column) {
      const double white = area - covered[column] * height; // beyond the picture
      out[column] = std::clamp((out[column] / whole_light + white) / area, 0.0, 1.0);
    }
  }
  return light;
}

} // namespace punchwright
