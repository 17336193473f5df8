// Puts the parts of the computation together, size by size.
#include "pieces/yoke_plan.hpp"

#include "pieces/ring_mend.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright {
namespace {

// Which stitches of the piece, from its leftmost needle, show the middle of the repeat.
std::vector<bool> centre_stitches(const Document& document, const Profile& profile) {
  const int width = document.grid.width();
  const Placement placement(document, profile);
  std::vector<bool> centre;
  Needle needle = first_needle_of(document);
  for (int stitch = 0; stitch < stitches_of(document); ++stitch, ++needle.position) {
    const int column = placement.column_of(needle);
    centre.push_back(column == width / 2 || column == (width - 1) / 2);
  }
  return centre;
}

class SizePlanner {
public:
  SizePlanner(const OpenedYoke& opened, std::size_t size, CountsOfSize counts)
      : opened_(opened), size_(size), counts_(std::move(counts)) {}

  SizePlan run() {
    plan_.size = opened_.yoke.sizes[size_];
    plan_.heights = tier_heights(opened_, size_);
    plan_.rows = rows_of_yoke(opened_, size_);
    plan_.proof = counts_.proof;
    for (std::size_t piece = 0; piece < opened_.yoke.pieces.size(); ++piece) {
      const std::vector<double> ideals = ideal_counts(opened_, size_, piece);
      PieceOfSize next{opened_.yoke.pieces[piece].name, std::vector<TierOfPiece>(opened_.tiers.size()), ideals.back()};
      for (std::size_t tier = 0; tier < opened_.tiers.size(); ++tier) {
        next.tiers[tier].stitches = counts_.stitches[piece][tier];
        next.tiers[tier].ideal = ideals[tier];
      }
      plan_.pieces.push_back(std::move(next));
    }
    for (std::size_t tier = 0; tier < opened_.tiers.size(); ++tier) {
      place(tier);
    }
    std::vector<YarnUse> uses;
    for (std::size_t tier = 0; tier < opened_.tiers.size(); ++tier) {
      shape(tier, uses);
    }
    plan_.yarns = amounts_of(opened_, uses);
    return std::move(plan_);
  }

private:
  void place(std::size_t tier) {
    std::vector<int> stitches;
    for (const auto& piece : counts_.stitches) {
      stitches.push_back(piece[tier]);
    }
    RingOnBed ring =
        ring_on_bed(opened_.tiers[tier].document, opened_.profile, stitches, opened_.yoke.edge, opened_.yoke.fit.seams);
    for (std::size_t piece = 0; piece < plan_.pieces.size(); ++piece) {
      plan_.pieces[piece].tiers[tier].bed = ring.pieces[piece];
    }
    if (opened_.yoke.fit.seams != YokeSeams::centred && !ring.mend.empty()) {
      const std::string by_counts = mend_by_counts(opened_, size_, tier, counts_);
      ring.mend += by_counts.empty() ? "" : "; " + by_counts;
    }
    plan_.seams.push_back({std::move(ring.seams), std::move(ring.mend)});
  }

  void shape(std::size_t tier, std::vector<YarnUse>& uses) {
    const bool last = tier + 1 == opened_.tiers.size();
    const PlainRows needed = plain_rows_needed(opened_, tier);
    const Document& next = opened_.tiers[last ? tier : tier + 1].document;
    Document document = opened_.tiers[tier].document;
    for (std::size_t piece = 0; piece < plan_.pieces.size(); ++piece) {
      TierOfPiece& knitted = plan_.pieces[piece].tiers[tier];
      const int after = counts_.stitches[piece][tier + 1];
      document.piece.stitches = knitted.stitches;
      document.piece.first_needle = knitted.bed.first;
      document.piece.first_column = knitted.bed.first_column;
      knitted.shaping = shaping_between(
          {knitted.bed.first, knitted.stitches, after, opened_.yoke.edge, opened_.yoke.decreases,
           opened_.yoke.decreases.clear_of_centre ? centre_stitches(document, opened_.profile) : std::vector<bool>{}});
      knitted.first_after = last ? centred_first_needle(after) : plan_.pieces[piece].tiers[tier + 1].bed.first;
      knitted.last_after = Needle{knitted.first_after.position + after - 1};
      add_uses(uses,
               {&document, &opened_.tiers[tier].rows, after, opened_.yoke.tiers[tier].plain_above.at(size_), needed,
                yarn_of(next, next.bands.front().main), opened_.yoke.gauge},
               opened_.profile);
    }
  }

  const OpenedYoke& opened_;
  std::size_t size_;
  CountsOfSize counts_;
  SizePlan plan_;
};

Error too_wide_error(const OpenedYoke& opened, const TooWide& wide) {
  const auto split = split_to_fit(opened);
  const std::string split_up =
      split ? tr("split it, or make it narrower") : fmt::format("{}; {}", split.error().message, split.error().remedy);
  const std::string remedy = wide.parts == 0 ? split_up
                             : split         ? said("{} pieces in its place would fit: {}", wide.parts, split_up)
                                             : said("{} pieces in its place would fit; but {}", wide.parts, split_up);
  const auto place = opened.places.find(fmt::format("piece.{}.bottom_cm", wide.piece + 1));
  const Spot spot = place == opened.places.end() ? Spot{} : place->second;
  return Error{
      opened.file, spot.line, spot.column,
      said_count(wide.stitches,
                 "piece '{1}' is {0} stitch wide in size {2}, {4} at least within the tolerance, and the bed "
                 "has {3} needles",
                 "piece '{1}' is {0} stitches wide in size {2}, {4} at least within the tolerance, and the bed "
                 "has {3} needles",
                 opened.yoke.pieces[wide.piece].name, opened.yoke.sizes[wide.size], opened.profile.needles,
                 wide.fewest),
      remedy};
}

} // namespace

Failure bed_failure(const OpenedYoke& opened) {
  const std::vector<TooWide> wide = too_wide(opened);
  return wide.empty() ? std::nullopt : Failure(too_wide_error(opened, wide.front()));
}

std::vector<Error> bed_failures(const OpenedYoke& opened, std::size_t size) {
  std::vector<Error> failures;
  for (const TooWide& wide : too_wide(opened, size)) {
    failures.push_back(too_wide_error(opened, wide));
  }
  return failures;
}

Result<SizePlan> plan_size(const OpenedYoke& opened, std::size_t size) {
  auto counts = counts_of_size(opened, size);
  if (!counts) {
    return counts.error();
  }
  return SizePlanner(opened, size, std::move(counts).value()).run();
}

PlanTried try_plan(const OpenedYoke& opened, std::size_t size, int most_parts, const std::stop_token& stop) {
  auto tried = try_counts(opened, size, most_parts, stop);
  if (!tried.counts) {
    return {std::nullopt, tried.gave_up};
  }
  return {SizePlanner(opened, size, std::move(*tried.counts)).run(), false};
}

int parts_at_once(const OpenedYoke& opened, std::size_t size) {
  constexpr std::int64_t comparisons_at_once = 8'000'000; // some nanoseconds each
  constexpr std::int64_t most = 2'000;                    // each takes memory, too
  const std::int64_t each = std::max<std::int64_t>(1, comparisons_in_a_part(counts_problem(opened, size)));
  return static_cast<int>(std::min(most, comparisons_at_once / each));
}

SizesPlanned plan_sizes(const OpenedYoke& opened) {
  SizesPlanned planned;
  for (std::size_t size = 0; size < opened.yoke.sizes.size(); ++size) {
    planned.faults.push_back(bed_failures(opened, size));
    planned.plan.sizes.emplace_back().size = opened.yoke.sizes[size];
    if (!planned.faults.back().empty()) {
      continue;
    }
    auto of_size = plan_size(opened, size);
    if (of_size) {
      planned.plan.sizes.back() = std::move(of_size).value();
    } else {
      planned.faults.back().push_back(of_size.error());
    }
  }
  planned.plan.loops = check_loops(opened);
  return planned;
}

int first_shaped_row(const OpenedYoke& opened, const SizePlan& size, std::size_t piece, std::size_t tier) {
  const PlainRows needed = plain_rows_needed(opened, tier);
  const bool decreased = size.pieces[piece].tiers[tier].shaping.decreases() > 0;
  return size.heights[tier + 1] - needed.setting_up - (decreased ? needed.after_decreases : 0);
}

int stitches_in_row(const OpenedYoke& opened, const SizePlan& size, std::size_t piece, std::size_t tier, int row) {
  const TierOfPiece& there = size.pieces[piece].tiers[tier];
  return row < first_shaped_row(opened, size, piece, tier) ? there.stitches : there.shaping.after;
}

Document document_of(const OpenedYoke& opened, const SizePlan& size, std::size_t piece, std::size_t tier) {
  return document_of_piece(opened.tiers[tier].document, size.pieces[piece].tiers[tier].bed);
}

} // namespace punchwright
