// A sheet or a picture to PNG: cairo's pixels, packed by stb_image_write, with a pHYs chunk of our own that tells the
// true size (W3C PNG, 11.3.5.3). Tall sheets are drawn in strips, since cairo refuses pictures beyond 32,767 pixels.
#include "sheets/cairo_canvas.hpp"
#include "sheets/writers.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <stb_image_write.h>

namespace punchwright {
namespace {

constexpr int strip_pixels = 1024;                // height of a strip that is drawn at once
constexpr double most_bytes = 1'000'000'000.0;    // a picture above that is refused: stb counts bytes in an int
constexpr std::size_t after_first_chunk = 8 + 25; // signature and IHDR

// CRC of a chunk's type and data (W3C PNG, annex D).
std::uint32_t crc_of(const std::string& bytes) {
  std::uint32_t crc = 0xFFFFFFFFU;
  for (const char byte : bytes) {
    crc ^= static_cast<unsigned char>(byte);
    for (int bit = 0; bit < 8; ++bit) {
      crc = (crc & 1U) != 0 ? 0xEDB88320U ^ (crc >> 1) : crc >> 1;
    }
  }
  return crc ^ 0xFFFFFFFFU;
}

std::string big_endian(std::uint32_t value) {
  std::string bytes;
  for (int shift = 24; shift >= 0; shift -= 8) {
    bytes.push_back(static_cast<char>(static_cast<unsigned char>(value >> shift)));
  }
  return bytes;
}

// Pixels in a metre, across and down; unit 1 is the metre.
std::string density_chunk(int across, int down) {
  const std::string content =
      "pHYs" + big_endian(static_cast<std::uint32_t>(across)) + big_endian(static_cast<std::uint32_t>(down)) + '\1';
  return big_endian(9) + content + big_endian(crc_of(content));
}

void append(void* closure, void* data, int size) {
  static_cast<std::string*>(closure)->append(static_cast<const char*>(data), static_cast<std::size_t>(size));
}

// The rows of one strip, as RGB.
void copy_rows(cairo_surface_t* surface, int width, int rows, unsigned char* rgb) {
  cairo_surface_flush(surface);
  const unsigned char* pixels = cairo_image_surface_get_data(surface);
  const int stride = cairo_image_surface_get_stride(surface);
  for (int row = 0; row < rows; ++row) {
    const auto* line = reinterpret_cast<const std::uint32_t*>(pixels + static_cast<std::ptrdiff_t>(row) * stride);
    for (int column = 0; column < width; ++column) {
      const std::uint32_t pixel = line[column];
      *rgb++ = static_cast<unsigned char>(pixel >> 16);
      *rgb++ = static_cast<unsigned char>(pixel >> 8);
      *rgb++ = static_cast<unsigned char>(pixel);
    }
  }
}

} // namespace

Result<std::string> png_of_pixels(int width, int height, const std::vector<unsigned char>& rgb, int pixels_per_metre_x,
                                  int pixels_per_metre_y) {
  // Line art: most rows repeat the one above, so the filter 'up' alone packs well.
  stbi_write_force_png_filter = 2;
  std::string bytes;
  if (stbi_write_png_to_func(append, &bytes, width, height, 3, rgb.data(), width * 3) == 0 ||
      bytes.size() < after_first_chunk) {
    return Error{{}, 0, 0, tr("the PNG can't be made: not enough memory"), {}};
  }
  if (pixels_per_metre_x > 0 && pixels_per_metre_y > 0) {
    bytes.insert(after_first_chunk, density_chunk(pixels_per_metre_x, pixels_per_metre_y));
  }
  return bytes;
}

Result<SheetPixels> pixels_of(const Sheet& sheet, double pixels_per_mm, Point corner, int width, int height) {
  auto fonts = load_sheet_fonts();
  if (!fonts) {
    return fonts.error();
  }
  const std::size_t across = static_cast<std::size_t>(width) * 3;
  SheetPixels pixels{width, height, std::vector<unsigned char>(across * static_cast<std::size_t>(height))};
  const CairoSurface surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, std::min(strip_pixels, height)));
  for (int top = 0; top < height; top += strip_pixels) {
    const int rows = std::min(strip_pixels, height - top);
    const CairoContext context(cairo_create(surface.get()));
    cairo_set_source_rgb(context.get(), 1, 1, 1);
    cairo_paint(context.get());
    cairo_translate(context.get(), 0, -top);
    cairo_scale(context.get(), pixels_per_mm, pixels_per_mm);
    cairo_translate(context.get(), -corner.x, -corner.y);
    draw_sheet(context.get(), sheet, *fonts);
    if (const auto status = cairo_status(context.get()); status != CAIRO_STATUS_SUCCESS) {
      return cairo_error(tr("the page can't be drawn"), status);
    }
    copy_rows(surface.get(), width, rows, pixels.rgb.data() + across * static_cast<std::size_t>(top));
  }
  return pixels;
}

Result<std::string> png_of(const Sheet& sheet, int pixels_per_mm) {
  const int width = static_cast<int>(std::lround(sheet.width * pixels_per_mm));
  const int height = static_cast<int>(std::lround(sheet.height * pixels_per_mm));
  if (3.0 * width * height > most_bytes) {
    return Error{{},
                 0,
                 0,
                 said("a picture of {} × {} pixels is too large", width, height),
                 tr("export PDF or SVG, or choose sheets of paper (a4, letter)")};
  }
  const auto pixels = pixels_of(sheet, pixels_per_mm, {}, width, height);
  return pixels ? png_of_pixels(width, height, pixels->rgb, pixels_per_mm * 1000, pixels_per_mm * 1000)
                : Result<std::string>(pixels.error());
}

} // namespace punchwright
