// The picture of the piece, drawn pixel by pixel.
#include "editor/piece_picture.hpp"

#include "plan/plan.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <vector>

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

// Which stitches (or rows) lie under each pixel, and how much of it each covers: so a picture smaller than its stitches
// shows their mixture, and has no stripes of its own.
struct Lattice {
  struct Share {
    int cell = 0;
    float part = 1; // of the pixel
  };
  std::vector<Share> shares;
  std::vector<std::size_t> from; // for each pixel its first share; one more at the end
  std::vector<float> part;       // where in its stitch the pixel's middle lies, 0 to 1
};

Lattice lattice(int pixels, int cells) {
  Lattice out;
  const double step = static_cast<double>(cells) / pixels;
  for (int pixel = 0; pixel < pixels; ++pixel) {
    const double low = pixel * step;
    const double high = std::min<double>(cells, low + step);
    out.from.push_back(out.shares.size());
    for (int cell = static_cast<int>(low); cell < cells && cell < high; ++cell) {
      const double covered = std::min<double>(high, cell + 1) - std::max<double>(low, cell);
      if (covered > step * 1.0e-6) {
        out.shares.push_back({cell, static_cast<float>(covered / (high - low))});
      }
    }
    const double middle = (low + high) / 2;
    out.part.push_back(static_cast<float>(middle - std::floor(middle)));
  }
  out.from.push_back(out.shares.size());
  return out;
}

// Light adds up linearly; the numbers of a colour don't. (sRGB, IEC 61966-2-1)
float light_of(std::uint8_t value) {
  const float part = static_cast<float>(value) / 255;
  return part <= 0.04045F ? part / 12.92F : std::pow((part + 0.055F) / 1.055F, 2.4F);
}

// The other way round, from 0 to `steps` even steps of light.
class Encoder {
public:
  Encoder() {
    for (std::size_t step = 0; step <= steps; ++step) {
      const float light = static_cast<float>(step) / steps;
      const float part = light <= 0.0031308F ? light * 12.92F : 1.055F * std::pow(light, 1 / 2.4F) - 0.055F;
      values_[step] = part * 255;
    }
  }
  [[nodiscard]] float value(float light) const { return values_[static_cast<std::size_t>(light * steps + 0.5F)]; }

private:
  static constexpr std::size_t steps = 4096;
  std::array<float, steps + 1> values_{};
};

struct Light {
  float red = 0;
  float green = 0;
  float blue = 0;
};

Light light_of(Colour colour) {
  return {light_of(colour.red), light_of(colour.green), light_of(colour.blue)};
}

void add(Light& sum, const Light& light, float part) {
  sum.red += light.red * part;
  sum.green += light.green * part;
  sum.blue += light.blue * part;
}

// One row to knit, a light for each pixel across.
std::vector<Light> line_of(const Document& design, const std::vector<bool>& stitches, const RowToKnit& row, Face face,
                           const Lattice& across) {
  const Light main = light_of(yarn_of(design, row.main).colour);
  const Light contrast = row.contrast != 0 ? light_of(yarn_of(design, row.contrast).colour) : main;
  const std::size_t pixels = across.from.size() - 1;
  std::vector<Light> line(pixels);
  for (std::size_t pixel = 0; pixel < pixels; ++pixel) {
    for (std::size_t share = across.from[pixel]; share < across.from[pixel + 1]; ++share) {
      // The list of stitches runs as the knitter sees them; the knit side shows it from right to left.
      const auto seen = static_cast<std::size_t>(across.shares[share].cell);
      const std::size_t stitch = face == Face::purl ? seen : stitches.size() - 1 - seen;
      add(line[pixel], stitches[stitch] ? contrast : main, across.shares[share].part);
    }
  }
  return line;
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
  // From 6 px a stitch on its form begins to show, from 12 px it is all there.
  const float px = static_cast<float>(picture.width) / static_cast<float>(stitches);
  const float relief = std::clamp((px - 6.0F) / 6.0F, 0.0F, 1.0F);

  const Encoder encoder;
  const auto wide = static_cast<std::size_t>(picture.width);
  int line_held = -1;
  std::vector<Light> line;
  std::vector<Light> sum(wide);
  unsigned char* out = picture.rgb.data();
  for (int y = 0; y < picture.height; ++y) {
    const auto from_below = static_cast<std::size_t>(picture.height - 1 - y); // row 1 lies lowest
    sum.assign(wide, Light{});
    for (std::size_t share = upwards.from[from_below]; share < upwards.from[from_below + 1]; ++share) {
      const int row = upwards.shares[share].cell;
      if (row != line_held) {
        line_held = row;
        const RowToKnit& knitted = rows.rows[static_cast<std::size_t>(row)];
        line = line_of(design, stitches_in_row(design, profile, knitted), knitted, face, across);
      }
      for (std::size_t x = 0; x < wide; ++x) {
        add(sum[x], line[x], upwards.shares[share].part);
      }
    }
    for (std::size_t x = 0; x < wide; ++x) {
      const float shade =
          relief == 0 ? 1.0F : 1 + (shade_at(face, across.part[x], upwards.part[from_below]) - 1) * relief;
      for (const float light : {sum[x].red, sum[x].green, sum[x].blue}) {
        *out++ =
            static_cast<unsigned char>(std::clamp(encoder.value(std::min(1.0F, light)) * shade + 0.5F, 0.0F, 255.0F));
      }
    }
  }
  return picture;
}

} // namespace punchwright::editor
