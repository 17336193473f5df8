// Which card holds which row: how often a short circuit is repeated, and where a long one is split.
// Here and not with the sheets, since the checks speak of it too.
#pragma once

#include "rows/rows.hpp"

#include <vector>

namespace punchwright {

// One physical card. Rows are counted from 1 through all cards; with a loop they count on through the repeated
// circuits.
struct Card {
  int number = 1; // from 1
  int first_row = 1;
  int rows = 0;
  bool operator==(const Card&) const = default;
};

struct CardPlan {
  int rows_in_all = 0; // on all cards together
  int circuit = 0;     // rows of one circuit; without a loop: rows_in_all
  int circuits = 1;    // how often the circuit stands on the card: with a loop as often as joining it needs
  bool loop = false;
  std::vector<Card> cards; // each filled before the next is begun
  bool operator==(const CardPlan&) const = default;
};

[[nodiscard]] CardPlan card_plan(const Document& document, const CardReader& reader, const RowsToKnit& rows);

} // namespace punchwright
