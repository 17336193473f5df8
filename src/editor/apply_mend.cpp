// Mending the floats: shown in the drawing first, other choices stepped through, then taken as one step.
#include "editor/applying.hpp"
#include "editor/long_work.hpp"
#include "mending/orbits.hpp"
#include "mending/symmetric_mend.hpp"
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
  if (app.view.mend_symmetry) {
    wishes.symmetry = symmetry_to_keep(app.work.design.grid);
  }
  return wishes;
}

// What is shown, and what it is chosen from.
struct Offer {
  Mended mended;
  std::optional<Frieze> symmetry; // of the drawing
  bool symmetric = false;         // more stitches than the fewest keep it
  // How many stitches the other choice changes: the fewest, or those that keep the symmetry. None: there is no other.
  std::optional<std::ptrdiff_t> others;
};

Offer offer_of(const Grid& drawing, const MendWishes& wishes) {
  const auto symmetry = symmetry_to_keep(drawing);
  MendWishes keeping = wishes;
  keeping.symmetry = symmetry;
  if (wishes.symmetry) {
    MendOffer offer = offer_mend(drawing, keeping);
    return offer.symmetric ? Offer{std::move(*offer.symmetric), symmetry, true, std::ssize(offer.fewest.changed)}
                           : Offer{std::move(offer.fewest), symmetry, false, std::nullopt};
  }
  Offer plain{mend(drawing, wishes), symmetry, false, std::nullopt};
  plain.mended.unlike = symmetry ? unlike_pairs(plain.mended.drawing, *symmetry) : 0;
  if (plain.mended.unlike > 0) {
    const MendOffer offer = offer_mend(drawing, keeping);
    if (offer.first().unlike == 0) {
      plain.others = std::ssize(offer.first().changed);
    }
  }
  return plain;
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

// How many there are, and whether the symmetry stays; before what can be done.
std::string words_for_count(const Offer& offer) {
  const auto count = std::ssize(offer.mended.changed);
  if (!offer.symmetry) {
    return said_count(count, "{} stitch would be changed, the fewest that do",
                      "{} stitches would be changed, the fewest that do");
  }
  const auto group = notation_of(offer.symmetry->group);
  if (offer.symmetric) {
    return said_count(count,
                      "{} stitch would be changed, the fewest that keep the symmetry ({}); {} would do, but break it "
                      "(Shift+M)",
                      "{} stitches would be changed, the fewest that keep the symmetry ({}); {} would do, but break it "
                      "(Shift+M)",
                      group, *offer.others);
  }
  if (offer.mended.unlike == 0) {
    return said_count(count, "{} stitch would be changed, the fewest that do, and the symmetry ({}) is kept",
                      "{} stitches would be changed, the fewest that do, and the symmetry ({}) is kept", group);
  }
  if (offer.others) {
    return said_count(
        count,
        "{} stitch would be changed, the fewest that do, though the symmetry ({}) isn't whole; {} would "
        "keep it (Shift+M)",
        "{} stitches would be changed, the fewest that do, though the symmetry ({}) isn't whole; {} would "
        "keep it (Shift+M)",
        group, *offer.others);
  }
  return said_count(count,
                    "{} stitch would be changed, the fewest that do, though the symmetry ({}) isn't whole: no mend "
                    "keeps it",
                    "{} stitches would be changed, the fewest that do, though the symmetry ({}) isn't whole: no mend "
                    "keeps it",
                    group);
}

std::string words_for_mend(const Offer& offer) {
  return said("{}. Return takes them, Escape leaves the drawing as it is", words_for_count(offer));
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

void show(App& app, Offer offer) {
  if (something_hangs(app)) { // since it was asked for
    return;
  }
  const Mended& mended = offer.mended;
  if (mended.changed.empty()) {
    app.session.mend.reset();
    return mended.unmendable.empty() ? say(app, tr("No float is too long: there is nothing to mend"), Tone::good)
                                     : say(app, rows_left(app, mended.unmendable), Tone::trouble);
  }
  const std::string more = mended.unmendable.empty() ? "" : ". " + rows_left(app, mended.unmendable);
  say(app, words_for_mend(offer) + more);
  app.session.mend = ShownMend{std::move(offer.mended), app.work.history.revision(), offer.symmetric};
  choose_a_float(app);
}

Taking showing(Offer offer) {
  return [offer = std::move(offer)](App& app) { show(app, offer); };
}

// The choices for a row, each with the stitches of all rows that change with it.
std::vector<std::vector<RowStitches>> choices_for_row(const App& app, int row) {
  constexpr std::size_t most = 2000;
  const Grid& drawn = app.work.design.grid;
  const ShownMend& shown = *app.session.mend;
  const MendWishes wishes = wishes_of(app);
  if (shown.symmetric) {
    return symmetric_forms_of_row(drawn, shown.mended.drawing, row, wishes, most);
  }
  std::vector<std::vector<RowStitches>> choices;
  for (auto& stitches : forms_of_row(drawn, shown.mended.drawing, row, wishes, most)) {
    choices.push_back({RowStitches{row, std::move(stitches)}});
  }
  return choices;
}

bool is_shown(const Mended& mended, const std::vector<RowStitches>& choice) {
  return std::ranges::all_of(choice, [&](const RowStitches& line) {
    for (int column = 0; column < mended.drawing.width(); ++column) {
      if (mended.drawing.at(column, line.row) != (line.stitches[static_cast<std::size_t>(column)] != 0)) {
        return false;
      }
    }
    return true;
  });
}

void put_in(Mended& mended, const Grid& drawn, const std::vector<RowStitches>& choice) {
  for (const RowStitches& line : choice) {
    std::erase_if(mended.changed, [&](const Cell& cell) { return cell.row == line.row; });
    for (int column = 0; column < drawn.width(); ++column) {
      const bool contrast = line.stitches[static_cast<std::size_t>(column)] != 0;
      mended.drawing.set(column, line.row, contrast);
      if (contrast != drawn.at(column, line.row)) {
        mended.changed.push_back({column, line.row});
      }
    }
  }
}

} // namespace

void show_mend(App& app) {
  constexpr std::size_t most_at_once = 60'000; // stitches: some 25 ms
  work_out(app, most_at_once, tr("Working out the mend …; Escape gives it up"),
           [drawing = app.work.design.grid, wishes = wishes_of(app)] { return showing(offer_of(drawing, wishes)); });
}

void show_other_mend(App& app) {
  if (!app.session.mend) {
    return show_mend(app);
  }
  Mended& mended = app.session.mend->mended;
  const int row = app.view.cursor.row;
  const auto choices = choices_for_row(app, row);
  if (choices.size() < 2) {
    return say(app, said("Row {} has no other mend of as few stitches; the cursor chooses the row", row + 1));
  }
  const auto shown = std::ranges::find_if(choices, [&](const auto& choice) { return is_shown(mended, choice); });
  const auto next = static_cast<std::size_t>(shown - choices.begin() + 1) % choices.size();
  put_in(mended, app.work.design.grid, choices[next]);
  say(app,
      said("Row {}: choice {} of {} with as few stitches; Return takes the mend", row + 1, next + 1, choices.size()));
}

void turn_mend_symmetry(App& app) {
  app.view.mend_symmetry = !app.view.mend_symmetry;
  if (app.session.mend) {
    return show_mend(app);
  }
  say(app, app.view.mend_symmetry ? tr("Mends keep the drawing's symmetry, by more stitches where it must be")
                                  : tr("Mends change the fewest stitches, whatever becomes of the symmetry"));
}

void take_mend(App& app) {
  const Mended mended = std::move(app.session.mend->mended);
  app.session.mend.reset();
  if (edit(app, Redraw{mended.drawing, noted("mend the floats")})) {
    say(app, said_count(std::ssize(mended.changed), "{} stitch changed", "{} stitches changed"), Tone::good);
  }
}

} // namespace punchwright::editor
