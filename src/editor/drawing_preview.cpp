// Over the stitches: what a shape would draw, what hangs over the drawing, the marked area, the axes of symmetry.
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

void draw_cell(const Sight& sight, Cell cell, bool contrast) {
  const ScreenBox box = box_of(sight.layout, cell);
  sight.list.AddRectFilled({box.left, box.top}, {box.right, box.bottom}, ink(yarn_at(sight, cell.row, contrast)));
  if (sight.layout.cell_height >= 5) { // a dot: told from what is drawn already by more than colour
    sight.list.AddCircleFilled({box.middle().x, box.middle().y}, std::max(1.5F, box.height() * 0.14F),
                               ink(sight.app.theme.accent));
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
  const auto dashes = [&](ImVec2 from, ImVec2 to) {
    const float length = std::max(std::abs(to.x - from.x), std::abs(to.y - from.y));
    const float dash = 5 * unit;
    for (float at = 0; at < length; at += 2 * dash) {
      const float begin = at / length;
      const float end = std::min(1.0F, (at + dash) / length);
      sight.list.AddLine({std::lerp(from.x, to.x, begin), std::lerp(from.y, to.y, begin)},
                         {std::lerp(from.x, to.x, end), std::lerp(from.y, to.y, end)}, ink(theme.accent), 2 * unit);
    }
  };
  dashes({box.left, box.top}, {box.right, box.top});
  dashes({box.left, box.bottom}, {box.right, box.bottom});
  dashes({box.left, box.top}, {box.left, box.bottom});
  dashes({box.right, box.top}, {box.right, box.bottom});
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
    for (int row = 0; row < area.rows; ++row) {
      for (int column = 0; column < area.columns; ++column) {
        const Cell cell{area.corner.column + column + tile.column, area.corner.row + row + tile.row};
        const bool contrast = floating.drawing.at(column, row);
        if (in_sight(sight, cell) && (contrast || !floating.see_through)) {
          draw_cell(sight, cell, contrast);
        }
      }
    }
    frame(sight, box_of_area(sight, area, tile), false);
  });
}

// As they would be, in frames: told from what is drawn already by more than their colour.
void draw_changes(const Sight& sight, const std::vector<Cell>& cells, const Grid& drawing) {
  each_tile(sight, [&](Cell tile) {
    for (const Cell cell : cells) {
      const Cell there{cell.column + tile.column, cell.row + tile.row};
      if (in_sight(sight, there)) {
        draw_cell(sight, there, drawing.at(cell.column, cell.row));
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
    each_tile(sight, [&](Cell tile) {
      for (const Cell cell : app.session.stroke->preview) {
        const Cell there{cell.column + tile.column, cell.row + tile.row};
        if (in_sight(sight, there)) {
          draw_cell(sight, there, app.session.stroke->contrast);
        }
      }
    });
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

// An axis lies at half the sum of the two columns (rows) that it exchanges, counted to the middles of the stitches.
void draw_axes(const Sight& sight) {
  if (!sight.app.view.symmetry) {
    return;
  }
  const Frieze& frieze = *sight.app.view.symmetry;
  const ScreenBox repeat = sight.repeat_box();
  const ImU32 light = ink(sight.app.theme.panel, 0.8F);
  const ImU32 line = ink(sight.app.theme.accent);
  const auto axis = [&](ImVec2 from, ImVec2 to) {
    sight.list.AddLine(from, to, light, 4 * sight.unit());
    sight.list.AddLine(from, to, line, 1.5F * sight.unit());
  };
  if (uses_upright_axis(frieze.group) || frieze.group == FriezeGroup::p2) {
    for (int twice = frieze.upright; twice < 2 * sight.layout.columns; twice += frieze.repeat) {
      const float x = repeat.left + (static_cast<float>(twice) / 2 + 0.5F) * sight.layout.cell_width;
      axis({x, repeat.top}, {x, repeat.bottom});
    }
  }
  if (uses_level_axis(frieze.group)) {
    const ScreenBox low = box_of(sight.layout, Cell{0, frieze.level / 2});
    const float y = frieze.level % 2 == 0 ? low.middle().y : low.top;
    axis({repeat.left, y}, {repeat.right, y});
  }
}

} // namespace punchwright::editor
