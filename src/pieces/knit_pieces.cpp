// Knits the pieces, and lays their fabrics side by side.
#include "pieces/knit_pieces.hpp"

#include "design/wrap.hpp"
#include "pieces/tier_steps.hpp"
#include "plan/knit_steps.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <memory>

namespace punchwright {
namespace {

// Needles that hold loops, and held them before the work was taken off.
int loops_of(const MachineState& state) {
  const auto on_bed = std::ranges::count_if(state.needles, [](const BedNeedle& needle) { return needle.loops > 0; });
  return static_cast<int>(on_bed + std::ssize(state.off));
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

NeedleSpan span_of(const PieceOnBed& bed) {
  return {bed.first, bed.last};
}

// From the leftmost needle on, all but those that are filled afterwards.
std::vector<NeedleSpan> without(const NeedleSpan& span, const std::vector<Needle>& fill) {
  std::vector<NeedleSpan> spans;
  Needle first = span.first;
  for (const Needle needle : fill) {
    spans.push_back({first, Needle{needle.position - 1}});
    first = Needle{needle.position + 1};
  }
  spans.push_back({first, span.last});
  return spans;
}

// While the work still hangs.
void take_yarn_out(std::vector<MachineAction>& actions, const BetweenTiers& between) {
  if (between.yarn_out) {
    actions.emplace_back(TakeOut{1});
    actions.emplace_back(CutYarn{between.yarn});
  }
}

// In a free pass, over an empty bed or over the loops that stay.
void go_across(std::vector<MachineAction>& actions, const BetweenTiers& between) {
  if (between.carriage_to) {
    actions.emplace_back(KnitPass{true});
  }
}

void hang_on_again(std::vector<MachineAction>& actions, const TierOfPiece& tier) {
  const NeedleSpan span{tier.first_after, tier.last_after};
  const std::vector<Needle> fill = needles_to_fill(tier.shaping, tier.first_after);
  actions.emplace_back(MoveNeedles{{span_of(tier.bed)}, NeedlePosition::out_of_work});
  actions.emplace_back(MoveNeedles{{span}, NeedlePosition::working});
  actions.emplace_back(HangWorkBack{without(span, fill)});
  for (const Needle needle : fill) {
    actions.emplace_back(LiftLoop{Needle{needle.position - 1}, needle});
  }
}

// Whether one loop or more hang on each of these needles, and none beside them.
bool hangs_on(const MachineState& state, const NeedleSpan& span) {
  Needle needle = state.build.leftmost;
  return std::ranges::all_of(state.needles, [&](const BedNeedle& one) {
    const bool within = needle >= span.first && needle <= span.last;
    ++needle.position;
    return (one.loops > 0) == within;
  });
}

// One piece, tier by tier. Each part says what went wrong in `made_.trouble`, and nothing is done after that.
class PieceKnitter {
public:
  PieceKnitter(const OpenedYoke& opened, const SizePlan& size, std::size_t piece)
      : opened_(opened), size_(size), piece_(piece) {}

  PieceFabric run() {
    for (std::size_t tier = 0; tier < opened_.tiers.size() && made_.trouble.empty(); ++tier) {
      knit(tier);
      move_on(tier);
    }
    made_.loops = loops_of(knitting_.state);
    made_.fabric = std::move(knitting_.fabric);
    if (made_.trouble.empty()) {
      made_.trouble = faults_of(made_.fabric);
    }
    return std::move(made_);
  }

private:
  void knit(std::size_t tier) {
    const Document document = document_of(opened_, size_, piece_, tier);
    const RowsToKnit& rows = opened_.tiers[tier].rows;
    const StepList steps = steps_of_tier(opened_, size_, piece_, tier);
    auto card = opened_.profile.card
                    ? std::make_shared<const PunchedCard>(planned_card(document, opened_.profile, rows))
                    : nullptr;
    StepsKnitted knitted;
    const int below = knitting_.fabric.rows();
    if (tier == 0) {
      knitted = knit_steps(steps, document, opened_.profile, std::move(card));
    } else {
      if (!hangs_on(knitting_.state, span_of(size_.pieces[piece_].tiers[tier].bed)) ||
          knitting_.state.carriage != steps.carriage) {
        made_.trouble = said("the work does not hang where the steps of tier {} begin", tier + 1);
        return;
      }
      put_card_in(knitting_.state, std::move(card), document.card.loop);
      knitted = knit_steps_on(std::move(knitting_), steps);
    }
    knitting_ = std::move(knitted.knitting);
    made_.tiers.push_back({below + steps.rows_before, steps.rows_before, static_cast<int>(rows.rows.size()),
                           steps.carriage, knitting_.state.carriage});
    if (knitted.refused_step >= 0) {
      made_.trouble = said("step {} can't be done: {}", knitted.refused_step + 1, words_of(*knitting_.refusal));
    }
  }

  void move_on(std::size_t tier) {
    const Shaping& shaping = size_.pieces[piece_].tiers[tier].shaping;
    const int wanted = std::min(shaping.before, shaping.after);
    for (const MachineAction& action : moving_actions(opened_, size_, piece_, tier)) {
      if (std::holds_alternative<TakeWorkOff>(action)) {
        check_loops(wanted);
      }
      if (made_.trouble.empty() && !knit_on(knitting_, action)) {
        made_.trouble = said("moving the work can't be done: {}", words_of(*knitting_.refusal));
      }
      if (!made_.trouble.empty()) {
        return;
      }
      // Where the carriage stands before it is taken to the next tier's side.
      const auto* pass = std::get_if<KnitPass>(&action);
      if (pass != nullptr && !pass->free) {
        made_.tiers.back().ends = knitting_.state.carriage;
      }
    }
    check_loops(is_hung_on_again(opened_, size_.pieces[piece_].tiers[tier], tier) ? shaping.after : wanted);
  }

  void check_loops(int wanted) {
    if (const int loops = loops_of(knitting_.state); made_.trouble.empty() && loops != wanted) {
      made_.trouble = said("{} needles hold loops after the decreases, and {} should", loops, wanted);
    }
  }

  const OpenedYoke& opened_;
  const SizePlan& size_;
  std::size_t piece_;
  Knitting knitting_;
  PieceFabric made_;
};

} // namespace

std::vector<MachineAction> moving_actions(const OpenedYoke& opened, const SizePlan& size, std::size_t piece,
                                          std::size_t tier) {
  const TierOfPiece& of_piece = size.pieces[piece].tiers[tier];
  const BetweenTiers between = between_tiers(opened, size, piece, tier);
  std::vector<MachineAction> actions(static_cast<std::size_t>(between.more_rows), KnitPass{});
  std::vector<NeedleSpan> empty;
  for (const Transfer& transfer : of_piece.shaping.transfers) {
    actions.emplace_back(TransferLoop{transfer.from, transfer.to});
    empty.push_back({transfer.from, transfer.from});
  }
  if (!empty.empty()) {
    actions.emplace_back(MoveNeedles{empty, NeedlePosition::out_of_work});
  }
  actions.insert(actions.end(), static_cast<std::size_t>(between.rows_after), KnitPass{});
  take_yarn_out(actions, between);
  if (stays_on_needles(opened, of_piece, tier)) {
    go_across(actions, between);
    return actions;
  }
  actions.emplace_back(TakeWorkOff{});
  go_across(actions, between);
  if (is_hung_on_again(opened, of_piece, tier)) {
    hang_on_again(actions, of_piece);
  }
  return actions;
}

namespace {

// What the drawing has at that column, counted on beyond the repeat in both directions.
char yarn_drawn(const OpenedTier& drawn, const RowToKnit& row, int column) {
  const bool contrast =
      row.contrast != 0 && row.drawn >= 0 &&
      (row.all_contrast || drawn.document.grid.at(round_edge(column, drawn.document.grid.width()), row.drawn));
  return contrast ? row.contrast : row.main;
}

// With the middle of the repeat at the middle of so many stitches: the column of the first of them.
int first_column_of_middle(std::size_t stitches, int width) {
  return (width - static_cast<int>(stitches)) / 2;
}

// Stitches of a row beside one seam.
struct BesideSeam {
  const std::vector<char>& left; // of the piece on the left of it, which ends there
  const std::vector<char>& right;
};

// How many of them, within a repeat, differ from the drawing with these columns right beside the seam.
int differing(const BesideSeam& seam, const OpenedTier& drawn, const RowToKnit& row, int left_column, int right_column,
              int outermost) {
  const int width = drawn.document.grid.width();
  int amiss = 0;
  for (int at = outermost; at < std::min(width, static_cast<int>(seam.left.size()) - outermost); ++at) {
    amiss += seam.left[seam.left.size() - 1 - static_cast<std::size_t>(at)] == yarn_drawn(drawn, row, left_column - at)
                 ? 0
                 : 1;
  }
  for (int at = outermost; at < std::min(width, static_cast<int>(seam.right.size()) - outermost); ++at) {
    amiss += seam.right[static_cast<std::size_t>(at)] == yarn_drawn(drawn, row, right_column + at) ? 0 : 1;
  }
  return amiss;
}

} // namespace

std::vector<int> stitches_amiss_at_alike_seams(const std::vector<PieceFabric>& ring, std::size_t tier, int edge,
                                               const OpenedTier& drawn) {
  const int width = drawn.document.grid.width();
  std::vector<int> amiss(ring.size(), 0);
  std::vector<int> mirrored(ring.size(), 0);
  for (std::size_t row = 0; row < drawn.rows.rows.size(); ++row) {
    std::vector<std::vector<char>> stitches;
    for (const PieceFabric& piece : ring) {
      stitches.push_back(visible_stitches(piece.fabric, piece.tiers[tier].first_row + static_cast<int>(row), edge));
    }
    const std::size_t second = 1 % ring.size();
    const int left = first_column_of_middle(stitches[0].size(), width) + static_cast<int>(stitches[0].size()) - 1;
    const int right = first_column_of_middle(stitches[second].size(), width);
    for (std::size_t seam = 0; seam < ring.size(); ++seam) {
      const BesideSeam beside{stitches[seam], stitches[(seam + 1) % ring.size()]};
      const RowToKnit& knitted = drawn.rows.rows[row];
      const int outermost = edge == 0 ? 1 : 0;
      amiss[seam] += differing(beside, drawn, knitted, left, right, outermost);
      mirrored[seam] += differing(beside, drawn, knitted, width - 1 - right, width - 1 - left, outermost);
    }
  }
  for (std::size_t seam = 0; seam < amiss.size(); ++seam) {
    amiss[seam] = std::min(amiss[seam], mirrored[seam]);
  }
  return amiss;
}

PieceFabric knit_piece(const OpenedYoke& opened, const SizePlan& size, std::size_t piece) {
  return PieceKnitter(opened, size, piece).run();
}

std::vector<int> stitches_amiss_at_seams(const std::vector<PieceFabric>& ring, std::size_t tier, int edge,
                                         int repeat_width) {
  std::vector<int> amiss(ring.size(), 0);
  for (int row = 0; !ring.empty() && row < ring.front().tiers[tier].pattern_rows; ++row) {
    std::vector<char> all;
    std::vector<std::size_t> ends; // of each piece, in `all`
    for (const PieceFabric& piece : ring) {
      const std::vector<char> stitches = visible_stitches(piece.fabric, piece.tiers[tier].first_row + row, edge);
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
