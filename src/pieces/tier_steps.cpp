// Leaves out and puts in, step by step.
#include "pieces/tier_steps.hpp"

#include "words/words.hpp"

namespace punchwright {
namespace {

// The plain rows are measured by a swatch of their own, knitted at the tension of plain knitting (docs/yokes.md).
bool plain_rows_have_own_gauge(const OpenedYoke& opened) {
  return opened.yoke.gauge.plain_rows || opened.yoke.gauge.plain_stitches;
}

Step tension_step(StepPart part, std::string words, const Step& before) {
  Step step{StepKind::tension, part, std::move(words), {}};
  step.counter = before.counter;
  step.carriage = before.carriage;
  return step;
}

// `yarn_out`: of the tier below.
bool is_so_already(const Step& step, bool yarn_out) {
  return step.kind == StepKind::weights || step.kind == StepKind::tension ||
         (step.part == StepPart::setting_up && step.kind == StepKind::main_in && !yarn_out);
}

} // namespace

StepList steps_of_tier(const OpenedYoke& opened, const SizePlan& size, std::size_t piece, std::size_t tier) {
  StepList list = steps_of(document_of(opened, size, piece, tier), opened.profile, opened.tiers[tier].rows);
  const bool own_gauge = plain_rows_have_own_gauge(opened);
  const bool yarn_out = tier > 0 && between_tiers(opened, size, piece, tier - 1).yarn_out;
  std::vector<Step> steps;
  for (Step& step : list.steps) {
    if (tier > 0 && is_so_already(step, yarn_out)) {
      continue;
    }
    if (step.kind == StepKind::tension && !own_gauge) {
      step.text = tr("Tension: at least one whole number looser than for plain knitting in this yarn. It stays so for "
                     "the plain rows between the tiers.");
    }
    const bool pattern_begins =
        step.part != StepPart::setting_up && (steps.empty() || steps.back().part == StepPart::setting_up);
    if (tier > 0 && own_gauge && pattern_begins) {
      steps.push_back(tension_step(StepPart::setting_up,
                                   tr("Tension: for the pattern again, at least one whole number looser than for plain "
                                      "knitting."),
                                   steps.empty() ? step : steps.back()));
    }
    if (own_gauge && step.kind == StepKind::end_row) {
      steps.push_back(
          tension_step(StepPart::end,
                       tr("Tension: as for plain knitting in this yarn, at which the gauge of the plain rows "
                          "was measured."),
                       steps.empty() ? step : steps.back()));
    }
    steps.push_back(std::move(step));
  }
  list.steps = std::move(steps);
  return list;
}

} // namespace punchwright
