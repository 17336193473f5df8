// Opens and plans the yoke for its card; what does not fit has a title and no picture.
#include "editor/yoke_card.hpp"

#include "editor/yoke_cache.hpp"
#include "files/files.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright::editor {

namespace {

constexpr std::size_t largest_tier = std::size_t{2} * 1024 * 1024; // bytes; a list must not wait for more
constexpr int most_cells = 120;

// The left end of the ring, as wide as a card is; every so many pixels where there are more than cells.
SmallPicture small_of(const YokePicture& picture, float shape) {
  SmallPicture small;
  const auto wide = std::clamp(static_cast<int>(1.7F * shape * static_cast<float>(picture.height)), 1, picture.width);
  small.columns = std::min(most_cells, wide);
  small.rows = std::min(most_cells, picture.height);
  small.shape = shape * (static_cast<float>(picture.height) / static_cast<float>(small.rows)) /
                (static_cast<float>(wide) / static_cast<float>(small.columns));
  for (int row = 0; row < small.rows; ++row) {
    const int line = picture.height - 1 - row * picture.height / small.rows;
    for (int column = 0; column < small.columns; ++column) {
      const int place = column * wide / small.columns;
      const std::size_t pixel =
          (static_cast<std::size_t>(line) * static_cast<std::size_t>(picture.width) + static_cast<std::size_t>(place)) *
          3;
      small.cells.push_back({picture.rgb[pixel], picture.rgb[pixel + 1], picture.rgb[pixel + 2]});
    }
  }
  return small;
}

} // namespace

void fill_yoke_card(DesignCard& card, const std::string& text) {
  const FileReader read = [](const std::filesystem::path& path) { return read_file(path, largest_tier); };
  const auto opened = open_yoke(text, card.path.string(), read);
  if (!opened) {
    card.trouble = tr("Can't be read");
    return;
  }
  card.title = opened->yoke.title.empty() ? card.title : opened->yoke.title;
  for (const OpenedTier& tier : opened->tiers) {
    for (const Yarn& yarn : tier.document.yarns) {
      if (std::ranges::find(card.yarns, yarn) == card.yarns.end()) {
        card.yarns.push_back(yarn);
      }
    }
  }
  if (bed_failure(*opened)) {
    return;
  }
  const auto plan = try_plan(*opened, 0, parts_at_once(*opened, 0)).plan;
  if (!plan) {
    return;
  }
  const YokePicture picture = picture_of(*opened, *plan, 0, ColourSight::as_is);
  const Gauge& gauge = opened->tiers.front().document.gauge;
  card.stitches = picture.width;
  card.rows = picture.height;
  card.picture = small_of(picture, static_cast<float>(gauge.row_mm() / gauge.stitch_mm()));
}

} // namespace punchwright::editor
