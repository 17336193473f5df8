// Whole yokes on the machine's model: every piece can be knitted by its steps, nothing drops or is cast on, and the
// fabrics laid side by side go on across the seams where the plan says so, and only there.
#include "files/files.hpp"
#include "pieces/knit_pieces.hpp"
#include "pieces/yoke_plan.hpp"
#include "pieces/yokes.hpp"

#include <algorithm>
#include <numeric>
#include <random>

using namespace punchwright;
using namespace punchwright::test;

namespace {

// All tiers of a size; returns the stitches amiss of each tier's seams.
std::vector<std::vector<int>> knit_size(const OpenedYoke& yoke, const SizePlan& size) {
  std::vector<std::vector<int>> amiss;
  for (std::size_t tier = 0; tier < yoke.tiers.size(); ++tier) {
    std::vector<TierFabric> ring;
    for (std::size_t piece = 0; piece < size.pieces.size(); ++piece) {
      ring.push_back(knit_tier(yoke, size, piece, tier));
      CAPTURE(piece);
      CAPTURE(tier);
      CHECK(ring.back().trouble == "");
    }
    amiss.push_back(stitches_amiss_at_seams(ring, yoke.yoke.edge, yoke.tiers[tier].document.grid.width()));
  }
  return amiss;
}

// The machine's model says where the carriage stands after the work was moved; the words take it to where the next
// tier begins, or say nothing of it. Returns how often it was on the wrong side.
int check_sides(const OpenedYoke& yoke, const SizePlan& size) {
  int wrong = 0;
  for (std::size_t piece = 0; piece < size.pieces.size(); ++piece) {
    for (std::size_t tier = 0; tier < yoke.tiers.size(); ++tier) {
      CAPTURE(piece);
      CAPTURE(tier);
      const bool last = tier + 1 == yoke.tiers.size();
      const Side ends = knit_tier(yoke, size, piece, tier).ends;
      const Side begins = last ? ends : knit_tier(yoke, size, piece, tier + 1).begins;
      const std::vector<std::string> lines = moving_words(yoke, size, piece, tier);
      const auto takes = [&lines](std::string_view side) {
        return std::ranges::any_of(lines, [side](const std::string& line) {
          return line.starts_with("Take the yarn out of its feeder and cut it; ") &&
                 line.find(side) != std::string::npos;
        });
      };
      CHECK(takes("to the left") == (ends != begins && begins == Side::left));
      CHECK(takes("to the right") == (ends != begins && begins == Side::right));
      wrong += ends != begins ? 1 : 0;
    }
  }
  return wrong;
}

FileReader from_disk() {
  return [](const std::filesystem::path& path) { return read_file(path, std::size_t{1} << 20U); };
}

} // namespace

TEST_CASE("the demos are knitted, and their seams meet in the fabric") {
  for (const std::string name : {"harbour-pullover", "puffin-poncho", "anchor-yoke"}) {
    CAPTURE(name);
    const std::string path = PUNCHWRIGHT_SOURCE_DIR "/patterns/" + name + ".yoke";
    const auto text = read_file(path, std::size_t{1} << 20U);
    REQUIRE(text);
    const auto yoke = open_yoke(*text, path, from_disk());
    REQUIRE(yoke);
    CHECK(write_yoke(yoke->yoke) == *text);
    const auto plan = plan_yoke(*yoke);
    REQUIRE(plan);
    int sides = 0;
    for (const SizePlan& size : plan->sizes) {
      sides += check_sides(*yoke, size);
      for (const std::vector<int>& tier : knit_size(*yoke, size)) {
        CHECK(std::accumulate(tier.begin(), tier.end(), 0) == 0);
      }
    }
    CHECK(sides > 0); // each of them has a size with an odd number of rows between two tiers
  }
}

TEST_CASE("seams that are said to meet do meet, and others don't") {
  std::mt19937 dice(8);
  const auto from = [&dice](int least, int most) { return std::uniform_int_distribution<int>(least, most)(dice); };
  int met = 0;
  int unmet = 0;
  for (int round = 0; round < 24; ++round) {
    Files files = pullover_files();
    Yoke yoke = pullover();
    yoke.sizes = {"one"};
    yoke.depth_cm = {{22.0}};
    yoke.edge = from(1, 3);
    yoke.profile = round % 3 == 0 ? "plastic-by-hand" : "bulky-card-24";
    yoke.pieces = {{"front", {{40.0 + from(0, 90) / 10.0}}, {{20.0}}, ""},
                   {"sleeve", {{28.0 + from(0, 60) / 10.0}}, {{15.0}}, ""},
                   {"back", {{41.0 + from(0, 90) / 10.0}}, {{20.0}}, ""}};
    yoke.fit.seams = round % 2 == 0 ? YokeSeams::continuous : YokeSeams::free;
    yoke.decreases.way = static_cast<DecreaseWay>(round % 3);
    yoke.decreases.towards = static_cast<DecreaseTowards>(round % 2);
    const OpenedYoke opened_yoke = opened(yoke, files);
    const auto plan = plan_yoke(opened_yoke);
    if (!plan) {
      continue;
    }
    const SizePlan& size = plan->sizes.front();
    const auto amiss = knit_size(opened_yoke, size);
    for (std::size_t tier = 0; tier < amiss.size(); ++tier) {
      for (std::size_t seam = 0; seam < amiss[tier].size(); ++seam) {
        CAPTURE(round);
        CAPTURE(tier);
        CAPTURE(seam);
        // A whole repeat on both sides of the seam, or the next seam would be seen as well.
        const std::size_t next = size.seams[tier].seams[seam].right;
        const int narrow = std::min(size.pieces[seam].tiers[tier].stitches, size.pieces[next].tiers[tier].stitches);
        if (narrow - 2 * yoke.edge < opened_yoke.tiers[tier].document.grid.width()) {
          continue;
        }
        CHECK((amiss[tier][seam] == 0) == size.seams[tier].seams[seam].meets);
        (size.seams[tier].seams[seam].meets ? met : unmet) += 1;
      }
    }
  }
  CHECK(met > 50);
  CHECK(unmet > 5);
}

TEST_CASE("a piece moved by one needle is seen at both of its seams") {
  const Files files = pullover_files();
  const OpenedYoke yoke = opened(pullover(), files);
  const auto plan = plan_yoke(yoke);
  REQUIRE(plan);
  SizePlan size = plan->sizes.front();
  --size.pieces[1].tiers[0].bed.first.position;
  --size.pieces[1].tiers[0].bed.last.position;
  for (Transfer& transfer : size.pieces[1].tiers[0].shaping.transfers) {
    --transfer.from.position;
    --transfer.to.position;
  }
  std::vector<TierFabric> ring;
  for (std::size_t piece = 0; piece < 4; ++piece) {
    ring.push_back(knit_tier(yoke, size, piece, 0));
  }
  const std::vector<int> amiss = stitches_amiss_at_seams(ring, 1, 24);
  CHECK(amiss[0] > 0);
  CHECK(amiss[1] > 0);
  CHECK(amiss[2] == 0);
  CHECK(amiss[3] == 0);
}

TEST_CASE("an empty needle left in work is found out") {
  const Files files = pullover_files();
  const OpenedYoke yoke = opened(pullover(), files);
  const auto plan = plan_yoke(yoke);
  REQUIRE(plan);
  SizePlan size = plan->sizes.front();
  size.pieces[0].tiers[0].shaping.transfers.pop_back(); // one decrease is forgotten
  CHECK_FALSE(knit_tier(yoke, size, 0, 0).trouble.empty());
}
