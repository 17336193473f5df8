// The piece on the bed, the knitting rules, and the card.
#include "editor/panels.hpp"
#include "editor/widgets.hpp"
#include "machine/placement.hpp"
#include "rows/cards.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace punchwright::editor {

namespace {

struct Choice {
  const char* words;
  int value;
};

// A combo box over an enumeration.
template <class Value, std::size_t count>
bool choose(const Field& field, const char* words, Value& value, const std::array<Choice, count>& choices) {
  float widest = 0;
  for (const Choice& choice : choices) {
    widest = std::max(widest, ImGui::CalcTextSize(choice.words).x);
  }
  label(field.app.theme, words, 0.46F, widest + ImGui::GetFrameHeight() + 2 * ImGui::GetStyle().FramePadding.x);
  bool changed = false;
  const char* shown = choices[static_cast<std::size_t>(value)].words;
  ImGui::PushID(field.name);
  if (ImGui::BeginCombo("##choice", shown)) {
    for (const Choice& choice : choices) {
      const auto meant = static_cast<Value>(choice.value);
      if (ImGui::Selectable(choice.words, meant == value) && meant != value) {
        value = meant;
        changed = true;
      }
      remember_place(field.actions, fmt::format("{} {}", field.name, choice.value));
    }
    ImGui::EndCombo();
  }
  ImGui::PopID();
  remember_place(field.actions, field.name);
  return changed;
}

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
  Document settings = settings_of(app.work.design);
  CardWishes& card = settings.card;
  if (!app.work.profile.card) {
    heading(theme, "Card");
    hint(theme, "This machine reads no card: the needle chart says which needles to bring forward in every row.");
    command_button(app, actions, Command::export_chart, "Export needle chart…", Look::main);
    return;
  }
  heading(theme, "Card");
  constexpr std::array papers = {Choice{"A4", 0}, Choice{"Letter", 1}, Choice{"roll", 2}};
  if (choose<Paper>({app, actions, "paper"}, "Paper", card.paper, papers)) {
    send({app, actions, "paper"}, settings);
  }
  if (check_box(actions, "loop", "Joined into a loop", card.loop)) {
    send({app, actions, "loop"}, settings);
  }
  tip(theme, "The card is joined and goes round");
  const CardPlan plan = card_plan(app.work.design, *app.work.profile.card, app.caches.rows);
  hint(theme,
       fmt::format("{} rows on {} card{}", plan.rows_in_all, plan.cards.size(), plan.cards.size() == 1 ? "" : "s"));
  command_button(app, actions, Command::export_card, "Export card…", Look::main);

  heading(theme, "Does your printer print true?");
  const LengthUnit unit = app.settings.lengths;
  const std::string true_length = unit == LengthUnit::inches ? "150 mm (5.906 in)" : "150 mm";
  hint(theme, fmt::format("Print the card, measure both rulers of {}, and type in what they measure.", true_length));
  double across = app.session.ruler_across;
  double upwards = app.session.ruler_upwards;
  bool changed = length_field({app, actions, "ruler across"}, fmt::format("Across, {}", small_unit(unit)).c_str(),
                              across, 75, 300, 2);
  changed = length_field({app, actions, "ruler upwards"}, fmt::format("Upwards, {}", small_unit(unit)).c_str(), upwards,
                         75, 300, 2) ||
            changed;
  if (changed) {
    actions.push(SetRulers{across, upwards});
  }
  const bool off = across != 150 || upwards != 150;
  if (button(theme, actions, "correct scale", "Correct the scale", Look::plain, 0, off)) {
    actions.push(CorrectScale{});
  }
  tip(theme, off ? fmt::format("The next print measures {}", true_length)
                 : fmt::format("Both rulers measure {}: there is nothing to correct", true_length));
  hint(theme, fmt::format("Correction now: {:.4f} across, {:.4f} upwards", card.scale_x, card.scale_y));
  if (card.scale_x != 1 || card.scale_y != 1) {
    if (button(theme, actions, "no correction", "No correction")) {
      card.scale_x = card.scale_y = 1;
      actions.push(EditDesign{ChangeSettings{settings}});
    }
    tip(theme, "Prints as the printer does by itself");
  }
}

} // namespace punchwright::editor
