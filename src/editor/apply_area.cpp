// The marked area, what hangs over the drawing, and symmetry brought about.
#include "design/words.hpp"
#include "design/wrap.hpp"
#include "drawing/marked_area.hpp"
#include "editor/applying.hpp"
#include "editor/hanging.hpp"
#include "editor/long_work.hpp"
#include "editor/waiting.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright::editor {

namespace {

// Applies the edit as a step of that name; refused: says why.
bool step(App& app, const char* name, const Edit& change) {
  close_step(app);
  app.session.message.clear();
  app.work.history.begin_drag(name);
  const bool taken = edit(app, change);
  close_step(app);
  return taken;
}

void apply_area(App& app, const char* name, const AreaEdit& change) {
  const int height = app.work.design.grid.height();
  const Area area = area_at_work(app);
  const int rows = std::max(area.rows, change.area.rows);
  const int last = area.corner.row + rows;
  if (rows < height && last > height) { // round the edge: from the lowest to the highest would be all of the drawing
    step(app, fmt::format("{}, rows {} to {}", name, area.corner.row + 1, last - height).c_str(), change.edit);
  } else {
    step(app, name, change.edit);
  }
  if (app.view.marked) {
    app.view.marked = change.area;
  }
}

void paste(App& app) {
  auto drawing = drawing_from_text(app.session.clipboard);
  if (!drawing) {
    const Error& error = drawing.error();
    const std::string place = error.line == 0     ? ""
                              : error.column == 0 ? said("line {}: ", error.line)
                                                  : said("line {}, sign {}: ", error.line, error.column);
    say(app, said("What was copied is no drawing: {}", place + error.message) + "; " + error.remedy, Tone::trouble);
    return;
  }
  const Cell corner = app.view.marked ? app.view.marked->corner : app.view.cursor;
  hang_over(app, Floating{std::move(drawing).value(), corner, noted("paste"), {}, false});
}

void fill_marked(App& app) {
  if (!app.view.marked) { // as with cutting
    return say(app, tr("Mark an area first: M, or Ctrl+A for all of it"));
  }
  const auto patch = drawing_from_text(app.session.clipboard);
  if (!patch) {
    say(app, tr("Copy first what the marked area is to be filled with"), Tone::trouble);
    return;
  }
  apply_area(app, noted("fill the marked area"), fill_area_with(app.work.design.grid, area_at_work(app), *patch));
}

// The chosen symmetry has the axes that were found, where strokes would break the drawing's own under it. An area that
// is narrower than the drawing has no glides in it; mirrors and half turns lie at their places in the area.
void take_axes(App& app, Cell corner, const NearestFrieze& nearest) {
  const auto& symmetry = app.view.symmetry;
  const Grid& grid = app.work.design.grid;
  if (!symmetry || symmetry->group != nearest.frieze.group || has_symmetry(grid, *symmetry)) {
    return;
  }
  Frieze found = nearest.frieze;
  if (nearest.strip.width() != grid.width()) {
    if (needs_even_repeat(found.group)) {
      return;
    }
    found.repeat = grid.width();
  }
  found.upright = uses_upright_axis(found.group) ? round_edge(found.upright + 2 * corner.column, found.repeat) : 0;
  found.level = uses_level_axis(found.group) ? found.level + 2 * corner.row : 0;
  if (!unusable_frieze(found, grid.width(), grid.height())) { // as one of an area that goes round the upper edge may be
    app.view.chosen_symmetry = found;
  }
}

void take_symmetric(App& app, Cell corner, const Result<NearestFrieze>& nearest) {
  if (!nearest) {
    return say(app, nearest.error().text(), Tone::trouble);
  }
  const char* const name = noted("make it symmetric");
  step(app, name, Redraw{set_down(app.work.design.grid, corner, nearest->strip), name});
  take_axes(app, corner, *nearest);
  const int changed = nearest->changed_stitches;
  say(app,
      changed == 0
          ? tr("It is so already")
          : said_count(changed, "{} stitch changed, the fewest that do", "{} stitches changed, the fewest that do"),
      Tone::good);
}

} // namespace

Area area_at_work(const App& app) {
  const Grid& grid = app.work.design.grid;
  return app.view.marked.value_or(Area{Cell{}, grid.width(), grid.height()});
}

void lift(App& app) {
  const Grid& grid = app.work.design.grid;
  const Area area = *app.view.marked;
  hang_over(app, Floating{lifted(grid, area), area.corner, noted("move"), area, false});
}

void set_down(App& app) {
  if (!app.session.floating) {
    return;
  }
  const Floating floating = *app.session.floating;
  const Grid& grid = app.work.design.grid;
  const Area area = marked(Area{floating.corner, floating.drawing.width(), floating.drawing.height()}, grid);
  if (!step(app, floating.name.c_str(), Redraw{with_set_down(grid, floating), floating.name})) {
    return; // it goes on hanging
  }
  app.session.floating.reset();
  if (floating.lifted_from) { // what was marked goes on being so; nobody marked what is pasted, lettered or a motif
    app.view.marked = area;
  }
  app.view.cursor = area.corner;
}

void clear_marked(App& app, const char* name) {
  apply_area(app, name, cut_area(app.work.design.grid, *app.view.marked));
}

void run_area_command(App& app, Command command) {
  if (change_floating(app, command)) {
    return;
  }
  const Grid& grid = app.work.design.grid;
  const Area area = area_at_work(app);
  switch (command) {
  case Command::copy:
    app.session.copied = text_of(lifted(grid, area));
    return say(app, said("Copied {} × {} stitches", area.columns, area.rows), Tone::good);
  case Command::cut:
    if (!app.view.marked) { // a slip of the hand would take the whole drawing away
      return say(app, tr("Mark an area first: M, or Ctrl+A for all of it"));
    }
    app.session.copied = text_of(lifted(grid, area));
    apply_area(app, noted("cut"), cut_area(grid, area));
    return say(app, said("Cut {} × {} stitches", area.columns, area.rows), Tone::good);
  case Command::paste: return paste(app);
  case Command::clear: return apply_area(app, noted("clear"), cut_area(grid, area));
  case Command::mark_all: app.view.marked = Area{Cell{}, grid.width(), grid.height()}; return;
  case Command::mirror_sideways:
    return apply_area(app, noted("mirror left and right"), mirror_area_left_right(grid, area));
  case Command::mirror_upwards:
    return apply_area(app, noted("mirror top and bottom"), mirror_area_upside_down(grid, area));
  case Command::invert: return apply_area(app, noted("exchange main and contrast"), invert_area(grid, area));
  case Command::shift_left: return apply_area(app, noted("shift"), shift_in_area(grid, area, -1, 0));
  case Command::shift_right: return apply_area(app, noted("shift"), shift_in_area(grid, area, 1, 0));
  case Command::shift_up: return apply_area(app, noted("shift"), shift_in_area(grid, area, 0, 1));
  case Command::shift_down: return apply_area(app, noted("shift"), shift_in_area(grid, area, 0, -1));
  case Command::fill_marked: return fill_marked(app);
  case Command::turn: {
    const auto turned = turn_area(grid, area, 1);
    if (!turned) {
      return say(app, with_capital(turned.error().text()), Tone::trouble);
    }
    return apply_area(app, noted("turn"), *turned);
  }
  default: return;
  }
}

void make_it_so(App& app, FriezeGroup group) {
  constexpr std::size_t most_at_once = 20'000; // stitches
  const Area area = area_at_work(app);
  close_step(app);
  work_out(app, most_at_once, tr("Working out the nearest symmetric drawing …; Escape gives it up"),
           [lifted = lifted(app.work.design.grid, area), corner = area.corner, group]() -> Taking {
             return [nearest = nearest_with(lifted, group), corner](App& asking) {
               take_symmetric(asking, corner, nearest);
             };
           });
}

} // namespace punchwright::editor
