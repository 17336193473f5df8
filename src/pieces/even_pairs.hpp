// Where the decreases or increases of a row stand among its stitches: pairs of neighbours, and of all rows of pairs
// that keep the rules the most even one. Exact, by going through all of them in order; see shaping.hpp for what is
// weighed.
#pragma once

#include "pieces/yoke.hpp"

#include <vector>

namespace punchwright {

// Stitches `left` and `left` + 1, counted from 1. Of a decrease one of them is emptied; of an increase the left one
// "goes": it is the stitch behind which one is made.
struct StitchPair {
  int left = 0;
  bool left_goes = true;
  [[nodiscard]] int from() const { return left_goes ? left : left + 1; }
  [[nodiscard]] int to() const { return left_goes ? left + 1 : left; }
};

struct PairWishes {
  int before = 0; // stitches of the row
  int count = 0;  // of pairs, 1 or more
  bool increases = false;
  DecreaseWay way = DecreaseWay::gathered;
  DecreaseTowards towards = DecreaseTowards::centre;
  int clear = 0;                // stitches at both ends that are in no pair
  std::vector<bool> left_alone; // by stitch: others that are in none; empty: all may be
};

// Whether that one of the pair goes whose way is wished: on the left half of the stitches the left one goes towards the
// centre, and mirrored on the right; the middle one of an odd number may go to either side.
[[nodiscard]] bool goes_as_wished(int before, DecreaseTowards towards, const StitchPair& pair);

// Nothing where not all of them find room. Decreases take two stitches each, and of three or more none goes onto the
// first or the last one; a stitch may be in two pairs of increases.
[[nodiscard]] std::vector<StitchPair> even_pairs(const PairWishes& wishes);

} // namespace punchwright
