// A whole yoke on the machine's model: every piece, tier by tier, by the steps that the plan gives for it, with the
// transfers above each tier.
#pragma once

#include "knitting/fabric.hpp"
#include "pieces/yoke_plan.hpp"

#include <string>
#include <vector>

namespace punchwright {

// What hands do above the tier's steps, as actions: more plain rows, transfers, the empty needles out of work, the row
// after the decreases. Taking the work off is no action of the model.
[[nodiscard]] std::vector<MachineAction> moving_actions(const OpenedYoke& opened, const SizePlan& size,
                                                        std::size_t piece, std::size_t tier);

struct TierFabric {
  Fabric fabric;
  int rows_before = 0;       // of the setting-up, below the tier's first row
  int pattern_rows = 0;      // to knit, with those that yarn changes put in
  Side begins = Side::right; // where the carriage stands before its steps, and after the work was moved
  Side ends = Side::right;
  // What went wrong, in words: a step or an action that was refused, a loop that dropped or was cast on, a count that
  // does not come out. Empty: nothing.
  std::string trouble;
};

// One tier of one piece. After it as many loops hang as the next tier has stitches (or, where it widens, as this one
// has).
[[nodiscard]] TierFabric knit_tier(const OpenedYoke& opened, const SizePlan& size, std::size_t piece, std::size_t tier);

// The fabrics of one tier laid side by side, knit side up, in the order of the pieces: at each seam, the stitches left
// of it that differ from those one repeat to the right, over all rows. Nothing but the fabrics is looked at: no
// drawing, no placement. By seam, of each piece with the next one.
[[nodiscard]] std::vector<int> stitches_amiss_at_seams(const std::vector<TierFabric>& ring, int edge, int repeat_width);

} // namespace punchwright
