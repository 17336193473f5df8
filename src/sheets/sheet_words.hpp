// Words and numbers that several sheets say in the same way, in the reader's language.
// In one place, so that the same thing is called the same on every page.
#pragma once

#include "machine/profile.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <string>

namespace punchwright {

// "row 3", "rows 3 to 8".
[[nodiscard]] inline std::string rows_from_to(int first, int last) {
  return first == last ? said("row {}", first) : said("rows {} to {}", first, last);
}

// Titles of the program's own profiles are translated; any other stands as it is.
[[nodiscard]] inline std::string title_of_machine(const Profile& profile) {
  return tr(profile.title.c_str());
}

// "1 stitch", "3 stitches".
[[nodiscard]] inline std::string stitches_counted(long stitches) {
  return said_count(stitches, "{} stitch", "{} stitches");
}
[[nodiscard]] inline std::string rows_counted(long rows) {
  return said_count(rows, "{} row", "{} rows");
}
[[nodiscard]] inline std::string pieces_counted(long pieces) {
  return said_count(pieces, "{} piece", "{} pieces");
}

// A number as it was formatted, but for people: "28,5". What files hold, or is typed into them, keeps its point.
[[nodiscard]] inline std::string with_decimal_sign(std::string number) {
  std::ranges::replace(number, '.', chosen_language().decimal_sign);
  return number;
}

} // namespace punchwright
