// Brick, half drop, and the drawing beside or above its own image, as straight repeats.
#include "drawing/layouts.hpp"

#include "design/band_rows.hpp"
#include "drawing/marked_area.hpp"
#include "drawing/turns.hpp"
#include "words/words.hpp"

#include <array>

namespace punchwright {
namespace {

constexpr std::array all_layouts = {Layout::brick,
                                    Layout::half_drop,
                                    Layout::mirrored_beside,
                                    Layout::turned_beside,
                                    Layout::upside_down_beside,
                                    Layout::upside_down_above,
                                    Layout::mirrored_all_round};

struct Times {
  int across = 1;
  int up = 1;
};

Times times_of(Layout layout) {
  switch (layout) {
  case Layout::brick:
  case Layout::upside_down_above: return {1, 2};
  case Layout::mirrored_all_round: return {2, 2};
  default: return {2, 1};
  }
}

// Which drawn row each row of the straight repeat has its yarns from.
std::vector<int> sources_of_rows(int height, Layout layout) {
  const int times = times_of(layout).up;
  const bool reversed = layout != Layout::brick;
  std::vector<int> sources;
  for (int row = 0; row < times * height; ++row) {
    sources.push_back(row < height ? row : reversed ? 2 * height - 1 - row : row - height);
  }
  return sources;
}

Error refusal(std::string message, std::string remedy) {
  return Error{{}, 0, 0, std::move(message), std::move(remedy)};
}

// "1, 2, 3, 4, 6, 8, 12 or 24": the widths of a drawing that a card of `card_width` stitches holds `times` over.
std::string widths_that_fit(int card_width, int times, Layout layout) {
  std::string text;
  int last = 0;
  for (int width = 1; width * times <= card_width; ++width) {
    const bool halves = layout != Layout::brick || width % 2 == 0;
    if (halves && card_width % (width * times) == 0) {
      if (last > 0) {
        text += (text.empty() ? "" : ", ") + std::to_string(last);
      }
      last = width;
    }
  }
  if (last == 0) {
    return tr("none");
  }
  return text.empty() ? std::to_string(last) : said("{} or {}", text, last);
}

Failure no_such_layout(const Grid& drawing, Layout layout, std::optional<int> card_width) {
  if (layout == Layout::brick && drawing.width() % 2 != 0) {
    return refusal(
        said("brick moves each second course by half of {} stitches, which is no whole number", drawing.width()),
        tr("make the drawing one stitch wider or narrower"));
  }
  if (layout == Layout::half_drop && drawing.height() % 2 != 0) {
    return refusal(said("half drop moves each second column of repeats by half of {} rows, which is no whole number",
                        drawing.height()),
                   tr("insert or delete a row"));
  }
  const Times times = times_of(layout);
  const int width = times.across * drawing.width();
  const int height = times.up * drawing.height();
  if (width > widest_repeat || height > tallest_repeat) {
    return refusal(said("laid out, the drawing has {} stitches and {} rows", width, height),
                   said("{} stitches and {} rows at most", widest_repeat, tallest_repeat));
  }
  if (card_width && *card_width % width != 0) {
    return refusal(said("laid out, the drawing is {} stitches wide, and the card repeats over {}", width, *card_width),
                   said("a drawing of {} stitches fits this layout; needles that are brought forward by hand "
                        "have no such limit",
                        widths_that_fit(*card_width, times.across, layout)));
  }
  return std::nullopt;
}

// What lies beside the drawing, or above it, or both.
Grid image_of(const Grid& drawing, Layout layout) {
  switch (layout) {
  case Layout::brick: return shifted(drawing, drawing.width() / 2, 0);
  case Layout::half_drop: return shifted(drawing, 0, drawing.height() / 2);
  case Layout::mirrored_beside:
  case Layout::mirrored_all_round: return mirrored_left_right(drawing);
  case Layout::turned_beside: return turned(drawing, 2);
  case Layout::upside_down_beside:
  case Layout::upside_down_above: return mirrored_upside_down(drawing);
  }
  return drawing;
}

} // namespace

std::span<const Layout> layouts() {
  return all_layouts;
}

std::string_view name_of(Layout layout) {
  switch (layout) {
  case Layout::brick: return noted("brick");
  case Layout::half_drop: return noted("half drop");
  case Layout::mirrored_beside: return noted("mirrored beside");
  case Layout::turned_beside: return noted("turned beside");
  case Layout::upside_down_beside: return noted("upside down beside");
  case Layout::upside_down_above: return noted("upside down above");
  case Layout::mirrored_all_round: return noted("mirrored all round");
  }
  return "";
}

std::string_view description_of(Layout layout) {
  switch (layout) {
  case Layout::brick: return tr("each second course of repeats moved sideways by half the width: twice as high");
  case Layout::half_drop: return tr("each second column of repeats moved up by half the height: twice as wide");
  case Layout::mirrored_beside: return tr("the drawing and its mirror image side by side: twice as wide");
  case Layout::turned_beside: return tr("the drawing and itself turned by a half turn side by side: twice as wide");
  case Layout::upside_down_beside: return tr("the drawing and itself upside down side by side: twice as wide");
  case Layout::upside_down_above: return tr("itself upside down above it: twice as high");
  case Layout::mirrored_all_round: return tr("mirrored beside it, and both upside down above: twice as wide and high");
  }
  return "";
}

Result<Grid> laid_out(const Grid& drawing, Layout layout, std::optional<int> card_width) {
  if (auto failure = no_such_layout(drawing, layout, card_width)) {
    return *failure;
  }
  const int width = drawing.width();
  const int height = drawing.height();
  const Times times = times_of(layout);
  const Grid image = image_of(drawing, layout);
  Grid straight = set_down(Grid(times.across * width, times.up * height), {0, 0}, drawing);
  if (layout == Layout::mirrored_all_round) {
    straight = set_down(straight, {width, 0}, image);
    straight = set_down(straight, {0, height}, mirrored_upside_down(drawing));
    return set_down(straight, {width, height}, mirrored_upside_down(image));
  }
  return set_down(straight, times.across == 2 ? Cell{width, 0} : Cell{0, height}, image);
}

Result<std::vector<Edit>> layout_edits(const Document& document, Layout layout, std::optional<int> card_width) {
  auto straight = laid_out(document.grid, layout, card_width);
  if (!straight) {
    return straight.error();
  }
  std::vector<Edit> edits{Resize{straight->width(), straight->height(), AcrossAnchor::left, UpAnchor::bottom},
                          ChangeBands{bands_for_rows(document.bands, sources_of_rows(document.grid.height(), layout))},
                          Redraw{std::move(straight).value(), std::string("lay out: ") + std::string(name_of(layout))}};
  Document tried = document;
  for (const Edit& edit : edits) {
    if (const auto change = apply_edit(tried, edit); !change) {
      return change.error();
    }
  }
  return edits;
}

} // namespace punchwright
