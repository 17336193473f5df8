// What is shown over the drawing, drawn on a copy and looked over for floats.
#include "editor/waiting.hpp"

#include "design/edits.hpp"
#include "drawing/marked_area.hpp"
#include "editor/app.hpp"
#include "editor/finding_marks.hpp"
#include "rules/checks.hpp"

#include <utility>

namespace punchwright::editor {

namespace {

bool is_shape(Tool tool) {
  return tool == Tool::line || tool == Tool::rectangle || tool == Tool::ellipse;
}

Edit edit_of(const Document& design, const WaitingKey& key) {
  if (key.floating) {
    return Redraw{with_set_down(design.grid, *key.floating), key.floating->name};
  }
  SetCells change{{}, key.contrast};
  for (const Cell cell : key.cells) {
    if (!key.contrast || two_yarns_in(design, cell.row)) {
      change.cells.push_back(cell);
    }
  }
  return change;
}

} // namespace

bool two_yarns_in(const Document& design, int row) {
  return design.bands[band_index_at(design, row)].contrast.has_value();
}

Grid with_set_down(const Grid& drawing, const Floating& floating) {
  Grid after = drawing;
  if (floating.lifted_from) {
    after =
        set_down(after, floating.lifted_from->corner, Grid(floating.lifted_from->columns, floating.lifted_from->rows));
  }
  Grid patch = floating.drawing;
  const Area area = marked(Area{floating.corner, patch.width(), patch.height()}, after);
  if (floating.see_through) {
    const Grid below = lifted(after, area);
    for (int row = 0; row < below.height(); ++row) {
      for (int column = 0; column < below.width(); ++column) {
        if (below.at(column, row)) {
          patch.set(column, row, true);
        }
      }
    }
  }
  return set_down(after, area.corner, patch);
}

std::optional<WaitingKey> what_waits(const App& app) {
  const Work& work = app.work;
  const Session& session = app.session;
  if (session.floating) {
    return WaitingKey{work.opening, work.history.revision(), {}, true, session.floating};
  }
  if (session.stroke && is_shape(session.stroke->tool)) {
    return WaitingKey{work.opening, work.history.revision(), session.stroke->preview, session.stroke->contrast, {}};
  }
  return std::nullopt;
}

Waiting drawn_as_it_waits(const App& app, const WaitingKey& key) {
  Waiting waiting{key, app.work.design, {}, {}};
  // Refused, it is the drawing as it is: that is what setting it down would leave as well.
  static_cast<void>(apply_edit(waiting.design, edit_of(app.work.design, key)));
  check_floats(waiting.design, app.work.profile, waiting.floats);
  std::erase_if(waiting.floats,
                [](const Finding& finding) { return finding.id != FindingId::float_too_long || finding.on_piece; });
  waiting.marks = marks_of(waiting.floats, waiting.design, app.work.profile);
  return waiting;
}

} // namespace punchwright::editor
