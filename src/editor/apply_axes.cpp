// The chosen symmetry and the mark go along with the drawing: with its rows and columns, and back again on undo.
#include "design/wrap.hpp"
#include "drawing/axes.hpp"
#include "editor/applying.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <ranges>
#include <utility>

namespace punchwright::editor {

namespace {

std::optional<Frieze> moved_by(const std::optional<Frieze>& symmetry, const std::vector<LineChange>& changes,
                               GridSize before) {
  return symmetry ? std::optional(axes_after(*symmetry, changes, before.width, before.height)) : std::nullopt;
}

// Marked rows, or columns; they may go round the edge.
struct Lines {
  int first = 0;
  int count = 1;
};

// Lines that are inserted among marked ones are marked too.
Lines after_inserting(Lines lines, int at, int inserted, int size) {
  if (lines.count == size) {
    return {0, size + inserted};
  }
  const int place = round_edge(at - lines.first, size);
  const bool among_them = place > 0 && place < lines.count;
  return {at <= lines.first ? lines.first + inserted : lines.first, among_them ? lines.count + inserted : lines.count};
}

Lines after_deleting(const Lines& lines, int at, int deleted, int size) {
  Lines left = lines;
  for (int line = at; line < at + deleted; ++line) {
    left.first -= line < lines.first ? 1 : 0;
    left.count -= round_edge(line - lines.first, size) < lines.count ? 1 : 0;
  }
  return left;
}

// None where all of it is gone.
std::optional<Area> marked_after(Area area, const std::vector<LineChange>& changes, GridSize size) {
  for (const LineChange& change : changes) {
    int& lines = change.rows ? size.height : size.width;
    int& first = change.rows ? area.corner.row : area.corner.column;
    int& count = change.rows ? area.rows : area.columns;
    if (change.kind != LineChange::Kind::inserted && change.kind != LineChange::Kind::deleted) {
      continue;
    }
    const bool more = change.kind == LineChange::Kind::inserted;
    const Lines after = more ? after_inserting({first, count}, change.first, change.count, lines)
                             : after_deleting({first, count}, change.first, change.count, lines);
    if (after.count < 1) {
      return std::nullopt;
    }
    lines += more ? change.count : -change.count;
    first = round_edge(after.first, lines);
    count = after.count;
  }
  return area;
}

void follow_mark(View& view, const std::vector<LineChange>& changes, GridSize before) {
  if (view.marked) {
    view.marked = marked_after(*view.marked, changes, before);
  }
}

} // namespace

GridSize grid_size(const Grid& grid) {
  return {grid.width(), grid.height()};
}

void follow_lines(App& app, const Edit& change, GridSize before, bool new_step) {
  const std::size_t step = app.work.history.done();
  View& view = app.view;
  if (new_step) { // what was undone before is forgotten
    std::erase_if(view.moved_axes, [step](const MovedAxes& moved) { return moved.step >= step; });
    note_mark(app);
    std::erase_if(view.moved_marks, [step](const MovedMark& moved) { return moved.step >= step; });
    view.mark_of_step = MovedMark{step, view.marked, {}};
  }
  std::vector<LineChange> changes = line_changes(change, before.width, before.height);
  if (changes.empty()) {
    return;
  }
  follow_mark(view, changes, before);
  MovedAxes moved{step, std::move(changes), before, grid_size(app.work.design.grid), view.chosen_symmetry, {}};
  view.chosen_symmetry = moved.symmetry_after = moved_by(view.chosen_symmetry, moved.changes, before);
  view.moved_axes.push_back(std::move(moved));
}

void note_mark(App& app) {
  View& view = app.view;
  if (auto moved = std::exchange(view.mark_of_step, std::nullopt); moved && moved->before != view.marked) {
    moved->after = view.marked;
    view.moved_marks.push_back(*moved);
  }
}

bool loses_symmetry_laid_out(App& app, const Grid& before) {
  View& view = app.view;
  if (!view.symmetry || view.moved_axes.empty()) {
    return false;
  }
  const Frieze found = *view.symmetry;
  const auto kept = frieze_in(app.work.design.grid, *view.chosen_symmetry);
  if (!kept && !has_symmetry(before, found)) {
    return false; // axes for strokes to come stay where they are
  }
  view.chosen_symmetry = view.moved_axes.back().symmetry_after = kept; // with the lines that the step put in
  return !kept;
}

void settle_symmetry(App& app, const std::string& message_before) {
  View& view = app.view;
  auto& chosen = view.chosen_symmetry;
  const auto [width, height] = grid_size(app.work.design.grid);
  const auto say_too = [&](const std::string& words, Tone tone) {
    const bool said_something = app.session.message != message_before && !app.session.message.empty();
    say(app, said_something ? app.session.message + ". " + words : words, tone);
  };
  if (chosen && unusable_frieze(*chosen, width, height)) {
    const Frieze centred = centred_frieze(chosen->group, width, height);
    if (!unusable_frieze(centred, width, height)) { // an older step than are known was undone under it
      chosen = centred;
      say_too(tr("The symmetry's axes are in the middle of the new size"), Tone::plain);
    }
  }
  const Failure why = chosen ? unusable_frieze(*chosen, width, height) : std::nullopt;
  view.symmetry = why ? std::nullopt : chosen;
  if (why && !view.symmetry_aside) {
    say_too(said("The symmetry is put aside until the width suits it again: {}", why->text()), Tone::trouble);
  } else if (view.symmetry && view.symmetry_aside == view.symmetry->group) {
    say_too(said("The symmetry is there again: {}", description_of(view.symmetry->group)), Tone::good);
  }
  view.symmetry_aside = why ? std::optional(chosen->group) : std::nullopt;
}

namespace {

// A mark that is as the step left it is afterwards as the step found it. False: it isn't, or the step left it alone.
bool mark_goes_back(View& view, std::size_t step) {
  const auto moved = std::ranges::find(view.moved_marks, step, &MovedMark::step);
  const bool as_left = moved != view.moved_marks.end() && view.marked == moved->after;
  view.marked = as_left ? moved->before : view.marked;
  return as_left;
}

bool mark_goes_on(View& view, std::size_t step) {
  const auto moved = std::ranges::find(view.moved_marks, step, &MovedMark::step);
  const bool as_found = moved != view.moved_marks.end() && view.marked == moved->before;
  view.marked = as_found ? moved->after : view.marked;
  return as_found;
}

} // namespace

// Axes that are as the step left them are afterwards as it found them; others, chosen since then, move as the lines do.
bool step_back(App& app) {
  const std::size_t step = app.work.history.done();
  if (!app.work.history.undo(app.work.design)) {
    return false;
  }
  auto& symmetry = app.view.chosen_symmetry;
  const bool mark_is_back = mark_goes_back(app.view, step);
  for (const MovedAxes& moved : app.view.moved_axes | std::views::reverse) {
    if (moved.step == step) {
      if (!mark_is_back) {
        follow_mark(app.view, taken_back(moved.changes), moved.size_after);
      }
      symmetry = symmetry == moved.symmetry_after ? moved.symmetry_before
                                                  : moved_by(symmetry, taken_back(moved.changes), moved.size_after);
    }
  }
  return true;
}

bool step_on(App& app) {
  if (!app.work.history.redo(app.work.design)) {
    return false;
  }
  auto& symmetry = app.view.chosen_symmetry;
  const std::size_t step = app.work.history.done();
  const bool mark_is_there = mark_goes_on(app.view, step);
  for (const MovedAxes& moved : app.view.moved_axes) {
    if (moved.step == step) {
      if (!mark_is_there) {
        follow_mark(app.view, moved.changes, moved.size_before);
      }
      symmetry = symmetry == moved.symmetry_before ? moved.symmetry_after
                                                   : moved_by(symmetry, moved.changes, moved.size_before);
    }
  }
  return true;
}

} // namespace punchwright::editor
