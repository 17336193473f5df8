// Photographs by libjpeg-turbo's own interface: the head first, then the pixels, from memory to memory.
#include "tracing/photo_forms.hpp"

#include <cstddef>
#include <memory>
#include <string_view>
#include <turbojpeg.h>

namespace punchwright {
namespace {

using Reader = std::unique_ptr<void, int (*)(tjhandle)>;

// What cameras leave between two segments harms no pixel; every other warning stands for pixels that were made up.
bool harmless(tjhandle reader) {
  return tjGetErrorCode(reader) == TJERR_WARNING &&
         std::string_view(tjGetErrorStr2(reader)).find("extraneous bytes before marker") != std::string_view::npos;
}

std::uint8_t printed(std::uint8_t ink, std::uint8_t black) {
  return static_cast<std::uint8_t>((ink * black + 127) / 255);
}

std::vector<std::uint8_t> three_of_four_inks(const std::vector<std::uint8_t>& inks) {
  std::vector<std::uint8_t> rgb;
  rgb.reserve(inks.size() / 4 * 3);
  for (std::size_t pixel = 0; pixel < inks.size(); pixel += 4) {
    for (std::size_t ink = 0; ink < 3; ++ink) {
      rgb.push_back(printed(inks[pixel + ink], inks[pixel + 3]));
    }
  }
  return rgb;
}

} // namespace

Result<Colours> read_jpeg(std::string_view bytes) {
  const Reader reader(tjInitDecompress(), tjDestroy);
  if (reader == nullptr) {
    return broken_picture();
  }
  const auto* const data = reinterpret_cast<const unsigned char*>(bytes.data());
  const auto size = static_cast<unsigned long>(bytes.size());
  Colours colours;
  int subsampling = 0;
  int space = 0;
  if (tjDecompressHeader3(reader.get(), data, size, &colours.width, &colours.height, &subsampling, &space) != 0 &&
      !harmless(reader.get())) {
    return broken_picture();
  }
  if (const Failure failure = too_many_pixels(colours.width, colours.height)) {
    return *failure;
  }
  const bool inks = space == TJCS_CMYK || space == TJCS_YCCK;
  const TJPF form = inks ? TJPF_CMYK : TJPF_RGB;
  const auto pixels = static_cast<std::size_t>(colours.width) * static_cast<std::size_t>(colours.height);
  std::vector<std::uint8_t> unpacked(pixels * static_cast<std::size_t>(tjPixelSize[form]));
  // A picture of thousands of scans takes minutes to unpack, and no camera makes one.
  constexpr int how = TJFLAG_ACCURATEDCT | TJFLAG_LIMITSCANS;
  if (tjDecompress2(reader.get(), data, size, unpacked.data(), colours.width, 0, colours.height, form, how) != 0 &&
      !harmless(reader.get())) {
    return broken_picture();
  }
  colours.rgb = inks ? three_of_four_inks(unpacked) : std::move(unpacked);
  return colours;
}

} // namespace punchwright
