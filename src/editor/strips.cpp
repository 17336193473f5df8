// Finding the rows that are knitted between drawn ones.
#include "editor/strips.hpp"

#include <cstddef>

namespace punchwright::editor {

namespace {

std::vector<InsertedRows> inserted_between(const RowsToKnit& rows, int height) {
  std::vector<InsertedRows> below(static_cast<std::size_t>(height));
  InsertedRows pending;
  bool seen_drawn = false;
  int drawn_rows = 0;
  for (const RowToKnit& row : rows.rows) {
    if (row.drawn < 0) {
      if (seen_drawn) {
        ++pending.count;
        pending.yarn = row.main;
        pending.why = row.why;
      }
      continue;
    }
    if (pending.count > 0) {
      below[static_cast<std::size_t>(row.drawn)] = pending;
      pending = {};
    }
    seen_drawn = true;
    if (++drawn_rows > 2 * height) {
      return below;
    }
  }
  if (pending.count > 0) { // a loop's circuit ends with the rows back to its first
    below.front() = pending;
  }
  return below;
}

} // namespace

Strips strips_of(const RowsToKnit& rows, int height) {
  Strips strips;
  strips.below = inserted_between(rows, height);
  for (const InsertedRows& inserted : strips.below) {
    strips.count += inserted.count > 0 ? 1 : 0;
    strips.up_to.push_back(strips.count);
  }
  return strips;
}

} // namespace punchwright::editor
