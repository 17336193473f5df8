// The cloth's pixels: stitch tiles drawn once a yarn and size, then set side by side.
// A drawn row that is knitted often is put together once and copied.
#include "sheets/fabric_picture.hpp"

#include "plan/plan.hpp"
#include "rows/rows.hpp"
#include "sheets/fabric_strand.hpp"
#include "sheets/fabric_tile.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>
#include <tuple>

namespace punchwright {

namespace {

constexpr double wished_cell_width = 16.0; // pixels
constexpr double least_wished_side = 12.0; // of the cell's shorter side, where there is room
constexpr double longest_side = 20'000.0;  // pixels
constexpr double most_pixels = 40e6;
constexpr double mm_in_metre = 1000.0;

// Pixels of whole rows of the picture, by what is knitted there and how many pixels high it is.
class FabricPainter {
public:
  FabricPainter(const Document& document, const Profile& profile, Face side, const FabricSize& size)
      : document_(document), profile_(profile), side_(side), size_(size),
        detail_(detail_for(std::min(size.width / size.columns, size.height / size.rows))) {}

  const std::vector<unsigned char>& band(const RowToKnit& row, int height) {
    std::vector<unsigned char>& pixels = bands_[{row.contrast == 0 ? -1 : row.drawn, row.main, row.contrast, height}];
    if (pixels.empty()) {
      paint(pixels, row, height);
    }
    return pixels;
  }

private:
  using Band = std::tuple<int, char, char, int>; // drawn row or -1, main, contrast, height
  using Tile = std::tuple<char, int, int>;       // yarn, width, height

  void paint(std::vector<unsigned char>& pixels, const RowToKnit& row, int height) {
    const auto stride = static_cast<std::size_t>(size_.width) * 3;
    pixels.resize(stride * static_cast<std::size_t>(height));
    std::vector<bool> stitches = stitches_in_row(document_, profile_, row);
    if (side_ == Face::knit) {
      std::reverse(stitches.begin(), stitches.end());
    }
    for (int column = 0; column < size_.columns; ++column) {
      const int left = size_.left_of(column);
      const int width = size_.left_of(column + 1) - left;
      const std::vector<unsigned char>& tile =
          tile_of(stitches[static_cast<std::size_t>(column)] ? row.contrast : row.main, width, height);
      const auto bytes = static_cast<std::size_t>(width) * 3;
      for (std::size_t line = 0; line < static_cast<std::size_t>(height); ++line) {
        std::copy_n(tile.data() + line * bytes, bytes,
                    pixels.data() + line * stride + static_cast<std::size_t>(left) * 3);
      }
    }
    if (side_ == Face::purl && row.contrast != 0) {
      add_floats(pixels, row, stitches, height);
    }
  }

  // Both yarns' floats of a row, between two of their own stitches.
  void add_floats(std::vector<unsigned char>& pixels, const RowToKnit& row, const std::vector<bool>& stitches,
                  int height) const {
    const auto count = static_cast<int>(stitches.size());
    std::vector<int> caught; // columns of the picture, which is seen as the bed is
    for (const Needle needle : caught_needles(document_, profile_, row)) {
      caught.push_back(needle.position - first_needle_of(document_).position);
    }
    for (int first = 0; first < count;) {
      const bool contrast = stitches[static_cast<std::size_t>(first)];
      int last = first;
      while (last + 1 < count && stitches[static_cast<std::size_t>(last + 1)] == contrast) {
        ++last;
      }
      if (first > 0 && last + 1 < count) {
        Strand strand{first, last, yarn_of(document_, contrast ? row.main : row.contrast).colour, {}};
        std::ranges::copy_if(caught, std::back_inserter(strand.caught),
                             [&](int column) { return column >= first && column <= last; });
        draw_strand(pixels, size_, height, strand);
      }
      first = last + 1;
    }
  }

  const std::vector<unsigned char>& tile_of(char yarn, int width, int height) {
    std::vector<unsigned char>& tile = tiles_[{yarn, width, height}];
    if (tile.empty()) {
      tile = stitch_tile(width, height, yarn_of(document_, yarn).colour, side_, detail_);
    }
    return tile;
  }

  const Document& document_;
  const Profile& profile_;
  Face side_;
  const FabricSize& size_;
  StitchDetail detail_;
  std::map<Band, std::vector<unsigned char>> bands_;
  std::map<Tile, std::vector<unsigned char>> tiles_;
};

int boundary(int index, int count, int pixels) {
  return static_cast<int>(std::lround(static_cast<double>(index) * pixels / count));
}

int pixels_per_metre(int pixels, double mm) {
  return static_cast<int>(std::lround(pixels * mm_in_metre / mm));
}

} // namespace

FabricPicture empty_picture(const FabricSize& size, const Gauge& gauge) {
  FabricPicture picture;
  picture.width = size.width;
  picture.height = size.height;
  picture.pixels_per_metre_x = pixels_per_metre(size.width, size.columns * gauge.stitch_mm());
  picture.pixels_per_metre_y = pixels_per_metre(size.height, size.rows * gauge.row_mm());
  picture.rgb.reserve(static_cast<std::size_t>(size.width) * static_cast<std::size_t>(size.height) * 3);
  return picture;
}

int FabricSize::left_of(int column) const {
  return boundary(column, columns, width);
}

int FabricSize::top_of(int line) const {
  return boundary(line, rows, height);
}

Result<FabricSize> fabric_size(int stitches, int rows, const Gauge& gauge) {
  const double wide = stitches * gauge.stitch_mm();
  const double high = rows * gauge.row_mm();
  const double wished =
      std::max(wished_cell_width / gauge.stitch_mm(), least_wished_side / std::min(gauge.stitch_mm(), gauge.row_mm()));
  const double pixels_in_mm =
      std::min({wished, longest_side / wide, longest_side / high, std::sqrt(most_pixels / (wide * high))});
  const FabricSize size{stitches, rows, static_cast<int>(std::lround(wide * pixels_in_mm)),
                        static_cast<int>(std::lround(high * pixels_in_mm))};
  if (size.width < stitches || size.height < rows) {
    return Error{{},
                 0,
                 0,
                 said("{} stitches by {} rows are too many for one picture in the gauge's proportion", stitches, rows),
                 tr("knit fewer times, or fewer stitches, to draw it")};
  }
  return size;
}

Result<FabricPicture> fabric_picture(const Document& document, const Profile& profile, Face side) {
  const RowsToKnit knit = rows_to_knit(document, profile);
  const int rows = static_cast<int>(knit.rows.size());
  const Result<FabricSize> size = fabric_size(stitches_of(document), rows, document.gauge);
  if (!size) {
    return size.error();
  }
  FabricPicture picture = empty_picture(*size, document.gauge);
  FabricPainter painter(document, profile, side, *size);
  for (int line = 0; line < rows; ++line) {
    const RowToKnit& row = knit.rows[static_cast<std::size_t>(rows - 1 - line)];
    const std::vector<unsigned char>& band = painter.band(row, size->top_of(line + 1) - size->top_of(line));
    picture.rgb.insert(picture.rgb.end(), band.begin(), band.end());
  }
  return picture;
}

} // namespace punchwright
