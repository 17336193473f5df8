// The form by the first bytes, then the two colours.
#include "pictures/picture.hpp"

#include "design/light.hpp"
#include "pictures/picture_forms.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <map>

namespace punchwright {
namespace {

using Counts = std::map<std::uint32_t, std::int64_t>; // pixels of each colour

constexpr std::array<std::string_view, 3> extensions = {".png", ".pbm", ".xbm"};

Colour colour_of(std::uint32_t pixel) {
  return {static_cast<std::uint8_t>(pixel >> 16), static_cast<std::uint8_t>(pixel >> 8),
          static_cast<std::uint8_t>(pixel)};
}

Error no_picture(const std::string& what) {
  return picture_error(what, tr("save the picture as PNG, PBM or XBM, with a pixel for each stitch"));
}

Result<Pixels> read_pixels(std::string_view bytes) {
  constexpr std::string_view png_signature("\x89PNG\r\n\x1a\n", 8); // W3C PNG, 5.2
  if (bytes.starts_with(png_signature)) {
    return read_png(bytes);
  }
  if (auto pixels = read_two_tones(bytes)) {
    return std::move(*pixels);
  }
  if (bytes.size() > 2 && bytes[0] == 'P' && bytes[1] >= '2' && bytes[1] <= '7') {
    return no_picture(said("a picture of the form P{} has greys or colours", bytes[1]));
  }
  if (bytes.starts_with("\xff\xd8\xff")) {
    return no_picture(tr("this is a JPEG, which smears two colours into many"));
  }
  return no_picture(bytes.empty() ? tr("the file is empty") : tr("this is no PNG, PBM or XBM picture"));
}

Error wrong_count(const Counts& counts, std::size_t pixels) {
  if (counts.size() < 2) {
    return picture_error(tr("the picture has one colour"), tr("a drawing needs two: one for main, one for contrast"));
  }
  std::vector<std::int64_t> most;
  for (const auto& [colour, count] : counts) {
    most.push_back(count);
  }
  std::ranges::partial_sort(most, most.begin() + 2, std::ranges::greater());
  const auto percent = static_cast<double>(most[0] + most[1]) * 100 / static_cast<double>(pixels);
  return picture_error(said("the picture has {} colours, and a drawing has two", counts.size()),
                       said("reduce it to two in a paint program, without smoothed edges; the two that it has "
                            "most of cover {} % of it",
                            decimal(percent, 0)));
}

Result<Picture> two_colours(const Pixels& pixels) {
  Counts counts;
  for (const std::uint32_t pixel : pixels.colours) {
    ++counts[pixel];
  }
  if (counts.size() != 2) {
    return wrong_count(counts, pixels.colours.size());
  }
  std::uint32_t dark = counts.begin()->first;
  std::uint32_t light = counts.rbegin()->first;
  if (relative_luminance(colour_of(light)) < relative_luminance(colour_of(dark))) {
    std::swap(dark, light);
  }
  Picture picture{Grid(pixels.width, pixels.height), colour_of(dark), colour_of(light)};
  auto pixel = pixels.colours.begin();
  for (int row = pixels.height - 1; row >= 0; --row) {
    for (int column = 0; column < pixels.width; ++column) {
      picture.darker.set(column, row, *pixel++ == dark);
    }
  }
  return picture;
}

} // namespace

std::optional<Result<Pixels>> read_two_tones(std::string_view bytes, const LargestPicture& largest) {
  if (bytes.starts_with("P1") || bytes.starts_with("P4")) {
    return read_pbm(bytes, largest);
  }
  const std::size_t first = bytes.find_first_not_of(" \t\r\n");
  const std::string_view text = bytes.substr(std::min(first, bytes.size()));
  if (text.starts_with("#define") || text.starts_with("/*")) {
    return read_xbm(bytes, largest);
  }
  return std::nullopt;
}

std::vector<std::string> picture_extensions() {
  return {extensions.begin(), extensions.end()};
}

bool has_extension_of(std::string_view name, const std::vector<std::string>& extensions_there) {
  const std::size_t dot = name.rfind('.');
  std::string extension(dot == std::string_view::npos ? std::string_view{} : name.substr(dot));
  std::ranges::transform(extension, extension.begin(), [](char letter) {
    return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
  });
  return std::ranges::find(extensions_there, extension) != extensions_there.end();
}

bool has_picture_name(std::string_view name) {
  return has_extension_of(name, picture_extensions());
}

Failure too_large(std::int64_t width, std::int64_t height, const LargestPicture& largest) {
  if (width < 1 || height < 1) {
    return picture_error(said("the picture is {} pixels wide and {} high", width, height),
                         tr("draw one pixel at least"));
  }
  if (width <= largest.width && height <= largest.height) {
    return std::nullopt;
  }
  return picture_error(said("the picture is {} pixels wide and {} high", width, height),
                       said("a pixel is a stitch, and a drawing has {} × {} at most: cut or scale it, without "
                            "smoothing",
                            largest.width, largest.height));
}

Result<Picture> read_picture(std::string_view bytes, const std::string& name) {
  const auto pixels = read_pixels(bytes);
  auto picture = pixels ? two_colours(*pixels) : Result<Picture>(pixels.error());
  if (!picture) {
    Error error = picture.error();
    error.file = name;
    return error;
  }
  return picture;
}

Grid drawing_of(const Picture& picture, ContrastIs contrast) {
  Grid drawing = picture.darker;
  if (contrast == ContrastIs::lighter) {
    for (int row = 0; row < drawing.height(); ++row) {
      for (int column = 0; column < drawing.width(); ++column) {
        drawing.flip(column, row);
      }
    }
  }
  return drawing;
}

Document design_of(const Picture& picture, ContrastIs contrast, const std::string& title) {
  const Grid drawing = drawing_of(picture, contrast);
  Document design = blank_document(drawing.width(), drawing.height());
  design.grid = drawing;
  design.title = title;
  const bool colourless = picture.dark == colour_of(black_pixel) && picture.light == colour_of(white_pixel);
  if (!colourless) {
    const bool darker = contrast == ContrastIs::darker;
    design.yarns = {Yarn{'A', darker ? tr("Light") : tr("Dark"), darker ? picture.light : picture.dark},
                    Yarn{'B', darker ? tr("Dark") : tr("Light"), darker ? picture.dark : picture.light}};
  }
  return design;
}

} // namespace punchwright
