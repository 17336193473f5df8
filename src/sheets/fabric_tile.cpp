// Stitches drawn with lines of a darker and a lighter tone of their yarn.
// Worked out by distance to lines, which needs no drawing library and gives soft edges at every size.
#include "sheets/fabric_tile.hpp"

#include "sheets/cell_lines.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace punchwright {

namespace {

struct Stroke {
  std::vector<Spot> spots;
  double strength = 0; // share of the tone, 0 to 1
  bool light = false;
};

struct Tone { // sRGB, 0 to 255
  double red = 0;
  double green = 0;
  double blue = 0;
};

Tone mixed(Tone from, Tone to, double share) {
  return Tone{from.red + (to.red - from.red) * share, from.green + (to.green - from.green) * share,
              from.blue + (to.blue - from.blue) * share};
}

Tone tone_of(Colour colour) {
  return Tone{static_cast<double>(colour.red), static_cast<double>(colour.green), static_cast<double>(colour.blue)};
}

// Shade and shine of a yarn. A dark one has no room for shade: its lines are lighter instead.
std::pair<Tone, Tone> tones_of(Colour yarn) {
  const Tone own = tone_of(yarn);
  const Tone black{0, 0, 0};
  const Tone white{255, 255, 255};
  const double brightness = 0.30 * own.red + 0.59 * own.green + 0.11 * own.blue;
  return brightness < 80 ? std::pair(mixed(own, white, 0.34), mixed(own, black, 0.45))
                         : std::pair(mixed(own, black, 0.36), mixed(own, white, 0.45));
}

// Two legs that lean out from the stitch below, in which they meet:
//
//     |  |  |      the notch between the legs
//     |\    /|
//     | \  / |     the outer edges of the legs
//     |  \/  |
std::vector<Stroke> knit_strokes() {
  return {Stroke{{{0.0, 0.36}, {0.5, 1.02}}, 1.0, false}, Stroke{{{1.0, 0.36}, {0.5, 1.02}}, 1.0, false},
          Stroke{{{0.5, -0.1}, {0.5, 0.24}}, 1.0, false}, Stroke{{{0.0, 0.0}, {0.0, 1.0}}, 0.5, false},
          Stroke{{{1.0, 0.0}, {1.0, 1.0}}, 0.5, false}};
}

std::vector<Spot> arc(double left, double right, double ends_y, double middle_y) {
  std::vector<Spot> spots;
  constexpr int pieces = 12;
  for (int piece = 0; piece <= pieces; ++piece) {
    const double share = static_cast<double>(piece) / pieces;
    const double bulge = 1.0 - (2 * share - 1) * (2 * share - 1);
    spots.push_back(Spot{left + (right - left) * share, ends_y + (middle_y - ends_y) * bulge});
  }
  return spots;
}

// A bump across the upper half of the cell, and in the lower half those of the loops between the stitches, which lie
// half a stitch aside; a light line on the crown of the upper one.
std::vector<Stroke> purl_strokes(StitchDetail detail) {
  std::vector<Stroke> strokes{Stroke{arc(0.04, 0.96, 0.46, 0.02), 1.0, false},
                              Stroke{arc(-0.38, 0.38, 0.66, 0.98), 1.0, false},
                              Stroke{arc(0.62, 1.38, 0.66, 0.98), 1.0, false}};
  if (detail == StitchDetail::crowned) {
    strokes.push_back(Stroke{arc(0.2, 0.8, 0.36, 0.17), 0.8, true});
  }
  return strokes;
}

unsigned char byte_of(double value) {
  return static_cast<unsigned char>(std::lround(std::clamp(value, 0.0, 255.0)));
}

void put(std::vector<unsigned char>& pixels, Tone tone) {
  pixels.push_back(byte_of(tone.red));
  pixels.push_back(byte_of(tone.green));
  pixels.push_back(byte_of(tone.blue));
}

} // namespace

YarnTones yarn_tones(Colour yarn) {
  const auto [shade, shine] = tones_of(yarn);
  const auto rounded = [](Tone tone) { return Colour{byte_of(tone.red), byte_of(tone.green), byte_of(tone.blue)}; };
  return {rounded(shade), rounded(shine)};
}

StitchDetail detail_for(int shortest_side) {
  constexpr int room_for_outline = 11; // pixels
  constexpr int room_for_crown = 16;
  return shortest_side < room_for_outline ? StitchDetail::flat
         : shortest_side < room_for_crown ? StitchDetail::outlined
                                          : StitchDetail::crowned;
}

std::vector<unsigned char> stitch_tile(int width, int height, Colour yarn, Face side, StitchDetail detail) {
  std::vector<unsigned char> pixels;
  pixels.reserve(static_cast<std::size_t>(width) * static_cast<std::size_t>(height) * 3);
  const std::vector<Stroke> strokes = detail == StitchDetail::flat ? std::vector<Stroke>{}
                                      : side == Face::knit         ? knit_strokes()
                                                                   : purl_strokes(detail);
  const auto [shade, shine] = tones_of(yarn);
  const double half_line = std::max(0.5, std::min(width, height) / 24.0);
  for (int line = 0; line < height; ++line) {
    for (int column = 0; column < width; ++column) {
      Tone tone = tone_of(yarn);
      for (const Stroke& stroke : strokes) {
        const double distance = distance_to(stroke.spots, column + 0.5, line + 0.5, width, height);
        const double cover = std::clamp(half_line + 0.5 - distance, 0.0, 1.0) * stroke.strength;
        tone = mixed(tone, stroke.light ? shine : shade, cover);
      }
      put(pixels, tone);
    }
  }
  return pixels;
}

} // namespace punchwright
