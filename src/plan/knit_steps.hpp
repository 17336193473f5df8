// The steps, carried out on the machine.
#pragma once

#include "knitting/fabric.hpp"
#include "plan/steps.hpp"

#include <memory>

namespace punchwright {

struct StepsKnitted {
  Knitting knitting;
  int refused_step = -1; // index of the step that hands cannot do; -1: all were done
};

// On a machine as the last knitter left it, with that card in it (none: null).
[[nodiscard]] StepsKnitted knit_steps(const StepList& list, const Document& document, const Profile& profile,
                                      std::shared_ptr<const PunchedCard> card);

// On the machine as it stands, with the work that hangs on it: what the steps begin with hanging on is there already.
[[nodiscard]] StepsKnitted knit_steps_on(Knitting knitting, const StepList& list);

// The card as it is meant to be punched; what the reader feels of the real one is found out in `proof`.
[[nodiscard]] PunchedCard planned_card(const Document& document, const Profile& profile, const RowsToKnit& rows);

} // namespace punchwright
