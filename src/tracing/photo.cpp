// Each form of picture by the reader that is soundest for it, to three bytes a pixel; colours to light.
#include "tracing/photo.hpp"

#include "design/light.hpp"
#include "pictures/picture.hpp"
#include "pictures/picture_forms.hpp"
#include "tracing/photo_forms.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>

namespace punchwright {
namespace {

// Of each value of a channel, its part of the luminance (Rec. ITU-R BT.709, as IEC 61966-2-1 has it).
struct LightTables {
  std::array<float, 256> red{};
  std::array<float, 256> green{};
  std::array<float, 256> blue{};

  LightTables() {
    for (std::size_t value = 0; value < 256; ++value) {
      const double light = linear_light(static_cast<std::uint8_t>(value)) * whole_light;
      red[value] = static_cast<float>(0.2126 * light);
      green[value] = static_cast<float>(0.7152 * light);
      blue[value] = static_cast<float>(0.0722 * light);
    }
  }
};

Colours from_two_tones(const Pixels& pixels) {
  Colours colours{pixels.width, pixels.height, {}};
  colours.rgb.reserve(pixels.colours.size() * 3);
  for (const std::uint32_t pixel : pixels.colours) {
    colours.rgb.insert(colours.rgb.end(), 3, static_cast<std::uint8_t>(pixel)); // black or white
  }
  return colours;
}

Result<Colours> from_png(std::string_view bytes) {
  auto png = read_png_pixels(bytes, too_many_pixels);
  if (!png) {
    return png.error();
  }
  return on_white_paper(png->width, png->height, png->rgba);
}

Result<Colours> colours_in(std::string_view bytes) {
  constexpr LargestPicture largest{20'000, 6'000}; // 120 million pixels
  if (const auto pixels = read_two_tones(bytes, largest)) {
    return *pixels ? Result<Colours>(from_two_tones(**pixels)) : Result<Colours>(pixels->error());
  }
  if (bytes.starts_with("\x89PNG")) {
    return from_png(bytes);
  }
  if (bytes.starts_with("\xff\xd8\xff")) { // start of image, and the next marker (ITU-T T.81, B.2.1)
    return read_jpeg(bytes);
  }
  if (bytes.starts_with("BM") || bytes.starts_with("P5") || bytes.starts_with("P6")) {
    return read_unpacked(bytes);
  }
  return picture_error(tr("this is no picture that can be read"), tr("allowed: PNG, JPEG, BMP, PBM, PGM, PPM or XBM"));
}

} // namespace

Colours on_white_paper(int width, int height, const std::vector<std::uint8_t>& rgba) {
  Colours colours{width, height, std::vector<std::uint8_t>(rgba.size() / 4 * 3)};
  std::uint8_t* into = colours.rgb.data();
  for (std::size_t from = 0; from < rgba.size(); from += 4) {
    for (std::size_t part = 0; part < 3; ++part) {
      *into++ = on_white(rgba[from + part], rgba[from + 3]);
    }
  }
  return colours;
}

std::vector<std::string> photo_extensions() {
  return {".png", ".jpg", ".jpeg", ".bmp", ".pbm", ".pgm", ".ppm", ".xbm"};
}

bool has_photo_name(std::string_view name) {
  return has_extension_of(name, photo_extensions());
}

Colour Photo::colour_at(int x, int y) const {
  const std::size_t at =
      (static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)) * 3;
  return {colours[at], colours[at + 1], colours[at + 2]};
}

Photo photo_of(int width, int height, std::vector<std::uint8_t> colours) {
  static const LightTables tables;
  Photo photo{width, height, std::move(colours), {}};
  const std::size_t count = photo.colours.size() / 3;
  photo.light.resize(count);
  const std::uint8_t* from = photo.colours.data();
  for (std::size_t pixel = 0; pixel < count; ++pixel, from += 3) {
    photo.light[pixel] =
        static_cast<std::uint16_t>(tables.red[from[0]] + tables.green[from[1]] + tables.blue[from[2]] + 0.5F);
  }
  return photo;
}

Result<Photo> read_photo(std::string_view bytes, const std::string& name) {
  auto colours = colours_in(bytes);
  if (!colours) {
    Error error = colours.error();
    error.file = name;
    return error;
  }
  return turned_upright(photo_of(colours->width, colours->height, std::move(colours->rgb)), orientation_of(bytes));
}

} // namespace punchwright
