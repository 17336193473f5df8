// PNG by libpng, which unpacks no more than the size in the head says: a small file can't fill the memory.
#include "pictures/picture_forms.hpp"
#include "words/words.hpp"

#include <png.h>

namespace punchwright {
namespace {

// libpng's own value, freed whatever happens.
struct PngImage {
  png_image image{};
  PngImage() { image.version = PNG_IMAGE_VERSION; }
  ~PngImage() { png_image_free(&image); }
  PngImage(const PngImage&) = delete;
  PngImage& operator=(const PngImage&) = delete;
};

Error broken(const png_image& image) {
  return picture_error(said("the PNG is broken ({})", static_cast<const char*>(image.message)),
                       tr("save or fetch it again"));
}

std::uint32_t colour_of(const std::uint8_t* rgba) {
  std::uint32_t colour = 0;
  for (int part = 0; part < 3; ++part) {
    colour = colour << 8 | on_white(rgba[part], rgba[3]);
  }
  return colour;
}

} // namespace

Result<PngPixels> read_png_pixels(std::string_view bytes,
                                  const std::function<Failure(std::int64_t, std::int64_t)>& refused) {
  PngImage png;
  png_image& image = png.image;
  if (png_image_begin_read_from_memory(&image, bytes.data(), bytes.size()) == 0) {
    return broken(image);
  }
  if (const Failure failure = refused(image.width, image.height)) {
    return *failure;
  }
  image.format = PNG_FORMAT_RGBA;
  image.flags |= PNG_IMAGE_FLAG_16BIT_sRGB; // 16 bits without a gamma are sRGB too, as every other program has it
  PngPixels pixels{static_cast<int>(image.width), static_cast<int>(image.height), {}};
  pixels.rgba.resize(PNG_IMAGE_SIZE(image));
  if (png_image_finish_read(&image, nullptr, pixels.rgba.data(), 0, nullptr) == 0) {
    return broken(image);
  }
  return pixels;
}

Result<Pixels> read_png(std::string_view bytes) {
  const auto png =
      read_png_pixels(bytes, [](std::int64_t width, std::int64_t height) { return too_large(width, height); });
  if (!png) {
    return png.error();
  }
  Pixels pixels{png->width, png->height, {}};
  for (std::size_t place = 0; place < png->rgba.size(); place += 4) {
    pixels.colours.push_back(colour_of(&png->rgba[place]));
  }
  return pixels;
}

} // namespace punchwright
