// One card serves all pieces and sizes of a tier, strips and needle lists are shared only by what stands on the same
// needles, and what is printed is what was chosen.
#include "pieces/yokes.hpp"
#include "sheets/card_pages.hpp"
#include "sheets/punch_list.hpp"
#include "sheets/yoke_parts.hpp"

#include <set>

using namespace punchwright;
using namespace punchwright::test;

TEST_CASE("all pieces and sizes of a tier have the same card") {
  const Files files = pullover_files();
  const OpenedYoke yoke = opened(pullover(), files);
  const auto plan = plan_yoke(yoke);
  REQUIRE(plan);
  for (std::size_t tier = 0; tier < yoke.tiers.size(); ++tier) {
    std::set<std::string> cards;
    for (const SizePlan& size : plan->sizes) {
      for (std::size_t piece = 0; piece < size.pieces.size(); ++piece) {
        const Document document = document_of(yoke, size, piece, tier);
        const CardJob job = card_job(document, yoke.profile);
        std::string columns;
        for (int row = 1; row <= job.plan.rows_in_all; ++row) {
          columns += runs_text(punched_columns(document, yoke.profile, job.rows, row)) + "\n";
        }
        cards.insert(columns);
      }
    }
    CHECK(cards.size() == 1);
  }
}

TEST_CASE("a strip is shared by those that stand on the same needles, and by no others") {
  const Files files = pullover_files();
  const OpenedYoke yoke = opened(pullover(), files);
  const auto plan = plan_yoke(yoke);
  REQUIRE(plan);
  const YokeJob job = yoke_job(yoke, *plan, {});
  std::size_t pieces = 0;
  for (const YokeGroup& group : job.groups) {
    pieces += group.pieces.size();
  }
  CHECK(pieces == 3 * 4);
  for (std::size_t size = 0; size < 3; ++size) {
    for (std::size_t piece = 0; piece < 4; ++piece) {
      for (std::size_t tier = 0; tier < 3; ++tier) {
        const std::size_t index = strip_of(job, size, piece, tier);
        REQUIRE(index < job.strips.size());
        const YokeStrip& strip = job.strips[index];
        CHECK(job.at(strip.size, strip.piece, tier).shaping.transfers == job.at(size, piece, tier).shaping.transfers);
        CHECK(job.at(strip.size, strip.piece, tier).first_after == job.at(size, piece, tier).first_after);
        CHECK(strip.users.find(yoke.yoke.sizes[size] + ": ") != std::string::npos);
        CHECK(strip.users.find(yoke.yoke.pieces[piece].name) != std::string::npos);
      }
    }
  }
}

TEST_CASE("only what was chosen") {
  const Files files = pullover_files();
  const OpenedYoke yoke = opened(pullover(), files);
  const auto plan = plan_yoke(yoke);
  REQUIRE(plan);
  YokeSheetWishes wishes;
  wishes.sizes = {1};
  wishes.pieces = {2, 0, 2};
  const YokeJob job = yoke_job(yoke, *plan, wishes);
  CHECK(job.sizes == std::vector<std::size_t>{1});
  CHECK(job.pieces == std::vector<std::size_t>{0, 2});
  for (const YokeStrip& strip : job.strips) {
    CHECK(strip.users.starts_with("medium: "));
  }
  const auto all = pages_of_yoke(yoke, *plan, {});
  const auto some = pages_of_yoke(yoke, *plan, wishes);
  REQUIRE(all);
  REQUIRE(some);
  CHECK(some->size() < all->size());
}
