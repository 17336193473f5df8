// Rows to cards.
#include "rows/cards.hpp"

#include <algorithm>

namespace punchwright {

std::optional<int> row_beside_number(const CardPlan& plan, const CardReader& reader, int number) {
  const int row = number + reader.reader_offset;
  if (plan.loop && plan.rows_in_all > 0) {
    return (row - 1) % plan.rows_in_all + 1;
  }
  return row <= plan.rows_in_all + overlap_rows ? std::optional(row) : std::nullopt;
}

CardPlan card_plan(const Document& document, const CardReader& reader, const RowsToKnit& rows) {
  CardPlan plan;
  plan.loop = document.card.loop;
  plan.circuit = rows.circuit;
  if (plan.loop && plan.circuit > 0) {
    plan.circuits = std::max(1, (reader.loop_rows + plan.circuit - 1) / plan.circuit);
  }
  plan.rows_in_all = plan.circuit * plan.circuits;
  for (int first = 1; first <= plan.rows_in_all; first += reader.blank_rows) {
    const int number = static_cast<int>(plan.cards.size()) + 1;
    plan.cards.push_back(Card{number, first, std::min(reader.blank_rows, plan.rows_in_all - first + 1)});
  }
  return plan;
}

} // namespace punchwright
