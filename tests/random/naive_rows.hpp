// A second opinion on the rows to knit, written from docs/file-forms.md alone, for clarity and not for speed: a list of
// rows grows from the bottom, and at each boundary everything is counted anew. It shares no code with src/rows.
#pragma once

#include "design/document.hpp"
#include "machine/profile.hpp"

#include <string>
#include <vector>

namespace punchwright::test {

// "12 AB < #7": drawn row 12 (or + > = % for an inserted row), its yarns, the first pass's travel, passes beyond one,
// the card's row.
[[nodiscard]] std::vector<std::string> naive_rows(const Document& document, const Profile& profile);

} // namespace punchwright::test
