// The strips between the drawing's rows: plain rows that are knitted there and drawn nowhere.
// Worked out from the rows to knit, of the design and of a drawing whose rows are being dragged alike.
#pragma once

#include "design/document.hpp"
#include "rows/rows.hpp"

#include <vector>

namespace punchwright::editor {

// Single-colour rows between one drawn row and the one below it.
struct InsertedRows {
  int count = 0;
  char yarn = 'A';
  Why why = Why::yarn_change;
  bool operator==(const InsertedRows&) const = default;
};

struct Strips {
  std::vector<InsertedRows> below; // by drawn row
  std::vector<int> up_to;          // by drawn row: strips below it and in it
  int count = 0;                   // in all
  bool operator==(const Strips&) const = default;
};

// As the first two repetitions show them: between rows of the drawing, and, below row 1, between the last row of one
// repetition and the first of the next. `height`: drawn rows.
[[nodiscard]] Strips strips_of(const RowsToKnit& rows, int height);

} // namespace punchwright::editor
