// The piece on the bed, the knitting rules, and the card.
#include "editor/card_fields.hpp"
#include "editor/choice_field.hpp"
#include "editor/panels.hpp"
#include "machine/placement.hpp"
#include "rows/cards.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>

namespace punchwright::editor {

namespace {

void piece_size(const App& app, Actions& actions, Document& settings) {
  const Document& design = app.work.design;
  Piece& piece = settings.piece;
  const Theme& theme = app.theme;
  int width = piece.stitches ? 1 : 0;
  const std::array widths = {Choice{tr("one repeat"), 0}, Choice{tr("own number"), 1}};
  if (choose<int>({app, actions, "own stitches"}, tr("Width"), width, widths)) {
    piece.stitches = width == 1 ? std::optional<int>(stitches_of(design)) : std::nullopt;
    send({app, actions, noted("stitches")}, settings);
  }
  if (piece.stitches && count_field({app, actions, "stitches"}, tr("Stitches"), *piece.stitches, 1, 1000)) {
    send({app, actions, noted("stitches")}, settings);
  }
  label(theme, tr("First needle"));
  std::string name = piece.first_needle ? name_of(*piece.first_needle) : "";
  if (text_input({app, actions, "first needle"}, name, name_of(first_needle_of(design)).c_str(),
                 ImGuiInputTextFlags_CharsUppercase | ImGuiInputTextFlags_CharsNoBlank)) {
    const auto needle = needle_named(name);
    if ((needle || name.empty()) && needle != piece.first_needle) {
      piece.first_needle = needle;
      send({app, actions, noted("first needle")}, settings);
    }
  }
  tip(theme, tr("The leftmost needle in work, as the knitter sees the bed: L36. Empty: in the middle of the bed"));
  if (!app.work.profile.card) {
    int where = piece.first_column ? 1 : 0;
    const std::array places = {Choice{tr("in the middle"), 0}, Choice{tr("from a column"), 1}};
    if (choose<int>({app, actions, "repeat lies"}, tr("Repeat lies"), where, places)) {
      piece.first_column = where == 1 ? std::optional<int>(1) : std::nullopt;
      send({app, actions, noted("first column")}, settings);
    }
    tip(theme, tr("In the middle of the bed, or so that the first needle knits a column of your choice"));
    if (piece.first_column &&
        count_field({app, actions, "first column"}, tr("First column"), *piece.first_column, 1, design.grid.width())) {
      send({app, actions, noted("first column")}, settings);
    }
  }
  hint(theme, said_count(stitches_of(design), "{} stitch on {} to {}", "{} stitches on {} to {}",
                         name_of(first_needle_of(design)), name_of(last_needle_of(design))));
}

} // namespace

void piece_tab(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  const Document& design = app.work.design;
  Document settings = settings_of(design);
  heading(theme, tr("Piece"));
  piece_size(app, actions, settings);
  if (count_field({app, actions, "times"}, tr("Times upwards"), settings.piece.times, 1, 1000)) {
    send({app, actions, noted("times")}, settings);
  }
  const std::array sides = {Choice{tr("left"), 0}, Choice{tr("right"), 1}};
  if (choose<Side>({app, actions, "carriage"}, tr("Carriage starts"), settings.piece.carriage, sides)) {
    send({app, actions, noted("carriage")}, settings);
  }
  const std::array ends = {Choice{tr("as the machine"), 0}, Choice{tr("always contrast"), 1},
                           Choice{tr("as drawn"), 2}};
  if (choose<EndNeedles>({app, actions, "end needles"}, tr("End needles"), settings.piece.end_needles, ends)) {
    send({app, actions, noted("end needles")}, settings);
  }
  if (count_field({app, actions, "edge"}, tr("Seam stitches"), settings.piece.edge, 0, 50)) {
    send({app, actions, noted("edge")}, settings);
  }
  tip(theme, tr("At each side, taken up by the seam"));

  heading(theme, tr("Rules"));
  KnittingRules& rules = settings.rules;
  int limit = rules.longest_float_mm ? 2 : rules.longest_float ? 1 : 0;
  const bool inches = app.settings.lengths == LengthUnit::inches;
  const std::array limits = {Choice{tr("as the machine"), 0}, Choice{tr("in stitches"), 1},
                             Choice{inches ? tr("in inches") : tr("in millimetres"), 2}};
  if (choose<int>({app, actions, "float limit"}, tr("Longest float"), limit, limits)) {
    rules.longest_float = limit == 1 ? std::optional<int>(longest_float_of(design, app.work.profile)) : std::nullopt;
    rules.longest_float_mm = limit == 2 ? std::optional<double>(inches ? mm_per_inch : 25.0) : std::nullopt;
    send({app, actions, noted("float limit")}, settings);
  }
  if (rules.longest_float &&
      count_field({app, actions, "longest float"}, tr("Stitches"), *rules.longest_float, 1, 200)) {
    send({app, actions, noted("longest float")}, settings);
  }
  if (rules.longest_float_mm &&
      length_field({app, actions, "longest float mm"}, inches ? tr("Inches") : tr("Millimetres"),
                   *rules.longest_float_mm, 1, 1000, 1)) {
    send({app, actions, noted("longest float mm")}, settings);
  }
  hint(theme, said_count(longest_float_of(design, app.work.profile), "Floats over at most {} stitch are allowed.",
                         "Floats over at most {} stitches are allowed."));
  if (count_field({app, actions, "plain rows"}, tr("Plain rows at change"), rules.plain_rows, 0, 9)) {
    send({app, actions, noted("plain rows")}, settings);
  }
  tip(theme, tr("Single-colour rows where the contrast yarn changes"));
  const std::array change = {Choice{tr("on either side"), 0}, Choice{tr("on the left"), 1},
                             Choice{tr("on the right"), 2}};
  if (choose<ChangeSide>({app, actions, "change side"}, tr("Yarns changed"), rules.change_side, change)) {
    send({app, actions, noted("change side")}, settings);
  }
}

void card_tab(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  if (!app.work.profile.card) {
    heading(theme, tr("Card"));
    hint(theme, tr("This machine reads no card: the needle chart says which needles to bring forward in every row."));
    command_button(app, actions, Command::export_chart, tr("Export needle chart…"), Look::main);
    return;
  }
  heading(theme, tr("Card"));
  paper_field(app, actions);
  loop_field(app, actions);
  const CardPlan plan = card_plan(app.work.design, *app.work.profile.card, app.caches.rows);
  hint(theme, said("{} on {}", said_count(plan.rows_in_all, "{} row", "{} rows"),
                   said_count(std::ssize(plan.cards), "{} card", "{} cards")));
  command_button(app, actions, Command::export_card, tr("Export card…"), Look::main);

  correction_fields(app, actions);
}

} // namespace punchwright::editor
