// The knitting played: the machine between two passes, ready for the next one, and the fabric that hangs on it. Knitted
// anew for each moment that is looked at, which takes a few milliseconds for a whole evening's work.
#pragma once

#include "plan/knit_steps.hpp"

#include <memory>
#include <string>
#include <vector>

namespace punchwright::editor {

struct PlayedKnitting {
  Document document;
  Profile profile;
  StepList list;
  std::shared_ptr<const PunchedCard> card; // null: none
  std::vector<int> steps_of_passes;        // index of the step in which each pass is made
  [[nodiscard]] int passes() const { return static_cast<int>(steps_of_passes.size()); }
};

// Ready for the next pass: what hands do before it is done.
struct PlayMoment {
  int passes = 0; // made
  Knitting knitting;
  std::vector<std::string> hands; // what was done since the last pass
  std::string pass;               // the next one; empty: none
  int refused_step = -1;          // hands can't do it: the knitting ends there
};

[[nodiscard]] PlayedKnitting played_knitting(const Document& document, const Profile& profile, const RowsToKnit& rows);
[[nodiscard]] PlayMoment moment_at(const PlayedKnitting& played, int passes);

// "two-colour knitting, selects from the card, end needles too".
[[nodiscard]] std::string words_of(const CarriageSettings& settings);
// "Row 12 of the card is under the reader; released." Empty without a card.
[[nodiscard]] std::string card_words(const MachineState& state);

} // namespace punchwright::editor
