// The stitches of every piece in every tier: the whole numbers nearest to the straight cone that close the ring.
// An exact search: the answer carries a lower bound that no choice of counts can undercut.
#pragma once

#include "design/wrap.hpp"

#include <cstdint>
#include <optional>
#include <stop_token>
#include <vector>

namespace punchwright {

// A stitch count before it is rounded, exactly: whole + rest / denominator of the problem, 0 <= rest < denominator.
struct IdealCount {
  std::int64_t whole = 0;
  std::int64_t rest = 0;
};

// One tier of one group: its ideal, and the counts that are allowed.
struct CountChoice {
  IdealCount ideal;
  int least = 0;
  int most = 0; // none are allowed where it is less than `least`
};

// What the seams ask of one tier.
struct SeamRule {
  // Continuous: the visible stitches of all pieces together are a multiple of it; 1: of anything.
  int multiple = 1;
  // Centred: counts that no piece has (by stitches; those beyond its end are not barred).
  std::vector<bool> barred{};
  // Centred: counts of groups of one class leave the same remainder of it; 1: whatever they like. Then `multiple` is 1.
  int alike = 1;

  [[nodiscard]] bool allows(int stitches) const {
    const auto at = static_cast<std::size_t>(stitches);
    return stitches < 0 || at >= barred.size() || !barred[at];
  }
};

// Groups are pieces that have the same counts; counts and ideals include the seam stitches.
struct CountsProblem {
  std::vector<int> pieces;     // in each group, 1 or more
  std::vector<SeamRule> seams; // of each tier
  int edge = 1;
  bool halves = true;  // no decrease row takes more than one visible stitch in two
  bool doubles = true; // no increase row makes more than one stitch between any two visible ones
  std::int64_t denominator = 1;
  // [tier][group]; one tier more than `seams`: the counts after the last decreases.
  std::vector<std::vector<CountChoice>> choices;
  std::vector<std::size_t> classes{}; // of each group: the first group whose remainder it shares; none: its own
};

// What the visible stitches of so many pieces leave of that multiple: all round a ring that closes, nothing.
[[nodiscard]] constexpr int ring_remainder(int pieces, int stitches, int edge, int multiple) {
  return remainder_of(pieces * (stitches - 2 * edge), multiple);
}

// By the rule of halves: the fewest stitches that may stand above `below`, and the most. Both grow with it.
[[nodiscard]] int fewest_above(int below, int edge);
[[nodiscard]] int most_above(int below, int edge);

struct Counts {
  std::vector<std::vector<int>> stitches; // [tier][group], as the choices
  double squares = 0;                     // squared differences from the ideals, of all pieces and tiers
  double bound = 0;                       // no allowed choice has less: what the search proves
  std::int64_t in_all = 0;                // stitches of all pieces and tiers
  int looked_at = 0;                      // parts that the search was cut into; 1: the tiers decide one by one
};

// How many parts the search may be cut into; what it compares is bounded besides.
constexpr int most_count_parts = 200'000;

struct CountsFound {
  std::optional<Counts> counts; // nothing: no counts are allowed together, which is proved unless it gave up
  bool gave_up = false;         // what may be looked at was used up, or it was stopped, before anything was proved
};

// Fewest squares; then the fewest stitches in all; then, where the tiers decide one by one, in each the earlier groups
// the narrower.
//
// For each tier by itself the best counts are found over all remainders (dynamic programming); together they are the
// answer unless a decrease row takes too much. Then the search is cut at that place, the two parts being bounded by
// their tiers' best, and goes on with the part of the lowest bound: the first answer that keeps to the rule is the
// best, since all other parts are bounded by more. Nothing is left out.
//
// Where such rows bind in many groups at once, their parts would multiply: after a hundred of them the search goes on
// piece by piece (counts_by_pieces.hpp), and with parts only where that has too many remainders. All together it
// compares no more than takes a part of a second, then it gives up.
[[nodiscard]] CountsFound nearest_counts(const CountsProblem& problem, int most_parts = most_count_parts,
                                         const std::stop_token& stop = {});

// How many stitch counts are compared for one part of it, at most: what it costs.
[[nodiscard]] std::int64_t comparisons_in_a_part(const CountsProblem& problem);

} // namespace punchwright
