// The fabric's cells to pixels, row by row from the top.
#include "sheets/knitted_picture.hpp"

#include "sheets/defect_tile.hpp"
#include "sheets/fabric_strand.hpp"
#include "sheets/fabric_tile.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <map>
#include <tuple>

namespace punchwright {
namespace {

enum class Look : unsigned char { stitch, eyelet, open_loop, ladder, hole };

class KnittedPainter {
public:
  KnittedPainter(const Fabric& fabric, const Document& document, Face side, const FabricSize& size)
      : fabric_(fabric), document_(document), side_(side), size_(size),
        detail_(detail_for(std::min(size.width / size.columns, size.height / size.rows))) {}

  void add_line(std::vector<unsigned char>& rgb, int line) {
    const int row = size_.rows - 1 - line;
    const int height = size_.top_of(line + 1) - size_.top_of(line);
    std::vector<unsigned char> band(static_cast<std::size_t>(size_.width) * 3 * static_cast<std::size_t>(height));
    for (int column = 0; column < size_.columns; ++column) {
      paint_cell(band, row, column);
    }
    if (side_ == Face::purl) {
      add_strands(band, row, height);
    }
    rgb.insert(rgb.end(), band.begin(), band.end());
  }

private:
  using Tile = std::tuple<Look, char, int, int>; // yarn, width, height

  [[nodiscard]] Needle needle_at(int column) const {
    return side_ == Face::purl ? Needle{first_needle_of(document_).position + column}
                               : Needle{last_needle_of(document_).position - column};
  }
  [[nodiscard]] int column_of(Needle needle) const {
    return side_ == Face::purl ? needle.position - first_needle_of(document_).position
                               : last_needle_of(document_).position - needle.position;
  }
  [[nodiscard]] int line_of(int row) const { return size_.rows - 1 - row; }

  // A cell that was slipped shows the stitch below it, which is drawn up over it: its slice of a tile as high as all.
  void paint_cell(std::vector<unsigned char>& band, int row, int column) {
    const Needle needle = needle_at(column);
    const auto drawn_up = [&](int at) { return fabric_.at(at, needle).yarn == 0 && fabric_.at(at, needle).slipped; };
    int lowest = row;
    while (lowest > 0 && drawn_up(lowest)) {
      --lowest;
    }
    int highest = row;
    while (highest + 1 < size_.rows && drawn_up(highest + 1)) {
      ++highest;
    }
    const int top = size_.top_of(line_of(highest));
    const int left = size_.left_of(column);
    const int width = size_.left_of(column + 1) - left;
    const auto& tile = tile_for(lowest, needle, width, size_.top_of(line_of(lowest) + 1) - top);
    const int above = size_.top_of(line_of(row)) - top;
    const int height = size_.top_of(line_of(row) + 1) - size_.top_of(line_of(row));
    const auto bytes = static_cast<std::size_t>(width) * 3;
    for (int y = 0; y < height; ++y) {
      std::copy_n(tile.data() + static_cast<std::size_t>(above + y) * bytes, bytes,
                  band.data() + (static_cast<std::size_t>(y) * static_cast<std::size_t>(size_.width) +
                                 static_cast<std::size_t>(left)) *
                                    3);
    }
  }

  const std::vector<unsigned char>& tile_for(int row, Needle needle, int width, int height) {
    const Made& cell = fabric_.at(row, needle);
    if (cell.yarn != 0) {
      return tile(cell.dropped   ? Look::open_loop
                  : cell.cast_on ? Look::eyelet
                                 : Look::stitch,
                  cell.yarn, width, height);
    }
    const char passing = yarn_beside(row, needle);
    return tile(passing != 0 ? Look::ladder : Look::hole, passing, width, height);
  }

  // The yarn that passes where no stitch was formed; 0: none, no stitch of the row lies on both sides.
  [[nodiscard]] char yarn_beside(int row, Needle needle) const {
    char left = 0;
    for (Needle one = first_needle_of(document_); one < needle; ++one.position) {
      const char yarn = fabric_.at(row, one).yarn;
      left = yarn != 0 ? yarn : left;
    }
    for (Needle one = needle; left != 0 && one <= last_needle_of(document_); ++one.position) {
      if (const char yarn = fabric_.at(row, one).yarn; yarn != 0) {
        return left;
      }
    }
    return 0;
  }

  const std::vector<unsigned char>& tile(Look look, char yarn, int width, int height) {
    std::vector<unsigned char>& pixels = tiles_[{look, yarn, width, height}];
    if (pixels.empty()) {
      const Colour colour = yarn != 0 ? yarn_of(document_, yarn).colour : Colour{};
      switch (look) {
      case Look::stitch: pixels = stitch_tile(width, height, colour, side_, detail_); break;
      case Look::eyelet:
        pixels = stitch_tile(width, height, colour, side_, detail_);
        add_eyelet(pixels, width, height);
        break;
      case Look::open_loop: pixels = open_loop_tile(width, height, colour); break;
      case Look::ladder: pixels = ladder_tile(width, height, colour); break;
      case Look::hole: pixels = hole_tile(width, height); break;
      }
    }
    return pixels;
  }

  void add_strands(std::vector<unsigned char>& band, int row, int height) const {
    for (const FabricFloat& one : fabric_.floats(row)) {
      if (one.first < first_needle_of(document_) || one.last > last_needle_of(document_)) {
        continue;
      }
      Strand strand{column_of(one.first), column_of(one.last), yarn_of(document_, one.yarn).colour, {}};
      for (const Needle needle : one.caught) {
        strand.caught.push_back(column_of(needle));
      }
      draw_strand(band, size_, height, strand);
    }
    for (const char yarn : fabric_.loose(row)) {
      draw_strand(band, size_, height, {0, size_.columns - 1, yarn_of(document_, yarn).colour, {}});
    }
  }

  const Fabric& fabric_;
  const Document& document_;
  Face side_;
  const FabricSize& size_;
  StitchDetail detail_;
  std::map<Tile, std::vector<unsigned char>> tiles_;
};

} // namespace

Result<FabricPicture> knitted_picture(const Fabric& fabric, const Document& document, Face side) {
  if (fabric.rows() == 0) {
    return Error{{}, 0, 0, tr("nothing was knitted that could be drawn"), tr("see the steps")};
  }
  const Result<FabricSize> size = fabric_size(stitches_of(document), fabric.rows(), document.gauge);
  if (!size) {
    return size.error();
  }
  FabricPicture picture = empty_picture(*size, document.gauge);
  KnittedPainter painter(fabric, document, side, *size);
  for (int line = 0; line < size->rows; ++line) {
    painter.add_line(picture.rgb, line);
  }
  return picture;
}

} // namespace punchwright
