// stb_image compiled into the room; colours to light.
#include "tracing/photo.hpp"

#include "pictures/picture.hpp"
#include "pictures/picture_forms.hpp"
#include "rules/findings.hpp"
#include "tracing/picture_checks.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <cstring>
#include <memory>

namespace {
// Of nothing, stb_image copies from and to nowhere, which C++20 does not allow.
void* copied(void* into, const void* from, std::size_t count) {
  return count == 0 ? into : std::memcpy(into, from, count);
}
} // namespace
#define memcpy copied
#define STB_IMAGE_IMPLEMENTATION
#define STB_IMAGE_STATIC
#define STBI_NO_STDIO
#define STBI_NO_GIF
#define STBI_NO_HDR
#define STBI_NO_LINEAR
#define STBI_NO_PIC
#define STBI_NO_PSD
#define STBI_NO_TGA
#include <stb_image.h>
#undef memcpy

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

std::uint8_t on_white(std::uint8_t part, std::uint8_t alpha) {
  return static_cast<std::uint8_t>((part * alpha + 255 * (255 - alpha) + 127) / 255);
}

// One to four channels become three.
std::vector<std::uint8_t> three_channels(const std::uint8_t* pixels, std::size_t count, int channels) {
  std::vector<std::uint8_t> colours(count * 3);
  if (channels == 3) {
    std::copy_n(pixels, colours.size(), colours.begin());
    return colours;
  }
  for (std::size_t pixel = 0; pixel < count; ++pixel) {
    const std::uint8_t* const from = pixels + pixel * static_cast<std::size_t>(channels);
    for (std::size_t part = 0; part < 3; ++part) {
      const std::uint8_t value = channels >= 3 ? from[part] : from[0];
      colours[pixel * 3 + part] = channels == 4   ? on_white(value, from[3])
                                  : channels == 2 ? on_white(value, from[1])
                                                  : value;
    }
  }
  return colours;
}

Result<Photo> from_two_tones(const Result<Pixels>& pixels, const std::string& name) {
  if (!pixels) {
    Error error = pixels.error();
    error.file = name;
    return error;
  }
  std::vector<std::uint8_t> colours;
  colours.reserve(pixels->colours.size() * 3);
  for (const std::uint32_t pixel : pixels->colours) {
    colours.insert(colours.end(), 3, static_cast<std::uint8_t>(pixel)); // black or white
  }
  return photo_of(pixels->width, pixels->height, std::move(colours));
}

Error not_read(const std::string& name, std::string what, std::string remedy) {
  return Error{name, 0, 0, std::move(what), std::move(remedy)};
}

} // namespace

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
  const LightTables tables;
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
  constexpr LargestPicture largest{20'000, 6'000}; // 120 million pixels
  if (const auto pixels = read_two_tones(bytes, largest)) {
    return from_two_tones(*pixels, name);
  }
  const std::string broken = tr("the picture is broken or incomplete");
  const std::string save_again = tr("save it again, as PNG for instance");
  if (!huffman_tables_fit(bytes) || !pixmap_numbers_fit(bytes)) {
    return not_read(name, broken, save_again);
  }
  const auto* const data = reinterpret_cast<const stbi_uc*>(bytes.data());
  const int size = static_cast<int>(std::min(bytes.size(), largest_photo_file));
  int width = 0;
  int height = 0;
  int channels = 0;
  if (stbi_info_from_memory(data, size, &width, &height, &channels) == 0) {
    return not_read(name, tr("this is no picture that can be read"),
                    tr("allowed: PNG, JPEG, BMP, PBM, PGM, PPM or XBM"));
  }
  if (std::int64_t{width} * height > most_photo_pixels) {
    return not_read(name, said("the picture has {} × {} pixels", width, height),
                    tr("120 million at most: make it smaller first"));
  }
  const std::unique_ptr<stbi_uc, void (*)(void*)> pixels(
      stbi_load_from_memory(data, size, &width, &height, &channels, 0), stbi_image_free);
  if (pixels == nullptr) {
    return not_read(name, broken, save_again);
  }
  const std::size_t count = static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
  return turned_upright(photo_of(width, height, three_channels(pixels.get(), count, channels)), orientation_of(bytes));
}

} // namespace punchwright
