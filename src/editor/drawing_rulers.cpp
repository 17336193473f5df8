// Around the drawing: row numbers from the bottom, column numbers above, needle numbers below, yarns at the side.
#include "editor/drawing_parts.hpp"
#include "editor/needle_names.hpp"
#include "editor/needle_strip.hpp"
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
  for (int column = 0; column < sight.layout.columns; ++column) {
    const Needle needle = needles[static_cast<std::size_t>(column)];
    const ScreenBox cell = box_of(sight.layout, Cell{column, 0});
    const float x = cell.middle().x;
    sight.list.AddLine({x, box.top}, {x, box.top + (number_of(needle) % 5 == 0 ? 6 : 3) * unit},
                       ink(theme.quiet_text, 0.8F));
    if (needle.position == 0) { // the middle of the bed lies on the right of R1 as drawn
      const float middle = std::round(cell.right);
      sight.list.AddTriangleFilled({middle - 4 * unit, box.top + 7 * unit}, {middle + 4 * unit, box.top + 7 * unit},
                                   {middle, box.top}, ink(theme.accent));
    }
  }
  const int cursor = sight.app.view.cursor.column;
  const auto width = [&](const std::string& name, bool chosen) { return text_width(theme, name.c_str(), chosen); };
  for (const int column : columns_with_names(needles, {sight.layout.cell_width, 8 * unit, step, cursor, width})) {
    const std::string name = name_of(needles[static_cast<std::size_t>(column)]);
    const float x = box_of(sight.layout, Cell{column, 0}).middle().x;
    number(sight, {x - width(name, column == cursor) / 2, box.top + 7 * unit}, name, column == cursor);
  }
  sight.list.PopClipRect();
}

namespace {

constexpr float least_letter = 8; // units of layout in height, below which a letter stands beside its yarn

// The room of a band in the strip of yarns: between its rows' edges, less what a name between two bands takes.
struct BandRoom {
  const Band* band = nullptr;
  int first_row = 0;
  float top = 0;
  float bottom = 0;
};

std::vector<BandRoom> rooms_of_bands(const Sight& sight) {
  std::vector<BandRoom> rooms;
  int row = 0;
  for (const Band& band : design_in_sight(sight.app).bands) {
    const ScreenBox low = box_of(sight.layout, Cell{0, row});
    const ScreenBox high = box_of(sight.layout, Cell{0, row + band.rows - 1});
    rooms.push_back({&band, row, high.top + sight.unit(), low.bottom - sight.unit()});
    row += band.rows;
  }
  return rooms;
}

// Of inserted rows whose strip is too low for words: the yarn's name between the yarns of the two bands, where these
// are high enough to give it room.
void name_low_strips(const Sight& sight, const ScreenBox& box, std::vector<BandRoom>& rooms) {
  const Theme& theme = sight.app.theme;
  const Strips& strips = strips_in_sight(sight.app);
  const float tall = theme.small->FontSize;
  if (strips.count == 0 || strips_have_words(sight)) {
    return;
  }
  for (std::size_t place = 1; place < rooms.size(); ++place) {
    BandRoom& above = rooms[place];
    BandRoom& below = rooms[place - 1];
    const InsertedRows& inserted = strips.below[static_cast<std::size_t>(above.first_row)];
    if (inserted.count == 0 || std::min(above.bottom - above.top, below.bottom - below.top) < 3 * tall) {
      continue;
    }
    const float middle = (above.bottom + below.top) / 2;
    above.bottom = middle - tall / 2;
    below.top = middle + tall / 2;
    const Yarn& yarn = yarn_of(sight.app.work.design, inserted.yarn);
    const std::string name = yarn.name.empty() ? std::string(1, yarn.key) : yarn.name;
    sight.list.AddText(theme.small, tall, {std::round(box.left + 6 * sight.unit()), std::round(middle - tall / 2)},
                       ink(theme.text), name.c_str());
  }
}

// The yarns' letters: on them, smaller on a low band, and beside it where it is lower than a letter can be.
class LetterWriter {
public:
  LetterWriter(const Sight& sight, const ScreenBox& box) : sight_(sight), box_(box) {}

  void on(char key, const ScreenBox& yarn, Colour colour) const {
    const Theme& theme = sight_.app.theme;
    const float room = yarn.height() - 4 * sight_.unit();
    const float size = std::clamp(room, least_letter * sight_.unit(), theme.small->FontSize);
    const bool dark = contrast_ratio(colour, theme.dark_word) >= contrast_ratio(colour, theme.light_word);
    const std::array<char, 2> letter{key, 0};
    const float wide = theme.small->CalcTextSizeA(size, 10000, 0, letter.data()).x;
    const float y = (std::max(yarn.top, box_.top) + std::min(yarn.bottom, box_.bottom) - size) / 2;
    sight_.list.AddText(theme.small, size, {std::round(yarn.middle().x - wide / 2), std::round(y)},
                        ink(dark ? theme.dark_word : theme.light_word), letter.data());
  }
  // As many as don't touch; the tip names the others.
  void beside(const Band& band, float left, float middle) {
    const Theme& theme = sight_.app.theme;
    const float tall = theme.small->FontSize;
    if (middle + tall / 2 > free_above_) {
      return;
    }
    free_above_ = middle - tall / 2;
    const std::string letters = std::string(1, band.main) + (band.contrast ? std::string(1, *band.contrast) : "");
    sight_.list.AddText(theme.small, tall, {std::round(left), std::round(middle - tall / 2)}, ink(theme.text),
                        letters.c_str());
  }

private:
  const Sight& sight_;
  const ScreenBox& box_;
  float free_above_ = 1.0e6F; // bands come from the lowest up
};

} // namespace

void draw_row_yarns(const Sight& sight, const ScreenBox& box) {
  const Theme& theme = sight.app.theme;
  const float unit = sight.unit();
  sight.list.AddRectFilled({box.left, box.top}, {box.right, box.bottom}, ink(theme.ground));
  sight.list.PushClipRect({box.left, box.top}, {box.right, box.bottom}, true);
  std::vector<BandRoom> rooms = rooms_of_bands(sight);
  name_low_strips(sight, box, rooms);
  const auto is_low = [&](const BandRoom& room) { return room.bottom - room.top < least_letter * unit; };
  const float letters = std::ranges::any_of(rooms, is_low) ? text_width(theme, "MM") + 2 * unit : 0;
  const float wide = std::floor((box.width() - 12 * unit - letters) / 2);
  const float left = box.left + 6 * unit;
  LetterWriter writer(sight, box);
  for (const BandRoom& room : rooms) {
    if (room.bottom < box.top || room.top > box.bottom) {
      continue;
    }
    const float top = std::max(box.top - 10, room.top);
    const float bottom = std::min(box.bottom + 10, room.bottom);
    const auto part = [&](float x, char key) {
      const Colour colour = seen_yarn(sight.app, key);
      swatch(sight.list, theme, {x, top, x + wide, bottom}, colour);
      if (!is_low(room)) {
        writer.on(key, {x, top, x + wide, bottom}, colour);
      }
    };
    part(left, room.band->main);
    if (room.band->contrast) {
      part(left + wide, *room.band->contrast);
    }
    if (is_low(room)) {
      writer.beside(*room.band, left + 2 * wide + 2 * unit, (room.top + room.bottom) / 2);
    }
  }
  sight.list.PopClipRect();
}

} // namespace punchwright::editor
