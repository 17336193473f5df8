// Paper, loop, and the printer's correction.
#include "editor/card_fields.hpp"

#include "editor/choice_field.hpp"
#include "words/words.hpp"

#include <array>

namespace punchwright::editor {

void paper_field(const App& app, Actions& actions) {
  Document settings = settings_of(app.work.design);
  const std::array papers = {Choice{"A4", 0}, Choice{"Letter", 1}, Choice{tr("roll"), 2}};
  if (choose<Paper>({app, actions, noted("paper")}, tr("Paper"), settings.card.paper, papers)) {
    send({app, actions, noted("paper")}, settings);
  }
}

void loop_field(const App& app, Actions& actions) {
  Document settings = settings_of(app.work.design);
  if (check_box(actions, "loop", tr("Joined into a loop"), settings.card.loop)) {
    send({app, actions, noted("loop")}, settings);
  }
  tip(app.theme, tr("The card is joined and goes round"));
}

void correction_fields(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  Document settings = settings_of(app.work.design);
  CardWishes& card = settings.card;
  heading(theme, tr("Does your printer print true?"));
  const LengthUnit unit = app.settings.lengths;
  const std::string true_length = unit == LengthUnit::inches ? tr("150 mm (5.906 in)") : "150 mm";
  hint(theme, said("Print the card, measure both rulers of {}, and type in what they measure.", true_length));
  double across = app.session.ruler_across;
  double upwards = app.session.ruler_upwards;
  bool changed =
      length_field({app, actions, "ruler across"}, said("Across, {}", small_unit(unit)).c_str(), across, 75, 300, 2);
  changed = length_field({app, actions, "ruler upwards"}, said("Upwards, {}", small_unit(unit)).c_str(), upwards, 75,
                         300, 2) ||
            changed;
  if (changed) {
    actions.push(SetRulers{across, upwards});
  }
  const bool off = across != 150 || upwards != 150;
  if (button(theme, actions, "correct scale", tr("Correct the scale"), Look::plain, 0, off)) {
    actions.push(CorrectScale{});
  }
  tip(theme, off ? said("The next print measures {}", true_length)
                 : said("Both rulers measure {}: there is nothing to correct", true_length));
  hint(theme, said("Correction now: {} across, {} upwards", decimal(card.scale_x, 4), decimal(card.scale_y, 4)));
  if (card.scale_x != 1 || card.scale_y != 1) {
    if (button(theme, actions, "no correction", tr("No correction"))) {
      card.scale_x = card.scale_y = 1;
      actions.push(EditDesign{ChangeSettings{settings}});
    }
    tip(theme, tr("Prints as the printer does by itself"));
  }
}

} // namespace punchwright::editor
