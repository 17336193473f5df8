// Steps to moments.
#include "editor/play.hpp"

#include "editor/applying.hpp"
#include "plan/bench_moves.hpp"
#include "plan/step_words.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <functional>
#include <iterator>

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

int passes_in(const PlayedKnitting& played, int moves) {
  return static_cast<int>(
      std::count_if(played.moves.begin(), played.moves.begin() + moves, std::mem_fn(&PlayedMove::pass)));
}

std::string words_for(const PlayedKnitting& played, int move, int passes_before) {
  if (move >= played.count()) {
    return {};
  }
  const PlayedMove& there = played.moves[static_cast<std::size_t>(move)];
  return there.pass ? words_for_pass(played, passes_before)
                    : played.list.steps[static_cast<std::size_t>(there.step)].text;
}

// False: hands can't do it. The step that puts the card in is carried out on one that is in.
bool carry_out(const PlayedKnitting& played, const PlayedMove& move, Knitting& knitting) {
  const Step& step = played.list.steps[static_cast<std::size_t>(move.step)];
  if (step.kind == StepKind::card_in) {
    put_card_in(knitting.state, played.card, played.document.card.loop);
  }
  const auto& actions = step.actions;
  return std::all_of(actions.begin() + static_cast<std::ptrdiff_t>(move.first),
                     actions.begin() + static_cast<std::ptrdiff_t>(move.last),
                     [&](const MachineAction& action) { return knit_on(knitting, action); });
}

// A step without a pass is one move, and each pass with what comes before it; what comes after the last goes with it.
void add_moves(std::vector<PlayedMove>& moves, const Step& step, int index) {
  std::size_t first = 0;
  const std::size_t before = moves.size();
  for (std::size_t action = 0; action < step.actions.size(); ++action) {
    if (is_pass(step.actions[action])) {
      moves.push_back({index, first, action + 1, true});
      first = action + 1;
    }
  }
  if (moves.size() == before) {
    moves.push_back({index, 0, step.actions.size(), false});
  }
  moves.back().last = step.actions.size();
}

// Which one it is of those between two passes, and how many they are.
void count_by_hand(const PlayedKnitting& played, PlayMoment& moment) {
  const auto next = played.moves.begin() + moment.moves;
  const auto is_pass = std::mem_fn(&PlayedMove::pass);
  const auto before = std::find_if(std::make_reverse_iterator(next), played.moves.rend(), is_pass).base();
  moment.by_hand = static_cast<int>(next - before) + 1;
  moment.all_by_hand = static_cast<int>(std::find_if(next, played.moves.end(), is_pass) - before);
}

} // namespace

PlayedKnitting played_knitting(const Document& document, const Profile& profile, const RowsToKnit& rows) {
  PlayedKnitting played{document, profile, steps_of(document, profile, rows), nullptr, {}, {}};
  if (profile.card && profile.selects != Selects::by_hand) {
    played.card = std::make_shared<const PunchedCard>(planned_card(document, profile, rows));
  }
  for (std::size_t index = 0; index < played.list.steps.size(); ++index) {
    const auto passes = std::ranges::count_if(played.list.steps[index].actions, is_pass);
    played.steps_of_passes.insert(played.steps_of_passes.end(), static_cast<std::size_t>(passes),
                                  static_cast<int>(index));
    add_moves(played.moves, played.list.steps[index], static_cast<int>(index));
  }
  return played;
}

int PlayedKnitting::ready_after(int passes) const {
  int made = 0;
  for (int move = 0; move < count(); ++move) {
    if (moves[static_cast<std::size_t>(move)].pass && made++ == passes) {
      return move;
    }
  }
  return count();
}

PlayMoment moment_at(const PlayedKnitting& played, int moves) {
  PlayMoment moment;
  moment.knitting = begin_knitting(machine_as_found(played.profile, played.list.carriage));
  const int wanted = std::clamp(moves, 0, played.count());
  while (moment.moves < wanted && moment.refused_step < 0) {
    const PlayedMove& move = played.moves[static_cast<std::size_t>(moment.moves++)];
    if (!carry_out(played, move, moment.knitting)) {
      moment.refused_step = move.step;
    }
  }
  moment.passes = passes_in(played, moment.moves);
  moment.to_do = words_for(played, moment.moves, moment.passes);
  if (moment.moves < played.count()) {
    moment.knits = played.moves[static_cast<std::size_t>(moment.moves)].pass;
    moment.then = words_for(played, moment.moves + 1, moment.passes + (moment.knits ? 1 : 0));
    if (!moment.knits) {
      count_by_hand(played, moment);
    }
  }
  return moment;
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

std::string card_words(const PlayedKnitting& played, const MachineState& state) {
  const CardInReader& card = state.card;
  if (played.card == nullptr) {
    return {};
  }
  if (card.card == nullptr) {
    return tr("Not in the machine yet");
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

void play_to(App& app, int moves) {
  auto* const dialog = std::get_if<PlayDialog>(&app.session.dialog);
  if (dialog == nullptr || dialog->knitting == nullptr) {
    return;
  }
  const int wanted = std::clamp(moves, 0, dialog->knitting->count());
  if (wanted != dialog->moment->moves) {
    dialog->moment = std::make_shared<const PlayMoment>(moment_at(*dialog->knitting, wanted));
  }
}

} // namespace punchwright::editor
