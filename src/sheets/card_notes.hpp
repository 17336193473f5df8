// What stands in a card's margins: the printed row numbers, shifted by the reader's offset, and what is done before a
// row. Numbers carry over to the next card and, on a loop, from its end to its beginning.
#pragma once

#include "plan/plan.hpp"

#include <string>
#include <vector>

namespace punchwright {

// Beside one punched row.
struct LineNote {
  int row = 0;    // punched row, counted through all cards, from 1; up to 2 more: the overlap rows of the last card;
                  // still more where there is no line
  int number = 0; // row to knit that is read while this line is visible
  bool circuit_start = false; // on a loop that holds its circuit several times: the number begins a circuit
  std::string action;         // "Ink out, end needles back"; may be empty
};

struct CardNotes {
  std::vector<LineNote> lines;                  // ascending by row
  std::vector<LineNote> beyond;                 // actions whose number has no line on the cards
  int rows_in_all = 0;                          // on all cards together
  int last_number = 0;                          // highest number that has a line
  std::vector<std::pair<int, std::string>> all; // every action, by row to knit (on a loop: of the first circuits)
  std::string at_end;                           // what is done after the last row to knit
  bool loop = false;
};

[[nodiscard]] CardNotes card_notes(const Document& document, const Profile& profile, const RowsToKnit& rows,
                                   const CardPlan& plan);

// "after the last row", "after the last time round".
[[nodiscard]] std::string end_words(const CardNotes& notes);

} // namespace punchwright
