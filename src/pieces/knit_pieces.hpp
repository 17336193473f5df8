// A whole yoke on the machine's model: every piece from its first tier to its last one on one machine and as one
// fabric, by the steps that the plan gives for each tier, with the transfers above it and the work moved to the next
// one.
#pragma once

#include "knitting/fabric.hpp"
#include "pieces/yoke_plan.hpp"

#include <string>
#include <vector>

namespace punchwright {

// What hands do above the tier's steps, as actions, up to where the next tier's steps begin: more plain rows,
// transfers, the empty needles out of work, the row after the decreases; then the work off, the carriage to where the
// next tier begins, the next needles in work, the loops hung on them, and loops lifted where stitches are made. Above
// the last tier the work is off at the end, or hung on again where stitches are made.
[[nodiscard]] std::vector<MachineAction> moving_actions(const OpenedYoke& opened, const SizePlan& size,
                                                        std::size_t piece, std::size_t tier);

struct TierRows {
  int first_row = 0;         // of the fabric: its first pattern row
  int rows_before = 0;       // of the setting-up, below that
  int pattern_rows = 0;      // to knit, with those that yarn changes put in
  Side begins = Side::right; // where the carriage stands before its steps, and after the work was moved
  Side ends = Side::right;
};

struct PieceFabric {
  Fabric fabric;
  std::vector<TierRows> tiers; // as far as it was knitted
  int loops = 0;               // hanging at the end, or held by what the work was taken off on
  // What went wrong, in words: a step or an action that was refused, a loop that was lost in moving the work, that
  // dropped or was cast on, a count that does not come out. Empty: nothing. It is not knitted further then.
  std::string trouble;
};

// After each tier as many loops hang as the next tier has stitches (or, where it widens, as this one has).
[[nodiscard]] PieceFabric knit_piece(const OpenedYoke& opened, const SizePlan& size, std::size_t piece);

// One tier of the fabrics laid side by side, knit side up, in the order of the pieces: at each seam, the stitches left
// of it that differ from those one repeat to the right, over all rows. Nothing but the fabrics is looked at: no
// drawing, no placement. By seam, of each piece with the next one.
[[nodiscard]] std::vector<int> stitches_amiss_at_seams(const std::vector<PieceFabric>& ring, std::size_t tier, int edge,
                                                       int repeat_width);

// The same for `centred` seams: at each of them the stitches within one repeat, on both sides, that differ from the
// drawing laid with the middle of its repeat at the middle of the pieces beside the first seam, or mirrored with it. So
// it is 0 at all seams where each piece shows the middle of the repeat at its own and seams are alike. The counts are
// those of the fabrics. Without seam stitches the outermost stitch is not looked at: an end needle may knit contrast.
[[nodiscard]] std::vector<int> stitches_amiss_at_alike_seams(const std::vector<PieceFabric>& ring, std::size_t tier,
                                                             int edge, const OpenedTier& drawn);

} // namespace punchwright
