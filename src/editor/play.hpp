// The knitting played, one thing after another: the machine before the next thing that hands do, or before the next
// pass, and the fabric that hangs on it. Knitted anew for each moment that is looked at, which takes a few milliseconds
// for a whole evening's work.
#pragma once

#include "plan/knit_steps.hpp"

#include <memory>
#include <string>
#include <vector>

namespace punchwright::editor {

// A step that hands do, or one pass, with what hands do for it in the same step.
struct PlayedMove {
  int step = 0;          // index in the list
  std::size_t first = 0; // of its actions
  std::size_t last = 0;  // behind them
  bool pass = false;
};

struct PlayedKnitting {
  Document document;
  Profile profile;
  StepList list;
  std::shared_ptr<const PunchedCard> card; // which one of the steps puts in; null: none
  std::vector<int> steps_of_passes;        // index of the step in which each pass is made
  std::vector<PlayedMove> moves;
  [[nodiscard]] int passes() const { return static_cast<int>(steps_of_passes.size()); }
  [[nodiscard]] int count() const { return static_cast<int>(moves.size()); }
  // Moves that are done where so many passes are made and the next one comes; all of them where none comes.
  [[nodiscard]] int ready_after(int passes) const;
};

struct PlayMoment {
  int moves = 0;  // done
  int passes = 0; // made
  Knitting knitting;
  std::string to_do;     // what comes next; empty: nothing
  std::string then;      // and after it; empty: nothing
  bool knits = false;    // what comes next is a pass
  int by_hand = 0;       // else which one it is, from 1, of those between two passes
  int all_by_hand = 0;   // of them
  int refused_step = -1; // hands can't do it: the knitting ends there
};

[[nodiscard]] PlayedKnitting played_knitting(const Document& document, const Profile& profile, const RowsToKnit& rows);
[[nodiscard]] PlayMoment moment_at(const PlayedKnitting& played, int moves);

// "two-colour knitting, selects from the card, end needles too".
[[nodiscard]] std::string words_of(const CarriageSettings& settings);
// "Row 12 is under the reader; released", or that it isn't in yet. Empty where it is knitted without a card.
[[nodiscard]] std::string card_words(const PlayedKnitting& played, const MachineState& state);

} // namespace punchwright::editor
