// The piece on the bed, the knitting rules, and the card.
#include "design/words.hpp"
#include "editor/card_fields.hpp"
#include "editor/choice_field.hpp"
#include "editor/panels.hpp"
#include "machine/placement.hpp"
#include "rows/cards.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace punchwright::editor {

namespace {

void piece_size(const App& app, Actions& actions, Document& settings) {
  const Document& design = app.work.design;
  Piece& piece = settings.piece;
  const Theme& theme = app.theme;
  int width = piece.stitches ? 1 : 0;
  constexpr std::array widths = {Choice{"one repeat", 0}, Choice{"own number", 1}};
  if (choose<int>({app, actions, "own stitches"}, "Width", width, widths)) {
    piece.stitches = width == 1 ? std::optional<int>(stitches_of(design)) : std::nullopt;
    send({app, actions, "stitches"}, settings);
  }
  if (piece.stitches && count_field({app, actions, "stitches"}, "Stitches", *piece.stitches, 1, 1000)) {
    send({app, actions, "stitches"}, settings);
  }
  label(theme, "First needle");
  std::string name = piece.first_needle ? name_of(*piece.first_needle) : "";
  if (text_input({app, actions, "first needle"}, name, name_of(first_needle_of(design)).c_str(),
                 ImGuiInputTextFlags_CharsUppercase | ImGuiInputTextFlags_CharsNoBlank)) {
    const auto needle = needle_named(name);
    if ((needle || name.empty()) && needle != piece.first_needle) {
      piece.first_needle = needle;
      send({app, actions, "first needle"}, settings);
    }
  }
  tip(theme, "The leftmost needle in work, as the knitter sees the bed: L36. Empty: in the middle of the bed");
  if (!app.work.profile.card) {
    int where = piece.first_column ? 1 : 0;
    constexpr std::array places = {Choice{"in the middle", 0}, Choice{"from a column", 1}};
    if (choose<int>({app, actions, "repeat lies"}, "Repeat lies", where, places)) {
      piece.first_column = where == 1 ? std::optional<int>(1) : std::nullopt;
      send({app, actions, "first column"}, settings);
    }
    tip(theme, "In the middle of the bed, or so that the first needle knits a column of your choice");
    if (piece.first_column &&
        count_field({app, actions, "first column"}, "First column", *piece.first_column, 1, design.grid.width())) {
      send({app, actions, "first column"}, settings);
    }
  }
  hint(theme, fmt::format("{} stitches on {} to {}", stitches_of(design), name_of(first_needle_of(design)),
                          name_of(last_needle_of(design))));
}

} // namespace

void piece_tab(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  const Document& design = app.work.design;
  Document settings = settings_of(design);
  heading(theme, "Piece");
  piece_size(app, actions, settings);
  if (count_field({app, actions, "times"}, "Times upwards", settings.piece.times, 1, 1000)) {
    send({app, actions, "times"}, settings);
  }
  constexpr std::array sides = {Choice{"left", 0}, Choice{"right", 1}};
  if (choose<Side>({app, actions, "carriage"}, "Carriage starts", settings.piece.carriage, sides)) {
    send({app, actions, "carriage"}, settings);
  }
  constexpr std::array ends = {Choice{"as the machine", 0}, Choice{"always contrast", 1}, Choice{"as drawn", 2}};
  if (choose<EndNeedles>({app, actions, "end needles"}, "End needles", settings.piece.end_needles, ends)) {
    send({app, actions, "end needles"}, settings);
  }
  if (count_field({app, actions, "edge"}, "Seam stitches", settings.piece.edge, 0, 50)) {
    send({app, actions, "edge"}, settings);
  }
  tip(theme, "At each side, taken up by the seam");

  heading(theme, "Rules");
  KnittingRules& rules = settings.rules;
  int limit = rules.longest_float_mm ? 2 : rules.longest_float ? 1 : 0;
  const bool inches = app.settings.lengths == LengthUnit::inches;
  const std::array limits = {Choice{"as the machine", 0}, Choice{"in stitches", 1},
                             Choice{inches ? "in inches" : "in millimetres", 2}};
  if (choose<int>({app, actions, "float limit"}, "Longest float", limit, limits)) {
    rules.longest_float = limit == 1 ? std::optional<int>(longest_float_of(design, app.work.profile)) : std::nullopt;
    rules.longest_float_mm = limit == 2 ? std::optional<double>(inches ? mm_per_inch : 25.0) : std::nullopt;
    send({app, actions, "float limit"}, settings);
  }
  if (rules.longest_float && count_field({app, actions, "longest float"}, "Stitches", *rules.longest_float, 1, 200)) {
    send({app, actions, "longest float"}, settings);
  }
  if (rules.longest_float_mm && length_field({app, actions, "longest float mm"}, inches ? "Inches" : "Millimetres",
                                             *rules.longest_float_mm, 1, 1000, 1)) {
    send({app, actions, "longest float mm"}, settings);
  }
  hint(theme, fmt::format("Floats over at most {} stitches are allowed.", longest_float_of(design, app.work.profile)));
  if (count_field({app, actions, "plain rows"}, "Plain rows at change", rules.plain_rows, 0, 9)) {
    send({app, actions, "plain rows"}, settings);
  }
  tip(theme, "Single-colour rows where the contrast yarn changes");
  constexpr std::array change = {Choice{"on either side", 0}, Choice{"on the left", 1}, Choice{"on the right", 2}};
  if (choose<ChangeSide>({app, actions, "change side"}, "Yarns changed", rules.change_side, change)) {
    send({app, actions, "change side"}, settings);
  }
}

void card_tab(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  if (!app.work.profile.card) {
    heading(theme, "Card");
    hint(theme, "This machine reads no card: the needle chart says which needles to bring forward in every row.");
    command_button(app, actions, Command::export_chart, "Export needle chart…", Look::main);
    return;
  }
  heading(theme, "Card");
  paper_field(app, actions);
  loop_field(app, actions);
  const CardPlan plan = card_plan(app.work.design, *app.work.profile.card, app.caches.rows);
  hint(theme, fmt::format("{} on {}", counted(plan.rows_in_all, "row", "rows"),
                          counted(std::ssize(plan.cards), "card", "cards")));
  command_button(app, actions, Command::export_card, "Export card…", Look::main);

  correction_fields(app, actions);
}

} // namespace punchwright::editor
