// The numbered steps at the machine, in plain words, complete, and with the actions that each stands for: what the
// machine of `knitting` can carry out is what hands are told to do.
#pragma once

#include "knitting/actions.hpp"
#include "plan/plan.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

enum class StepKind {
  hang_on,
  tension,
  weights,
  counter,
  card_in,
  plain_row, // of the setting-up
  selection_on,
  selecting_row, // knits plain and selects row 1, or the free pass that stores it
  length_single,
  card_released,
  card_locked, // one feeder: a row in two passes reads the card's row twice
  two_colour_on,
  main_in,
  main_out,
  contrast_in,
  contrast_out,
  needles_back,
  knit_rows,    // by card, or rows of one colour
  knit_by_hand, // needles brought forward, then the pass
  lift_float,   // floats of the row that was knitted, onto needles
  weights_up,
  set_plain,
  end_row,
};
// "contrast-out": stable, for scripts.
[[nodiscard]] std::string_view word_for(StepKind kind);

enum class StepPart { setting_up, knitting, end };

struct Step {
  StepKind kind = StepKind::knit_rows;
  StepPart part = StepPart::knitting;
  std::string text;
  std::vector<MachineAction> actions; // none: what the machine's model doesn't know (tension, weights)
  int first_row = 0;                  // rows to knit that it knits, or is done before; 0: none
  int last_row = 0;
  int counter = 0;             // what the row counter shows afterwards
  Side carriage = Side::right; // where the carriage stands afterwards
};

struct StepList {
  std::vector<Step> steps;
  Side carriage = Side::right; // where the carriage stands at the beginning
  int rows_before = 0;         // rows of stitches that the setting-up knits
};

[[nodiscard]] StepList steps_of(const Document& document, const Profile& profile, const RowsToKnit& rows);

// A numbered list as text, one step a line, in its three parts.
[[nodiscard]] std::string text_of(const StepList& list, const Document& document, const Profile& profile);

} // namespace punchwright
