// Words for the steps, and the list as text.
#include "plan/step_words.hpp"

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
  return side == Side::left ? "left" : "right";
}

std::string name_of_yarn(const Document& document, char key) {
  std::string name = yarn_of(document, key).name;
  for (char& letter : name) {
    if (static_cast<unsigned char>(letter) < 0x20 || letter == 0x7f) {
      letter = ' ';
    }
  }
  return name.empty() ? "yarn " + std::string(1, key) : name;
}

std::string needles_words(const std::vector<Needle>& needles) {
  if (needles.size() == 1) {
    return name_of(needles.front());
  }
  const auto runs = runs_of(needles);
  if (needles.size() == 2 && runs.size() == 2) {
    return fmt::format("{} and {}", name_of(needles.front()), name_of(needles.back()));
  }
  return fmt::format("{} ({} needles)", text_of(runs), needles.size());
}

std::string knit_words(int first_row, int last_row, Side ends) {
  const int count = last_row - first_row + 1;
  return count == 1 ? fmt::format("Knit row {}, ending on the {}.", first_row, word_for_side(ends))
                    : fmt::format("Knit {} rows (rows {} to {}), ending on the {}.", count, first_row, last_row,
                                  word_for_side(ends));
}

std::string text_of(const StepList& list, const Document& document, const Profile& profile) {
  std::string text;
  auto out = std::back_inserter(text);
  fmt::format_to(out, "Steps: {}\n", document.title.empty() ? "piece" : document.title);
  fmt::format_to(out, "Machine: {} ({})\n", profile.name, profile.title);
  std::optional<StepPart> part;
  int number = 0;
  for (const Step& step : list.steps) {
    if (part != step.part) {
      part = step.part;
      text += *part == StepPart::setting_up ? "\nSetting up\n"
              : *part == StepPart::knitting ? "\nKnitting\n"
                                            : "\nAt the end\n";
    }
    fmt::format_to(out, "{:>4}. {}\n", ++number, step.text);
  }
  text += "\nCare: latch needles and transfer tools are sharp: mind eyes and fingers. Weights come off before the work "
          "does. "
          "The maker's manual goes before this list.\n";
  return text;
}

} // namespace punchwright
