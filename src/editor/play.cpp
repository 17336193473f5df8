// Steps to moments.
#include "editor/play.hpp"

#include "editor/applying.hpp"
#include "plan/bench_moves.hpp"
#include "plan/step_words.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright::editor {
namespace {

bool is_pass(const MachineAction& action) {
  return std::holds_alternative<KnitPass>(action);
}

// Of a step that gathers several rows, the row that its next pass knits.
std::string words_for_pass(const PlayedKnitting& played, int pass) {
  const auto& steps = played.steps_of_passes;
  const int index = steps[static_cast<std::size_t>(pass)];
  const Step& step = played.list.steps[static_cast<std::size_t>(index)];
  const auto first = std::ranges::find(steps, index);
  const auto in_step = static_cast<int>(std::ranges::count(steps, index));
  if (in_step <= 1) {
    return step.text;
  }
  const int done = pass - static_cast<int>(first - steps.begin());
  const Side ends = (in_step - done) % 2 == 1 ? step.carriage : other(step.carriage);
  return knit_words(step.first_row + done, step.first_row + done, ends);
}

// Goes through the actions until so many passes are made and the next one comes.
class Player {
public:
  Player(const PlayedKnitting& played, int passes) : played_(played) {
    moment_.passes = std::clamp(passes, 0, played.passes());
    moment_.knitting =
        begin_knitting(machine_as_found(played.profile, played.list.carriage, played.card, played.document.card.loop));
  }

  PlayMoment moment() {
    int made = 0;
    for (std::size_t index = 0; index < played_.list.steps.size(); ++index) {
      const Step& step = played_.list.steps[index];
      bool told = step.actions.empty() && tell(step, made);
      for (const MachineAction& action : step.actions) {
        if (is_pass(action) && made == moment_.passes) {
          moment_.pass = words_for_pass(played_, made);
          return std::move(moment_);
        }
        if (!knit_on(moment_.knitting, action)) {
          moment_.refused_step = static_cast<int>(index);
          return std::move(moment_);
        }
        if (is_pass(action)) {
          ++made;
        } else {
          told = told || tell(step, made);
        }
      }
    }
    return std::move(moment_);
  }

private:
  // What hands do in the same step as a pass is told with the pass.
  bool tell(const Step& step, int made) {
    if (made == moment_.passes && std::ranges::none_of(step.actions, is_pass)) {
      moment_.hands.push_back(step.text);
    }
    return true;
  }

  const PlayedKnitting& played_;
  PlayMoment moment_;
};

} // namespace

PlayedKnitting played_knitting(const Document& document, const Profile& profile, const RowsToKnit& rows) {
  PlayedKnitting played{document, profile, steps_of(document, profile, rows), nullptr, {}};
  if (profile.card && profile.selects != Selects::by_hand) {
    played.card = std::make_shared<const PunchedCard>(planned_card(document, profile, rows));
  }
  for (std::size_t index = 0; index < played.list.steps.size(); ++index) {
    const auto passes = std::ranges::count_if(played.list.steps[index].actions, is_pass);
    played.steps_of_passes.insert(played.steps_of_passes.end(), static_cast<std::size_t>(passes),
                                  static_cast<int>(index));
  }
  return played;
}

PlayMoment moment_at(const PlayedKnitting& played, int passes) {
  return Player(played, passes).moment();
}

std::string words_of(const CarriageSettings& settings) {
  std::string words;
  switch (settings.knitting) {
  case KnitSetting::plain: words = tr("plain knitting"); break;
  case KnitSetting::two_colour: words = tr("two-colour knitting"); break;
  case KnitSetting::back_only: words = tr("needles that stand forward slip"); break;
  case KnitSetting::forward_only: words = tr("only needles that stand forward knit"); break;
  }
  if (!settings.selecting) {
    return words;
  }
  return settings.end_needles ? said("{}, selects from the card, end needles too", words)
                              : said("{}, selects from the card", words);
}

std::string card_words(const MachineState& state) {
  const CardInReader& card = state.card;
  if (card.card == nullptr) {
    return {};
  }
  const std::string place = card.row > card.card->rows() ? std::string(tr("Its overlap rows are under the reader"))
                                                         : said("Row {} is under the reader", card.row);
  if (card.double_length) {
    return card.locked ? said("{}; locked, at double length", place) : said("{}; released, at double length", place);
  }
  return card.locked ? said("{}; locked", place) : said("{}; released", place);
}

PlayDialog play_dialog_for(App& app) {
  refresh(app);
  if (app.caches.rows.rows.size() > most_rows_at_the_bench) {
    return {};
  }
  PlayDialog dialog;
  dialog.knitting =
      std::make_shared<const PlayedKnitting>(played_knitting(app.work.design, app.work.profile, app.caches.rows));
  dialog.moment = std::make_shared<const PlayMoment>(moment_at(*dialog.knitting, 0));
  return dialog;
}

void play_to(App& app, int passes) {
  auto* const dialog = std::get_if<PlayDialog>(&app.session.dialog);
  if (dialog == nullptr || dialog->knitting == nullptr) {
    return;
  }
  const int wanted = std::clamp(passes, 0, dialog->knitting->passes());
  if (wanted != dialog->moment->passes) {
    dialog->moment = std::make_shared<const PlayMoment>(moment_at(*dialog->knitting, wanted));
  }
}

} // namespace punchwright::editor
