// Ways in which a knitter departs from the steps: something left out, done twice, a row too many, a needle forgotten.
// Each is a piece of the list of actions with something else in its place, so that the machine can knit it.
#pragma once

#include "plan/knit_steps.hpp"

#include <string>
#include <vector>

namespace punchwright {

enum class DepartureKind {
  left_out,      // a whole step
  done_twice,    // a whole step
  part_left_out, // one of a step's actions
  row_less,      // one of several rows
  row_more,
  card_row_off,   // the card stood on another row when it was locked
  card_stuck,     // one pass read the same row of the card again
  needle_wrong,   // brought forward by hand, or forgotten
  hole_wrong,     // a hole too many in the card, or one too few
  stitch_slipped, // off a needle, by itself
};
[[nodiscard]] std::string_view word_for(DepartureKind kind);

struct Departure {
  DepartureKind kind = DepartureKind::left_out;
  int step = 0;                // index
  int row = 0;                 // to knit, from 1; 0: none
  int column = 0;              // of the card; of a wrong hole
  int amount = 0;              // rows of the card, with its sign
  std::vector<Needle> needles; // wrong or slipped ones
  double weight = 1;           // how likely, compared with others (from memory)
};
[[nodiscard]] std::string words_of(const Departure& departure, const StepList& list);

// The actions of all steps in one line, and which step each belongs to.
struct ActionLine {
  std::vector<MachineAction> actions;
  std::vector<int> steps;
};
[[nodiscard]] ActionLine action_line(const StepList& list);

// The actions [from, to) of the line, with others in their place.
struct Variation {
  Departure departure;
  std::size_t from = 0;
  std::size_t to = 0;
  std::vector<MachineAction> instead;
};

// Whole steps alone: each left out, and each done twice; in the order of the line.
[[nodiscard]] std::vector<Variation> step_variations(const StepList& list, const ActionLine& line);
// Those, and all others that need no look at the fabric, in the order of the line.
[[nodiscard]] std::vector<Variation> all_variations(const StepList& list, const ActionLine& line);

// The fabric of a variation, from a machine as found; up to what was refused.
[[nodiscard]] Knitting knit_variation(const ActionLine& line, const Variation& variation, const MachineState& found);

} // namespace punchwright
