// The machine's steps of a tier within a yoke: those of its drawing, but for what is so already when they begin, and
// with the tension that its plain rows were measured at.
#pragma once

#include "pieces/yoke_plan.hpp"
#include "plan/steps.hpp"

namespace punchwright {

// Above the first tier the work hangs with its weights on, and the yarn is in its feeder unless it was taken out. Where
// the yoke has a gauge of its own for plain rows, the tension is set for them before the last plain row, and back
// before the next tier's first row; else it stays as it is set for the first tier.
[[nodiscard]] StepList steps_of_tier(const OpenedYoke& opened, const SizePlan& size, std::size_t piece,
                                     std::size_t tier);

// What the next tier's steps begin with is a remark, which says how things stand: nothing is done by it.
[[nodiscard]] inline bool is_remark(const Step& step, std::size_t tier) {
  return tier > 0 && step.kind == StepKind::hang_on;
}

} // namespace punchwright
