// Which card holds which row: how often a short circuit is repeated, and where a long one is split.
// Here and not with the sheets, since the checks speak of it too.
#pragma once

#include "rows/rows.hpp"

#include <optional>
#include <vector>

namespace punchwright {

constexpr int overlap_rows = 2; // fully punched, at each end (trade: common practice)

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

// Number n stands beside the line that is in sight while row n is read, which is so many rows further on: the row
// there, counted as above; beyond rows_in_all it is an overlap row. None where the card ends before that line.
[[nodiscard]] std::optional<int> row_beside_number(const CardPlan& plan, const CardReader& reader, int number);

[[nodiscard]] CardPlan card_plan(const Document& document, const CardReader& reader, const RowsToKnit& rows);

} // namespace punchwright
