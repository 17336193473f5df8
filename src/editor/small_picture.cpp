// Stitches mixed down to a picture's cells.
#include "editor/small_picture.hpp"

#include "design/repeat_file.hpp"
#include "editor/yoke_card.hpp"
#include "editor/yoke_work.hpp"
#include "files/files.hpp"
#include "pictures/picture.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace punchwright::editor {

namespace {

constexpr std::size_t largest_shown = std::size_t{2} * 1024 * 1024; // bytes; a list must not wait for more

Colour mean_of(const std::vector<Colour>& colours) {
  std::array<double, 3> sum{};
  for (const Colour colour : colours) {
    sum[0] += colour.red;
    sum[1] += colour.green;
    sum[2] += colour.blue;
  }
  const auto count = static_cast<double>(std::max<std::size_t>(1, colours.size()));
  const auto part = [count](double value) { return static_cast<std::uint8_t>(std::lround(value / count)); };
  return {part(sum[0]), part(sum[1]), part(sum[2])};
}

Result<Document> design_in_text(const std::string& text) {
  auto read = read_repeat(text, "design");
  return read ? Result<Document>(std::move(read).value().document) : Result<Document>(read.error());
}

Result<Document> design_in_picture(const std::string& bytes) {
  const auto picture = read_picture(bytes, "picture");
  return picture ? Result<Document>(design_of(*picture, ContrastIs::darker, {})) : Result<Document>(picture.error());
}

} // namespace

SmallPicture small_picture(const Document& design, double width_by_height, int most) {
  const Grid& grid = design.grid;
  const double wide = grid.width() * design.gauge.stitch_mm();
  const double tall = grid.height() * design.gauge.row_mm();
  const int times = std::clamp(static_cast<int>(std::lround(width_by_height * tall / wide)), 1, 6);
  const int stitches = grid.width() * times;
  SmallPicture picture;
  picture.columns = std::min(most, stitches);
  picture.rows = std::min(most, grid.height());
  picture.shape = static_cast<float>(tall / picture.rows / (wide * times / picture.columns));
  picture.cells.reserve(static_cast<std::size_t>(picture.columns) * static_cast<std::size_t>(picture.rows));
  std::vector<Colour> under;
  for (int row = 0; row < picture.rows; ++row) {
    const int low = row * grid.height() / picture.rows;
    const int high = std::max(low + 1, (row + 1) * grid.height() / picture.rows);
    for (int column = 0; column < picture.columns; ++column) {
      const int left = column * stitches / picture.columns;
      const int right = std::max(left + 1, (column + 1) * stitches / picture.columns);
      under.clear();
      for (int drawn = low; drawn < high; ++drawn) {
        const Band& band = design.bands[band_index_at(design, drawn)];
        for (int stitch = left; stitch < right; ++stitch) {
          const bool contrast = grid.at(stitch % grid.width(), drawn);
          under.push_back(yarn_of(design, contrast ? band.contrast.value_or(band.main) : band.main).colour);
        }
      }
      picture.cells.push_back(mean_of(under));
    }
  }
  return picture;
}

DesignCard design_card(const std::filesystem::path& path, double width_by_height) {
  DesignCard card;
  card.path = path;
  card.title = path.stem().string();
  std::error_code ignored;
  if (!std::filesystem::is_regular_file(path, ignored)) { // reading a pipe would wait
    card.missing = !std::filesystem::exists(path, ignored);
    card.trouble = card.missing ? "No longer there" : "No file that can be read";
    return card;
  }
  const bool picture = has_picture_name(path.string());
  const auto text = read_file(path, picture ? largest_picture_file : largest_shown);
  if (!text) {
    card.trouble = "Can't be opened";
    return card;
  }
  if (has_yoke_name(path)) {
    fill_yoke_card(card, *text);
    return card;
  }
  const auto read = picture ? design_in_picture(*text) : design_in_text(*text);
  if (!read) {
    card.trouble = picture ? read.error().message : "Can't be read";
    return card;
  }
  const Document& design = *read;
  if (!design.title.empty()) {
    card.title = design.title;
  }
  card.stitches = design.grid.width();
  card.rows = design.grid.height();
  card.yarns = design.yarns;
  card.picture = small_picture(design, width_by_height);
  return card;
}

} // namespace punchwright::editor
