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

// Of the first size that fits.
Result<Pixels> yoke_pixels(const std::string& text, const ThumbnailWishes& wishes) {
  const auto opened = open_yoke(text, name_for_people(wishes.file), read_for_machine);
  if (!opened) {
    return opened.error();
  }
  if (const Failure failure = bed_failure(*opened)) {
    return *failure;
  }
  std::size_t size = 0;
  auto plan = plan_size(*opened, size);
  while (!plan && size + 1 < opened->yoke.sizes.size()) {
    plan = plan_size(*opened, ++size);
  }
  if (!plan) {
    return plan.error();
  }
  Pixels pixels{wishes.size, wishes.size, {}};
  for (const Colour colour : worn_picture(*opened, *plan, size, wishes.size)) {
    pixels.rgb.insert(pixels.rgb.end(), {colour.red, colour.green, colour.blue});
  }
  return pixels;
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
