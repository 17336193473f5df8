// Mending the floats: shown in the drawing first, other choices stepped through, then taken as one step.
#include "editor/applying.hpp"
#include "editor/long_work.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright::editor {

namespace {

// What is marked stays: an eye, a letter.
MendWishes wishes_of(const App& app) {
  MendWishes wishes = mend_wishes(app.work.design, app.work.profile);
  if (app.view.marked) {
    protect(wishes, app.work.design.grid, *app.view.marked);
  }
  if (app.view.mend_symmetry || app.view.symmetry) { // who draws under one wants it kept
    wishes.symmetry = symmetry_to_keep(app.work.design.grid);
  }
  return wishes;
}

std::string rows_left(const App& app, const std::vector<Unmendable>& rows) {
  std::string text;
  for (const Unmendable& left : rows) {
    text += fmt::format("{}{}", text.empty() ? "" : ", ", left.row + 1);
  }
  const std::string words =
      rows.size() == 1 ? said("Row {} can't be mended", text) : said("Rows {} can't be mended", text);
  return app.view.marked ? said("{}; a marked area stays as it is: mark less", words) : words;
}

std::string words_for_mend(const MendWishes& wishes, const Mended& mended) {
  const auto count = std::ssize(mended.changed);
  if (!wishes.symmetry) {
    return said_count(
        count, "{} stitch would be changed, the fewest that do: Return takes them, Escape leaves the drawing as it is",
        "{} stitches would be changed, the fewest that do: Return takes them, Escape leaves the drawing as it is");
  }
  const auto group = notation_of(wishes.symmetry->group);
  return mended.unlike == 0 ? said_count(count,
                                         "{} stitch would be changed, the fewest that do, and the symmetry ({}) is "
                                         "kept: Return takes them, Escape leaves the drawing as it is",
                                         "{} stitches would be changed, the fewest that do, and the symmetry ({}) is "
                                         "kept: Return takes them, Escape leaves the drawing as it is",
                                         group)
                            : said_count(count,
                                         "{} stitch would be changed, the fewest that do, though the symmetry ({}) "
                                         "isn't whole: Return takes them, Escape leaves the drawing as it is",
                                         "{} stitches would be changed, the fewest that do, though the symmetry ({}) "
                                         "isn't whole: Return takes them, Escape leaves the drawing as it is",
                                         group);
}

// So that the panel shows what can be done with the mend.
void choose_a_float(App& app) {
  const auto& findings = app.caches.findings;
  const auto is_float = [](const Finding& finding) { return finding.id == FindingId::float_too_long; };
  const auto chosen = static_cast<std::size_t>(std::max(0, app.view.finding));
  if (app.view.finding >= 0 && chosen < findings.size() && is_float(findings[chosen])) {
    return;
  }
  const auto found = std::ranges::find_if(findings, is_float);
  if (found != findings.end()) {
    app.view.finding = static_cast<int>(found - findings.begin());
    app.view.finding_wanted = true;
  }
}

bool something_hangs(App& app) {
  if (app.session.floating) {
    say(app, tr("Set down first what hangs over the drawing, or give it up"), Tone::trouble);
  }
  return app.session.floating.has_value();
}

void show(App& app, const MendWishes& wishes, Mended mended) {
  if (something_hangs(app)) { // since it was asked for
    return;
  }
  const auto count = std::ssize(mended.changed);
  if (count == 0) {
    app.session.mend.reset();
    return mended.unmendable.empty() ? say(app, tr("No float is too long: there is nothing to mend"), Tone::good)
                                     : say(app, rows_left(app, mended.unmendable), Tone::trouble);
  }
  const std::string more = mended.unmendable.empty() ? "" : ". " + rows_left(app, mended.unmendable);
  say(app, words_for_mend(wishes, mended) + more);
  app.session.mend = ShownMend{std::move(mended), app.work.history.revision()};
  choose_a_float(app);
}

Taking showing(const MendWishes& wishes, Mended mended) {
  return [wishes, mended = std::move(mended)](App& app) { show(app, wishes, mended); };
}

} // namespace

void show_mend(App& app) {
  if (something_hangs(app)) {
    return;
  }
  constexpr std::size_t most_at_once = 60'000; // stitches: some 25 ms
  work_out(
      app, most_at_once, tr("Working out the mend …; Escape gives it up"),
      [drawing = app.work.design.grid, wishes = wishes_of(app)] { return showing(wishes, mend(drawing, wishes)); });
}

void show_other_mend(App& app) {
  if (!app.session.mend) {
    return show_mend(app);
  }
  constexpr std::size_t most = 2000;
  const Grid& drawn = app.work.design.grid;
  Mended& mended = app.session.mend->mended;
  const int row = app.view.cursor.row;
  const auto forms = forms_of_row(drawn, mended.drawing, row, wishes_of(app), most);
  if (forms.size() < 2) {
    return say(app, said("Row {} has no other mend of as few stitches; the cursor chooses the row", row + 1));
  }
  std::vector<char> shown;
  for (int column = 0; column < drawn.width(); ++column) {
    shown.push_back(mended.drawing.at(column, row) ? 1 : 0);
  }
  const auto place = static_cast<std::size_t>(std::ranges::find(forms, shown) - forms.begin());
  const std::size_t next = (place + 1) % forms.size();
  std::erase_if(mended.changed, [&](const Cell& cell) { return cell.row == row; });
  for (int column = 0; column < drawn.width(); ++column) {
    const bool contrast = forms[next][static_cast<std::size_t>(column)] != 0;
    mended.drawing.set(column, row, contrast);
    if (contrast != drawn.at(column, row)) {
      mended.changed.push_back({column, row});
    }
  }
  say(app,
      said("Row {}: choice {} of {} with as few stitches; Return takes the mend", row + 1, next + 1, forms.size()));
}

void turn_mend_symmetry(App& app) {
  app.view.mend_symmetry = !app.view.mend_symmetry;
  if (app.session.mend) {
    return show_mend(app);
  }
  say(app, app.view.mend_symmetry ? tr("Of equally good mends, the one that keeps the drawing's symmetry best")
                                  : tr("Mends don't look at the drawing's symmetry"));
}

void take_mend(App& app) {
  const Mended mended = std::move(app.session.mend->mended);
  app.session.mend.reset();
  if (edit(app, Redraw{mended.drawing, noted("mend the floats")})) {
    say(app, said_count(std::ssize(mended.changed), "{} stitch changed", "{} stitches changed"), Tone::good);
  }
}

} // namespace punchwright::editor
