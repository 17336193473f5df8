// Paper, loop, and the printer's correction.
#include "editor/card_fields.hpp"

#include "editor/choice_field.hpp"

#include <array>
#include <fmt/format.h>

namespace punchwright::editor {

void paper_field(const App& app, Actions& actions) {
  Document settings = settings_of(app.work.design);
  constexpr std::array papers = {Choice{"A4", 0}, Choice{"Letter", 1}, Choice{"roll", 2}};
  if (choose<Paper>({app, actions, "paper"}, "Paper", settings.card.paper, papers)) {
    send({app, actions, "paper"}, settings);
  }
}

void loop_field(const App& app, Actions& actions) {
  Document settings = settings_of(app.work.design);
  if (check_box(actions, "loop", "Joined into a loop", settings.card.loop)) {
    send({app, actions, "loop"}, settings);
  }
  tip(app.theme, "The card is joined and goes round");
}

void correction_fields(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  Document settings = settings_of(app.work.design);
  CardWishes& card = settings.card;
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
