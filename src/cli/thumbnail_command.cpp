// The picture that a file manager shows of a design or a yoke, asked for as desktops ask: so many pixels, PNG whatever
// the name. The desktop is never kept waiting: a yoke is shown in one size, and from above, where it is square.
#include "cli/commands.hpp"
#include "cli/output.hpp"
#include "design/repeat_file.hpp"
#include "files/files.hpp"
#include "pictures/small_picture.hpp"
#include "pieces/worn_yoke.hpp"
#include "sheets/writers.hpp"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <optional>

namespace punchwright::cli {
namespace {

struct Pixels {
  int width = 0;
  int height = 0;
  std::vector<unsigned char> rgb;
};

// The longer side gets that many pixels.
Pixels enlarged(const SmallPicture& picture, int size) {
  const double wide = picture.columns;
  const double high = static_cast<double>(picture.rows) * static_cast<double>(picture.shape);
  const double scale = size / std::max(wide, high);
  Pixels pixels;
  pixels.width = std::clamp(static_cast<int>(std::lround(wide * scale)), 1, size);
  pixels.height = std::clamp(static_cast<int>(std::lround(high * scale)), 1, size);
  pixels.rgb.reserve(static_cast<std::size_t>(pixels.width) * static_cast<std::size_t>(pixels.height) * 3);
  for (int line = 0; line < pixels.height; ++line) {
    const int row = picture.rows - 1 - line * picture.rows / pixels.height;
    for (int x = 0; x < pixels.width; ++x) {
      const Colour colour = picture.at(x * picture.columns / pixels.width, row);
      pixels.rgb.insert(pixels.rgb.end(), {colour.red, colour.green, colour.blue});
    }
  }
  return pixels;
}

Result<Pixels> design_pixels(const std::string& text, const ThumbnailWishes& wishes) {
  const auto read = read_repeat(text, name_for_people(wishes.file));
  if (!read) {
    return read.error();
  }
  return enlarged(small_picture(read->document, 1.0, wishes.size), wishes.size);
}

Pixels square(const std::vector<Colour>& colours, int size) {
  Pixels pixels{size, size, {}};
  for (const Colour colour : colours) {
    pixels.rgb.insert(pixels.rgb.end(), {colour.red, colour.green, colour.blue});
  }
  return pixels;
}

// Of the first size that fits; nothing where none does.
std::optional<Pixels> stitched_pixels(const OpenedYoke& opened, int cells) {
  if (bed_failure(opened)) {
    return std::nullopt;
  }
  for (std::size_t size = 0; size < opened.yoke.sizes.size(); ++size) {
    if (const auto plan = plan_size(opened, size)) {
      return square(worn_picture(opened, *plan, size, cells), cells);
    }
  }
  return std::nullopt;
}

// Desktops run a thumbnailer where it reads the one file alone. So a yoke whose tiers are out of reach is no broken
// one: it is shown without their motifs.
Result<Pixels> yoke_pixels(const std::string& text, const ThumbnailWishes& wishes) {
  const std::string name = name_for_people(wishes.file);
  const auto yoke = read_yoke(text, name);
  if (!yoke) {
    return yoke.error();
  }
  bool out_of_reach = false;
  const auto opened = open_yoke(text, name, [&out_of_reach](const std::filesystem::path& path) {
    auto content = read_for_machine(path);
    out_of_reach = out_of_reach || !content;
    return content;
  });
  if (!opened && !out_of_reach) {
    return opened.error();
  }
  const auto stitched = opened ? stitched_pixels(*opened, wishes.size) : std::nullopt;
  return stitched ? *stitched : square(worn_outline(yoke->yoke, wishes.size), wishes.size);
}

bool has_yoke_name(const std::string& file) {
  return std::filesystem::path(file).extension() == ".yoke";
}

} // namespace

int draw_thumbnail(const ThumbnailWishes& wishes) {
  const auto text = read_input(wishes.file);
  if (!text) {
    return refuse(text.error());
  }
  const auto pixels = has_yoke_name(wishes.file) ? yoke_pixels(*text, wishes) : design_pixels(*text, wishes);
  if (!pixels) {
    return refuse(pixels.error());
  }
  auto png = png_of_pixels(pixels->width, pixels->height, pixels->rgb, 0, 0);
  if (!png) {
    return refuse(png.error());
  }
  if (const auto failure = write_file(wishes.output, *png)) {
    return refuse(*failure);
  }
  return done;
}

} // namespace punchwright::cli
