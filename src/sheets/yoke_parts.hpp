// The parts of a yoke's sheets: what is worked out once for all of them, and the functions that set each.
#pragma once

#include "sheets/leaflet_page.hpp"
#include "sheets/page_frame.hpp"
#include "sheets/yoke_sheets.hpp"

#include <string>
#include <vector>

namespace punchwright {

// Pieces of one size that are knitted in the same way, needle by needle.
struct YokeGroup {
  std::size_t size = 0;
  std::vector<std::size_t> pieces;
};

// A row of decreases or increases above a tier, on its needles; one for all pieces and sizes that have the same.
struct YokeStrip {
  std::size_t tier = 0;
  std::size_t size = 0; // an example of those that have it
  std::size_t piece = 0;
  std::string users; // "S: front and back; M: front"
};

// By hand: the needles of a tier, for all that stand on the same ones.
struct YokeNeedleList {
  std::size_t tier = 0;
  std::size_t size = 0;
  std::size_t piece = 0;
  std::string users;
};

struct YokeJob {
  const OpenedYoke& opened;
  const YokePlan& plan;
  Paper paper = Paper::a4;
  double scale_x = 1;
  double scale_y = 1;
  std::vector<std::size_t> sizes;
  std::vector<std::size_t> pieces;
  std::vector<YokeSheet> sheets;
  std::vector<YokeGroup> groups;
  std::vector<YokeStrip> strips;
  std::vector<YokeNeedleList> lists; // none on a card machine

  [[nodiscard]] bool wants(YokeSheet sheet) const;
  [[nodiscard]] const TierOfPiece& at(std::size_t size, std::size_t piece, std::size_t tier) const {
    return plan.sizes[size].pieces[piece].tiers[tier];
  }
};
[[nodiscard]] YokeJob yoke_job(const OpenedYoke& opened, const YokePlan& plan, const YokeSheetWishes& wishes);

// Pages in the file, from 1; 0: not in it.
struct YokePlaces {
  std::vector<LeafletPart> parts; // for the first page
  std::vector<int> strips;
  std::vector<int> lists;
  std::vector<int> cards; // by tier
};

[[nodiscard]] bool shapes_nothing(const TierOfPiece& tier);
[[nodiscard]] std::string title_of_yoke(const YokeJob& job);
// "tier 2, Corks".
[[nodiscard]] std::string name_of_tier(const YokeJob& job, std::size_t tier);
// "front and back".
[[nodiscard]] std::string names_of(const YokeJob& job, const std::vector<std::size_t>& pieces);
// Indices of those for that tier of that piece; the lists' size where there is none.
[[nodiscard]] std::size_t strip_of(const YokeJob& job, std::size_t size, std::size_t piece, std::size_t tier);
[[nodiscard]] std::size_t list_of(const YokeJob& job, std::size_t size, std::size_t piece, std::size_t tier);

void add_yoke_cover(LeafletPages& pages, const YokeJob& job, const YokePlaces& places);
void add_schematic(LeafletPages& pages, const YokeJob& job);
void add_sizes(LeafletPages& pages, const YokeJob& job);
void add_yoke_steps(LeafletPages& pages, const YokeJob& job, const YokeGroup& group, const YokePlaces& places);
void add_yoke_needles(LeafletPages& pages, const YokeJob& job, YokePlaces& places);

// Pages of strips, true to size; `pages_of_strips` gets for each strip the page on which it begins, from 0.
[[nodiscard]] std::vector<Group> strip_groups(const YokeJob& job, const PageFrame& frame,
                                              std::vector<int>& pages_of_strips);

} // namespace punchwright
