// The check in two parts: what the rows to knit alone tell, and the rest. An editor keeps the first while stitches are
// drawn that don't change the rows: of a design knitted a thousand times they are two million.
#pragma once

#include "rules/findings.hpp"

#include <vector>

namespace punchwright {

struct RowFindings {
  std::vector<Finding> amount; // too many rows
  std::vector<Finding> others; // yarns at the wrong side, and the card
};

// Of the drawing it looks at nothing that rows_to_knit() doesn't.
[[nodiscard]] RowFindings check_rows(const Document& document, const Profile& profile, const RowsToKnit& rows);

// The whole check, in the order of check().
[[nodiscard]] std::vector<Finding> check_beside_rows(const Document& document, const Profile& profile,
                                                     const RowFindings& of_rows);

} // namespace punchwright
