// The nearest stitch counts, searched piece by piece: what pieces don't ask of each other is not multiplied.
// As exact as the search tier by tier (stitch_counts.hpp), which it is asked by where rows of decreases bind in many
// pieces at once.
#pragma once

#include "pieces/count_costs.hpp"

#include <optional>
#include <stop_token>
#include <vector>

namespace punchwright {

struct CountsByPieces {
  std::vector<std::vector<int>> stitches; // [tier][group]; empty: none are allowed together, or it gave up
  CountCost cost;
  bool gave_up = false;
  std::int64_t compared = 0;
};

// Each group of pieces has chains of counts from tier to tier, and the rule of halves is kept within each. Groups only
// meet in what their chains leave of the tiers' repeats: all round a ring these add up to nothing, and in pieces whose
// seams are alike they are the same. So for each group the best chain for all that can be left, and these are put
// together group by group. That is done for chains that cost no more than so much above the best of each group, and
// again with twice the room until an answer lies within it: what was left out costs more.
//
// `least_squares`: no answer is known to have less (in a CountCost). No more comparisons than `most`, a few nanoseconds
// each.
[[nodiscard]] CountsByPieces counts_by_pieces(const CountsProblem& problem, std::int64_t least_squares,
                                              std::int64_t most, const std::stop_token& stop = {});

} // namespace punchwright
