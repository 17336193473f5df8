// Which way up a photograph was taken: the orientation tag of EXIF 2.32 (JEITA CP-3451, 4.6.4), and the turn it asks
// for.
#include "tracing/photo.hpp"

#include <utility>

namespace punchwright {
namespace {

constexpr int orientation_tag = 0x0112;

// Numbers of a TIFF header's byte order; beyond the end they are 0.
class TiffBytes {
public:
  TiffBytes(std::string_view bytes, bool little) : bytes_(bytes), little_(little) {}

  [[nodiscard]] std::uint32_t number(std::size_t at, int length) const {
    std::uint32_t value = 0;
    for (int byte = 0; byte < length; ++byte) {
      const std::size_t place = at + static_cast<std::size_t>(little_ ? length - 1 - byte : byte);
      value = value << 8 | (place < bytes_.size() ? static_cast<unsigned char>(bytes_[place]) : 0U);
    }
    return value;
  }

private:
  std::string_view bytes_;
  bool little_;
};

int orientation_in(std::string_view tiff) {
  if (tiff.size() < 8 || (!tiff.starts_with("II") && !tiff.starts_with("MM"))) {
    return 1;
  }
  const TiffBytes bytes(tiff, tiff.starts_with("II"));
  const std::size_t directory = bytes.number(4, 4);
  const std::uint32_t entries = bytes.number(directory, 2);
  for (std::uint32_t entry = 0; entry < entries; ++entry) {
    const std::size_t at = directory + 2 + std::size_t{entry} * 12;
    if (at + 12 > tiff.size()) {
      break;
    }
    if (bytes.number(at, 2) == orientation_tag) {
      const std::uint32_t value = bytes.number(at + 8, 2);
      return value >= 1 && value <= 8 ? static_cast<int>(value) : 1;
    }
  }
  return 1;
}

} // namespace

int orientation_of(std::string_view jpeg) {
  if (!jpeg.starts_with("\xff\xd8")) {
    return 1;
  }
  // Segments: 0xff, a kind, a length that counts itself.
  std::size_t at = 2;
  while (at + 4 <= jpeg.size() && jpeg[at] == '\xff') {
    const auto kind = static_cast<unsigned char>(jpeg[at + 1]);
    const std::size_t length = std::size_t{static_cast<unsigned char>(jpeg[at + 2])} << 8 |
                               std::size_t{static_cast<unsigned char>(jpeg[at + 3])};
    if (kind == 0xda || length < 2) {
      break; // the pixels begin
    }
    const std::string_view content = jpeg.substr(at + 4, length - 2);
    if (kind == 0xe1 && content.starts_with(std::string_view("Exif\0\0", 6))) {
      return orientation_in(content.substr(6));
    }
    at += 2 + length;
  }
  return 1;
}

Photo turned_upright(Photo photo, int orientation) {
  if (orientation <= 1 || orientation > 8) {
    return photo;
  }
  const bool sideways = orientation >= 5;
  const int width = sideways ? photo.height : photo.width;
  const int height = sideways ? photo.width : photo.height;
  Photo upright{width, height, std::vector<std::uint8_t>(photo.colours.size()),
                std::vector<std::uint16_t>(photo.light.size())};
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      // Where the pixel that belongs here was stored: 2, 4, 5, 7 are mirrored, 3 and 4 turned by half, 5 to 8 by a
      // quarter.
      int from_x = sideways ? y : x;
      int from_y = sideways ? x : y;
      if (orientation == 2 || orientation == 3 || orientation == 7 || orientation == 8) {
        from_x = photo.width - 1 - from_x;
      }
      if (orientation == 3 || orientation == 4 || orientation == 6 || orientation == 7) {
        from_y = photo.height - 1 - from_y;
      }
      const auto from =
          static_cast<std::size_t>(from_y) * static_cast<std::size_t>(photo.width) + static_cast<std::size_t>(from_x);
      const auto to = static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x);
      upright.light[to] = photo.light[from];
      for (std::size_t part = 0; part < 3; ++part) {
        upright.colours[to * 3 + part] = photo.colours[from * 3 + part];
      }
    }
  }
  return upright;
}

} // namespace punchwright
