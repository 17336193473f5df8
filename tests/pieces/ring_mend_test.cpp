// Where seams don't meet: stitch counts that are named make all of them meet, none nearer does, and they keep to the
// tolerance and the rows of decreases. Nothing else is named.
#include "pieces/ring_mend.hpp"
#include "pieces/yokes.hpp"

#include <algorithm>
#include <random>

using namespace punchwright;
using namespace punchwright::test;

namespace {

// Front and back alike, and both sides, of one tier of 24 stitches on a bed of 112 needles.
OpenedYoke full_bed(double front, double side, YokeSeams seams) {
  Yoke yoke = pullover();
  yoke.sizes = {"one"};
  yoke.pieces = {{"front", {{front}}, {{40.0}}, ""},
                 {"left", {{side}}, {{38.0}}, ""},
                 {"back", {}, {}, "front"},
                 {"right", {}, {}, "left"}};
  yoke.depth_cm = {{20.0}};
  yoke.tiers = {{"wide.repeat", {{34}}}};
  yoke.fit.seams = seams;
  return opened(yoke, pullover_files());
}

bool all_meet(const OpenedYoke& yoke, const std::vector<int>& stitches) {
  const RingOnBed ring = ring_on_bed(yoke.tiers[0].document, yoke.profile, stitches, 1, yoke.yoke.fit.seams);
  return std::ranges::all_of(ring.seams, &SeamMeeting::meets);
}

// The least change to counts of front and sides with which all meet, of all that are allowed; -1: none.
int least_change(const OpenedYoke& yoke, const std::vector<int>& present, int front_after, int side_after) {
  const CountsProblem problem = counts_problem(yoke, 0);
  const CountChoice& fronts = problem.choices[0][0];
  const CountChoice& sides = problem.choices[0][1];
  int least = -1;
  for (int front = fronts.least; front <= fronts.most; ++front) {
    for (int side = sides.least; side <= sides.most; ++side) {
      const int change =
          2 * (front - present[0]) * (front - present[0]) + 2 * (side - present[1]) * (side - present[1]);
      const bool halves = front_after >= fewest_above(front, 1) && side_after >= fewest_above(side, 1);
      if (halves && (least < 0 || change < least) && all_meet(yoke, {front, side, front, side})) {
        least = change;
      }
    }
  }
  return least;
}

} // namespace

TEST_CASE("a full bed: the mend that is named is within the tolerance and makes every seam meet") {
  const OpenedYoke yoke = full_bed(72.5, 70, YokeSeams::continuous);
  const YokePlan plan = planned(yoke);
  const TierSeams& seams = plan.sizes[0].seams[0];
  CHECK(std::ranges::count(seams.seams, false, &SeamMeeting::meets) == 2);
  CHECK(seams.mend ==
        "the bed of 112 needles leaves too little room to move the work; every seam would meet with these stitches: "
        "front 100, left 96, back 100, right 96");
  CHECK(all_meet(yoke, {100, 96, 100, 96}));
}

TEST_CASE("a ring that doesn't close: the mend that is named is within the tolerance and makes the last seam meet") {
  OpenedYoke yoke = full_bed(40, 30, YokeSeams::free); // room on the bed to move every piece to any column
  const TierSeams open = planned(yoke).sizes[0].seams[0];
  CHECK(std::ranges::count(open.seams, false, &SeamMeeting::meets) == 1);
  CHECK(open.mend == "196 visible stitches all round are no multiple of 24; every seam would meet with these stitches: "
                     "front 57, left 43, back 57, right 43");
  CHECK(all_meet(yoke, {57, 43, 57, 43}));
  Yoke strict = yoke.yoke;
  strict.fit.tolerance = 0.01; // one piece may not change by a stitch
  yoke = opened(strict, pullover_files());
  CHECK(planned(yoke).sizes[0].seams[0].mend ==
        "196 visible stitches all round are no multiple of 24; no stitch counts of this tier within the tolerance make "
        "every seam meet");
}

// 140 stitches all round: 138 would be a multiple of 6, but four equal pieces can't have them, 132 or 144 they can.
TEST_CASE("quarters that are like each other: a change is named that all four of them can make") {
  Files files;
  files.texts["six.repeat"] = tier_text(6, 9);
  Yoke yoke = pullover();
  yoke.sizes = {"one"};
  yoke.pieces = {{"first", {{25.0}}, {{20.0}}, ""}};
  for (const std::string name : {"second", "third", "fourth"}) {
    yoke.pieces.push_back({name, {}, {}, "first"});
  }
  yoke.depth_cm = {{20.0}};
  yoke.tiers = {{"six.repeat", {{20}}}};
  yoke.fit.seams = YokeSeams::free;
  const SizePlan plan = planned(opened(yoke, files)).sizes[0];
  REQUIRE(plan.pieces[0].tiers[0].stitches == 37);
  CHECK(plan.seams[0].mend == "140 visible stitches all round are no multiple of 6; every seam would meet with these "
                              "stitches: first 38, second 38, third 38, fourth 38");
  yoke.fit.tolerance = 0.026; // one stitch of 37 is more: 36 to 37 are left
  CHECK(planned(opened(yoke, files)).sizes[0].seams[0].mend ==
        "140 visible stitches all round are no multiple of 6; no stitch counts of this tier within the tolerance make "
        "every seam meet");
}

TEST_CASE("seams that don't meet: what is named mends them, and nothing nearer would") {
  std::mt19937 dice(7);
  std::uniform_int_distribution<int> tenths(620, 780);
  int mended = 0;
  int none = 0;
  int one_seam = 0;
  for (int round = 0; round < 160; ++round) {
    const double less = round < 120 ? 0 : 30; // and there is room on the bed
    const double front = tenths(dice) / 10.0 - less;
    const double side = tenths(dice) / 10.0 - less;
    CAPTURE(front);
    CAPTURE(side);
    const OpenedYoke yoke = full_bed(front, side, round % 2 == 0 ? YokeSeams::free : YokeSeams::continuous);
    const auto counts = try_counts(yoke, 0).counts;
    if (!counts) {
      continue;
    }
    std::vector<int> present;
    for (const auto& piece : counts->stitches) {
      present.push_back(piece[0]);
    }
    if (all_meet(yoke, present)) {
      continue;
    }
    one_seam += less > 0 ? 1 : 0;
    const CountsThatMeet found = counts_that_meet(yoke, 0, 0, *counts);
    const int least = least_change(yoke, present, counts->stitches[0][1], counts->stitches[1][1]);
    CHECK_FALSE(found.gave_up);
    REQUIRE(found.stitches.empty() == (least < 0));
    if (least < 0) {
      ++none;
      continue;
    }
    ++mended;
    CHECK(all_meet(yoke, found.stitches));
    int change = 0;
    for (std::size_t piece = 0; piece < 4; ++piece) {
      change += (found.stitches[piece] - present[piece]) * (found.stitches[piece] - present[piece]);
    }
    CHECK(change == least);
  }
  CHECK(mended > 10);
  CHECK(none > 10);
  CHECK(one_seam > 10);
}
