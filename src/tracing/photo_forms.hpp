// The forms of picture in full colours, each with its reader: bytes in, three bytes a pixel out; errors without a name.
#pragma once

#include "design/result.hpp"

#include <cstdint>
#include <string_view>
#include <vector>

namespace punchwright {

struct Colours {
  int width = 0; // px
  int height = 0;
  std::vector<std::uint8_t> rgb; // sRGB, three bytes a pixel, the top line first
};

// Four bytes a pixel, the fourth how opaque it is, on white.
[[nodiscard]] Colours on_white_paper(int width, int height, const std::vector<std::uint8_t>& rgba);

// Refused before anything is unpacked: more pixels than `most_photo_pixels`.
[[nodiscard]] Failure too_many_pixels(std::int64_t width, std::int64_t height);

// The picture can't be unpacked, or ends before its last line.
[[nodiscard]] Error broken_picture();

// JPEG (ITU-T T.81), by libjpeg-turbo; a print's four inks (Adobe's way, in which they are kept inverted) become three.
[[nodiscard]] Result<Colours> read_jpeg(std::string_view bytes);

// BMP, PGM and PPM, by stb_image.
[[nodiscard]] Result<Colours> read_unpacked(std::string_view bytes);

} // namespace punchwright
