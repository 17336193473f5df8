// stb_image compiled into the room, for the forms that pack nothing; what its version in Debian 12 believes of a head
// is looked at beforehand.
#include "tracing/photo.hpp"
#include "tracing/photo_forms.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cstdlib>
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
#define STBI_ONLY_BMP
#define STBI_ONLY_PNM
#include <stb_image.h>
#undef memcpy

namespace punchwright {
namespace {

// False where one of the three numbers in the head of a PGM or PPM has more than 9 digits, which stb_image would count
// beyond an int. True of bytes that are neither.
bool pixmap_numbers_fit(std::string_view bytes) {
  if (!bytes.starts_with("P5") && !bytes.starts_with("P6")) {
    return true;
  }
  constexpr int numbers = 3; // width, height, lightest value
  constexpr int most_digits = 9;
  constexpr std::size_t sign = 2;
  int seen = 0;
  int digits = 0;
  bool comment = false;
  for (const char letter : bytes.substr(sign)) {
    comment = letter == '\n' || letter == '\r' ? false : comment || letter == '#';
    if (!comment && letter >= '0' && letter <= '9') {
      if (++digits > most_digits) {
        return false;
      }
    } else if (digits > 0) {
      digits = 0;
      if (++seen == numbers) {
        return true;
      }
    }
  }
  return true;
}

// Bytes that the pixels of a bitmap take, their rows filled up to four bytes each but for the last; its head says how
// many bits each has (the BITMAPCOREHEADER of 12 bytes at offset 24, all later ones at 28).
std::int64_t bitmap_bytes(std::string_view bytes, std::int64_t width, std::int64_t height) {
  const auto byte_at = [&](std::size_t at) { return at < bytes.size() ? static_cast<unsigned char>(bytes[at]) : 0; };
  constexpr std::size_t size_of_head = 14;
  const std::size_t bits_at = byte_at(size_of_head) == 12 ? 24 : 28;
  const std::int64_t row_bits = width * (byte_at(bits_at) + 256 * byte_at(bits_at + 1));
  return (row_bits + 31) / 32 * 4 * (height - 1) + (row_bits + 7) / 8;
}

// Whether the pixels that its head promises can be in the file at all: where they aren't, stb_image makes up black
// ones.
bool has_its_pixels(std::string_view bytes, std::int64_t width, std::int64_t height, int channels) {
  const std::int64_t wanted = bytes.starts_with("BM")
                                  ? bitmap_bytes(bytes, width, height)
                                  : width * height * channels; // at least: values beyond 255 take twice that
  return wanted <= static_cast<std::int64_t>(bytes.size());
}

// A bitmap has three or four, a pixmap one or three. stb's own change of channels takes 16 bits for 8.
std::vector<std::uint8_t> four_channels(const stbi_uc* pixels, const Colours& size, int channels) {
  const auto count = static_cast<std::size_t>(size.width) * static_cast<std::size_t>(size.height);
  std::vector<std::uint8_t> rgba(count * 4, 255);
  for (std::size_t pixel = 0; pixel < count; ++pixel, pixels += channels) {
    for (std::size_t part = 0; part < 3; ++part) {
      rgba[pixel * 4 + part] = pixels[channels >= 3 ? part : 0];
    }
    if (channels == 4) {
      rgba[pixel * 4 + 3] = pixels[3];
    }
  }
  return rgba;
}

} // namespace

Error broken_picture() {
  return Error{{}, 0, 0, tr("the picture is broken or incomplete"), tr("save it again, as PNG for instance")};
}

Failure too_many_pixels(std::int64_t width, std::int64_t height) {
  if (width * height <= most_photo_pixels) {
    return std::nullopt;
  }
  return Error{{},
               0,
               0,
               said("the picture has {} × {} pixels", width, height),
               tr("120 million at most: make it smaller first")};
}

Result<Colours> read_unpacked(std::string_view bytes) {
  if (!pixmap_numbers_fit(bytes)) {
    return broken_picture();
  }
  const auto* const data = reinterpret_cast<const stbi_uc*>(bytes.data());
  const int size = static_cast<int>(std::min(bytes.size(), largest_photo_file));
  Colours colours;
  int channels = 0;
  if (stbi_info_from_memory(data, size, &colours.width, &colours.height, &channels) == 0) {
    return broken_picture();
  }
  const std::int64_t height = std::abs(std::int64_t{colours.height}); // below 0 where a bitmap's first row is the upper
  if (const Failure failure = too_many_pixels(colours.width, height)) {
    return *failure;
  }
  if (!has_its_pixels(bytes, colours.width, height, channels)) {
    return broken_picture();
  }
  const std::unique_ptr<stbi_uc, void (*)(void*)> pixels(
      stbi_load_from_memory(data, size, &colours.width, &colours.height, &channels, 0), stbi_image_free);
  if (pixels == nullptr) {
    return broken_picture();
  }
  return on_white_paper(colours.width, colours.height, four_channels(pixels.get(), colours, channels));
}

} // namespace punchwright
