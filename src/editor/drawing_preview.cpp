// Over the stitches: what a shape would draw, what hangs over the drawing, the marked area.
#include "drawing/marked_area.hpp"
#include "editor/drawing_parts.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright::editor {

namespace {

// The repeat and its eight neighbours: what is drawn in one is seen in all.
template <class Draw> void each_tile(const Sight& sight, Draw&& draw) {
  for (int up = -1; up <= 1; ++up) {
    for (int aside = -1; aside <= 1; ++aside) {
      draw(Cell{aside * sight.layout.columns, up * sight.layout.rows});
    }
  }
}

bool in_sight(const Sight& sight, Cell cell) {
  return cell.column >= sight.first_column && cell.column <= sight.last_column && cell.row >= sight.first_row &&
         cell.row <= sight.last_row;
}

Colour yarn_at(const Sight& sight, int row, bool contrast) {
  const auto place = static_cast<std::size_t>(wrapped(Cell{0, row}, 1, sight.layout.rows).row) * 2;
  const std::vector<char>& yarns = row_yarns_in_sight(sight.app);
  const char main = yarns[place];
  const char other = yarns[place + 1];
  return seen_yarn(sight.app, contrast && other != 0 ? other : main);
}

constexpr float least_height_for_dots = 5; // px

void draw_run(const Sight& sight, Cell first, int stitches, bool contrast) {
  const ScreenBox box = box_of(sight.layout, first);
  const ScreenBox last = box_of(sight.layout, {first.column + stitches - 1, first.row});
  sight.list.AddRectFilled({box.left, box.top}, {last.right, box.bottom}, ink(yarn_at(sight, first.row, contrast)));
  if (sight.layout.cell_height >= least_height_for_dots) { // told from what is drawn already by more than colour
    sight.list.AddCircleFilled({box.middle().x, box.middle().y}, std::max(1.5F, box.height() * 0.14F),
                               ink(sight.app.theme.accent));
  }
}

enum class Shown { nothing, main, contrast };

// Stitches in sight of an area whose corner is at that plane cell, `shown` says which: row by row, those of one colour
// that touch as one where they are too small for dots.
template <class What> void draw_cells(const Sight& sight, Cell corner, int columns, int rows, What&& shown) {
  const int first = std::max(0, sight.first_column - corner.column);
  const int end = std::min(columns, sight.last_column + 1 - corner.column);
  const int top = std::min(rows, sight.last_row + 1 - corner.row);
  const bool dots = sight.layout.cell_height >= least_height_for_dots;
  for (int row = std::max(0, sight.first_row - corner.row); row < top; ++row) {
    for (int column = first; column < end;) {
      const Shown here = shown(column, row);
      int behind = column + 1;
      while (!dots && behind < end && shown(behind, row) == here) {
        ++behind;
      }
      if (here != Shown::nothing) {
        draw_run(sight, {corner.column + column, corner.row + row}, behind - column, here == Shown::contrast);
      }
      column = behind;
    }
  }
}

// A frame in two tones, so that it shows on light and dark yarn.
void frame(const Sight& sight, const ScreenBox& box, bool dashed) {
  const Theme& theme = sight.app.theme;
  const float unit = sight.unit();
  sight.list.AddRect({box.left, box.top}, {box.right, box.bottom}, ink(theme.panel), 0, 0, 3 * unit);
  if (!dashed) {
    sight.list.AddRect({box.left, box.top}, {box.right, box.bottom}, ink(theme.accent), 0, 0, 1.5F * unit);
    return;
  }
  // Of a side, which may be far longer than the window, the dashes in sight.
  const ScreenBox& seen = sight.canvas;
  const auto each_dash = [unit](float from, float to, float seen_from, float seen_to, auto&& draw) {
    const float dash = 5 * unit;
    const float out_of_sight = std::max(0.0F, std::floor((seen_from - from) / (2 * dash)));
    for (float at = from + out_of_sight * 2 * dash; at < std::min(to, seen_to); at += 2 * dash) {
      draw(at, std::min(to, at + dash));
    }
  };
  for (const float y : {box.top, box.bottom}) {
    if (y > seen.top - 2 * unit && y < seen.bottom + 2 * unit) {
      each_dash(box.left, box.right, seen.left, seen.right, [&](float begin, float end) {
        sight.list.AddLine({begin, y}, {end, y}, ink(theme.accent), 2 * unit);
      });
    }
  }
  for (const float x : {box.left, box.right}) {
    if (x > seen.left - 2 * unit && x < seen.right + 2 * unit) {
      each_dash(box.top, box.bottom, seen.top, seen.bottom, [&](float begin, float end) {
        sight.list.AddLine({x, begin}, {x, end}, ink(theme.accent), 2 * unit);
      });
    }
  }
}

ScreenBox box_of_area(const Sight& sight, const Area& area, Cell tile) {
  const ScreenBox low = box_of(sight.layout, Cell{area.corner.column + tile.column, area.corner.row + tile.row});
  const ScreenBox high = box_of(sight.layout, Cell{area.corner.column + tile.column + area.columns - 1,
                                                   area.corner.row + tile.row + area.rows - 1});
  return {low.left, high.top, high.right, low.bottom};
}

void draw_floating(const Sight& sight, const Floating& floating) {
  const Grid& repeat = sight.app.work.design.grid;
  if (floating.lifted_from) {
    each_tile(sight, [&](Cell tile) { frame(sight, box_of_area(sight, *floating.lifted_from, tile), true); });
  }
  const Area area = marked(Area{floating.corner, floating.drawing.width(), floating.drawing.height()}, repeat);
  each_tile(sight, [&](Cell tile) {
    const Cell corner{area.corner.column + tile.column, area.corner.row + tile.row};
    draw_cells(sight, corner, area.columns, area.rows, [&](int column, int row) {
      return floating.drawing.at(column, row) ? Shown::contrast : floating.see_through ? Shown::nothing : Shown::main;
    });
    frame(sight, box_of_area(sight, area, tile), false);
  });
}

// What the shape covers until the button is released.
void draw_shape(const Sight& sight, const Stroke& stroke) {
  const Shown yarn = stroke.contrast ? Shown::contrast : Shown::main;
  const Grid& shape = stroke.preview;
  each_tile(sight, [&](Cell tile) {
    draw_cells(sight, tile, shape.width(), shape.height(),
               [&](int column, int row) { return shape.at(column, row) ? yarn : Shown::nothing; });
  });
}

// As they would be, in frames: told from what is drawn already by more than their colour.
void draw_changes(const Sight& sight, const std::vector<Cell>& cells, const Grid& drawing) {
  each_tile(sight, [&](Cell tile) {
    for (const Cell cell : cells) {
      const Cell there{cell.column + tile.column, cell.row + tile.row};
      if (in_sight(sight, there)) {
        draw_run(sight, there, 1, drawing.at(cell.column, cell.row));
        frame(sight, box_of(sight.layout, there), false);
      }
    }
  });
}

// Which stitches would mend the float that is looked at: a ring in each, no more, since nothing is asked for yet.
void draw_hint(const Sight& sight) {
  const float radius = sight.layout.cell_height * 0.3F;
  const auto& hint = sight.app.caches.hint;
  if (!hint || radius < 1.5F) {
    return;
  }
  each_tile(sight, [&](Cell tile) {
    for (const Cell cell : hint->mended.changed) {
      const Cell there{cell.column + tile.column, hint->row + tile.row};
      if (in_sight(sight, there)) {
        const ScreenPoint middle = box_of(sight.layout, there).middle();
        sight.list.AddCircle({middle.x, middle.y}, radius, ink(sight.app.theme.panel), 0, 3.5F * sight.unit());
        sight.list.AddCircle({middle.x, middle.y}, radius, ink(sight.app.theme.accent), 0, 1.5F * sight.unit());
      }
    }
  });
}

} // namespace

void draw_preview(const Sight& sight) {
  const App& app = sight.app;
  if (app.session.stroke) {
    draw_shape(sight, *app.session.stroke);
  }
  if (lines_dragged(app)) {
    return; // they have a frame of their own
  }
  if (app.session.mend) {
    const Mended& mended = app.session.mend->mended;
    draw_changes(sight, mended.changed, mended.drawing);
  } else {
    draw_hint(sight);
  }
  if (app.view.marked) {
    each_tile(sight, [&](Cell tile) { frame(sight, box_of_area(sight, *app.view.marked, tile), true); });
  }
  if (app.session.floating) {
    draw_floating(sight, *app.session.floating);
  }
}

} // namespace punchwright::editor
