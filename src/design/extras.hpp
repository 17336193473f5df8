// What a file holds besides what this program knows: comments and unknown keys, so that saving loses nothing.
// Made by the reader of a file form, written back by its writer, carried along by edits.
#pragma once

#include <map>
#include <string>
#include <vector>

namespace punchwright {

// A place is the name of a key, a table or a row: "title", "gauge", "gauge.rows", "yarn.A.name", "band.2.main",
// "repeat.rows.17" (row 17 from below). "gauge.$" is the end of that table, "repeat.rows.$" the line that closes the
// rows,
// "$" the end of the keys before the first table, "$file" the end of the file.
struct Extras {
  // Comments on lines of their own, by the place that they precede; an empty line parts two of them.
  std::map<std::string, std::vector<std::string>> comments_before;
  // The comment at the end of that line, with the blanks before it.
  std::map<std::string, std::string> comments_after;
  // Unknown keys as their own lines, by the table they stand in ("" before the first table), and unknown tables: by
  // "$tables", or by "yarn.A.$tables" where they belong to one yarn or band.
  std::map<std::string, std::vector<std::string>> unknown;

  [[nodiscard]] bool empty() const { return comments_before.empty() && comments_after.empty() && unknown.empty(); }
  bool operator==(const Extras&) const = default;
};

// The extras of a drawing whose row r (from 0) is the old row sources[r], copies above their originals; -1: a new row.
// What stood beside a row that is gone goes to the next row below that is left, or to the end of the rows.
[[nodiscard]] Extras extras_for_rows(const Extras& extras, const std::vector<int>& sources);

} // namespace punchwright
