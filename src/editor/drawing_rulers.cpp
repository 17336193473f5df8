// Around the drawing: row numbers from the bottom, column numbers above, needle numbers below, yarns at the side.
#include "editor/drawing_parts.hpp"
#include "machine/placement.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>

namespace punchwright::editor {

namespace {

// The smallest step of 1, 2, 5, 10 … at which numbers that need `room` px don't touch.
int number_step(float cell, float room) {
  constexpr std::array steps = {1, 2, 5, 10, 20, 50, 100, 200, 500};
  for (const int step : steps) {
    if (cell * static_cast<float>(step) >= room) {
      return step;
    }
  }
  return 1000;
}

float text_width(const Theme& theme, const char* text, bool bold = false) {
  ImFont* const face = bold ? theme.bold : theme.small;
  return face->CalcTextSizeA(theme.small->FontSize, 10000, 0, text).x;
}

void number(const Sight& sight, ScreenPoint at, const std::string& text, bool chosen) {
  const Theme& theme = sight.app.theme;
  sight.list.AddText(chosen ? theme.bold : theme.small, theme.small->FontSize, {std::round(at.x), std::round(at.y)},
                     ink(chosen ? theme.accent : theme.quiet_text), text.c_str());
}

// The needle nearest to the middle of the bed that knits a drawn column, for all columns.
std::vector<Needle> nearest_needles(const App& app) {
  const int width = app.work.design.grid.width();
  const Placement placement(app.work.design, app.work.profile);
  std::vector<Needle> needles(static_cast<std::size_t>(width));
  const int from = -(width / 2);
  for (int position = from; position < from + width; ++position) {
    needles[static_cast<std::size_t>(placement.column_of(Needle{position}))] = Needle{position};
  }
  return needles;
}

} // namespace

void draw_row_numbers(const Sight& sight, const ScreenBox& box) {
  const Theme& theme = sight.app.theme;
  sight.list.AddRectFilled({box.left, box.top}, {box.right, box.bottom}, ink(theme.ground));
  sight.list.PushClipRect({box.left, box.top}, {box.right, box.bottom}, true);
  const float tall = theme.small->FontSize;
  const int step = number_step(sight.layout.cell_height, tall * 1.05F);
  const int cursor = sight.app.view.cursor.row;
  const int first = std::max(0, sight.first_row);
  const int last = std::min(sight.layout.rows - 1, sight.last_row);
  for (int row = first; row <= last; ++row) {
    const ScreenBox cell = box_of(sight.layout, Cell{0, row});
    const bool chosen = row == cursor;
    const bool near_cursor =
        std::abs(cell.middle().y - box_of(sight.layout, Cell{0, cursor}).middle().y) < tall && !chosen;
    const bool near_first = row > 0 && static_cast<float>(row) * sight.layout.cell_height < tall;
    if (!chosen && (near_cursor || near_first || (row != 0 && (row + 1) % step != 0))) {
      continue;
    }
    const std::string text = std::to_string(row + 1);
    number(sight, {box.right - 6 * sight.unit() - text_width(theme, text.c_str(), chosen), cell.middle().y - tall / 2},
           text, chosen);
  }
  sight.list.PopClipRect();
}

void draw_column_numbers(const Sight& sight, const ScreenBox& box) {
  const Theme& theme = sight.app.theme;
  sight.list.AddRectFilled({box.left, box.top}, {box.right, box.bottom}, ink(theme.ground));
  sight.list.PushClipRect({box.left, box.top}, {box.right, box.bottom}, true);
  const int step = number_step(sight.layout.cell_width, text_width(theme, "200") + 3 * sight.unit());
  const int cursor = sight.app.view.cursor.column;
  const float room = text_width(theme, "200");
  for (int column = 0; column < sight.layout.columns; ++column) {
    const bool chosen = column == cursor;
    const bool beside = !chosen && static_cast<float>(std::abs(column - cursor)) * sight.layout.cell_width < room;
    const bool near_first = column > 0 && static_cast<float>(column) * sight.layout.cell_width < room;
    if (!chosen && (beside || near_first || (column != 0 && (column + 1) % step != 0))) {
      continue;
    }
    const ScreenBox cell = box_of(sight.layout, Cell{column, 0});
    const std::string text = std::to_string(column + 1);
    number(sight,
           {cell.middle().x - text_width(theme, text.c_str(), chosen) / 2,
            box.bottom - theme.small->FontSize - 3 * sight.unit()},
           text, chosen);
  }
  sight.list.PopClipRect();
}

void draw_needle_numbers(const Sight& sight, const ScreenBox& box) {
  const Theme& theme = sight.app.theme;
  const float unit = sight.unit();
  sight.list.AddRectFilled({box.left, box.top}, {box.right, box.bottom}, ink(theme.ground));
  sight.list.PushClipRect({box.left, box.top}, {box.right, box.bottom}, true);
  const std::vector<Needle> needles = nearest_needles(sight.app);
  const int step = number_step(sight.layout.cell_width, text_width(theme, "L100") + 2 * unit);
  const int cursor = sight.app.view.cursor.column;
  for (int column = 0; column < sight.layout.columns; ++column) {
    const Needle needle = needles[static_cast<std::size_t>(column)];
    const int shown = needle.position < 0 ? -needle.position : needle.position + 1;
    const bool chosen = column == cursor;
    const ScreenBox cell = box_of(sight.layout, Cell{column, 0});
    const float x = cell.middle().x;
    sight.list.AddLine({x, box.top}, {x, box.top + (shown % 5 == 0 ? 6 : 3) * unit}, ink(theme.quiet_text, 0.8F));
    if (needle.position == 0) { // the middle of the bed lies on the right of R1 as drawn
      const float middle = std::round(cell.right);
      sight.list.AddTriangleFilled({middle - 4 * unit, box.top + 7 * unit}, {middle + 4 * unit, box.top + 7 * unit},
                                   {middle, box.top}, ink(theme.accent));
    }
    const bool beside =
        !chosen && static_cast<float>(std::abs(column - cursor)) * sight.layout.cell_width < text_width(theme, "L100");
    const bool on_step = shown % step == 0 || (step == 5 && shown == 1 && needle.position < 0);
    if (chosen || (on_step && !beside)) {
      const std::string text = name_of(needle);
      number(sight, {x - text_width(theme, text.c_str(), chosen) / 2, box.top + 7 * unit}, text, chosen);
    }
  }
  sight.list.PopClipRect();
}

void draw_row_yarns(const Sight& sight, const ScreenBox& box) {
  const Theme& theme = sight.app.theme;
  const Document& design = design_in_sight(sight.app);
  const float unit = sight.unit();
  sight.list.AddRectFilled({box.left, box.top}, {box.right, box.bottom}, ink(theme.ground));
  sight.list.PushClipRect({box.left, box.top}, {box.right, box.bottom}, true);
  const float wide = std::floor((box.width() - 12 * unit) / 2);
  const float left = box.left + 6 * unit;
  int row = 0;
  for (const Band& band : design.bands) {
    const ScreenBox low = box_of(sight.layout, Cell{0, row});
    const ScreenBox high = box_of(sight.layout, Cell{0, row + band.rows - 1});
    row += band.rows;
    if (low.bottom < box.top || high.top > box.bottom) {
      continue;
    }
    const float top = std::max(box.top - 10, high.top + unit);
    const float bottom = std::min(box.bottom + 10, low.bottom - unit);
    const auto part = [&](float x, char key) {
      const Colour colour = seen_yarn(sight.app, key);
      swatch(sight.list, theme, {x, top, x + wide, bottom}, colour);
      if (bottom - top > theme.small->FontSize + 4 * unit) {
        const bool dark = contrast_ratio(colour, theme.dark_word) >= contrast_ratio(colour, theme.light_word);
        const Colour words = dark ? theme.dark_word : theme.light_word;
        const std::array<char, 2> letter{key, 0};
        const char* const text = letter.data();
        const float y = (std::max(top, box.top) + std::min(bottom, box.bottom) - theme.small->FontSize) / 2;
        sight.list.AddText(theme.small, theme.small->FontSize,
                           {std::round(x + (wide - text_width(theme, text)) / 2), std::round(y)}, ink(words), text);
      }
    };
    part(left, band.main);
    if (band.contrast) {
      part(left + wide, *band.contrast);
    }
  }
  sight.list.PopClipRect();
}

} // namespace punchwright::editor
