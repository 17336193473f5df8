// Whole yokes on the machine's model: every piece can be knitted by its steps, nothing drops or is cast on, and the
// fabrics laid side by side go on across the seams where the plan says so, and only there.
#include "files/files.hpp"
#include "pieces/knit_pieces.hpp"
#include "pieces/yoke_cloth.hpp"
#include "pieces/yoke_plan.hpp"
#include "pieces/yokes.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <numeric>
#include <random>

using namespace punchwright;
using namespace punchwright::test;

namespace {

// The stitches of a row, from left to right along the bed.
std::vector<StitchPlace> stitches_of_row(const Fabric& fabric, int row) {
  std::vector<StitchPlace> stitches;
  Needle needle = fabric.leftmost();
  for (const Made& made : fabric.row(row)) {
    if (made.yarn != 0) {
      stitches.push_back({row, needle});
    }
    ++needle.position;
  }
  return stitches;
}

// One fabric from the lowest row to the highest: every stitch hangs on loops of the row below, in their order, and
// every loop holds a stitch of the row above. Two loops hold one stitch at each decrease, in the row after it. At an
// increase one stitch hangs on the loop below its neighbour's. All others hang on one loop.
void check_one_fabric(const PieceFabric& knitted, const PieceOfSize& piece) {
  const Fabric& fabric = knitted.fabric;
  std::vector<int> decreased(static_cast<std::size_t>(fabric.rows()), 0);
  std::vector<int> increased(static_cast<std::size_t>(fabric.rows()), 0);
  for (int row = 1; row < fabric.rows(); ++row) {
    std::vector<StitchPlace> held;
    for (const StitchPlace& stitch : stitches_of_row(fabric, row)) {
      const std::vector<StitchPlace> below = fabric.hangs_on(stitch);
      REQUIRE_FALSE(below.empty());
      REQUIRE(below.size() <= 2);
      decreased[static_cast<std::size_t>(row)] += below.size() == 2 ? 1 : 0;
      if (below.front().row == row - 2) {
        REQUIRE(fabric.hangs_on(held.back()) == below); // below its left neighbour's
        ++increased[static_cast<std::size_t>(row)];
      } else {
        held.insert(held.end(), below.begin(), below.end());
      }
    }
    REQUIRE(held == stitches_of_row(fabric, row - 1)); // in order, each once
  }
  REQUIRE(knitted.tiers.size() == piece.tiers.size());
  std::size_t row = 0;
  for (std::size_t tier = 0; tier < piece.tiers.size(); ++tier) {
    const bool last = tier + 1 == piece.tiers.size();
    const TierRows& rows = knitted.tiers[tier];
    const auto first = static_cast<std::size_t>(rows.first_row - rows.rows_before);
    const auto next =
        last ? decreased.size()
             : static_cast<std::size_t>(knitted.tiers[tier + 1].first_row - knitted.tiers[tier + 1].rows_before);
    CHECK(static_cast<int>(stitches_of_row(fabric, static_cast<int>(first)).size()) == piece.tiers[tier].stitches);
    CHECK(decreased[next - 1] == piece.tiers[tier].shaping.decreases()); // the row after the decreases
    CHECK((last || increased[next] == piece.tiers[tier].shaping.increases()));
    for (; row + 1 < next; ++row) {
      CHECK(decreased[row] == 0);
      CHECK((row == first || increased[row] == 0));
    }
    row = next;
  }
  CHECK(knitted.loops == piece.tiers.back().shaping.after);
}

// All tiers of a size; returns the stitches amiss of each tier's seams.
std::vector<std::vector<int>> knit_size(const OpenedYoke& yoke, const SizePlan& size) {
  std::vector<PieceFabric> ring;
  for (std::size_t piece = 0; piece < size.pieces.size(); ++piece) {
    ring.push_back(knit_piece(yoke, size, piece));
    CAPTURE(piece);
    REQUIRE(ring.back().trouble == "");
    check_one_fabric(ring.back(), size.pieces[piece]);
  }
  std::vector<std::vector<int>> amiss;
  for (std::size_t tier = 0; tier < yoke.tiers.size(); ++tier) {
    amiss.push_back(stitches_amiss_at_seams(ring, tier, yoke.yoke.edge, yoke.tiers[tier].document.grid.width()));
  }
  return amiss;
}

// The machine's model says where the carriage stands after the work was moved; the words take it to where the next
// tier begins, or say nothing of it. Returns how often it was on the wrong side.
int check_sides(const OpenedYoke& yoke, const SizePlan& size) {
  int wrong = 0;
  for (std::size_t piece = 0; piece < size.pieces.size(); ++piece) {
    const PieceFabric knitted = knit_piece(yoke, size, piece);
    for (std::size_t tier = 0; tier < yoke.tiers.size(); ++tier) {
      CAPTURE(piece);
      CAPTURE(tier);
      const bool last = tier + 1 == yoke.tiers.size();
      const Side ends = knitted.tiers[tier].ends;
      const Side begins = last ? ends : knitted.tiers[tier + 1].begins;
      const std::vector<MovingStep> lines = moving_words(yoke, size, piece, tier);
      const auto says = [&lines](std::string_view words) {
        return std::ranges::any_of(
            lines, [words](const MovingStep& line) { return line.words.find(words) != std::string::npos; });
      };
      const auto takes = [&says](std::string_view side) {
        return says(fmt::format("Push the carriage across the empty bed to the {}", side)) ||
               says(fmt::format("Take the carriage to the {} in a free pass", side));
      };
      CHECK(takes("left") == (ends != begins && begins == Side::left));
      CHECK(takes("right") == (ends != begins && begins == Side::right));
      // Rows of waste yarn take it there as well.
      const bool moved = !stays_on_needles(yoke, size.pieces[piece].tiers[tier], tier);
      CHECK(says("knit an odd number of rows with it") == (moved && ends != begins));
      CHECK(says("knit an even number of rows with it") == (moved && !last && ends == begins));
      wrong += ends != begins ? 1 : 0;
    }
  }
  return wrong;
}

// The cloth that is drawn against what the machine knits, row by row: as many stitches, in the same colours.
void check_cloth(const OpenedYoke& yoke, const SizePlan& size, std::size_t index) {
  const YokeCloth cloth = yoke_cloth(yoke, size, index);
  for (std::size_t piece = 0; piece < size.pieces.size(); ++piece) {
    const PieceFabric knitted = knit_piece(yoke, size, piece);
    const int below = knitted.tiers.front().rows_before;
    REQUIRE(knitted.fabric.rows() == below + cloth.height);
    for (std::size_t tier = 0; tier < yoke.tiers.size(); ++tier) {
      for (int row = size.heights[tier]; row < size.heights[tier + 1]; ++row) {
        CAPTURE(piece);
        CAPTURE(tier);
        CAPTURE(row);
        std::vector<char> yarns; // on the knit side
        for (const Made& made : knitted.fabric.row(below + row)) {
          if (made.yarn != 0) {
            yarns.insert(yarns.begin(), made.yarn);
          }
        }
        const bool sets_up = row >= size.heights[tier + 1] - plain_rows_needed(yoke, tier).setting_up;
        const Document& document = yoke.tiers[sets_up ? tier + 1 : tier].document;
        const int left = cloth.left[tier][piece];
        REQUIRE(stitches_in_row(yoke, size, piece, tier, row) == static_cast<int>(yarns.size()));
        int other = 0;
        for (std::size_t stitch = 0; stitch < yarns.size(); ++stitch) {
          other += cloth.at(left + static_cast<int>(stitch), row) == yarn_of(document, yarns[stitch]).colour ? 0 : 1;
        }
        CHECK(other == 0);
      }
    }
  }
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
      check_cloth(*yoke, size, static_cast<std::size_t>(&size - plan->sizes.data()));
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
  std::vector<PieceFabric> ring;
  for (std::size_t piece = 0; piece < 4; ++piece) {
    ring.push_back(knit_piece(yoke, size, piece));
    CHECK(ring.back().trouble == "");
  }
  const std::vector<int> amiss = stitches_amiss_at_seams(ring, 0, 1, 24);
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
  CHECK(knit_piece(yoke, size, 0).trouble == fmt::format("{} needles hold loops after the decreases, and {} should",
                                                         size.pieces[0].tiers[0].shaping.after + 1,
                                                         size.pieces[0].tiers[0].shaping.after));
}

TEST_CASE("a loop that is lost in moving the work is found out, and one too many as well") {
  const Files files = pullover_files();
  const OpenedYoke yoke = opened(pullover(), files);
  const SizePlan plan = planned(yoke).sizes.front();
  const std::size_t last = yoke.tiers.size() - 1;
  for (std::size_t tier = 0; tier <= last; ++tier) {
    CAPTURE(tier);
    SizePlan lost = plan; // a loop is taken onto its neighbour that should have stayed
    TierOfPiece& there = lost.pieces[0].tiers[tier];
    const Needle end = there.bed.first;
    there.shaping.transfers.push_back({end, Needle{end.position + 1}});
    const PieceFabric knitted = knit_piece(yoke, lost, 0);
    CHECK(knitted.trouble == fmt::format("{} needles hold loops after the decreases, and {} should",
                                         there.shaping.after - 1, there.shaping.after));
    CHECK(knitted.tiers.size() == tier + 1); // it is not knitted on
  }
  SizePlan narrow = plan; // a needle too few in work for the next tier
  --narrow.pieces[0].tiers[0].last_after.position;
  CHECK(knit_piece(yoke, narrow, 0).trouble ==
        "moving the work can't be done: the loops are more or fewer than the needles for them");
  SizePlan beside = plan; // hung one needle beside where the next tier begins
  ++beside.pieces[0].tiers[0].first_after.position;
  ++beside.pieces[0].tiers[0].last_after.position;
  CHECK(knit_piece(yoke, beside, 0).trouble == "the work does not hang where the steps of tier 2 begin");
}

TEST_CASE("a piece that widens is one fabric too: each stitch made hangs on the loop below its neighbour's") {
  for (const char* profile : {"bulky-card-24", "plastic-by-hand"}) {
    Yoke yoke = pullover();
    yoke.profile = profile;
    yoke.sizes = {"one"};
    yoke.depth_cm = {{22.0}};
    yoke.pieces = {{"front", {{22.0}}, {{30.0}}, ""}, {"back", {}, {}, "front"}};
    yoke.fit.tolerance = 0.3;
    yoke.fit.seams = YokeSeams::free;
    const Files files = pullover_files();
    const OpenedYoke wider = opened(yoke, files);
    const SizePlan size = planned(wider).sizes.front();
    int increases = 0;
    for (const TierOfPiece& tier : size.pieces[0].tiers) {
      increases += tier.shaping.increases();
    }
    CHECK(increases > 3);
    CHECK(size.pieces[0].tiers.back().shaping.increases() > 0); // hung on again above the last tier, too
    (void)knit_size(wider, size);
    check_cloth(wider, size, 0);
  }
}

TEST_CASE("a yarn that the next tier doesn't begin with is taken out, in words and on the machine") {
  Files files = pullover_files();
  std::string& text = files.texts["middle.repeat"];
  text.replace(text.find("main = \"A\"\ncontrast = \"B\""), 26, "main = \"B\"\ncontrast = \"A\"");
  Yoke yoke = pullover();
  const OpenedYoke changing = opened(yoke, files);
  const SizePlan size = planned(changing).sizes.front();
  CHECK(knit_piece(changing, size, 0).trouble == "");
  for (std::size_t tier = 0; tier < 2; ++tier) {
    const std::vector<MovingStep> lines = moving_words(changing, size, 0, tier);
    CHECK(std::ranges::count_if(lines, [](const MovingStep& line) {
            return line.words.starts_with("Take ") && line.words.ends_with(" out of its feeder and cut it.");
          }) == 1);
  }
}
