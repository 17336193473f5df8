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
  card_row_off,    // the card stood on another row when it was locked
  card_stuck,      // one pass read the same row of the card again
  card_skipped,    // it moved on by two rows
  needle_wrong,    // stood forward by mistake, or back
  carriage_plain,  // for one pass
  yarns_exchanged, // main and contrast
  work_off,        // hung on needles further left or right
  counted_off,     // by hand: the needles were counted from another place from a row on
  hole_wrong,      // a hole too many in the card, or one too few
  stitch_slipped,  // off a needle, by itself
};
[[nodiscard]] std::string_view word_for(DepartureKind kind);

// Which needles of a row were wrong.
enum class Stood { some_wrong, none_forward, all_forward };

struct Departure {
  DepartureKind kind = DepartureKind::left_out;
  int step = 0;   // index
  int row = 0;    // to knit, from 1; 0: none
  int column = 0; // of the card; of a wrong hole
  int amount = 0; // rows of the card, or needles to the right, with its sign
  Stood stood = Stood::some_wrong;
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
