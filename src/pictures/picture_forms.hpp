// The single forms of picture: each gives the pixels, or an error without the file's name.
#pragma once

#include "design/document.hpp"
#include "design/result.hpp"

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

struct Pixels {
  int width = 0;
  int height = 0;
  std::vector<std::uint32_t> colours; // 0xRRGGBB, the top line first
};

constexpr std::uint32_t black_pixel = 0x000000;
constexpr std::uint32_t white_pixel = 0xffffff;

[[nodiscard]] inline Error picture_error(std::string message, std::string remedy) {
  return Error{{}, 0, 0, std::move(message), std::move(remedy)};
}

// One of a pixel's three parts, 0 to 255, as it looks where what is transparent lies on white; `opaque` likewise.
[[nodiscard]] constexpr std::uint8_t on_white(std::uint8_t part, std::uint8_t opaque) {
  return static_cast<std::uint8_t>((part * opaque + 255 * (255 - opaque) + 127) / 255);
}

// Nothing larger is read at all.
struct LargestPicture {
  int width = widest_repeat; // px: a pixel is a stitch
  int height = tallest_repeat;
};
[[nodiscard]] Failure too_large(std::int64_t width, std::int64_t height, const LargestPicture& largest = {});

// Black and white ones, told by their first bytes; none where it is another form.
[[nodiscard]] std::optional<Result<Pixels>> read_two_tones(std::string_view bytes, const LargestPicture& largest = {});

[[nodiscard]] Result<Pixels> read_png(std::string_view bytes);

// As it is kept, with its transparency: four bytes a pixel, red, green, blue and how opaque it is; 8 bits each, sRGB.
struct PngPixels {
  int width = 0;
  int height = 0;
  std::vector<std::uint8_t> rgba;
};
// `refused` is asked with width and height before anything is unpacked.
[[nodiscard]] Result<PngPixels> read_png_pixels(std::string_view bytes,
                                                const std::function<Failure(std::int64_t, std::int64_t)>& refused);
[[nodiscard]] Result<Pixels> read_pbm(std::string_view bytes,
                                      const LargestPicture& largest = {}); // plain (P1) and packed (P4)
[[nodiscard]] Result<Pixels> read_xbm(std::string_view bytes, const LargestPicture& largest = {});

} // namespace punchwright
