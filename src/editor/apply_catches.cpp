// Floats that are caught by hand or accepted, and stitches that stay: marks on the drawing, each one step to undo.
#include "design/wrap.hpp"
#include "editor/applying.hpp"
#include "editor/long_work.hpp"
#include "mending/catches.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>

namespace punchwright::editor {
namespace {

// A stitch that the float in question passes behind.
Cell place_of_float(const App& app) {
  const auto& findings = app.caches.findings;
  const auto chosen = static_cast<std::size_t>(std::max(0, app.view.finding));
  if (app.view.finding >= 0 && chosen < findings.size()) {
    const Finding& finding = findings[chosen];
    if (finding.id == FindingId::float_too_long || finding.id == FindingId::float_accepted) {
      return {finding.first_column, finding.row};
    }
  }
  return app.view.cursor;
}

std::vector<DrawnFloat> floats_of(const App& app, FloatsOf which) {
  const Cell place = place_of_float(app);
  const int width = app.work.design.grid.width();
  Document design = app.work.design;
  if (which != FloatsOf::drawing) {
    design.marks.accepted = {}; // one that was accepted may be caught after all
  }
  std::vector<DrawnFloat> floats = floats_too_long(design, app.work.profile);
  std::erase_if(floats, [&](const DrawnFloat& one) {
    return (which != FloatsOf::drawing && one.row != place.row) ||
           (which == FloatsOf::chosen && !one.passes(place.column, width));
  });
  return floats;
}

void say_none(App& app, FloatsOf which) {
  say(app,
      which == FloatsOf::drawing ? tr("No float is too long")
                                 : tr("No float that is too long passes there: choose one among the findings"),
      Tone::trouble);
}

bool may_mark(App& app) {
  if (app.session.floating) {
    say(app, tr("Set down first what hangs over the drawing, or give it up"), Tone::trouble);
    return false;
  }
  return true;
}

// The marked area, or the cursor's row.
Area area_in_question(const App& app) {
  return app.view.marked.value_or(Area{{0, app.view.cursor.row}, app.work.design.grid.width(), 1});
}

template <class Visit> void each_stitch(const Grid& drawing, const Area& area, Visit&& visit) {
  for (int row = 0; row < area.rows; ++row) {
    for (int column = 0; column < area.columns; ++column) {
      visit(round_edges(Cell{area.corner.column + column, area.corner.row + row}, drawing));
    }
  }
}

// Looks whether the layer is blank then once, and not at each stitch.
void take_away(Grid& layer, const Grid& drawing, const Area& area) {
  if (layer.width() != 0) {
    each_stitch(drawing, area, [&](Cell cell) { layer.set(cell.column, cell.row, false); });
    layer = without_blank(std::move(layer));
  }
}

void take_catches(App& app, std::ptrdiff_t floats, const Caught& caught) {
  if (!may_mark(app) ||
      !edit(app, ChangeMarks{caught.marks, floats == 1 ? noted("catch a float") : noted("catch floats")})) {
    return;
  }
  const std::string those = said_count(floats, "{} float", "{} floats");
  const std::string catches = said_count(caught.catches, "{} catch", "{} catches");
  say(app,
      caught.proved ? said("{} caught by hand with {}; no choice of as few lies better", those, catches)
                    : said("{} caught by hand with {}", those, catches),
      Tone::good);
}

} // namespace

void catch_floats_by_hand(App& app, FloatsOf which) {
  const std::vector<DrawnFloat> floats = floats_of(app, which);
  if (floats.empty()) {
    return say_none(app, which);
  }
  if (which != FloatsOf::drawing) {
    return take_catches(app, std::ssize(floats), catch_floats(app.work.design, app.work.profile, floats));
  }
  constexpr std::size_t most_at_once = 60'000; // stitches
  work_out(app, most_at_once, tr("Working out the catches …; Escape gives it up"),
           [design = app.work.design, profile = app.work.profile, floats]() -> Taking {
             return [count = std::ssize(floats), caught = catch_floats(design, profile, floats)](App& asking) {
               take_catches(asking, count, caught);
             };
           });
}

void accept_long_floats(App& app, FloatsOf which) {
  const std::vector<DrawnFloat> floats = floats_of(app, which);
  if (floats.empty()) {
    return say_none(app, which);
  }
  const StitchMarks marks = accept_floats(app.work.design, floats);
  if (edit(app, ChangeMarks{marks, floats.size() == 1 ? noted("accept a float") : noted("accept floats")})) {
    say(app, said_count(std::ssize(floats), "{} float accepted", "{} floats accepted"), Tone::good);
  }
}

void take_marks_away(App& app) {
  const Grid& drawing = app.work.design.grid;
  StitchMarks marks = app.work.design.marks;
  take_away(marks.caught, drawing, area_in_question(app));
  take_away(marks.accepted, drawing, area_in_question(app));
  if (marks == app.work.design.marks) {
    return say(app, tr("Nothing is caught or accepted there"), Tone::trouble);
  }
  edit(app, ChangeMarks{marks, noted("take catches away")});
}

void protect_marked_stitches(App& app) {
  if (!app.view.marked) {
    return say(app, tr("Mark the stitches first: an eye, or a letter"), Tone::trouble);
  }
  const Grid& drawing = app.work.design.grid;
  StitchMarks marks = app.work.design.marks;
  bool all = true;
  each_stitch(drawing, *app.view.marked, [&](Cell cell) { all = all && is_marked(marks.kept, cell.column, cell.row); });
  if (all) {
    take_away(marks.kept, drawing, *app.view.marked);
  } else {
    each_stitch(drawing, *app.view.marked,
                [&](Cell cell) { set_mark(marks.kept, drawing, cell.column, cell.row, true); });
  }
  if (edit(app, ChangeMarks{marks, all ? noted("protect no longer") : noted("protect")})) {
    say(app, all ? tr("Mending may change these stitches again") : tr("Mending never changes these stitches"),
        Tone::good);
  }
}

} // namespace punchwright::editor
