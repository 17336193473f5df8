// Steps to fabric.
#include "plan/knit_steps.hpp"

namespace punchwright {
namespace {

StepsKnitted knitted(Knitting knitting, const StepList& list, bool hangs_on) {
  StepsKnitted result{std::move(knitting), -1};
  for (std::size_t step = 0; step < list.steps.size(); ++step) {
    for (const MachineAction& action : list.steps[step].actions) {
      const bool there = !hangs_on && std::holds_alternative<HangOn>(action);
      if (!there && !knit_on(result.knitting, action)) {
        result.refused_step = static_cast<int>(step);
        return result;
      }
    }
  }
  return result;
}

} // namespace

StepsKnitted knit_steps(const StepList& list, const Document& document, const Profile& profile,
                        std::shared_ptr<const PunchedCard> card) {
  return knitted(begin_knitting(machine_as_found(profile, list.carriage, std::move(card), document.card.loop)), list,
                 true);
}

StepsKnitted knit_steps_on(Knitting knitting, const StepList& list) {
  return knitted(std::move(knitting), list, false);
}

PunchedCard planned_card(const Document& document, const Profile& profile, const RowsToKnit& rows) {
  if (!profile.card) {
    return {};
  }
  PunchedCard card(profile.card->repeat, rows.circuit);
  for (int row = 1; row <= rows.circuit; ++row) {
    for (const int column : punched_columns(document, profile, rows, row)) {
      card.set(row, column, true);
    }
  }
  return card;
}

} // namespace punchwright
