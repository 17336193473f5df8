// A size of a yoke, knitted: every piece on the machine's model from its first tier to its last one, and at every seam
// the two fabrics laid side by side.
#pragma once

#include "pieces/yoke_plan.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace punchwright {

struct ProvedPiece {
  std::string name;
  int rows = 0;        // of its fabric, setting-up and plain rows included
  long stitches = 0;   // in these
  int tiers = 0;       // as far as it was knitted
  std::string trouble; // what went wrong, in words; empty: nothing
};

struct ProvedSeam {
  std::size_t tier = 0;
  std::size_t left = 0; // index of the piece on the left of it, on the knit side
  std::size_t right = 0;
  bool planned = true; // that it meets; of centred seams, that it is alike and the repeat's middles are at the pieces'
  int amiss = 0;       // stitches that show that it isn't so: see knit_pieces.hpp
  // A seam that isn't meant to meet may look as if it did.
  [[nodiscard]] bool as_planned() const { return !planned || amiss == 0; }
};

struct SizeProof {
  bool centred = false; // seams are compared with each other, not across
  std::vector<ProvedPiece> pieces;
  std::vector<ProvedSeam> seams; // of the tiers that all pieces came to
  [[nodiscard]] bool proved() const;
};

[[nodiscard]] SizeProof prove_size(const OpenedYoke& opened, const SizePlan& plan);

} // namespace punchwright
