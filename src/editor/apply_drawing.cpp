// The tools: strokes, shapes and marks, by the pointer and by keys.
#include "design/wrap.hpp"
#include "drawing/marked_area.hpp"
#include "editor/applying.hpp"
#include "editor/long_work.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <utility>

namespace punchwright::editor {

namespace {

bool pen_draws_contrast(const App& app, Cell at) {
  switch (app.view.pen) {
  case Pen::contrast: return true;
  case Pen::main: return false;
  case Pen::opposite: break;
  }
  return !app.work.design.grid.at(at.column, at.row);
}

// The stitches inside the repeat, and all that belong to them under the symmetry.
CompletedStroke completed(const App& app, const std::vector<Cell>& cells) {
  const Grid& grid = app.work.design.grid;
  CompletedStroke stroke;
  if (!app.view.symmetry) {
    stroke.cells = on_repeat(cells, grid);
    return stroke;
  }
  return complete_stroke(on_repeat(cells, grid), *app.view.symmetry, grid.width(), grid.height());
}

// Draws the cells that may be drawn, and says where some may not.
void draw(App& app, const std::vector<Cell>& cells, bool contrast) {
  const CompletedStroke stroke = completed(app, cells);
  const std::vector<char> yarns = yarns_by_row(app.work.design.bands);
  SetCells change{{}, contrast};
  std::optional<int> refused;
  for (const Cell cell : stroke.cells) {
    if (contrast && !two_yarns_in(yarns, cell.row)) {
      refused = cell.row;
    } else {
      change.cells.push_back(cell);
    }
  }
  edit(app, change);
  if (refused) {
    say(app,
        said("Row {} lies in a band of one yarn: give the band a contrast (tab Yarns) to draw in it", *refused + 1),
        Tone::trouble);
  } else if (!stroke.without_partner.empty()) {
    say(app, tr("Some stitches are left out: under the symmetry their partners would lie above or below the drawing"),
        Tone::trouble);
  }
}

bool is_shape(Tool tool) {
  return tool == Tool::line || tool == Tool::rectangle || tool == Tool::ellipse || tool == Tool::flood;
}

// The stitches that hang together there; none where they have that colour already.
std::vector<Cell> cells_to_fill(const Grid& grid, Cell at, bool contrast) {
  const Cell inside = wrapped(at, grid.width(), grid.height());
  return grid.at(inside.column, inside.row) == contrast ? std::vector<Cell>{} : flood_cells(grid, inside);
}

// The stitches that a shape covers, unwrapped. What is filled is what hangs together where the pointer has come to.
std::vector<Cell> cells_of_shape(const App& app, const Stroke& stroke) {
  switch (stroke.tool) {
  case Tool::line: return line_cells(stroke.from, stroke.last);
  case Tool::rectangle: return rectangle_cells(stroke.from, stroke.last, app.view.interior);
  case Tool::ellipse: return ellipse_cells(stroke.from, stroke.last, app.view.interior);
  case Tool::flood: return cells_to_fill(app.work.design.grid, stroke.last, stroke.contrast);
  default: return {};
  }
}

// As `cells_to_fill` completed, for a pointer that moves.
void preview_fill(const App& app, Stroke& stroke) {
  const Grid& grid = app.work.design.grid;
  const Cell inside = wrapped(stroke.last, grid.width(), grid.height());
  if (grid.at(inside.column, inside.row) == stroke.contrast) {
    stroke.preview = Grid(grid.width(), grid.height());
    return;
  }
  std::optional<HeldFill>& fill = stroke.fill;
  if (!fill || fill->revision != app.work.history.revision()) {
    fill = HeldFill{app.work.history.revision(), Patches(grid), {}, -1, {}};
  }
  const int patch = fill->patches.patch_at(inside);
  if (fill->patch != patch || fill->symmetry != app.view.symmetry) {
    fill->stitches = fill->patches.stitches_of(patch);
    if (app.view.symmetry) {
      fill->stitches = completed(fill->stitches, *app.view.symmetry);
    }
    fill->patch = patch;
    fill->symmetry = app.view.symmetry;
  }
  stroke.preview = fill->stitches;
}

void preview_shape(const App& app, Stroke& stroke) {
  if (stroke.tool == Tool::flood) {
    return preview_fill(app, stroke);
  }
  const Grid& grid = app.work.design.grid;
  stroke.preview = Grid(grid.width(), grid.height());
  for (const Cell cell : completed(app, cells_of_shape(app, stroke)).cells) {
    stroke.preview.set(cell.column, cell.row, true);
  }
}

const char* name_of_shape(Tool tool) {
  return tool == Tool::line        ? noted("line")
         : tool == Tool::rectangle ? noted("rectangle")
         : tool == Tool::ellipse   ? noted("ellipse")
                                   : noted("fill");
}

bool lies_on_floating(const App& app, Cell at) {
  const Floating& floating = *app.session.floating;
  const Area area{floating.corner, floating.drawing.width(), floating.drawing.height()};
  return lies_in(at, marked(area, app.work.design.grid), app.work.design.grid);
}

// A press of the button on what hangs over the drawing takes hold of it, beside it sets it down.
bool press_on_floating(App& app, const BeginStroke& action) {
  if (!app.session.floating) {
    return false;
  }
  if (action.erase) {
    give_up(app);
  } else if (lies_on_floating(app, action.at)) {
    app.session.stroke = Stroke{Tool::mark, action.at, action.at, true, true, {}, {}};
  } else {
    set_down(app);
  }
  return true;
}

void begin_marking(App& app, const BeginStroke& action) {
  const Grid& grid = app.work.design.grid;
  if (action.erase) {
    app.view.marked.reset();
    return;
  }
  if (app.view.marked && lies_in(action.at, *app.view.marked, grid)) {
    lift(app);
    app.session.stroke = Stroke{Tool::mark, action.at, action.at, true, true, {}, {}};
    return;
  }
  app.view.marked = area_between(action.at, action.at, grid);
  app.session.stroke = Stroke{Tool::mark, action.at, action.at, true, false, {}, {}};
}

} // namespace

void apply_drawing(App& app, const BeginStroke& action) {
  close_step(app);
  app.session.message.clear();
  const Grid& grid = app.work.design.grid;
  const Cell at = wrapped(action.at, grid.width(), grid.height());
  const Tool tool = app.view.tool;
  if (!press_on_floating(app, action)) {
    const bool contrast = !action.erase && pen_draws_contrast(app, at);
    switch (tool) {
    case Tool::mark: begin_marking(app, action); break;
    case Tool::pen:
      app.work.history.begin_drag(contrast ? noted("draw") : noted("erase"));
      app.session.stroke = Stroke{tool, action.at, action.at, contrast, false, {}, {}};
      draw(app, {action.at}, contrast);
      break;
    default:
      app.session.stroke = Stroke{tool, action.at, action.at, contrast, false, {}, {}};
      preview_shape(app, *app.session.stroke);
      break;
    }
  }
  app.view.cursor = at;
}

void apply_drawing(App& app, const StrokeTo& action) {
  if (!app.session.stroke || app.session.stroke->last == action.at) {
    return;
  }
  const Grid& grid = app.work.design.grid;
  Stroke& stroke = *app.session.stroke;
  const Cell before = std::exchange(stroke.last, action.at);
  if (stroke.moves_floating && app.session.floating) {
    Cell& corner = app.session.floating->corner;
    corner = Cell{corner.column + action.at.column - before.column, corner.row + action.at.row - before.row};
  } else if (stroke.tool == Tool::mark) {
    app.view.marked = area_between(stroke.from, action.at, grid);
  } else if (stroke.tool == Tool::pen) {
    draw(app, line_cells(before, action.at), stroke.contrast);
  } else {
    preview_shape(app, stroke);
  }
  app.view.cursor = wrapped(action.at, grid.width(), grid.height());
}

void apply_drawing(App& app, const EndStroke&) {
  if (!app.session.stroke) {
    return;
  }
  const Stroke stroke = *app.session.stroke;
  if (is_shape(stroke.tool)) {
    app.work.history.begin_drag(name_of_shape(stroke.tool));
    draw(app, cells_of_shape(app, stroke), stroke.contrast);
  }
  close_step(app);
}

// By keys a shape has its two corners from two presses; the pen turns the stitch, and what hangs is set down.
void apply_drawing(App& app, const PressHere&) {
  if (app.session.floating) {
    return set_down(app);
  }
  if (app.session.stroke) {
    return apply_drawing(app, EndStroke{});
  }
  apply_drawing(app, BeginStroke{app.view.cursor, false});
  if (app.view.tool == Tool::pen) { // shift and arrows go on from here, in the same step
    app.session.key_run = KeyRun{app.view.cursor, app.session.stroke->contrast, app.session.now};
    app.session.stroke.reset();
  }
}

bool give_up(App& app) {
  if (give_up_long_work(app)) {
    say(app, tr("The drawing stays as it is"));
    return true;
  }
  if (app.session.mend) {
    app.session.mend.reset();
    say(app, tr("The drawing stays as it is"));
    return true;
  }
  if (app.session.stroke && app.session.stroke->tool == Tool::pen) { // it draws as it goes
    app.work.history.cancel_drag(app.work.design);
    app.session.stroke.reset();
    say(app, tr("The stroke was taken back"));
    return true;
  }
  if (app.session.stroke) {
    app.session.stroke.reset();
    return true;
  }
  if (app.session.line_drag) {
    app.session.line_drag.reset();
    say(app, tr("Nothing was moved"));
    return true;
  }
  if (app.session.floating) {
    app.session.floating.reset();
    say(app, tr("Nothing was set down"));
    return true;
  }
  if (app.view.marked) {
    app.view.marked.reset();
    return true;
  }
  return false;
}

// What the arrow keys move besides the cursor: what hangs over the drawing, or the shape's other corner.
void move_by_keys(App& app, const MoveCursor& action) {
  if (app.session.floating) {
    Cell& corner = app.session.floating->corner;
    corner = Cell{corner.column + action.columns, corner.row + action.rows};
  } else if (app.session.stroke) {
    const Cell last = app.session.stroke->last;
    apply_drawing(app, StrokeTo{Cell{last.column + action.columns, last.row + action.rows}});
  }
}

// The end of an area that stays and the one that moves, where the cursor stands at one of the two.
std::pair<int, int> ends_after(int cursor, int first, int length, int size, int by) {
  const int last = first + length - 1;
  const bool at_first = length > 1 && (cursor - first) % size == 0;
  return at_first ? std::pair{last, first + by} : std::pair{first, last + by};
}

// With the tool for marking, shift and an arrow mark from the cursor on: at a corner of the marked area they move that
// corner, elsewhere a new area begins.
void mark_by_keys(App& app, const MoveCursor& action) {
  const Grid& grid = app.work.design.grid;
  Cell& cursor = app.view.cursor;
  const auto at_end = [](int at, int first, int length, int size) {
    const int from_first = round_edge(at - first, size);
    return from_first == 0 || from_first == length - 1;
  };
  Area area{cursor, 1, 1};
  if (const auto& marked = app.view.marked;
      marked && at_end(cursor.column, marked->corner.column, marked->columns, grid.width()) &&
      at_end(cursor.row, marked->corner.row, marked->rows, grid.height())) {
    area = *marked;
  }
  const auto columns = ends_after(cursor.column, area.corner.column, area.columns, grid.width(), action.columns);
  const auto rows = ends_after(cursor.row, area.corner.row, area.rows, grid.height(), action.rows);
  if (std::abs(columns.second - columns.first) >= grid.width() || std::abs(rows.second - rows.first) >= grid.height()) {
    return; // all of the drawing's width or height is marked
  }
  app.view.marked = area_between({columns.first, rows.first}, {columns.second, rows.second}, grid);
  cursor = wrapped(Cell{columns.second, rows.second}, grid.width(), grid.height());
  app.session.message.clear();
  show(app, cursor);
}

// Drawing with the keys: the stitch that is left decides, as the first stitch of a stroke does for the mouse. What
// follows without a pause is the same step.
void draw_by_keys(App& app, Cell to) {
  const Cell from = app.view.cursor;
  const bool contrast = app.view.pen == Pen::main       ? false
                        : app.view.pen == Pen::contrast ? true
                                                        : app.work.design.grid.at(from.column, from.row);
  const auto& run = app.session.key_run;
  if (!run || run->last != from || run->contrast != contrast || app.session.now - run->at > KeyRun::longest_pause) {
    close_step(app);
    app.work.history.begin_drag(contrast ? noted("draw") : noted("erase"));
  }
  app.session.message.clear();
  draw(app, {to}, contrast);
  app.session.key_run = KeyRun{to, contrast, app.session.now};
}

void apply_drawing(App& app, const MoveCursor& action) {
  const Grid& grid = app.work.design.grid;
  Cell& cursor = app.view.cursor;
  if (app.session.floating || app.session.stroke) {
    move_by_keys(app, action);
    return show(app, app.session.floating ? app.session.floating->corner : cursor);
  }
  if (action.draw && app.view.tool == Tool::mark) {
    return mark_by_keys(app, action);
  }
  const Cell to = wrapped(Cell{cursor.column + action.columns, cursor.row + action.rows}, grid.width(), grid.height());
  if (action.draw) {
    draw_by_keys(app, to);
  }
  cursor = to;
  show(app, cursor);
}

void apply_drawing(App& app, const PlaceCursor& action) {
  const Grid& grid = app.work.design.grid;
  app.view.cursor =
      Cell{std::clamp(action.at.column, 0, grid.width() - 1), std::clamp(action.at.row, 0, grid.height() - 1)};
  show(app, app.view.cursor);
}

} // namespace punchwright::editor
