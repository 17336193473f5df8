// From one tier to the next, in the trade's words (procedure: common practice).
#include "pieces/yoke_plan.hpp"
#include "plan/step_words.hpp"
#include "plan/steps.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright {
namespace {

class Lines {
public:
  void add(std::string words) { steps_.push_back({std::move(words), false}); }
  void remark(std::string words) { steps_.push_back({std::move(words), true}); }
  std::vector<MovingStep> all() { return std::move(steps_); }

private:
  std::vector<MovingStep> steps_;
};

std::string span_words(Needle first, Needle last) {
  return said("{} to {}", name_of(first), name_of(last));
}

// "L40 to L39, L34 to L33, R6 to R5". With places by number, so that other languages needn't say it as a range.
std::string transfers_words(const Shaping& shaping) {
  std::string words;
  for (const Transfer& transfer : shaping.transfers) {
    words += (words.empty() ? "" : ", ") + said("{0} to {1}", name_of(transfer.from), name_of(transfer.to));
  }
  return words;
}

// "counted from the left, 1 stitch clear of the seams".
std::string counted_words(const Shaping& shaping) {
  const std::string clear = clearance_words(shaping);
  return clear.empty() ? tr("counted from the left") : said("counted from the left, {}", clear);
}

// The tier's steps end with the carriage set to plain knitting, selecting nothing.
void add_decreases(Lines& lines, const Shaping& shaping) {
  const int count = shaping.decreases();
  lines.add(said("Decrease {} in {}: bring forward {} ({}): {}.", said_count(count, "{} stitch", "{} stitches"),
                 said_count(shaping.before, "{} stitch", "{} stitches"), words_of(shaping.every),
                 counted_words(shaping), needles_words(shaping.forward)));
  lines.add(said("Transfer each loop to its neighbour: {}.", transfers_words(shaping)));
  lines.add(said_count(count, "Put the {} empty needle out of work: an empty needle in work would cast on an eyelet.",
                       "Put the {} empty needles out of work: an empty needle in work would cast on an eyelet."));
}

void add_rehanging(Lines& lines, const TierOfPiece& tier) {
  const Shaping& shaping = tier.shaping;
  if (shaping.decreases() > 0) {
    lines.add(said_count(shaping.decreases(), "Bring the {} empty needle back to work.",
                         "Bring the {} empty needles back to work."));
  }
  const std::string span = span_words(tier.first_after, tier.last_after);
  lines.add(said_count(shaping.after, "Have the {} needle from {} in work and all others out of work.",
                       "Have the {} needles from {} in work and all others out of work.", span));
  if (shaping.increases() == 0) {
    lines.add(said_count(shaping.after, "Hang the {} loop on {}, then the weights again.",
                         "Hang the {} loops on {}, then the weights again.", span));
    return;
  }
  const std::vector<Needle> fill = needles_to_fill(shaping, tier.first_after);
  lines.add(said("Increase {} to {}: hang the {} on {}, and leave free one needle behind {} ({}): {}.",
                 said_count(shaping.before, "{} stitch", "{} stitches"), shaping.after,
                 said_count(shaping.before, "{} loop", "{} loops"), span, words_of(shaping.every),
                 counted_words(shaping), needles_words(fill)));
  lines.add(tr("Lift the loop below its left neighbour onto each free needle: an empty one would cast on an "
               "eyelet. Then the weights again."));
}

// The work stays, and over needles with loops the carriage goes in a free pass (common practice).
void add_staying(Lines& lines, const BetweenTiers& between, const std::string& yarn) {
  lines.remark(tr("The work stays on its needles."));
  if (between.yarn_out) {
    lines.add(said("Take {} out of its feeder and cut it.", yarn));
  }
  if (between.carriage_to) {
    lines.add(*between.carriage_to == Side::left
                  ? tr("Take the carriage to the left in a free pass, without knitting: the next tier begins there.")
                  : tr("Take the carriage to the right in a free pass, without knitting: the next tier begins there."));
  }
}

// So many rows that the carriage ends where the next tier begins (common practice: about eight).
std::string waste_rows_words(const BetweenTiers& between) {
  if (!between.begins) {
    return tr("knit about 8 rows with it");
  }
  if (*between.begins == Side::left) {
    return between.carriage_to ? tr("knit an odd number of rows with it, about 7, to end on the left, where the next "
                                    "tier begins")
                               : tr("knit an even number of rows with it, about 8, to end on the left, where the next "
                                    "tier begins");
  }
  return between.carriage_to ? tr("knit an odd number of rows with it, about 7, to end on the right, where the next "
                                  "tier begins")
                             : tr("knit an even number of rows with it, about 8, to end on the right, where the next "
                                  "tier begins");
}

// The ways of taking the work off, each in its own order. Waste yarn needs the feeder, and is knitted with the weights
// on; over an empty bed the carriage can be pushed (common practice).
void add_taking_off(Lines& lines, const BetweenTiers& between, const std::string& yarn) {
  const bool yarn_goes_on = between.begins && !between.yarn_out;
  if (!yarn_goes_on) {
    lines.add(said("Take {} out of its feeder and cut it.", yarn));
  }
  std::string waste = yarn_goes_on
                          ? said("Take the work off, either on waste yarn: take {} out of its feeder and cut it, "
                                 "thread waste yarn into that feeder, and {}.",
                                 yarn, waste_rows_words(between))
                          : said("Take the work off, either on waste yarn: thread waste yarn into that feeder, "
                                 "and {}.",
                                 waste_rows_words(between));
  waste += ' ';
  waste += tr("Take the waste yarn out and cut it. Weights off, or the work falls; then push the loops off their "
              "needles, without the carriage.");
  if (yarn_goes_on) {
    waste += ' ' + said("Thread {} into the feeder again.", yarn);
  }
  lines.add(std::move(waste));
  std::string comb = tr("Or on a comb of the bed's pitch or a circular needle, without waste yarn: weights off, or the "
                        "work falls; then take the loops onto it.");
  if (between.carriage_to) {
    comb += ' ';
    comb += *between.carriage_to == Side::left
                ? tr("Push the carriage across the empty bed to the left, where the next tier begins.")
                : tr("Push the carriage across the empty bed to the right, where the next tier begins.");
  }
  lines.add(std::move(comb));
}

} // namespace

bool is_hung_on_again(const OpenedYoke& opened, const TierOfPiece& there, std::size_t tier) {
  return tier + 1 < opened.tiers.size() || there.shaping.increases() > 0;
}

bool stays_on_needles(const OpenedYoke& opened, const TierOfPiece& there, std::size_t tier) {
  return is_hung_on_again(opened, there, tier) && there.shaping.before == there.shaping.after &&
         there.first_after == there.bed.first;
}

BetweenTiers between_tiers(const OpenedYoke& opened, const SizePlan& size, std::size_t piece, std::size_t tier) {
  const auto index = std::ranges::find(opened.yoke.sizes, size.size) - opened.yoke.sizes.begin();
  const PlainRows needed = plain_rows_needed(opened, tier);
  BetweenTiers between;
  between.more_rows =
      std::max(0, opened.yoke.tiers[tier].plain_above.at(static_cast<std::size_t>(index)) - needed.needed());
  between.rows_after = needed.after_decreases;
  between.yarn = opened.tiers[tier].rows.rows.back().main;
  if (tier + 1 == opened.tiers.size()) {
    return between;
  }
  const auto steps = [&](std::size_t of) {
    return steps_of(document_of(opened, size, piece, of), opened.profile, opened.tiers[of].rows);
  };
  const StepList made = steps(tier);
  const Side last = made.steps.empty() ? made.carriage : made.steps.back().carriage;
  const Side stands = (between.more_rows + between.rows_after) % 2 == 0 ? last : other(last);
  const Side wanted = steps(tier + 1).carriage;
  between.begins = wanted;
  if (stands != wanted) {
    between.carriage_to = wanted;
  }
  const Document& next = opened.tiers[tier + 1].document;
  const char begins = next.bands.front().main;
  between.yarn_out = between.carriage_to || yarn_of(opened.tiers[tier].document, between.yarn) != yarn_of(next, begins);
  return between;
}

std::vector<MovingStep> moving_words(const OpenedYoke& opened, const SizePlan& size, std::size_t piece,
                                     std::size_t tier) {
  const TierOfPiece& of_piece = size.pieces[piece].tiers[tier];
  const PlainRows needed = plain_rows_needed(opened, tier);
  const bool last = tier + 1 == opened.tiers.size();
  const bool hung_on_again = is_hung_on_again(opened, of_piece, tier);
  const BetweenTiers between = between_tiers(opened, size, piece, tier);
  const std::string yarn = name_of_yarn(opened.tiers[tier].document, between.yarn);
  Lines lines;
  if (between.more_rows > 0) {
    lines.add(said_count(between.more_rows, "Knit {} row more of one colour.", "Knit {} rows more of one colour."));
  }
  if (of_piece.shaping.decreases() > 0) {
    add_decreases(lines, of_piece.shaping);
  }
  lines.add(said_count(between.rows_after, "Knit {} row.", "Knit {} rows."));
  if (stays_on_needles(opened, of_piece, tier)) {
    add_staying(lines, between, yarn);
  } else {
    add_taking_off(lines, between, yarn);
    if (hung_on_again) {
      add_rehanging(lines, of_piece);
    }
    if (last && hung_on_again) {
      lines.remark(tr("These needles are where the neck begins."));
    }
  }
  if (needed.setting_up > 0) {
    lines.remark(said_count(needed.setting_up, "{} row sets up the next tier; its steps name it.",
                            "{} rows set up the next tier; its steps name them."));
  }
  return lines.all();
}

} // namespace punchwright
