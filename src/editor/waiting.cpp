// What is shown over the drawing, drawn on a copy and looked over for floats.
#include "editor/waiting.hpp"

#include "design/edits.hpp"
#include "drawing/marked_area.hpp"
#include "editor/app.hpp"
#include "editor/finding_marks.hpp"
#include "rules/checks.hpp"

#include <algorithm>
#include <functional>
#include <utility>

namespace punchwright::editor {

namespace {

bool is_shape(Tool tool) {
  return tool == Tool::line || tool == Tool::rectangle || tool == Tool::ellipse || tool == Tool::flood;
}

// The shape drawn where it may be. One of another size is no drawing of this design, and will be refused.
Grid with_shape(const Document& design, const Grid& shape, bool contrast) {
  if (shape.width() != design.grid.width() || shape.height() != design.grid.height()) {
    return shape;
  }
  Grid after = design.grid;
  const std::vector<char> yarns = yarns_by_row(design.bands);
  for (int row = 0; row < after.height(); ++row) {
    if (!contrast || two_yarns_in(yarns, row)) {
      std::ranges::transform(
          after.row(row), shape.row(row), after.row(row).begin(),
          [contrast](Grid::Word there, Grid::Word drawn) { return contrast ? there | drawn : there & ~drawn; });
    }
  }
  return after;
}

std::vector<Edit> edits_of(const Document& design, const WaitingKey& key) {
  if (key.lines) {
    return edits_of(*key.lines, design.grid, key.moved_yarns);
  }
  if (key.floating) {
    return {Redraw{with_set_down(design.grid, *key.floating), key.floating->name}};
  }
  return {Redraw{with_shape(design, key.shape, key.contrast), noted("draw")}};
}

struct MoveEdits {
  bool rows = true;
  MovedYarns yarns = MovedYarns::of_the_place;
  std::vector<Edit> edits;

  void move(int first, int count, int to) {
    if (count > 0 && to != first) {
      edits.push_back(rows ? Edit(MoveRows{first, count, to, yarns}) : Edit(MoveColumns{first, count, to}));
    }
  }
};

} // namespace

// Those that go round the edge move on by parts: the ones that go over it to its other side, and the same number of the
// others from before them to behind them.
std::vector<Edit> edits_of(const LineDrag& lines, const Grid& drawing, MovedYarns moved_yarns) {
  const int size = lines.rows ? drawing.height() : drawing.width();
  const int others = size - lines.count;
  MoveEdits moves{lines.rows, moved_yarns, {}};
  int first = lines.first;
  while (first + lines.count > size && first < size && first != lines.to && others > 0) {
    const int before_edge = size - first;
    const int behind_edge = lines.count - before_edge;
    if (lines.to < first) {
      const int by = std::min({first - lines.to, behind_edge, others});
      moves.move(0, by, size - by);
      moves.move(behind_edge - by + others - by, by, behind_edge - by);
      first -= by;
    } else {
      const int by = std::min({lines.to - first, before_edge, others});
      moves.move(size - by, by, 0);
      moves.move(by + behind_edge, by, behind_edge + others);
      first += by;
    }
  }
  if (first != lines.to) {
    const int over = first == size ? size : 0; // the whole of them beyond the edge now
    moves.move(first - over, lines.count, lines.to - over);
  }
  return moves.edits;
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
  WaitingKey key;
  key.opening = work.opening;
  key.revision = work.history.revision();
  if (session.floating) {
    key.floating = session.floating;
  } else if (session.stroke && is_shape(session.stroke->tool)) {
    key.shape = session.stroke->preview;
    key.contrast = session.stroke->contrast;
  } else if (session.line_drag && session.line_drag->to != session.line_drag->first) {
    key.lines = session.line_drag;
    key.moved_yarns = app.view.moved_yarns;
  } else {
    return std::nullopt;
  }
  return key;
}

Waiting drawn_as_it_waits(const App& app, const WaitingKey& key) {
  Waiting waiting{key, app.work.design, {}, {}, {}, {}, {}, {}};
  for (const Edit& edit : edits_of(app.work.design, key)) {
    if (auto change = apply_edit(waiting.design, edit); !change) {
      waiting.refused = change.error();
      waiting.design = app.work.design;
      break;
    }
  }
  check_floats(waiting.design, app.work.profile, waiting.floats);
  std::erase_if(waiting.floats, std::not_fn(is_long_float_of_repeat));
  waiting.marks = marks_of(waiting.floats, waiting.design, app.work.profile);
  waiting.row_yarns = yarns_by_row(waiting.design.bands);
  return waiting;
}

std::vector<char> yarns_by_row(const std::vector<Band>& bands) {
  std::vector<char> yarns;
  for (const Band& band : bands) {
    for (int row = 0; row < band.rows; ++row) {
      yarns.push_back(band.main);
      yarns.push_back(band.contrast.value_or('\0'));
    }
  }
  return yarns;
}

bool two_yarns_in(const std::vector<char>& yarns, int row) {
  return yarns[static_cast<std::size_t>(row) * 2 + 1] != '\0';
}

bool lines_dragged(const App& app) {
  return app.caches.waiting && app.caches.waiting->key.lines;
}

const Document& design_in_sight(const App& app) {
  return lines_dragged(app) ? app.caches.waiting->design : app.work.design;
}

const std::vector<char>& row_yarns_in_sight(const App& app) {
  return lines_dragged(app) ? app.caches.waiting->row_yarns : app.caches.row_yarns;
}

FindingCounts counts_in_sight(const App& app) {
  const Caches& caches = app.caches;
  return caches.waiting ? caches.waiting->counts : FindingCounts{caches.faults, caches.warnings, caches.notes};
}

const Strips& strips_in_sight(const App& app) {
  return lines_dragged(app) && app.caches.waiting->key.lines->rows ? app.caches.waiting->strips : app.caches.strips;
}

} // namespace punchwright::editor
