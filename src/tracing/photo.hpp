// A picture in full colours, ready to be measured: any PNG, JPEG, BMP, PBM, PGM, PPM or XBM. Bytes in, pixels out.
#pragma once

#include "design/document.hpp"
#include "design/result.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

struct Photo {
  int width = 0; // px
  int height = 0;
  std::vector<std::uint8_t> colours; // sRGB, three bytes a pixel, the top line first
  // Relative luminance of each pixel in linear light (IEC 61966-2-1), 0 black to whole_light white. Areas are measured
  // in it, since half black and half white is as much light as a grey of sRGB 188, not 128.
  std::vector<std::uint16_t> light;

  [[nodiscard]] Colour colour_at(int x, int y) const;
};

// ".png", ".jpg" …: the names that such files have, and whether a file has one of them, in small letters or large ones.
[[nodiscard]] std::vector<std::string> photo_extensions();
[[nodiscard]] bool has_photo_name(std::string_view name);

constexpr std::uint16_t whole_light = 65535;

constexpr std::size_t largest_photo_file = std::size_t{256} * 1024 * 1024; // bytes
constexpr std::int64_t most_photo_pixels = 120'000'000;

// `name` is the file's, for errors. What is transparent lies on white; a photograph is turned as its camera says
// (EXIF 2.32, tag 0x0112). Refused: no picture of these kinds, a broken one, more than 120 million pixels.
[[nodiscard]] Result<Photo> read_photo(std::string_view bytes, const std::string& name);

// From pixels that are there already, three bytes each.
[[nodiscard]] Photo photo_of(int width, int height, std::vector<std::uint8_t> colours);

// How a JPEG's pixels lie, 1 to 8; 1 (upright) where nothing says so.
[[nodiscard]] int orientation_of(std::string_view jpeg);
// The same pixels, upright.
[[nodiscard]] Photo turned_upright(Photo photo, int orientation);

} // namespace punchwright
