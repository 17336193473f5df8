// Rows and columns moved, the yarns of rows, the drawing laid out, and motifs kept.
#include "design/band_rows.hpp"
#include "design/words.hpp"
#include "design/wrap.hpp"
#include "drawing/marked_area.hpp"
#include "editor/applying.hpp"
#include "editor/hanging.hpp"
#include "editor/own_motifs.hpp"
#include "editor/picture_views.hpp"
#include "editor/typed_text.hpp"
#include "editor/waiting.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <utility>

namespace punchwright::editor {

namespace {

int size_of(const Grid& grid, bool rows) {
  return rows ? grid.height() : grid.width();
}

// The marked lines where that one is among them, else that one alone.
LineDrag lines_at(const App& app, bool rows, int line) {
  LineDrag lines{rows, line, 1, line, line};
  if (app.view.marked) {
    const Area& area = *app.view.marked;
    const int size = size_of(app.work.design.grid, rows);
    const int first = rows ? area.corner.row : area.corner.column;
    const int count = rows ? area.rows : area.columns;
    if (round_edge(line - first, size) < count) {
      lines.first = lines.to = count == size ? 0 : first;
      lines.count = count;
    }
  }
  return lines;
}

LineDrag lines_at_cursor(const App& app, bool rows) {
  return lines_at(app, rows, rows ? app.view.cursor.row : app.view.cursor.column);
}

// Where the first of them may come to lie. Those that go round the edge come away from it on either side.
std::pair<int, int> places_for(const LineDrag& lines, int size) {
  const bool round_the_edge = lines.first + lines.count > size;
  return {0, (round_the_edge ? 2 * size : size) - lines.count};
}

std::string words_for(const LineDrag& lines, int size) {
  const int first = lines.first + 1;
  const int to = round_edge(lines.to, size) + 1;
  if (lines.count == 1) {
    return lines.rows ? said("Row {} is row {} now", first, to) : said("Column {} is column {} now", first, to);
  }
  const int last = round_edge(lines.first + lines.count - 1, size) + 1;
  const int to_last = round_edge(lines.to + lines.count - 1, size) + 1;
  return lines.rows ? said("Rows {} to {} are {} to {} now", first, last, to, to_last)
                    : said("Columns {} to {} are {} to {} now", first, last, to, to_last);
}

// All of it or, where one edit is refused, nothing.
bool change_as_one_step(App& app, const std::vector<Edit>& edits) {
  app.work.history.begin_drag(edits.empty() ? std::string() : name_of(edits.front()));
  const auto symmetry = app.view.chosen_symmetry;
  const bool changed = std::ranges::all_of(edits, [&app](const Edit& change) { return edit(app, change); });
  if (!changed) {
    app.work.history.cancel_drag(app.work.design);
    app.view.chosen_symmetry = symmetry;
  }
  app.work.history.end_drag();
  return changed;
}

// The cursor and the mark go along.
void move_lines(App& app, const LineDrag& lines) {
  const int size = size_of(app.work.design.grid, lines.rows);
  if (lines.to == lines.first ||
      !change_as_one_step(app, edits_of(lines, app.work.design.grid, app.view.moved_yarns))) {
    return;
  }
  const int by = lines.to - lines.first;
  (lines.rows ? app.view.cursor.row : app.view.cursor.column) = round_edge(lines.grabbed + by, size);
  if (app.view.marked && lines.count > 1) {
    int& corner = lines.rows ? app.view.marked->corner.row : app.view.marked->corner.column;
    corner = round_edge(corner + by, size);
  }
  show(app, app.view.cursor);
  say(app, words_for(lines, size), Tone::good);
}

void move_by_key(App& app, bool rows, int by) {
  LineDrag lines = lines_at_cursor(app, rows);
  lines.to = lines.first + by;
  const auto [least, most] = places_for(lines, size_of(app.work.design.grid, rows));
  if (lines.to < least || lines.to > most) {
    return say(app, rows ? tr("There is no row beyond it") : tr("There is no column beyond it"));
  }
  move_lines(app, lines);
}

void duplicate_lines(App& app, bool rows) {
  const LineDrag lines = lines_at_cursor(app, rows);
  if (lines.first + lines.count > size_of(app.work.design.grid, rows)) {
    return say(app,
               rows ? tr("The marked rows go round the edge: shift the drawing first")
                    : tr("The marked columns go round the edge: shift the drawing first"),
               Tone::trouble);
  }
  edit(app, rows ? Edit(DuplicateRows{lines.first, lines.count}) : Edit(DuplicateColumns{lines.first, lines.count}));
}

// Those that go round the edge lie in two parts, of which the lower is the second.
void delete_lines(App& app, bool rows) {
  const LineDrag lines = lines_at_cursor(app, rows);
  const int size = size_of(app.work.design.grid, rows);
  const auto deleting = [rows](int first, int count) {
    return rows ? Edit(DeleteRows{first, count}) : Edit(DeleteColumns{first, count});
  };
  const int beyond = std::max(lines.first + lines.count - size, 0);
  std::vector<Edit> edits{deleting(lines.first, lines.count - beyond)};
  if (beyond > 0) {
    edits.push_back(deleting(0, beyond));
  }
  if (!change_as_one_step(app, edits) || lines.count == 1) {
    return;
  }
  const int first = lines.first + 1;
  const int last = round_edge(lines.first + lines.count - 1, size) + 1;
  say(app, rows ? said("Rows {} to {} are deleted", first, last) : said("Columns {} to {} are deleted", first, last),
      Tone::good);
}

void ask_for_yarns(App& app) {
  const ScreenBox& canvas = app.view.canvas;
  show(app, app.view.cursor);
  const ScreenBox cell = box_of(layout_of(app, canvas), app.view.cursor);
  app.session.dialog = YarnsHereDialog{app.view.cursor.row, false, {canvas.right, cell.middle().y}};
}

void show_all_of_new_size(App& app) {
  app.view.marked.reset();
  app.view.zoom.reset();
  app.view.pan = {};
}

} // namespace

void apply_rows(App& app, const BeginLineDrag& action) {
  close_step(app);
  app.session.message.clear();
  const int size = size_of(app.work.design.grid, action.rows);
  if (action.line >= 0 && action.line < size) {
    (action.rows ? app.view.cursor.row : app.view.cursor.column) = action.line;
    app.session.line_drag = lines_at(app, action.rows, action.line);
  }
}

void apply_rows(App& app, const LineDragTo& action) {
  if (app.session.line_drag) {
    LineDrag& lines = *app.session.line_drag;
    const auto [least, most] = places_for(lines, size_of(app.work.design.grid, lines.rows));
    lines.to = std::clamp(lines.first + action.line - lines.grabbed, least, most);
  }
}

void apply_rows(App& app, const EndLineDrag&) {
  if (const auto lines = std::exchange(app.session.line_drag, std::nullopt)) {
    move_lines(app, *lines);
  }
}

void apply_rows(App& app, const SetYarnsHere& action) {
  close_step(app);
  app.session.message.clear();
  app.work.history.begin_drag(noted("yarns of rows"));
  edit(app,
       ChangeBands{with_pair_in_rows(app.work.design.bands, action.first, action.count, action.main, action.contrast)});
  close_step(app);
}

void apply_rows(App& app, const TakeLayout& action) {
  close_step(app);
  const auto edits = layout_edits(app.work.design, action.layout, card_width_of(app.work.profile));
  if (!edits) {
    return say(app, with_capital(edits.error().text()), Tone::trouble);
  }
  const Grid before = app.work.design.grid;
  app.work.history.begin_drag(fmt::format("lay out: {}", name_of(action.layout)));
  for (const Edit& change : *edits) {
    edit(app, change);
  }
  close_step(app);
  show_all_of_new_size(app);
  const Grid& grid = app.work.design.grid;
  const std::string words =
      said("Laid out as {}: {} × {} stitches", tr(name_of(action.layout).data()), grid.width(), grid.height());
  if (loses_symmetry_laid_out(app, before)) {
    return say(
        app, said("{}; the symmetry is put aside until this is undone: laid out so, the drawing hasn't got it", words),
        Tone::trouble);
  }
  say(app, words, Tone::good);
}

void widen(App& app, const Widening& wider) {
  close_step(app);
  app.work.history.begin_drag(noted("make the repeat wider"));
  for (const Edit& change : widening_edits(app.work.design.grid, wider)) {
    edit(app, change);
  }
  close_step(app);
  show_all_of_new_size(app);
  const int width = app.work.design.grid.width();
  say(app,
      wider.times > 1 ? said("The repeat is {} stitches wide: the drawing {} times side by side", width, wider.times)
                      : said("The repeat is {} stitches wide: the new ones are at its right", width),
      Tone::good);
}

void run_row_command(App& app, Command command) {
  switch (command) {
  case Command::duplicate_row: return duplicate_lines(app, true);
  case Command::delete_row: return delete_lines(app, true);
  case Command::duplicate_column: return duplicate_lines(app, false);
  case Command::delete_column: return delete_lines(app, false);
  case Command::move_row_up: return move_by_key(app, true, 1);
  case Command::move_row_down: return move_by_key(app, true, -1);
  case Command::move_column_left: return move_by_key(app, false, -1);
  case Command::move_column_right: return move_by_key(app, false, 1);
  case Command::move_with_yarns: {
    const bool along = app.view.moved_yarns == MovedYarns::of_the_place;
    app.view.moved_yarns = along ? MovedYarns::their_own : MovedYarns::of_the_place;
    return say(app, along ? tr("Moved rows take their yarns along")
                          : tr("Moved rows are knitted in the yarns of the place"));
  }
  case Command::yarns_here: return ask_for_yarns(app);
  default: return;
  }
}

void ask_for_motif(App& app) {
  if (app.motif_folder.empty()) {
    return say(app, tr("No folder for motifs is known: set HOME or XDG_DATA_HOME"), Tone::trouble);
  }
  KeepMotifDialog dialog;
  dialog.drawing = stitches_at_work(app);
  app.session.dialog = std::move(dialog);
}

void keep_motif(App& app) {
  auto* const dialog = std::get_if<KeepMotifDialog>(&app.session.dialog);
  if (dialog == nullptr) {
    return;
  }
  // One line each, and a name ends at a semicolon in the file.
  const auto cleaned = [](std::string text) {
    std::ranges::replace_if(
        text, [](char sign) { return sign == ';' || static_cast<unsigned char>(sign) < 0x20; }, ' ');
    return std::string(trimmed(text));
  };
  const std::string name = cleaned(dialog->name);
  if (name.empty()) {
    dialog->trouble = tr("Type a name for it.");
    return;
  }
  const auto kept = keep_motif_in(app.motif_folder, Motif{motif_id(name), name, MotifGroup::own, cleaned(dialog->words),
                                                          std::move(dialog->drawing)});
  if (!kept) {
    return show_trouble(app, tr("The motif is not kept"), kept.error(), {});
  }
  app.session.dialog = NoDialog{};
  app.view.focus_drawing = true;
  app.caches.motifs_stale = true;
  say(app, said("Kept as a motif: {}", kept->string()), Tone::good);
}

} // namespace punchwright::editor
