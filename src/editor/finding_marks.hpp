// Where in the drawing findings are, so that they can be marked there; also of a drawing that isn't the document's yet.
#pragma once

#include "design/document.hpp"
#include "machine/profile.hpp"
#include "rules/findings.hpp"

#include <optional>
#include <vector>

namespace punchwright::editor {

// Stitches to be marked in the drawing: a run in a row, or the same columns of several rows.
struct Mark {
  int row = 0;
  int last_row = 0;
  int first_column = 0; // first > last: round the edge
  int last_column = 0;
  int finding = 0;              // its place among the findings
  std::optional<Needle> needle; // the end of the piece on the bed that this column knits on
};

// Ascending by row.
[[nodiscard]] std::vector<Mark> marks_of(const std::vector<Finding>& findings, const Document& design,
                                         const Profile& profile);

} // namespace punchwright::editor
