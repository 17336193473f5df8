// The knitter's text picture, turned to the bed.
#include "diagnosis/diagnosis.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright {

Result<SeenFabric> read_seen(std::string_view text, const std::string& name, int stitches, Face face) {
  constexpr std::size_t most_rows = 20'000;
  SeenFabric seen;
  int line_number = 0;
  while (!text.empty()) {
    ++line_number;
    const auto end = text.find('\n');
    std::string_view line = text.substr(0, end);
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    while (!line.empty() && (line.back() == '\r' || line.back() == ' ' || line.back() == '\t')) {
      line.remove_suffix(1);
    }
    if (line.empty() || line.front() == ';') {
      continue;
    }
    std::vector<Mark> row;
    for (std::size_t column = 0; column < line.size(); ++column) {
      if (std::string_view(".#o?").find(line[column]) == std::string_view::npos) {
        const auto byte = static_cast<unsigned char>(line[column]);
        return Error{name, line_number, static_cast<int>(column) + 1,
                     byte >= 0x20 && byte < 0x7f ? said("'{}' is no mark", line[column])
                                                 : said("byte {} is no mark", byte),
                     tr("allowed: '.' main, '#' contrast, 'o' dropped, '?' not looked at")};
      }
      row.push_back(static_cast<Mark>(line[column]));
    }
    if (static_cast<int>(row.size()) != stitches) {
      return Error{name, line_number, 0, said("{} marks in this row", row.size()),
                   said("the piece has {} stitches; write '?' for those that were not looked at", stitches)};
    }
    if (face == Face::knit) {
      std::ranges::reverse(row); // the knit side is the bed's mirror image
    }
    seen.rows.push_back(std::move(row));
    if (seen.rows.size() > most_rows) {
      return Error{name, line_number, 0, said("more than {} rows", most_rows), tr("mark the rows around the fault")};
    }
  }
  if (seen.rows.empty()) {
    return Error{name, 0, 0, tr("the picture has no rows"), tr("write a line for each row, the top one first")};
  }
  std::ranges::reverse(seen.rows);
  return seen;
}

} // namespace punchwright
