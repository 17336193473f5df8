// The picture of the piece, drawn pixel by pixel.
#include "editor/piece_picture.hpp"

#include "plan/plan.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright::editor {

namespace {

// How light a place inside a stitch is, 0.62 to 1.06; x and y run from 0 to 1, y upwards. On the knit side the two legs
// of the loop lean towards each other at the foot; on the purl side the loop's head lies across as an arc.
float shade_at(Face face, float x, float y) {
  const float aside = std::abs(x - 0.5F) * 2; // 0 in the middle, 1 at the edge
  if (face == Face::knit) {
    const float leg = 0.28F + 0.46F * y; // the leg's middle, aside
    const float off = std::abs(aside - leg) / 0.36F;
    return off >= 1 ? 0.66F : 0.66F + 0.40F * std::sqrt(1 - off * off);
  }
  const float arc = 0.30F + 0.42F * (1 - aside * aside);
  const float off = std::abs(y - arc) / 0.34F;
  return off >= 1 ? 0.66F : 0.66F + 0.38F * std::sqrt(1 - off * off);
}

struct Lattice {
  std::vector<int> cell;   // for each pixel, the stitch or row that it belongs to
  std::vector<float> part; // and where in it, 0 to 1
};

Lattice lattice(int pixels, int cells) {
  Lattice out;
  for (int pixel = 0; pixel < pixels; ++pixel) {
    const double place = (pixel + 0.5) * cells / pixels;
    const int cell = std::min(static_cast<int>(place), cells - 1);
    out.cell.push_back(cell);
    out.part.push_back(static_cast<float>(place - cell));
  }
  return out;
}

struct RowColours {
  Colour main;
  Colour contrast;
  std::vector<bool> stitches;
};

RowColours colours_of(const Document& design, const Profile& profile, const RowToKnit& row) {
  RowColours out;
  out.main = yarn_of(design, row.main).colour;
  out.contrast = row.contrast != 0 ? yarn_of(design, row.contrast).colour : out.main;
  out.stitches = stitches_in_row(design, profile, row);
  return out;
}

} // namespace

PiecePixels picture_of_piece(const Document& design, const Profile& profile, const RowsToKnit& rows, Face face,
                             int widest, int tallest) {
  PiecePixels picture;
  const int stitches = stitches_of(design);
  const int row_count = static_cast<int>(rows.rows.size());
  if (stitches < 1 || row_count < 1 || widest < 8 || tallest < 8) {
    return picture;
  }
  const double wide_mm = stitches * design.gauge.stitch_mm();
  const double tall_mm = row_count * design.gauge.row_mm();
  const double largest = 22; // px a row: larger than that shows nothing more
  const double scale = std::min({widest / wide_mm, tallest / tall_mm, largest / design.gauge.row_mm()});
  picture.width = std::clamp(static_cast<int>(wide_mm * scale), 1, widest);
  picture.height = std::clamp(static_cast<int>(tall_mm * scale), 1, tallest);
  picture.rgb.resize(static_cast<std::size_t>(picture.width) * static_cast<std::size_t>(picture.height) * 3);

  const Lattice across = lattice(picture.width, stitches);
  const Lattice upwards = lattice(picture.height, row_count);
  // From 3 px a stitch on its form begins to show, from 8 px it is all there.
  const float px = static_cast<float>(picture.width) / static_cast<float>(stitches);
  const float relief = std::clamp((px - 3.0F) / 5.0F, 0.0F, 1.0F);

  int row_at_hand = -1;
  RowColours colours;
  unsigned char* out = picture.rgb.data();
  for (int y = 0; y < picture.height; ++y) {
    const auto line = static_cast<std::size_t>(picture.height - 1 - y); // row 1 lies lowest
    const int row = upwards.cell[line];
    if (row != row_at_hand) {
      row_at_hand = row;
      colours = colours_of(design, profile, rows.rows[static_cast<std::size_t>(row)]);
    }
    for (int x = 0; x < picture.width; ++x) {
      const auto place = static_cast<std::size_t>(x);
      // The list of stitches runs as the knitter sees them; the knit side shows it from right to left.
      const int seen = across.cell[place];
      const int stitch = face == Face::purl ? seen : stitches - 1 - seen;
      const Colour colour = colours.stitches[static_cast<std::size_t>(stitch)] ? colours.contrast : colours.main;
      const float shade =
          relief == 0 ? 1.0F : 1 + (shade_at(face, across.part[place], upwards.part[line]) - 1) * relief;
      for (const std::uint8_t part : {colour.red, colour.green, colour.blue}) {
        *out++ = static_cast<unsigned char>(std::min(255.0F, static_cast<float>(part) * shade));
      }
    }
  }
  return picture;
}

} // namespace punchwright::editor
