// The chosen symmetry goes along with the drawing: with its rows and columns, and back again on undo.
#include "drawing/axes.hpp"
#include "editor/applying.hpp"
#include "words/words.hpp"

#include <ranges>

namespace punchwright::editor {

namespace {

std::optional<Frieze> moved_by(const std::optional<Frieze>& symmetry, const std::vector<LineChange>& changes,
                               GridSize before) {
  const auto moved =
      symmetry ? std::optional(axes_after(*symmetry, changes, before.width, before.height)) : std::nullopt;
  return moved && *moved ? std::optional(**moved) : std::nullopt;
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
  }
  std::vector<LineChange> changes = line_changes(change, before.width, before.height);
  if (changes.empty()) {
    return;
  }
  MovedAxes moved{step, std::move(changes), before, grid_size(app.work.design.grid), view.symmetry, {}};
  view.symmetry = moved.symmetry_after = moved_by(view.symmetry, moved.changes, before);
  if (moved.symmetry_before && !moved.symmetry_after) {
    const auto why = axes_after(*moved.symmetry_before, moved.changes, before.width, before.height);
    say(app, said("The symmetry is put aside until this is undone: {}", why.error().text()), Tone::trouble);
  }
  view.moved_axes.push_back(std::move(moved));
}

// Axes that are as the step left them are afterwards as it found them; others, chosen since then, move as the lines do.
bool step_back(App& app) {
  const std::size_t step = app.work.history.done();
  if (!app.work.history.undo(app.work.design)) {
    return false;
  }
  auto& symmetry = app.view.symmetry;
  for (const MovedAxes& moved : app.view.moved_axes | std::views::reverse) {
    if (moved.step == step) {
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
  auto& symmetry = app.view.symmetry;
  for (const MovedAxes& moved : app.view.moved_axes) {
    if (moved.step == app.work.history.done()) {
      symmetry = symmetry == moved.symmetry_before ? moved.symmetry_after
                                                   : moved_by(symmetry, moved.changes, moved.size_before);
    }
  }
  return true;
}

} // namespace punchwright::editor
