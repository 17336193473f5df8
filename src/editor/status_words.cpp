// The words for each tool.
#include "editor/status_words.hpp"

#include "editor/waiting.hpp"
#include "words/words.hpp"

#include <fmt/format.h>

namespace punchwright::editor {

namespace {

std::string words_for_marked(const Area& area, bool drag_moves_it) {
  const int row = area.corner.row + 1;
  const int column = area.corner.column + 1;
  return drag_moves_it
             ? said("{} × {} marked, from row {}, column {}: drag moves it; copy, mirror, shift and turn work on it; "
                    "Escape unmarks",
                    area.columns, area.rows, row, column)
             : said("{} × {} marked, from row {}, column {}: copy, mirror, shift and turn work on it; Escape unmarks",
                    area.columns, area.rows, row, column);
}

std::string words_for_tool(Tool tool) {
  switch (tool) {
  case Tool::pen: return tr("Draw with the left button, erase with the right; F1 opens the guide");
  case Tool::line: return tr("Straight line: press at one end, release at the other; Escape gives up");
  case Tool::rectangle: return tr("Rectangle: press at one corner, release at the opposite one; Escape gives up");
  case Tool::ellipse:
    return tr("Ellipse: press at one corner of its room, release at the opposite one; Escape gives up");
  case Tool::flood: return tr("Fill: click a stitch: all of its colour that touch one another change");
  case Tool::mark: return tr("Mark: drag over an area to move, copy, mirror or turn it");
  }
  return {};
}

std::string words_for_view(YokeShows shows) {
  switch (shows) {
  case YokeShows::schematic: return tr("Drag a round handle, or type on the left; F11 goes back to the drawing");
  case YokeShows::flat: return tr("Rest on a tier for its needles; a double click shows the piece on its bed");
  case YokeShows::worn: return tr("From above: the front below, the neck in the middle");
  case YokeShows::bed:
    return tr("As the knitter sees it: hatched seam stitches, a sign where a needle is brought forward");
  }
  return {};
}

} // namespace

std::string words_for_inserted(const App& app, int row) {
  const std::vector<InsertedRows>& below = strips_in_sight(app).below;
  if (row < 0 || static_cast<std::size_t>(row) >= below.size() || below[static_cast<std::size_t>(row)].count == 0) {
    return {};
  }
  const InsertedRows& inserted = below[static_cast<std::size_t>(row)];
  const Yarn& yarn = yarn_of(app.work.design, inserted.yarn);
  return said_count(inserted.count, "{} plain row, {}", "{} plain rows, {}",
                    yarn.name.empty() ? std::string(1, yarn.key) : yarn.name);
}

std::string words_for_row_yarns(const App& app, int row) {
  const std::vector<char>& yarns = row_yarns_in_sight(app);
  const auto named = [&](char key) {
    const std::string& name = yarn_of(app.work.design, key).name;
    return name.empty() ? std::string(1, key) : fmt::format("{} {}", key, name);
  };
  const char contrast = yarns[static_cast<std::size_t>(row) * 2 + 1];
  const std::string main = named(yarns[static_cast<std::size_t>(row) * 2]);
  std::string words = contrast == 0 ? said("Row {}: {} alone", row + 1, main)
                                    : said("Row {}: {} and {}", row + 1, main, named(contrast));
  if (const std::string inserted = words_for_inserted(app, row); !inserted.empty()) {
    words += "\n" + said("Below it: {}", inserted);
  }
  return words;
}

std::string words_for_pointer(const App& app) {
  if (app.yoke.shown) {
    return words_for_view(app.view.yoke.shows);
  }
  if (app.view.marked) {
    return words_for_marked(*app.view.marked, app.view.tool == Tool::mark);
  }
  std::string words = words_for_tool(app.view.tool);
  if (app.view.symmetry && app.view.tool != Tool::mark) {
    words += tr("; completed under the symmetry");
  } else if (app.view.symmetry_aside) {
    words += tr("; the symmetry is put aside: it needs an even width");
  }
  return words;
}

std::string words_for_sight(const App& app) {
  const ColourSight sight = app.view.sight;
  return sight == ColourSight::as_is ? std::string() : tr(info_of(sight).name);
}

} // namespace punchwright::editor
