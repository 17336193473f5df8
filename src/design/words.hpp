// Small things that are done with words in several rooms.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

// Without blanks, tabs and carriage returns at both ends.
[[nodiscard]] std::string_view trimmed(std::string_view text);

// "3", "3 and 7", "3, 7 and 9".
[[nodiscard]] std::string listed(const std::vector<std::string>& words);
// "3", "3 or 7", "3, 7 or 9".
[[nodiscard]] std::string one_of(const std::vector<std::string>& words);
// "rows 3 to 8", or "row 3" where that is all.
[[nodiscard]] std::string rows_from_to(std::int64_t first, std::int64_t last);

// Findings and errors are parts of sentences; one that stands alone begins with a capital.
[[nodiscard]] std::string with_capital(std::string_view text);

// As one word of a command that is copied into a shell (POSIX, 2.2): names of plain characters as they are, others in
// single quotation marks; one that would be read as an option with "./" before it.
[[nodiscard]] std::string shell_word(std::string_view name);

} // namespace punchwright
