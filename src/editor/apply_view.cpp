// Where one looks: zoom, findings, the piece nearer or farther. Nothing here changes the design.
#include "design/step_words.hpp"
#include "editor/applying.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace punchwright::editor {

CanvasLayout layout_of(const App& app, const ScreenBox& box) {
  const Document& design = app.work.design;
  const View& view = app.view;
  const double stitch = design.gauge.stitch_mm();
  const double row = design.gauge.row_mm();
  CanvasLayout layout;
  layout.columns = design.grid.width();
  layout.rows = design.grid.height();
  layout.strips_up_to = app.caches.strips.up_to;
  const auto set_zoom = [&](float zoom) {
    const CellSize size = cell_size(stitch, row, zoom);
    layout.cell_width = size.width;
    layout.cell_height = size.height;
    const float writing = 16.0F * app.theme.scale;
    layout.strip_height = size.height >= 9.0F * app.theme.scale ? writing : std::max(2.0F, size.height * 0.5F);
  };
  if (view.zoom) {
    set_zoom(*view.zoom * app.theme.scale);
  } else {
    // All of the repeat and a few stitches of its neighbours. The whole width is always seen; what is too tall for a
    // legible size is shown from row 1 up.
    const auto columns = static_cast<float>(layout.columns);
    const auto rows = static_cast<float>(layout.rows);
    const float smallest = 3.0F * app.theme.scale / static_cast<float>(row);
    const float largest = 34.0F * app.theme.scale / static_cast<float>(row);
    const float across = zoom_to_fit(stitch, row, columns + 6.0F, 1.0F, box);
    float zoom = zoom_to_fit(stitch, row, columns + 6.0F, rows + 4.0F, box);
    const bool tall = zoom < smallest;
    zoom = std::min(std::clamp(zoom, smallest, largest), across);
    set_zoom(zoom);
    while (!tall && zoom > smallest && tile_height(layout) + 2 * layout.cell_height > box.height()) {
      zoom *= 0.95F; // strips take room too
      set_zoom(zoom);
    }
  }
  const ScreenPoint middle = box.middle();
  const float across = static_cast<float>(layout.columns) * layout.cell_width;
  const float tall = tile_height(layout);
  layout.origin.x = std::round(middle.x - across / 2 + view.pan.x);
  layout.origin.y = std::round(middle.y + tall / 2 + view.pan.y);
  if (!view.zoom && tall + 2 * layout.cell_height > box.height()) {
    layout.origin.y = std::round(box.bottom - 2 * layout.cell_height + view.pan.y);
  }
  return layout;
}

CanvasLayout layout_in_sight(const App& app, const ScreenBox& box) {
  const CanvasLayout at_rest = layout_of(app, box);
  if (!lines_dragged(app) || !app.caches.waiting->key.lines->rows) {
    return at_rest;
  }
  const LineDrag& lines = *app.caches.waiting->key.lines;
  const Cell held{0, lines.to + lines.grabbed - lines.first};
  CanvasLayout layout = at_rest;
  layout.strips_up_to = app.caches.waiting->strips.up_to;
  layout.origin.y += box_of(at_rest, held).bottom - box_of(layout, held).bottom;
  return layout;
}

void apply_view(App& app, const ZoomAt& action) {
  View& view = app.view;
  const CanvasLayout before = layout_of(app, view.canvas);
  // Where the anchor lies in the drawing, in stitches and in parts of the repeat's height.
  const float column = (action.anchor.x - before.origin.x) / before.cell_width;
  const float height = (before.origin.y - action.anchor.y) / tile_height(before);
  const auto row_mm = static_cast<float>(app.work.design.gauge.row_mm());
  const float present = view.zoom ? *view.zoom : before.cell_height / row_mm / app.theme.scale;
  view.zoom = std::clamp(present * action.factor, 2.0F / row_mm, 80.0F / row_mm);
  const CanvasLayout after = layout_of(app, view.canvas);
  view.pan.x += action.anchor.x - (after.origin.x + column * after.cell_width);
  view.pan.y += action.anchor.y - (after.origin.y - height * tile_height(after));
}

void show(App& app, Cell cell) {
  const ScreenBox& canvas = app.view.canvas;
  if (canvas.width() <= 0) {
    return;
  }
  const ScreenBox box = box_of(layout_of(app, canvas), cell);
  const float margin = 2 * box.height();
  ScreenPoint by;
  if (box.left < canvas.left + margin) {
    by.x = canvas.left + margin - box.left;
  } else if (box.right > canvas.right - margin) {
    by.x = canvas.right - margin - box.right;
  }
  if (box.top < canvas.top + margin) {
    by.y = canvas.top + margin - box.top;
  } else if (box.bottom > canvas.bottom - margin) {
    by.y = canvas.bottom - margin - box.bottom;
  }
  if (by.x != 0 || by.y != 0) {
    apply(app, PanBy{by});
  }
}

namespace {

// Where the settings are that a finding speaks of.
std::optional<Tab> tab_for(FindingId id) {
  switch (id) {
  case FindingId::yarns_too_alike: return Tab::yarns;
  case FindingId::card_too_short_for_loop:
  case FindingId::card_longer_than_blank: return Tab::card;
  case FindingId::piece_wider_than_bed:
  case FindingId::piece_off_bed:
  case FindingId::repeat_on_needles:
  case FindingId::repeat_cut_at_edges: return Tab::piece;
  default: return std::nullopt;
  }
}

} // namespace

void apply_view(App& app, const ChooseFinding& action) {
  const int count = static_cast<int>(app.caches.findings.size());
  if (action.finding < 0 || action.finding >= count) {
    app.view.finding = -1;
    return;
  }
  app.view.finding = action.finding;
  app.view.finding_wanted = true;
  app.view.findings_in_front = true; // what it says is to be read
  app.view.focus_drawing = true;
  const Finding& finding = app.caches.findings[static_cast<std::size_t>(action.finding)];
  app.view.tab = tab_for(finding.id).value_or(app.view.tab);
  const auto mark = std::ranges::find(app.caches.marks, action.finding, &Mark::finding);
  if (mark == app.caches.marks.end()) {
    return;
  }
  const Cell place{mark->first_column, mark->row};
  if (finding.row >= 0) {
    app.view.cursor = place;
  }
  show(app, place);
}

void apply_view(App& app, const ZoomPiece& action) {
  View& view = app.view;
  const double before = app.caches.piece.painter.px_per_mm();
  if (before <= 0) {
    return;
  }
  const ScreenPoint middle = view.piece_box.middle();
  // mm from the room's middle to the anchor, before and after
  const double x = (action.anchor.x - middle.x) / before;
  const double y = (middle.y - action.anchor.y) / before;
  const double after = std::clamp<double>(before * action.factor, 0.2, 90 / app.work.design.gauge.row_mm());
  view.piece_zoom = after;
  view.piece_middle.x += x * (1 - before / after);
  view.piece_middle.y += y * (1 - before / after);
}

void apply_view(App& app, const PanPiece& action) {
  View& view = app.view;
  const double px = app.caches.piece.painter.px_per_mm();
  if (px <= 0) {
    return;
  }
  const Document& design = app.work.design;
  view.piece_zoom = view.piece_zoom.value_or(px);
  // At least the cloth's edge stays in the room's middle.
  const double aside = stitches_of(design) * design.gauge.stitch_mm() / 2;
  const double up = static_cast<double>(app.caches.rows.rows.size()) * design.gauge.row_mm() / 2;
  view.piece_middle.x = std::clamp(view.piece_middle.x - action.by.x / px, -aside, aside);
  view.piece_middle.y = std::clamp(view.piece_middle.y + action.by.y / px, -up, up);
}

void exchange_piece(App& app) {
  View& view = app.view;
  view.piece_large = !view.piece_large;
  std::swap(view.piece_zoom, view.other_piece_zoom);
  std::swap(view.piece_middle, view.other_piece_middle);
  view.focus_drawing = true; // or the piece in its place
}

// What is seen the foot says at its right end as long as it lasts.
void see_as(App& app, ColourSight sight) {
  ColourSight& present = app.view.sight;
  present = present == sight ? ColourSight::as_is : sight;
  say(app, present == ColourSight::as_is ? tr(info_of(present).name) : std::string());
}

void go_to_step(App& app, std::size_t done) {
  close_step(app);
  const History& history = app.work.history;
  while (history.done() > done && step_back(app)) {
  }
  while (history.done() < done && step_on(app)) {
  }
  say(app, done == 0 ? tr("Back at the beginning") : said("Now at: {}", words_of(history.steps()[history.done() - 1])));
}

} // namespace punchwright::editor
