// The state as JSON.
#include "editor/state_line.hpp"

#include "plan/bench_moves.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright::editor {

namespace {

std::string json_text(std::string_view text) {
  std::string out = "\"";
  for (const char letter : text) {
    if (letter == '"' || letter == '\\') {
      out += '\\';
      out += letter;
    } else if (static_cast<unsigned char>(letter) < 0x20) {
      out += fmt::format("\\u{:04x}", static_cast<unsigned>(letter));
    } else {
      out += letter;
    }
  }
  return out + '"';
}

std::string box_text(const ScreenBox& box) {
  return fmt::format("[{},{},{},{}]", box.left, box.top, box.right, box.bottom);
}

std::string bench_text(const App& app) {
  const Bench& bench = app.bench;
  if (!bench.open || bench.moves == nullptr) {
    return "null";
  }
  const BenchMoves& moves = *bench.moves;
  const auto done = static_cast<std::size_t>(bench.place.done);
  const bool more = done < moves.moves.size();
  const Side side = more ? moves.moves[done].before : moves.moves.back().after;
  return fmt::format("{{\"done\":{},\"of\":{},\"row\":{},\"rows\":{},\"carriage\":\"{}\",\"today\":{},\"words\":{}}}",
                     bench.place.done, moves.count(), more ? moves.moves[done].row : 0, bench.place.rows,
                     side == Side::left ? "left" : "right", rows_today(app),
                     json_text(more ? words_of(moves, bench.place.done, app.work.design, app.caches.rows) : ""));
}

// For each row that can be seen, and each column, the middle on the screen.
std::string lattice(const App& app) {
  const CanvasLayout layout = layout_of(app, app.view.canvas);
  const Cell low = cell_at(layout, {app.view.canvas.left, app.view.canvas.bottom - 1});
  const Cell high = cell_at(layout, {app.view.canvas.right - 1, app.view.canvas.top});
  std::string rows;
  for (int row = low.row; row <= high.row; ++row) {
    rows += fmt::format("{}\"{}\":{:.1f}", rows.empty() ? "" : ",", row, box_of(layout, Cell{0, row}).middle().y);
  }
  std::string columns;
  for (int column = low.column; column <= high.column; ++column) {
    columns +=
        fmt::format("{}\"{}\":{:.1f}", columns.empty() ? "" : ",", column, box_of(layout, Cell{column, 0}).middle().x);
  }
  return fmt::format("\"rows\":{{{}}},\"columns\":{{{}}},\"cell\":[{},{}]", rows, columns, layout.cell_width,
                     layout.cell_height);
}

} // namespace

namespace {

std::string yoke_text(const App& app) {
  const YokeWork& work = app.yoke;
  if (!work.opened) {
    return "null";
  }
  const YokeView& view = app.view.yoke;
  const Yoke& yoke = work.opened->yoke;
  std::string stitches;
  if (const SizePlan* const plan = shown_plan(app)) {
    for (const PieceOfSize& piece : plan->pieces) {
      stitches += fmt::format("{}{}", stitches.empty() ? "" : ",", piece.tiers.front().stitches);
    }
  }
  const std::size_t first = widths_of(yoke, 0);
  return fmt::format("{{\"shown\":{},\"saved\":{},\"path\":{},\"steps\":{},\"opening\":{},\"revision\":{},"
                     "\"view\":\"{}\",\"size\":{},\"piece\":{},\"pieces\":{},\"tiers\":{},\"findings\":{},"
                     "\"bottom_cm\":{},\"depth_cm\":{},\"plain_above\":{},\"stitches\":[{}]}}",
                     work.shown, work.saved(), json_text(work.path.string()), work.done, work.opening, work.revision,
                     yoke_views[static_cast<std::size_t>(view.shows)].id, view.size, view.piece, yoke.pieces.size(),
                     yoke.tiers.size(), app.caches.yoke.findings.size(), yoke.pieces[first].bottom_cm.at(view.size),
                     yoke.depth_cm.at(view.size), yoke.tiers.front().plain_above.at(view.size), stitches);
}

} // namespace

std::string state_line(const App& app, const Actions& actions, const FrameFacts& facts) {
  const View& view = app.view;
  const Work& work = app.work;
  std::string places;
  for (const NamedPlace& place : actions.places) {
    places += fmt::format("{}{}:{}", places.empty() ? "" : ",", json_text(place.name), box_text(place.box));
  }
  return fmt::format(
      "{{\"frame\":{},\"idle\":{},\"opening\":{},\"revision\":{},\"saved\":{},\"saves\":{},\"steps\":{},\"title\":{},"
      "\"path\":{},"
      "\"message\":{},\"dialog\":{},\"cursor\":[{},{}],\"finding\":{},\"findings\":{},\"faults\":{},\"stroke\":{},"
      "\"floats_shown\":{},\"unsettled\":{},"
      "\"keys_at\":{},\"typed\":{},\"face\":\"{}\",\"theme\":\"{}\",\"lengths\":\"{}\",\"scale\":{},\"canvas\":{},{},"
      "\"yoke\":{},\"bench\":{},\"places\":{{{}}}}}\n",
      facts.number, facts.idle, work.opening, work.history.revision(), work.history.saved(), app.session.saves,
      work.history.done(), json_text(window_title(app)), json_text(app.session.path.string()),
      json_text(app.session.message), json_text(name_of(app.session.dialog)), view.cursor.column, view.cursor.row,
      view.finding, app.caches.findings.size(), app.caches.faults, app.session.stroke.has_value(),
      app.caches.waiting ? static_cast<int>(app.caches.waiting->floats.size()) : -1, actions.unsettled,
      json_text(actions.keys_at), json_text(actions.typed), view.face == Face::knit ? "knit" : "purl",
      app.theme == dark_palette() ? "dark" : "light",
      app.settings.lengths == LengthUnit::inches ? "inches" : "centimetres", app.theme.scale, box_text(view.canvas),
      lattice(app), yoke_text(app), bench_text(app), places);
}

} // namespace punchwright::editor
