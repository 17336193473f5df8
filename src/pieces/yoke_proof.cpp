// Knits, counts, and lays the fabrics side by side.
#include "pieces/yoke_proof.hpp"

#include "pieces/knit_pieces.hpp"

#include <algorithm>

namespace punchwright {
namespace {

long stitches_of(const Fabric& fabric) {
  long stitches = 0;
  for (int row = 0; row < fabric.rows(); ++row) {
    stitches += std::ranges::count_if(fabric.row(row), [](const Made& made) { return made.yarn != 0; });
  }
  return stitches;
}

} // namespace

bool SizeProof::proved() const {
  return std::ranges::all_of(pieces, [](const ProvedPiece& piece) { return piece.trouble.empty(); }) &&
         std::ranges::all_of(seams, &ProvedSeam::as_planned);
}

SizeProof prove_size(const OpenedYoke& opened, const SizePlan& plan) {
  SizeProof proof;
  proof.centred = opened.yoke.fit.seams == YokeSeams::centred;
  std::vector<PieceFabric> ring;
  std::size_t tiers = opened.tiers.size();
  for (std::size_t piece = 0; piece < plan.pieces.size(); ++piece) {
    PieceFabric knitted = knit_piece(opened, plan, piece);
    proof.pieces.push_back({plan.pieces[piece].name, knitted.fabric.rows(), stitches_of(knitted.fabric),
                            static_cast<int>(knitted.tiers.size()), knitted.trouble});
    tiers = std::min(tiers, knitted.tiers.size());
    ring.push_back(std::move(knitted));
  }
  for (std::size_t tier = 0; tier < tiers; ++tier) {
    const OpenedTier& drawn = opened.tiers[tier];
    const std::vector<int> amiss =
        proof.centred ? stitches_amiss_at_alike_seams(ring, tier, opened.yoke.edge, drawn)
                      : stitches_amiss_at_seams(ring, tier, opened.yoke.edge, drawn.document.grid.width());
    for (std::size_t seam = 0; seam < amiss.size(); ++seam) {
      const SeamMeeting& meeting = plan.seams[tier].seams[seam];
      const bool planned = proof.centred ? plan.seams[tier].mend.empty() : meeting.meets;
      proof.seams.push_back({tier, meeting.left, meeting.right, planned, amiss[seam]});
    }
  }
  return proof;
}

} // namespace punchwright
