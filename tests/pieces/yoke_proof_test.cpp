// A size of a yoke proved: what is told of pieces and seams, and when it is no proof.
#include "pieces/yoke_proof.hpp"
#include "pieces/yokes.hpp"

#include <algorithm>
#include <doctest/doctest.h>

using namespace punchwright;
using namespace punchwright::test;

TEST_CASE("pieces that are knitted by their steps, with seams that meet as planned, are a proof") {
  const Files files = pullover_files();
  const OpenedYoke yoke = opened(pullover(), files);
  const SizePlan plan = planned(yoke).sizes.front();
  const SizeProof proof = prove_size(yoke, plan);
  CHECK(proof.proved());
  REQUIRE(proof.pieces.size() == plan.pieces.size());
  CHECK(proof.seams.size() == plan.pieces.size() * yoke.tiers.size());
  CHECK(std::ranges::all_of(proof.seams, [](const ProvedSeam& seam) { return seam.planned && seam.amiss == 0; }));
  for (std::size_t piece = 0; piece < plan.pieces.size(); ++piece) {
    CHECK(proof.pieces[piece].name == plan.pieces[piece].name);
    CHECK(proof.pieces[piece].tiers == static_cast<int>(yoke.tiers.size()));
    // Not fewer in a row than those that are left at the top, nor more than those of the first tier.
    CHECK(proof.pieces[piece].stitches >
          long{proof.pieces[piece].rows} * plan.pieces[piece].tiers.back().shaping.after);
    CHECK(proof.pieces[piece].stitches < long{proof.pieces[piece].rows} * plan.pieces[piece].tiers.front().stitches);
  }
}

TEST_CASE("a loop that is lost is no proof, and says where") {
  const Files files = pullover_files();
  const OpenedYoke yoke = opened(pullover(), files);
  SizePlan plan = planned(yoke).sizes.front();
  TierOfPiece& tier = plan.pieces[1].tiers[1];
  tier.shaping.transfers.push_back({tier.bed.first, Needle{tier.bed.first.position + 1}});
  const SizeProof proof = prove_size(yoke, plan);
  CHECK_FALSE(proof.proved());
  CHECK(proof.pieces[0].trouble.empty());
  CHECK(proof.pieces[1].trouble.find("hold loops after the decreases") != std::string::npos);
  CHECK(proof.pieces[1].tiers == 2);
  CHECK(proof.seams.size() == plan.pieces.size() * 2); // of the tiers that all pieces came to
}

TEST_CASE("a seam that does not meet is found in the fabrics, whatever the plan says of it") {
  Yoke wished = pullover();
  wished.fit.seams = YokeSeams::free;
  wished.pieces[0].bottom_cm = {{41.0}};
  const Files files = pullover_files();
  const OpenedYoke yoke = opened(wished, files);
  SizePlan plan = planned(yoke).sizes.front();
  CHECK(prove_size(yoke, plan).proved()); // nobody said that they meet
  int broken = 0;
  for (TierSeams& tier : plan.seams) {
    for (SeamMeeting& seam : tier.seams) {
      broken += seam.meets ? 0 : 1;
      seam.meets = true;
    }
  }
  REQUIRE(broken > 0);
  const SizeProof proof = prove_size(yoke, plan);
  CHECK_FALSE(proof.proved());
  CHECK(std::ranges::count_if(proof.seams, [](const ProvedSeam& seam) { return !seam.as_planned(); }) == broken);
}

TEST_CASE(
    "centred seams are compared with each other in the fabrics: pieces that lie elsewhere on the bed are no proof") {
  Yoke wished = pullover();
  wished.fit.seams = YokeSeams::centred;
  const Files files = pullover_files();
  for (const int edge : {0, 1, 2}) {
    wished.edge = edge;
    const OpenedYoke yoke = opened(wished, files);
    const SizePlan plan = planned(yoke).sizes.front();
    const SizeProof proof = prove_size(yoke, plan);
    CAPTURE(edge);
    CHECK(proof.proved());
    CHECK(proof.centred);
    CHECK(std::ranges::all_of(proof.seams, [](const ProvedSeam& seam) { return seam.planned && seam.amiss == 0; }));
    // Of one piece the last tier three needles further on, where the plan still says that all is well.
    SizePlan moved = plan;
    PieceOnBed& bed = moved.pieces[1].tiers.back().bed;
    moved.pieces[1].tiers[1].first_after.position += 3;
    moved.pieces[1].tiers[1].last_after.position += 3;
    bed.first.position += 3;
    bed.last.position += 3;
    for (Transfer& transfer : moved.pieces[1].tiers.back().shaping.transfers) {
      transfer.from.position += 3;
      transfer.to.position += 3;
    }
    const SizeProof amiss = prove_size(yoke, moved);
    CHECK(amiss.pieces[1].trouble.empty());
    CHECK_FALSE(amiss.proved());
    for (const ProvedSeam& seam : amiss.seams) {
      CHECK(seam.as_planned() == (seam.tier < 2 || (seam.left != 1 && seam.right != 1)));
    }
  }
}
