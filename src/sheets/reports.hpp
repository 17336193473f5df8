// Findings and rows as plain text: what the command line prints and what lies in the folder of an export, word for
// word the same.
#pragma once

#include "design/document.hpp"
#include "machine/profile.hpp"
#include "rows/rows.hpp"
#include "rules/findings.hpp"

#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

// Takes the text in pieces, since rows to knit can be two million.
using TextTaker = std::function<void(std::string_view)>;

// Each finding with its remedy, neighbouring rows of one colour as one, and a line that counts them. `file` is the name
// for people.
void check_report(const std::vector<Finding>& findings, const Document& document, const Profile& profile,
                  const std::string& file, const TextTaker& take);

// A line a row to knit, those of the setting-up first.
void rows_table(const Document& document, const Profile& profile, const RowsToKnit& rows, const TextTaker& take);

// "leftwards".
[[nodiscard]] const char* word_for(Travel travel);
// The yarns of a pass: "AB", "A".
[[nodiscard]] std::string keys_of(const Pass& pass);

} // namespace punchwright
