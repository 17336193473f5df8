// The day that PDFs say they were made on. Without a wish it is always the same, so that the same design gives the same
// bytes; the variable SOURCE_DATE_EPOCH (reproducible-builds.org, "SOURCE_DATE_EPOCH specification 1.1") chooses
// another.
#pragma once

#include "design/result.hpp"
#include "sheets/exports.hpp"

#include <vector>

namespace punchwright {

// `seconds`: the variable's value, seconds since 1970-01-01 in UTC, up to the year 9999; null or empty: nothing
// changes. What is no such number is an error, as the specification asks. All but the date of those that are PDFs
// stays.
[[nodiscard]] Failure date_pdfs(std::vector<OutputFile>& files, const char* seconds);

} // namespace punchwright
