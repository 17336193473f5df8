// A yoke's sizes as tables for a terminal: a line for each tier of each piece, then seams, rows and yarn.
// Columns stand below each other in any language.
#include "cli/columns.hpp"
#include "cli/yoke_answer.hpp"
#include "design/words.hpp"
#include "pieces/shaping_kinds.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace punchwright::cli {
namespace {

// The last column of a table is as long as it likes.
std::string decreases_words(const Shaping& shaping) {
  if (shaping.every.empty()) {
    return tr("none");
  }
  const std::string count =
      shaping.increases() > 0 ? said("{} more", shaping.increases()) : std::to_string(shaping.decreases());
  return fmt::format("{}: {}{}", count, words_of(shaping.every),
                     shaping.as_wished() ? "" : "; " + clearance_words(shaping));
}

// A column of the table is as wide as what stands in it, and as its heading.
struct Heading {
  Heading(const char* words, std::size_t least) : text(words), width(std::max(least, width_of(words))) {}
  std::string text;
  std::size_t width;
};

std::string table_of(const SizePlan& size) {
  Heading piece_column(tr("piece"), 0);
  for (const PieceOfSize& piece : size.pieces) {
    piece_column.width = std::max(piece_column.width, width_of(piece.name));
  }
  const Heading tiers(tr("tier"), 4);
  const Heading stitches(tr("stitches"), 8);
  const Heading needles(tr("needles"), 11);
  const Heading columns(tr("columns"), 8);
  const Heading after(tr("after"), 5);
  ShapingKinds kinds;
  for (const PieceOfSize& piece : size.pieces) {
    std::ranges::for_each(piece.tiers, [&](const TierOfPiece& tier) { kinds.add(tier.shaping); });
  }
  std::string text = fmt::format("{}  {}  {}  {}  {}  {}  {}\n", padded(piece_column.text, piece_column.width),
                                 padded_before(tiers.text, tiers.width), padded_before(stitches.text, stitches.width),
                                 padded(needles.text, needles.width), padded(columns.text, columns.width),
                                 padded_before(after.text, after.width),
                                 kinds.of(tr("decreases"), tr("increases"), tr("decreases, increases")));
  for (const PieceOfSize& piece : size.pieces) {
    for (std::size_t tier = 0; tier < piece.tiers.size(); ++tier) {
      const TierOfPiece& there = piece.tiers[tier];
      const std::string shown = fmt::format("{}–{}", there.bed.left_column + 1, there.bed.right_column + 1);
      text +=
          fmt::format("{}  {:>{}}  {:>{}}  {}  {}  {:>{}}  {}\n", padded(piece.name, piece_column.width), tier + 1,
                      tiers.width, there.stitches, stitches.width,
                      padded(name_of(there.bed.first) + "–" + name_of(there.bed.last), needles.width),
                      padded(shown, columns.width), there.shaping.after, after.width, decreases_words(there.shaping));
    }
  }
  return text;
}

std::string seam_text(int tier, const std::string& left, const std::string& right, int mismatch) {
  return mismatch > 0
             ? said_count(mismatch, "seam of tier {1} between {2} and {3}: {0} column is left out",
                          "seam of tier {1} between {2} and {3}: {0} columns are left out", tier, left, right)
             : said_count(-mismatch, "seam of tier {1} between {2} and {3}: {0} column is there twice",
                          "seam of tier {1} between {2} and {3}: {0} columns are there twice", tier, left, right);
}

// Centred pieces are not meant to meet; what is told of them is where a middle is missed.
std::string seams_text(const SizePlan& size, YokeSeams wished) {
  const bool centred = wished == YokeSeams::centred;
  std::string text;
  for (std::size_t tier = 0; tier < size.seams.size(); ++tier) {
    for (const SeamMeeting& seam : size.seams[tier].seams) {
      if (!seam.meets && !centred) {
        text += seam_text(static_cast<int>(tier) + 1, size.pieces[seam.left].name, size.pieces[seam.right].name,
                          seam.mismatch) +
                '\n';
      }
    }
    if (!size.seams[tier].mend.empty()) {
      text += said("tier {}: {}", tier + 1, size.seams[tier].mend) + '\n';
    }
  }
  if (text.empty()) {
    text = centred ? tr("the middle of the repeat lies at the middle of every piece, and seams are alike")
                   : tr("all seams meet");
    text += '\n';
  }
  return text;
}

std::string amount_text(const YarnAmount& yarn, const std::vector<YarnAmount>& among) {
  const std::string apart = told_apart(yarn.yarn, among);
  const std::string name = std::string(1, yarn.yarn.key) + (apart.empty() ? "" : ", ") + apart;
  std::string amount;
  if (yarn.grams) {
    amount = said("{} g", decimal(std::ceil(*yarn.grams), 0));
  }
  if (yarn.metres) {
    amount += (amount.empty() ? "" : ", ") + said("{} m", decimal(std::ceil(*yarn.metres), 0));
  }
  if (amount.empty()) {
    amount = tr("not known; metres_per_100g would tell");
  }
  switch (yarn.from) {
  case AmountFrom::swatch: return said("yarn {}: {} (by swatch)", name, amount);
  case AmountFrom::loop: return said("yarn {}: {} (by loop)", name, amount);
  case AmountFrom::gauge: return said("yarn {}: {} (by the loop that the gauge suggests)", name, amount);
  case AmountFrom::several: break;
  }
  return said("yarn {}: {} (by swatch and loop)", name, amount);
}

} // namespace

std::string text_of(const SizesPlanned& planned, YokeSeams wished) {
  std::string text;
  for (std::size_t number = 0; number < planned.plan.sizes.size(); ++number) {
    const SizePlan& size = planned.plan.sizes[number];
    text += text.empty() ? "" : "\n";
    if (!planned.fits(number)) {
      text += said("size {} doesn't fit", size.size) + '\n';
      continue;
    }
    text += fmt::format("{}\n{}", said("size {}", size.size), table_of(size));
    text += seams_text(size, wished) + with_capital(text_of(size.rows)) + "\n";
    for (const YarnAmount& yarn : size.yarns) {
      text += amount_text(yarn, size.yarns) + '\n';
    }
    text += said("squared differences from the straight line {}; proved: no counts that keep the rules have less than "
                 "{}",
                 decimal(size.proof.squares, 3), decimal(size.proof.bound, 3)) +
            '\n';
  }
  for (const LoopCheck& check : planned.plan.loops) {
    text += text_of(check) + "\n";
  }
  return text;
}

} // namespace punchwright::cli
