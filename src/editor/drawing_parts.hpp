// The parts of the drawing panel: stitches, rulers, marks. Only the drawing_*.cpp files include this.
#pragma once

#include "editor/panels.hpp"
#include "editor/widgets.hpp"

namespace punchwright::editor {

// What all of them need: the layout, the room, and the rows and columns that can be seen.
struct Sight {
  const App& app;
  ImDrawList& list;
  CanvasLayout layout;
  ScreenBox canvas;  // the stitches' room, without rulers
  int first_row = 0; // unwrapped
  int last_row = 0;
  int first_column = 0;
  int last_column = 0;

  [[nodiscard]] ScreenBox repeat_box() const;
  [[nodiscard]] float unit() const { return app.theme.scale; }
};

// How many of its neighbours' stitches are shown beside the repeat.
[[nodiscard]] int neighbour_columns(int width);
[[nodiscard]] int neighbour_rows(int height);

// How much of the stitch's form is seen in a cell whose shorter side has so many units of layout: nothing in small
// ones, all of it in large ones (1), and smoothly between, so that nothing jumps while one zooms.
[[nodiscard]] float form_shown(float cell);

// Whether the strips of inserted rows are high enough to be written into.
[[nodiscard]] bool strips_have_words(const Sight& sight);

void draw_stitches(const Sight& sight);
void draw_strips(const Sight& sight);
void draw_lines(const Sight& sight);
void draw_marks(const Sight& sight);
void draw_preview(const Sight& sight);
void draw_axes(const Sight& sight);
// Whether the bar of a float that is too long lies in that row, and how wide bars are with what sets them off, px.
[[nodiscard]] bool float_marked_in(const Sight& sight, int row);
[[nodiscard]] float float_bar_width(const Sight& sight);
void draw_cursor(const Sight& sight, bool has_keys);
void dim_neighbours(const Sight& sight);

void draw_row_numbers(const Sight& sight, const ScreenBox& box);
void draw_column_numbers(const Sight& sight, const ScreenBox& box);
void draw_needle_numbers(const Sight& sight, const ScreenBox& box);
// Seam stitches and the middle of the bed, in the ruler of needles and through the drawing.
void draw_bed_marks(const Sight& sight, const ScreenBox& ruler);
void draw_row_yarns(const Sight& sight, const ScreenBox& box);

// Rows are dragged by their numbers, columns by theirs; a click puts the cursor there.
void use_line_strip(const Sight& sight, Actions& actions, const ScreenBox& box, bool rows);
// A click asks for other yarns beside the row.
void use_yarn_strip(const Sight& sight, Actions& actions, const ScreenBox& box);
// Inserted rows whose strip is too low for words say them where the pointer rests.
void tell_low_strip(const Sight& sight);
// What is dragged, and where it would come to lie.
void draw_line_drag(const Sight& sight, const ScreenBox& row_numbers, const ScreenBox& column_numbers);

} // namespace punchwright::editor
