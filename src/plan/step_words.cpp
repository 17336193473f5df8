// Words for the steps, and the list as text.
#include "plan/step_words.hpp"

#include "words/words.hpp"

#include <fmt/format.h>
#include <iterator>

namespace punchwright {

std::string_view word_for(StepKind kind) {
  switch (kind) {
  case StepKind::hang_on: return "hang-on";
  case StepKind::tension: return "tension";
  case StepKind::weights: return "weights";
  case StepKind::counter: return "counter";
  case StepKind::card_in: return "card-in";
  case StepKind::plain_row: return "plain-row";
  case StepKind::selection_on: return "selection-on";
  case StepKind::selecting_row: return "selecting-row";
  case StepKind::length_single: return "length-single";
  case StepKind::card_released: return "card-released";
  case StepKind::card_locked: return "card-locked";
  case StepKind::two_colour_on: return "two-colour-on";
  case StepKind::main_in: return "main-in";
  case StepKind::main_out: return "main-out";
  case StepKind::contrast_in: return "contrast-in";
  case StepKind::contrast_out: return "contrast-out";
  case StepKind::needles_back: return "needles-back";
  case StepKind::knit_rows: return "knit-rows";
  case StepKind::knit_by_hand: return "knit-by-hand";
  case StepKind::lift_float: return "lift-float";
  case StepKind::weights_up: return "weights-up";
  case StepKind::set_plain: return "set-plain";
  case StepKind::end_row: return "end-row";
  }
  return "";
}

std::string_view word_for_side(Side side) {
  return side == Side::left ? tr("left") : tr("right");
}

std::string name_of_yarn(const Document& document, char key) {
  std::string name = yarn_of(document, key).name;
  for (char& letter : name) {
    if (static_cast<unsigned char>(letter) < 0x20 || letter == 0x7f) {
      letter = ' ';
    }
  }
  return name.empty() ? said("yarn {}", key) : name;
}

std::string needles_words(const std::vector<Needle>& needles) {
  if (needles.size() == 1) {
    return name_of(needles.front());
  }
  const auto runs = runs_of(needles);
  if (needles.size() == 2 && runs.size() == 2) {
    return said("{} and {}", name_of(needles.front()), name_of(needles.back()));
  }
  return said_count(static_cast<long>(needles.size()), "{1} ({0} needle)", "{1} ({0} needles)", text_of(runs));
}

std::string knit_words(int first_row, int last_row, Side ends) {
  const int count = last_row - first_row + 1;
  const std::string_view side = word_for_side(ends);
  return count == 1 ? said("Knit row {}, ending on the {}.", first_row, side)
                    : said("Knit {} rows (rows {} to {}), ending on the {}.", count, first_row, last_row, side);
}

std::string plain_words(int first_row, int last_row, const std::string& yarn, Side ends) {
  const int count = last_row - first_row + 1;
  const std::string_view side = word_for_side(ends);
  return count == 1 ? said("Knit one row plain in {} (row {}), ending on the {}.", yarn, first_row, side)
                    : said("Knit {} rows plain in {} (rows {} to {}), ending on the {}.", count, yarn, first_row,
                           last_row, side);
}

std::string starting_words(const Document& document, Side carriage) {
  return said("Starting position: the work hangs on {} needles, {} to {}, all in working position, the needles "
              "beside it out of work; the carriage stands on the {}, set to plain knitting, and selects nothing.",
              stitches_of(document), name_of(first_needle_of(document)), name_of(last_needle_of(document)),
              word_for_side(carriage));
}

std::string threading_words(const std::string& yarn, FeederName feeder, bool peg) {
  switch (feeder) {
  case FeederName::only:
    return peg ? said("Thread {} into the feeder; hang a peg on its end as a weight.", yarn)
               : said("Thread {} into the feeder.", yarn);
  case FeederName::first:
    return peg ? said("Thread {} into the first feeder (main); hang a peg on its end as a weight.", yarn)
               : said("Thread {} into the first feeder (main).", yarn);
  case FeederName::second: break;
  }
  return peg ? said("Thread {} into the second feeder (contrast); hang a peg on its end as a weight.", yarn)
             : said("Thread {} into the second feeder (contrast).", yarn);
}

std::string taking_out_words(const std::string& yarn, TakenOut how, Side carriage) {
  switch (how) {
  case TakenOut::hangs:
    return said("Take {} out of the feeder and let it hang on the {}, where it is wanted again.", yarn,
                word_for_side(carriage));
  case TakenOut::cut_far_side:
    return said("Take {} out of the feeder and cut it: it is wanted again on the other side.", yarn);
  case TakenOut::cut: break;
  }
  return said("Take {} out of the feeder and cut it.", yarn);
}

namespace {

std::string pushing_every_words(PushedBack why, int row, const std::string& first, const std::string& last) {
  switch (why) {
  case PushedBack::no_contrast:
    return said("Push every needle, {} to {}, back to working position: row {} has no contrast stitch.", first, last,
                row);
  case PushedBack::first_rows:
    return said("Push every needle, {} to {}, back to working position: the card has gone on to its first rows, which "
                "are not wanted now.",
                first, last);
  case PushedBack::overlap:
    return said("Push every needle, {} to {}, back to working position: the card has come to its overlap rows, which "
                "select every needle.",
                first, last);
  case PushedBack::plain: break;
  }
  return said("Push every needle, {} to {}, back to working position.", first, last);
}

} // namespace

std::string pushing_back_words(PushedBack why, int row, const std::vector<Needle>& needles, bool every) {
  if (every) {
    return pushing_every_words(why, row, name_of(needles.front()), name_of(needles.back()));
  }
  const std::string which = needles_words(needles);
  switch (why) {
  case PushedBack::no_contrast:
    return said("Push {} back to working position: row {} has no contrast stitch.", which, row);
  case PushedBack::first_rows:
    return said("Push {} back to working position: the card has gone on to its first rows, which are not wanted now.",
                which);
  case PushedBack::overlap:
    return said("Push {} back to working position: the card has come to its overlap rows, which select every needle.",
                which);
  case PushedBack::plain: break;
  }
  return said("Push {} back to working position.", which);
}

std::string lifting_words(int row, const std::vector<Needle>& needles) {
  return needles.size() == 1 ? said("Catch the float of row {}: with the transfer tool lift the yarn that passes "
                                    "behind {} onto that needle, beside its stitch.",
                                    row, name_of(needles.front()))
                             : said("Catch the floats of row {}: with the transfer tool lift the yarn that passes "
                                    "behind each of {} onto that needle, beside its stitch.",
                                    row, needles_words(needles));
}

std::string one_yarn_words(int row, const std::string& yarn, bool by_card, Side to) {
  return by_card ? said("Row {}: every needle knits {}. Set the carriage to plain knitting, still selecting from the "
                        "card, and knit to the {}.",
                        row, yarn, word_for_side(to))
                 : said("Row {}: every needle knits {}. Set the carriage to plain knitting and knit to the {}.", row,
                        yarn, word_for_side(to));
}

std::string pass_words(int row, bool first, const std::string& yarn) {
  return first ? said("Row {}, first pass, {}:", row, yarn) : said("Row {}, second pass, {}:", row, yarn);
}

std::string bringing_words(const std::vector<Needle>& needles, bool push_back, bool again) {
  const std::string which = needles.empty() ? tr("no needle") : needles_words(needles);
  if (push_back) {
    return again ? said("push every needle back, then bring forward the same needles again: {}.", which)
                 : said("push every needle back, then bring forward {}.", which);
  }
  return again ? said("bring forward the same needles again: {}.", which) : said("bring forward {}.", which);
}

std::string setting_words(bool forward_knit, bool by_card) {
  if (by_card) {
    return forward_knit ? tr("Set the carriage so that only the needles that the card selects knit.")
                        : tr("Set the carriage so that the needles that the card selects slip.");
  }
  return forward_knit ? tr("Set the carriage so that only the needles standing forward knit.")
                      : tr("Set the carriage so that the needles standing forward slip.");
}

std::string text_of(const StepList& list, const Document& document, const Profile& profile) {
  std::string text;
  auto out = std::back_inserter(text);
  text += said("Steps: {}", document.title.empty() ? std::string(tr("piece")) : document.title) + '\n';
  text += said("Machine: {} ({})", profile.name, tr(profile.title.c_str())) + '\n';
  std::optional<StepPart> part;
  int number = 0;
  for (const Step& step : list.steps) {
    if (part != step.part) {
      part = step.part;
      fmt::format_to(out, "\n{}\n",
                     *part == StepPart::setting_up ? tr("Setting up")
                     : *part == StepPart::knitting ? tr("Knitting")
                                                   : tr("At the end"));
    }
    fmt::format_to(out, "{:>4}. {}\n", ++number, step.text);
  }
  fmt::format_to(out, "\n{}\n",
                 tr("Care: latch needles and transfer tools are sharp: mind eyes and fingers. Weights come off before "
                    "the work does. The maker's manual goes before this list."));
  return text;
}

} // namespace punchwright
