// Knits the tiers, and lays their fabrics side by side.
#include "pieces/knit_pieces.hpp"

#include "plan/knit_steps.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <memory>

namespace punchwright {
namespace {

// Loops on the bed, and needles that hold any.
int needles_with_loops(const MachineState& state) {
  return static_cast<int>(
      std::ranges::count_if(state.needles, [](const BedNeedle& needle) { return needle.loops > 0; }));
}

std::string faults_of(const Fabric& fabric) {
  for (int row = 0; row < fabric.rows(); ++row) {
    for (const Made& made : fabric.row(row)) {
      if (made.dropped || made.missing || made.cast_on) {
        return made.cast_on ? said("row {} of the fabric has a stitch that was cast on by an empty needle", row + 1)
                            : said("row {} of the fabric has a stitch that was dropped", row + 1);
      }
    }
  }
  return "";
}

// The yarns of a row's visible stitches, knit side, from left to right: along the bed from right to left.
std::vector<char> visible_stitches(const Fabric& fabric, int row, int edge) {
  std::vector<char> yarns;
  for (const Made& made : fabric.row(row)) {
    if (made.yarn != 0) {
      yarns.push_back(made.yarn);
    }
  }
  std::ranges::reverse(yarns);
  const auto seam = static_cast<std::size_t>(edge);
  if (yarns.size() <= 2 * seam) {
    return {};
  }
  return {yarns.begin() + edge, yarns.end() - edge};
}

} // namespace

std::vector<MachineAction> moving_actions(const OpenedYoke& opened, const SizePlan& size, std::size_t piece,
                                          std::size_t tier) {
  const auto index = std::ranges::find(opened.yoke.sizes, size.size) - opened.yoke.sizes.begin();
  const PlainRows needed = plain_rows_needed(opened, tier);
  const int more = opened.yoke.tiers[tier].plain_above.at(static_cast<std::size_t>(index)) - needed.needed();
  std::vector<MachineAction> actions(static_cast<std::size_t>(std::max(0, more)), KnitPass{});
  std::vector<NeedleSpan> empty;
  for (const Transfer& transfer : size.pieces[piece].tiers[tier].shaping.transfers) {
    actions.emplace_back(TransferLoop{transfer.from, transfer.to});
    empty.push_back({transfer.from, transfer.from});
  }
  if (!empty.empty()) {
    actions.emplace_back(MoveNeedles{empty, NeedlePosition::out_of_work});
  }
  actions.insert(actions.end(), static_cast<std::size_t>(needed.after_decreases), KnitPass{});
  return actions;
}

TierFabric knit_tier(const OpenedYoke& opened, const SizePlan& size, std::size_t piece, std::size_t tier) {
  const Document document = document_of(opened, size, piece, tier);
  const RowsToKnit& rows = opened.tiers[tier].rows;
  const StepList steps = steps_of(document, opened.profile, rows);
  auto card =
      opened.profile.card ? std::make_shared<const PunchedCard>(planned_card(document, opened.profile, rows)) : nullptr;
  StepsKnitted knitted = knit_steps(steps, document, opened.profile, std::move(card));
  TierFabric made;
  made.rows_before = steps.rows_before;
  made.begins = steps.carriage;
  made.pattern_rows = static_cast<int>(rows.rows.size());
  if (knitted.refused_step >= 0) {
    made.trouble = said("step {} can't be done: {}", knitted.refused_step + 1, words_of(*knitted.knitting.refusal));
  }
  for (const MachineAction& action : moving_actions(opened, size, piece, tier)) {
    if (made.trouble.empty() && !knit_on(knitted.knitting, action)) {
      made.trouble = said("moving the work can't be done: {}", words_of(*knitted.knitting.refusal));
    }
  }
  const Shaping& shaping = size.pieces[piece].tiers[tier].shaping;
  const int wanted = std::min(shaping.before, shaping.after);
  if (const int loops = needles_with_loops(knitted.knitting.state); made.trouble.empty() && loops != wanted) {
    made.trouble = said("{} needles hold loops after the decreases, and {} should", loops, wanted);
  }
  made.ends = knitted.knitting.state.carriage;
  made.fabric = std::move(knitted.knitting.fabric);
  if (made.trouble.empty()) {
    made.trouble = faults_of(made.fabric);
  }
  return made;
}

std::vector<int> stitches_amiss_at_seams(const std::vector<TierFabric>& ring, int edge, int repeat_width) {
  std::vector<int> amiss(ring.size(), 0);
  for (int row = 0; !ring.empty() && row < ring.front().pattern_rows; ++row) {
    std::vector<char> all;
    std::vector<std::size_t> ends; // of each piece, in `all`
    for (const TierFabric& piece : ring) {
      const std::vector<char> stitches = visible_stitches(piece.fabric, piece.rows_before + row, edge);
      all.insert(all.end(), stitches.begin(), stitches.end());
      ends.push_back(all.size());
    }
    const auto width = static_cast<std::size_t>(repeat_width);
    for (std::size_t seam = 0; seam < ends.size(); ++seam) {
      for (std::size_t before = 1; before <= width; ++before) {
        const std::size_t left = (ends[seam] + width * all.size() - before) % all.size();
        amiss[seam] += all[left] == all[(left + width) % all.size()] ? 0 : 1;
      }
    }
  }
  return amiss;
}

} // namespace punchwright
