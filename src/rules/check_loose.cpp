// Rows drawn in two colours of which the piece, as it lies on the bed, shows one only: the other yarn is in the feeder
// and catches no needle.
#include "machine/placement.hpp"
#include "rules/checks.hpp"

#include <algorithm>

namespace punchwright {
namespace {

// The drawn columns that the needles from `first` to `last` knit, as the words of a row.
std::vector<Grid::Word> columns_on(const Document& document, const Profile& profile, Needle first, Needle last) {
  const Placement placement(document, profile);
  std::vector<Grid::Word> columns(static_cast<std::size_t>(document.grid.words_in_row()));
  const int needles = std::min(last.position - first.position + 1, document.grid.width()); // then they come again
  for (int count = 0; count < needles; ++count) {
    const auto column = static_cast<std::size_t>(placement.column_of(Needle{first.position + count}));
    columns[column / Grid::bits_in_word] |= Grid::Word{1} << (column % Grid::bits_in_word);
  }
  return columns;
}

} // namespace

void check_loose_yarns(const Document& document, const Profile& profile, std::vector<Finding>& findings) {
  const bool ends = end_needles_knit_contrast(document, profile); // whatever is drawn there
  const Needle first = first_needle_of(document);
  const Needle last = last_needle_of(document);
  const int as_drawn = stitches_of(document) - (ends ? 2 : 0);
  if (as_drawn >= document.grid.width()) {
    return; // all of the repeat is seen
  }
  const int end = ends ? 1 : 0;
  const auto seen = columns_on(document, profile, Needle{first.position + end}, Needle{last.position - end});
  int row = 0;
  for (const Band& band : document.bands) {
    for (const int above = row + band.rows; row < above; ++row) {
      if (!document.grid.mixed(row)) {
        continue;
      }
      bool contrast = ends;
      bool main = false;
      const auto words = document.grid.row(row);
      for (std::size_t index = 0; index < seen.size(); ++index) {
        contrast = contrast || (words[index] & seen[index]) != 0;
        main = main || (~words[index] & seen[index]) != 0;
      }
      if (contrast && main) {
        continue;
      }
      Finding finding;
      finding.id = FindingId::yarn_loose_on_piece;
      finding.severity = Severity::warning;
      finding.row = row;
      finding.yarn = main ? band.contrast.value_or(char{0}) : band.main;
      finding.other = main ? band.main : band.contrast.value_or(char{0});
      finding.on_piece = true;
      finding.first_needle = first;
      finding.last_needle = last;
      finding.stitches = stitches_of(document);
      findings.push_back(finding);
    }
  }
}

} // namespace punchwright
