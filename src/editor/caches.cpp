// Working out what follows from the design, once for each revision.
#include "editor/caches.hpp"

#include "editor/app.hpp"
#include "editor/own_motifs.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <iterator>

namespace punchwright::editor {

namespace {

// A float on the piece that is as long as one of the same yarn in the same row of the repeat is that one. Findings come
// by row, so it stands not far behind in the list.
Listed* same_on_repeat(const Finding& finding, const std::vector<Finding>& findings, std::vector<Listed>& listed) {
  for (auto entry = listed.rbegin(); entry != listed.rend(); ++entry) {
    const Finding& other = findings[entry->group.first];
    if (other.id != finding.id || other.row != finding.row) {
      return nullptr;
    }
    if (other.yarn == finding.yarn && !other.on_piece && other.stitches == finding.stitches && entry->on_piece < 0) {
      return &*entry;
    }
  }
  return nullptr;
}

FindingCounts list_findings(const std::vector<Finding>& findings, std::vector<Listed>& listed) {
  FindingCounts counts;
  listed.clear();
  for (const FindingGroup& group : gathered(findings)) {
    const Finding& finding = findings[group.first];
    if (Listed* const same = finding.on_piece ? same_on_repeat(finding, findings, listed) : nullptr) {
      same->on_piece = static_cast<int>(group.first);
      continue;
    }
    listed.push_back(Listed{group, -1});
    counts.faults += finding.severity == Severity::fault ? 1 : 0;
    counts.warnings += finding.severity == Severity::warning ? 1 : 0;
    counts.notes += finding.severity == Severity::note ? 1 : 0;
  }
  return counts;
}

// Where the list of findings changed, the chosen one is looked for again by what it is about.
void keep_chosen(App& app, const std::vector<Finding>& before) {
  int& chosen = app.view.finding;
  if (chosen < 0 || chosen >= static_cast<int>(before.size())) {
    chosen = -1;
    return;
  }
  const Finding& old = before[static_cast<std::size_t>(chosen)];
  const auto& findings = app.caches.findings;
  const auto same = std::ranges::find_if(findings, [&](const Finding& finding) {
    return finding.id == old.id && finding.row == old.row && finding.yarn == old.yarn &&
           finding.on_piece == old.on_piece && finding.first_column == old.first_column;
  });
  chosen = same == findings.end() ? -1 : static_cast<int>(same - findings.begin());
}

// The letters as they would lie at the cursor, looked over once for each place and text.
void prepare_lettering_floats(App& app) {
  Caches& caches = app.caches;
  if (!caches.lettering || !*caches.lettering) {
    caches.lettering_floats_for.reset();
    return;
  }
  WaitingKey key;
  key.opening = app.work.opening;
  key.revision = app.work.history.revision();
  key.floating = Floating{caches.lettering->value().drawing, app.view.cursor, noted("lettering"), {}, true};
  if (caches.lettering_floats_for == key) {
    return;
  }
  caches.lettering_floats = floats_of_letters(caches.lettering->value(), app.view.cursor, app.work.design.grid,
                                              caches.findings, drawn_as_it_waits(app, key).floats);
  caches.lettering_floats_for = key;
}

// What only the tab of tools shows.
void prepare_tools(App& app) {
  Caches& caches = app.caches;
  if (app.view.tab != Tab::tools) {
    return;
  }
  if (caches.motifs_stale) {
    OwnMotifs own = own_motifs_in(app.motif_folder);
    caches.motifs = std::move(own.motifs);
    std::ranges::move(motif_collection(), std::back_inserter(caches.motifs));
    caches.motifs_trouble = std::move(own.trouble);
    caches.motifs_stale = false;
  }
  const LetteringWish wish{app.session.lettering, app.session.letter_height, app.view.face};
  if (caches.lettering_for != wish) {
    caches.lettering.reset();
    if (!wish.words.empty()) {
      caches.lettering = letters(wish.words, wish.height, wish.worn);
    }
    caches.lettering_for = wish;
  }
  prepare_lettering_floats(app);
}

// Beside the float that is looked at: what would mend its row.
void prepare_hint(App& app, bool changed) {
  Caches& caches = app.caches;
  const int chosen = app.view.finding;
  if (!changed && caches.hint_for == chosen) {
    return;
  }
  caches.hint_for = chosen;
  caches.hint.reset();
  if (chosen < 0 || chosen >= static_cast<int>(caches.findings.size())) {
    return;
  }
  const Finding& finding = caches.findings[static_cast<std::size_t>(chosen)];
  if (finding.id != FindingId::float_too_long) {
    return;
  }
  const Grid& grid = app.work.design.grid;
  Grid alone(grid.width(), 1);
  alone.set_row_text(0, grid.row_text(finding.row));
  MendWishes wishes = mend_wishes(app.work.design, app.work.profile);
  wishes.rows.clear();
  if (!wishes.prices.empty()) { // of that row alone
    const auto from = wishes.prices.begin() + static_cast<std::ptrdiff_t>(finding.row) * grid.width();
    wishes.prices = std::vector<std::int32_t>(from, from + grid.width());
  }
  caches.hint = MendHint{finding.row, mend(alone, wishes)};
}

std::uint64_t next_serial(Caches& caches) {
  return ++caches.last_rows_serial;
}

// A stroke seldom changes which rows are of one yarn, and then the rows to knit stay what they are: two million of
// them, where a large design is knitted a thousand times.
void derive_rows(const Work& work, Caches& caches) {
  RowsKey key = rows_key(work.design, work.profile);
  if (caches.rows_for == key) {
    return;
  }
  caches.rows = rows_to_knit(work.design, work.profile);
  caches.row_findings = check_rows(work.design, work.profile, caches.rows);
  caches.rows_for = std::move(key);
  caches.rows_serial = next_serial(caches);
}

struct OtherRowsFound {
  const RowsToKnit& rows;
  std::uint64_t serial = 0;
};

// Of a drawing that isn't the document's yet: what the document's rows are not, is kept beside them.
OtherRowsFound rows_of_other(const Document& design, const Profile& profile, Caches& caches) {
  RowsKey key = rows_key(design, profile);
  if (key == caches.rows_for) {
    return {caches.rows, caches.rows_serial};
  }
  if (key != caches.other_rows.rows_for) {
    caches.other_rows.rows = rows_to_knit(design, profile);
    caches.other_rows.rows_for = std::move(key);
    caches.other_rows.serial = next_serial(caches);
  }
  return {caches.other_rows.rows, caches.other_rows.serial};
}

ClothView cloth_view(const View& view) {
  const ScreenBox& box = view.piece_box;
  ClothView cloth;
  cloth.face = view.face;
  cloth.afar = view.afar;
  cloth.width = static_cast<int>(box.width());
  cloth.height = static_cast<int>(box.height());
  cloth.sight = view.sight;
  if (view.piece_zoom && !view.afar) {
    cloth.px_per_mm = *view.piece_zoom;
    cloth.middle_x = view.piece_middle.x;
    cloth.middle_y = view.piece_middle.y;
  }
  return cloth;
}

// The drawing that the piece shows instead of the document's; nothing: it shows the document's.
struct ShownInstead {
  const Grid* grid = nullptr;
  const std::vector<Band>* bands = nullptr;
};

// The piece as it is, or as it would be with what is shown and not taken yet. True where a pixel may have changed.
bool paint_piece(App& app, const ClothView& view, const ShownInstead& other) {
  const Work& work = app.work;
  Caches& caches = app.caches;
  ClothPainter& painter = caches.piece.painter;
  if (other.grid == nullptr) {
    return painter.paint(work.design, work.profile, caches.rows, view, caches.rows_serial);
  }
  Document shown = work.design;
  shown.grid = *other.grid;
  shown.bands = *other.bands;
  const OtherRowsFound found = rows_of_other(shown, work.profile, caches);
  return painter.paint(shown, work.profile, found.rows, view, found.serial);
}

// As many as there would be, were it done now.
FindingCounts counts_of(const Work& work, const Document& design, Caches& caches) {
  const bool same_rows = rows_key(design, work.profile) == caches.rows_for;
  const RowFindings of_rows = same_rows
                                  ? caches.row_findings
                                  : check_rows(design, work.profile, rows_of_other(design, work.profile, caches).rows);
  std::vector<Listed> listed;
  return list_findings(with_notes(check_beside_rows(design, work.profile, of_rows), work.notes), listed);
}

// What is shown over the drawing is looked over in the frame that shows it, and no second time.
bool prepare_waiting(App& app) {
  auto& waiting = app.caches.waiting;
  const auto key = what_waits(app);
  if (key ? waiting && waiting->key == *key : !waiting) {
    return false;
  }
  waiting.reset();
  if (key) {
    waiting = drawn_as_it_waits(app, *key);
    waiting->counts = counts_of(app.work, waiting->design, app.caches);
    if (key->lines && key->lines->rows) {
      const Document& design = waiting->design;
      waiting->strips = strips_of(rows_of_other(design, app.work.profile, app.caches).rows, design.grid.height());
    }
  }
  return true;
}

ShownInstead drawing_shown_instead(const App& app) {
  if (app.session.mend) {
    return {&app.session.mend->mended.drawing, &app.work.design.bands};
  }
  if (app.caches.waiting) {
    return {&app.caches.waiting->design.grid, &app.caches.waiting->design.bands};
  }
  return {};
}

// Whether the piece was painted with another drawing than that one.
bool differs(const std::optional<OtherDrawing>& painted, const ShownInstead& wanted) {
  if (wanted.grid == nullptr || !painted) {
    return (wanted.grid != nullptr) != painted.has_value();
  }
  return painted->grid != *wanted.grid || painted->bands != *wanted.bands;
}

} // namespace

const Listed* listed_for(const Caches& caches, int finding) {
  const auto entry = std::ranges::find_if(caches.listed, [&](const Listed& listed) { return listed.holds(finding); });
  return entry == caches.listed.end() ? nullptr : &*entry;
}

bool refresh(App& app) {
  Caches& caches = app.caches;
  const Work& work = app.work;
  bool changed = false;
  if (!caches.valid || caches.opening != work.opening || caches.revision != work.history.revision()) {
    const bool same_design = caches.valid && caches.opening == work.opening;
    const std::vector<Finding> before = std::move(caches.findings);
    derive_rows(work, caches);
    caches.findings = with_notes(check_beside_rows(work.design, work.profile, caches.row_findings), work.notes);
    if (same_design) {
      keep_chosen(app, before);
    } else {
      app.view.finding = -1;
    }
    caches.strips = strips_of(caches.rows, work.design.grid.height());
    const FindingCounts counts = list_findings(caches.findings, caches.listed);
    caches.faults = counts.faults;
    caches.warnings = counts.warnings;
    caches.notes = counts.notes;
    caches.marks = marks_of(caches.findings, work.design, work.profile);
    caches.row_yarns = yarns_by_row(work.design.bands);
    caches.frieze = classify(work.design.grid);
    caches.opening = work.opening;
    caches.revision = work.history.revision();
    caches.valid = true;
    changed = true;
  }
  prepare_tools(app);
  prepare_hint(app, changed);
  const bool other_waits = prepare_waiting(app);
  if (!caches.waiting && !app.session.mend) {
    caches.other_rows = {}; // as many as two million of them
  }
  const ClothView view = cloth_view(app.view);
  PiecePicture& piece = caches.piece;
  const ShownInstead other = drawing_shown_instead(app);
  const bool other_drawing = differs(piece.other, other);
  const bool other_view = piece.made_for != view || other_drawing;
  if (view.width >= 8 && (changed || other_view)) {
    if (paint_piece(app, view, other)) {
      ++piece.serial;
    }
    changed = changed || other_view;
    piece.made_for = view;
    if (other.grid != nullptr) {
      piece.other = OtherDrawing{*other.grid, *other.bands};
    } else {
      piece.other.reset();
    }
  }
  changed = refresh_yoke(app) || changed || other_waits;
  return refresh_preview(app) || changed;
}

} // namespace punchwright::editor
