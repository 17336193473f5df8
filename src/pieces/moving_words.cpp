// From one tier to the next, in the trade's words (procedure: common practice).
#include "design/words.hpp"
#include "pieces/yoke_plan.hpp"
#include "plan/step_words.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright {
namespace {

std::string span_words(Needle first, Needle last) {
  return fmt::format("{} to {}", name_of(first), name_of(last));
}

// "L40 to L39, L34 to L33, R6 to R5".
std::string transfers_words(const Shaping& shaping) {
  std::string words;
  for (const Transfer& transfer : shaping.transfers) {
    words += fmt::format("{}{} to {}", words.empty() ? "" : ", ", name_of(transfer.from), name_of(transfer.to));
  }
  return words;
}

// "counted from the left, 1 stitch clear of the seams".
std::string counted_words(const Shaping& shaping) {
  const std::string clear = clearance_words(shaping);
  return clear.empty() ? "counted from the left" : "counted from the left, " + clear;
}

void add_decreases(std::vector<std::string>& lines, const Shaping& shaping) {
  const int count = shaping.decreases();
  lines.push_back("Set the carriage to plain knitting; pattern and end-needle selection off.");
  lines.push_back(fmt::format("Decrease {} in {}: bring forward {} ({}): {}.", counted(count, "stitch", "stitches"),
                              counted(shaping.before, "stitch", "stitches"), words_of(shaping.every),
                              counted_words(shaping), needles_words(shaping.forward)));
  lines.push_back(fmt::format("Transfer each loop to its neighbour: {}.", transfers_words(shaping)));
  lines.push_back(fmt::format("Put the {} out of work: an empty needle in work would cast on an eyelet.",
                              counted(count, "empty needle", "empty needles")));
}

void add_rehanging(std::vector<std::string>& lines, const TierOfPiece& tier) {
  const Shaping& shaping = tier.shaping;
  if (shaping.decreases() > 0) {
    lines.push_back(
        fmt::format("Bring the {} back to work.", counted(shaping.decreases(), "empty needle", "empty needles")));
  }
  lines.push_back(fmt::format("Have the {} from {} in work and all others out of work.",
                              counted(shaping.after, "needle", "needles"),
                              span_words(tier.first_after, tier.last_after)));
  if (shaping.increases() == 0) {
    lines.push_back(fmt::format("Hang the {} on {}, then the weights again.", counted(shaping.after, "loop", "loops"),
                                span_words(tier.first_after, tier.last_after)));
    return;
  }
  const std::vector<Needle> fill = needles_to_fill(shaping, tier.first_after);
  lines.push_back(fmt::format("Increase {} to {}: hang the {} on {}, and leave free one needle behind {} ({}): {}.",
                              counted(shaping.before, "stitch", "stitches"), shaping.after,
                              counted(shaping.before, "loop", "loops"), span_words(tier.first_after, tier.last_after),
                              words_of(shaping.every), counted_words(shaping), needles_words(fill)));
  lines.push_back("Lift the loop below its left neighbour onto each free needle: an empty one would cast on an eyelet. "
                  "Then the weights again.");
}

} // namespace

std::vector<std::string> moving_words(const OpenedYoke& opened, const SizePlan& size, std::size_t piece,
                                      std::size_t tier) {
  const TierOfPiece& of_piece = size.pieces[piece].tiers[tier];
  const PlainRows needed = plain_rows_needed(opened, tier);
  const bool last = tier + 1 == opened.tiers.size();
  const bool hung_on_again = is_hung_on_again(opened, of_piece, tier);
  const auto found = std::ranges::find(opened.yoke.sizes, size.size);
  const auto index = static_cast<std::size_t>(found - opened.yoke.sizes.begin());
  const int plain = opened.yoke.tiers[tier].plain_above.at(index);
  std::vector<std::string> lines;
  if (const int more = plain - needed.needed(); more > 0) {
    lines.push_back(fmt::format("Knit {} more of one colour.", counted(more, "row", "rows")));
  }
  if (of_piece.shaping.decreases() > 0) {
    add_decreases(lines, of_piece.shaping);
  }
  lines.push_back(fmt::format("Knit {}.", counted(needed.after_decreases, "row", "rows")));
  if (hung_on_again && of_piece.shaping.before == of_piece.shaping.after &&
      of_piece.first_after == of_piece.bed.first) {
    lines.push_back("The work stays on its needles.");
  } else {
    lines.push_back(
        "Weights off first, or the work falls; then take it off: on waste yarn, on a comb of the bed's pitch, "
        "or on a circular needle.");
    if (hung_on_again) {
      add_rehanging(lines, of_piece);
    }
    if (last && hung_on_again) {
      lines.push_back("These needles are where the neck begins.");
    }
  }
  if (needed.setting_up > 0) {
    lines.push_back(needed.setting_up == 1
                        ? "1 row sets up the next tier; its steps name it."
                        : fmt::format("{} rows set up the next tier; its steps name them.", needed.setting_up));
  }
  return lines;
}

} // namespace punchwright
