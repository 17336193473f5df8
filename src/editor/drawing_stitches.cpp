// The stitches themselves: runs of one colour as rectangles, and only those that can be seen.
#include "editor/drawing_parts.hpp"
#include "editor/panels.hpp"
#include "editor/status_words.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright::editor {

int neighbour_columns(int width) {
  return std::clamp(width, 8, 24);
}

int neighbour_rows(int height) {
  return std::clamp(height, 6, 24);
}

// Without the strip below row 1: its rows lie between two repetitions.
ScreenBox Sight::repeat_box() const {
  const ScreenBox low = box_of(layout, Cell{0, 0});
  const ScreenBox high = box_of(layout, Cell{layout.columns - 1, layout.rows - 1});
  return {low.left, high.top, high.right, low.bottom};
}

float form_shown(float cell) {
  constexpr float begins = 18;
  constexpr float whole = 40;
  return std::clamp((cell - begins) / (whole - begins), 0.0F, 1.0F);
}

namespace {

struct RowColours {
  Colour main;
  Colour contrast;
  bool operator==(const RowColours&) const = default;
};

RowColours colours_of(const Sight& sight, int row) {
  const auto place = static_cast<std::size_t>(row) * 2;
  const std::vector<char>& yarns = row_yarns_in_sight(sight.app);
  const char main = yarns[place];
  const char contrast = yarns[place + 1];
  const Colour main_colour = seen_yarn(sight.app, main);
  return {main_colour, contrast != 0 ? seen_yarn(sight.app, contrast) : main_colour};
}

float edge(const Sight& sight, int column) {
  return std::round(sight.layout.origin.x + static_cast<float>(column) * sight.layout.cell_width);
}

// The runs of one row, of one colour each and going on over the joins: draw(first column, column behind the last,
// whether it is contrast).
template <class Draw> void each_run(const Sight& sight, int row, Draw&& draw) {
  const Grid& grid = design_in_sight(sight.app).grid;
  const int end = sight.last_column + 1;
  if (grid.all_main(row)) {
    return draw(sight.first_column, end, false);
  }
  const int width = grid.width();
  int column = wrapped(Cell{sight.first_column, 0}, width, 1).column;
  int run_from = sight.first_column;
  bool run_is_contrast = grid.at(column, row);
  for (int place = sight.first_column; place < end; ++place) {
    const bool contrast = grid.at(column, row);
    if (contrast != run_is_contrast) {
      draw(run_from, place, run_is_contrast);
      run_from = place;
      run_is_contrast = contrast;
    }
    column = column + 1 == width ? 0 : column + 1;
  }
  draw(run_from, end, run_is_contrast);
}

// Rows and runs that fall between two pixels are left out: of a large drawing that is seen whole, most.
void draw_contrast(const Sight& sight, int row, const ScreenBox& box, Colour colour) {
  if (box.top == box.bottom) {
    return;
  }
  const ImU32 fill = ink(colour);
  each_run(sight, row, [&](int from, int to, bool contrast) {
    const float left = edge(sight, from);
    const float right = edge(sight, to);
    if (contrast && left != right) {
      sight.list.AddRectFilled({left, box.top}, {right, box.bottom}, fill);
    }
  });
}

// One texture over all rows: `row_of` names the row whose stitches are drawn in a row's box.
class FormDrawer {
public:
  FormDrawer(const Sight& sight, unsigned texture, float opacity)
      // Dear ImGui carries OpenGL's texture numbers as pointers.
      // NOLINTNEXTLINE(performance-no-int-to-ptr)
      : sight_(sight), texture_(reinterpret_cast<ImTextureID>(static_cast<std::intptr_t>(texture))), opacity_(opacity) {
  }

  void run(int from, int to, const ScreenBox& box, Colour colour) {
    sight_.list.AddImage(texture_, {edge(sight_, from), box.top}, {edge(sight_, to), box.bottom}, {0, 1},
                         {static_cast<float>(to - from), 0}, ink(colour, opacity_));
  }
  // All stitches of a drawn row, in that box. Each over its own colour alone: while the form is half transparent, main
  // below contrast would be seen through it.
  void row(int drawn, const ScreenBox& box) {
    const RowColours colours = colours_of(sight_, drawn);
    each_run(sight_, drawn,
             [&](int from, int to, bool contrast) { run(from, to, box, contrast ? colours.contrast : colours.main); });
  }

private:
  const Sight& sight_;
  ImTextureID texture_;
  float opacity_;
};

ScreenBox whole_pixels(ScreenBox box) {
  box.top = std::round(box.top);
  box.bottom = std::round(box.bottom);
  return box;
}

void draw_forms(const Sight& sight) {
  const float shown = form_shown(std::min(sight.layout.cell_width, sight.layout.cell_height) / sight.unit());
  const StitchTextures& textures = sight.app.caches.stitch;
  if (shown <= 0 || textures.own == 0) {
    return;
  }
  const auto inside = [&](int row) { return wrapped(Cell{0, row}, 1, sight.layout.rows).row; };
  FormDrawer own(sight, textures.own, shown);
  for (int row = sight.first_row; row <= sight.last_row; ++row) {
    own.row(inside(row), whole_pixels(box_of(sight.layout, Cell{0, row})));
  }
  FormDrawer foot(sight, textures.foot, shown);
  for (int row = sight.first_row; row <= sight.last_row; ++row) {
    const ScreenBox box = whole_pixels(box_of(sight.layout, Cell{0, row}));
    const int above = inside(row + 1);
    if (has_strip_below(sight.layout, above)) { // inserted rows come next
      const char yarn = strips_in_sight(sight.app).below[static_cast<std::size_t>(above)].yarn;
      foot.run(sight.first_column, sight.last_column + 1, box, seen_yarn(sight.app, yarn));
    } else {
      foot.row(above, box);
    }
  }
}

} // namespace

void draw_stitches(const Sight& sight) {
  const float left = edge(sight, sight.first_column);
  const float right = edge(sight, sight.last_column + 1);
  const int height = sight.layout.rows;
  RowColours at_hand;
  ScreenBox ground{left, 0, right, 0};
  for (int row = sight.first_row; row <= sight.last_row; ++row) {
    const int inside = wrapped(Cell{0, row}, 1, height).row;
    ScreenBox box = box_of(sight.layout, Cell{0, row});
    box.top = std::round(box.top);
    box.bottom = std::round(box.bottom);
    const RowColours colours = colours_of(sight, inside);
    // Rows of the same main yarn that touch are one rectangle.
    if (row > sight.first_row && colours.main == at_hand.main && box.bottom == ground.top) {
      ground.top = box.top;
    } else {
      if (row > sight.first_row) {
        sight.list.AddRectFilled({left, ground.top}, {right, ground.bottom}, ink(at_hand.main));
      }
      ground = {left, box.top, right, box.bottom};
    }
    at_hand = colours;
  }
  sight.list.AddRectFilled({left, ground.top}, {right, ground.bottom}, ink(at_hand.main));
  for (int row = sight.first_row; row <= sight.last_row; ++row) {
    const int inside = wrapped(Cell{0, row}, 1, height).row;
    ScreenBox box = box_of(sight.layout, Cell{0, row});
    box.top = std::round(box.top);
    box.bottom = std::round(box.bottom);
    draw_contrast(sight, inside, box, colours_of(sight, inside).contrast);
  }
  draw_forms(sight);
}

void draw_lines(const Sight& sight) {
  const CanvasLayout& layout = sight.layout;
  if (std::min(layout.cell_width, layout.cell_height) < 6 * sight.unit()) {
    return;
  }
  const ScreenBox low = box_of(layout, Cell{sight.first_column, sight.first_row});
  const ScreenBox high = box_of(layout, Cell{sight.last_column, sight.last_row});
  const Colour grey{0x80, 0x80, 0x80};
  for (int column = sight.first_column; column <= sight.last_column + 1; ++column) {
    const int inside = wrapped(Cell{column, 0}, layout.columns, 1).column;
    const float x = edge(sight, column);
    sight.list.AddRectFilled({x, std::round(high.top)}, {x + 1, std::round(low.bottom)},
                             ink(grey, inside % 10 == 0  ? 0.75F
                                       : inside % 5 == 0 ? 0.5F
                                                         : 0.3F));
  }
  for (int row = sight.first_row; row <= sight.last_row; ++row) {
    const int inside = wrapped(Cell{0, row}, 1, layout.rows).row;
    const float y = std::round(box_of(layout, Cell{0, row}).bottom);
    sight.list.AddRectFilled({low.left, y - 1}, {high.right, y},
                             ink(grey, inside % 10 == 0  ? 0.75F
                                       : inside % 5 == 0 ? 0.5F
                                                         : 0.3F));
  }
}

namespace {

// The inserted rows as threads of their yarn, one a row as long as there is room.
void draw_plain_rows(const Sight& sight, int count, Colour colour, const ScreenBox& box) {
  const float unit = sight.unit();
  const int shown = std::min(count, static_cast<int>((box.height() - 2 * unit) / (4 * unit)));
  if (box.width() < 8 * unit) {
    return;
  }
  for (int thread = 0; thread < shown; ++thread) {
    const float middle = box.middle().y + (static_cast<float>(thread) - static_cast<float>(shown - 1) / 2) * 4 * unit;
    sight.list.AddLine({box.left, middle}, {box.right, middle}, ink(sight.app.theme.quiet_text), 3 * unit);
    sight.list.AddLine({box.left, middle}, {box.right, middle}, ink(colour), 2 * unit);
  }
}

// A strip that is too low for words: a thread of the yarn between its edges, or below its upper one.
void draw_low_strip(const Sight& sight, ImVec2 low, ImVec2 high, Colour colour) {
  const ImU32 edges = ink(sight.app.theme.warning);
  sight.list.AddRectFilled(low, high, ink(colour));
  sight.list.AddRectFilled(low, {high.x, low.y + 1}, edges);
  if (high.y - low.y >= 3) {
    sight.list.AddRectFilled({low.x, high.y - 1}, high, edges);
  }
}

} // namespace

bool strips_have_words(const Sight& sight) {
  return sight.layout.strip_height >= 12 * sight.unit();
}

void draw_strips(const Sight& sight) {
  const Theme& theme = sight.app.theme;
  const Strips& strips = strips_in_sight(sight.app);
  if (strips.count == 0) {
    return;
  }
  const float left = edge(sight, sight.first_column);
  const float right = edge(sight, sight.last_column + 1);
  const ScreenBox repeat = sight.repeat_box();
  const bool words = strips_have_words(sight);
  for (int row = sight.first_row; row <= sight.last_row + 1; ++row) {
    const int inside = wrapped(Cell{0, row}, 1, sight.layout.rows).row;
    if (!has_strip_below(sight.layout, inside)) {
      continue;
    }
    const InsertedRows& inserted = strips.below[static_cast<std::size_t>(inside)];
    const Yarn& yarn = yarn_of(sight.app.work.design, inserted.yarn);
    const ScreenBox strip = strip_below(sight.layout, Cell{0, row});
    const ImVec2 low{left, std::round(strip.top)};
    const ImVec2 high{right, std::round(strip.bottom)};
    if (!words) {
      draw_low_strip(sight, low, high, seen_as(yarn.colour, sight.app.view.sight));
      continue;
    }
    sight.list.AddRectFilled(low, high, ink(theme.strip));
    sight.list.AddLine({low.x, low.y + 0.5F}, {high.x, low.y + 0.5F}, ink(theme.warning, 0.7F));
    sight.list.AddLine({low.x, high.y - 0.5F}, {high.x, high.y - 0.5F}, ink(theme.warning, 0.7F));
    if (row < 0 || row > sight.layout.rows) {
      continue;
    }
    const std::string text = words_for_inserted(sight.app, inside);
    const float size = theme.small->FontSize;
    const float x = std::max(repeat.left, sight.canvas.left) + 5 * sight.unit();
    const float end = std::min(repeat.right, sight.canvas.right);
    sight.list.PushClipRect({x, low.y}, {end - 2, high.y}, true);
    sight.list.AddText(theme.small, size, {x, std::round(low.y + (high.y - low.y - size) / 2)}, ink(theme.text),
                       text.c_str());
    sight.list.PopClipRect();
    draw_plain_rows(sight, inserted.count, seen_as(yarn.colour, sight.app.view.sight),
                    {x + theme.small->CalcTextSizeA(size, 10000, 0, text.c_str()).x + 6 * sight.unit(), low.y,
                     end - 5 * sight.unit(), high.y});
  }
}

void dim_neighbours(const Sight& sight) {
  const ScreenBox repeat = sight.repeat_box();
  const ScreenBox& all = sight.canvas;
  const Theme& theme = sight.app.theme;
  const ImU32 veil = ink(theme.canvas, 0.58F);
  const float top = std::clamp(repeat.top, all.top, all.bottom);
  const float bottom = std::clamp(repeat.bottom, all.top, all.bottom);
  sight.list.AddRectFilled({all.left, all.top}, {all.right, top}, veil);
  sight.list.AddRectFilled({all.left, bottom}, {all.right, all.bottom}, veil);
  sight.list.AddRectFilled({all.left, top}, {std::max(all.left, repeat.left), bottom}, veil);
  sight.list.AddRectFilled({std::min(all.right, repeat.right), top}, {all.right, bottom}, veil);
  sight.list.AddRect({repeat.left - 1, repeat.top - 1}, {repeat.right + 1, repeat.bottom + 1}, ink(theme.accent), 0, 0,
                     2 * sight.unit());
}

bool stitches_show(const App& app) {
  const CanvasLayout layout = layout_of(app, app.view.canvas);
  return form_shown(std::min(layout.cell_width, layout.cell_height) / app.theme.scale) > 0;
}

} // namespace punchwright::editor
