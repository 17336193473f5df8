// From findings to the stitches that they are about.
#include "editor/finding_marks.hpp"

#include "machine/placement.hpp"

#include <algorithm>
#include <iterator>

namespace punchwright::editor {

namespace {

// A float's run. Needles run from left to right where the drawing runs from right to left.
Mark run_of(const Finding& finding, const Placement& placement, int width) {
  Mark mark{finding.row, finding.row, 0, width - 1, 0, {}};
  if (finding.first_needle && finding.last_needle) {
    if (finding.last_needle->position - finding.first_needle->position + 1 < width) {
      mark.first_column = placement.column_of(*finding.last_needle);
      mark.last_column = placement.column_of(*finding.first_needle);
    }
  } else if (finding.first_column >= 0) {
    mark.first_column = finding.first_column;
    mark.last_column = finding.last_column;
  }
  return mark;
}

// Where in the drawing a finding is that isn't about one row: the columns at both ends of the piece, the bands of a
// pair of yarns, or all of it.
std::vector<Mark> wide_marks_of(const Finding& finding, const Document& design) {
  const int top = design.grid.height() - 1;
  const int right = design.grid.width() - 1;
  switch (finding.id) {
  case FindingId::unknown_key: return {};
  case FindingId::repeat_on_needles:
  case FindingId::repeat_cut_at_edges:
    return {Mark{0, top, finding.first_column, finding.first_column, 0, finding.first_needle},
            Mark{0, top, finding.last_column, finding.last_column, 0, finding.last_needle}};
  case FindingId::yarns_too_alike: {
    std::vector<Mark> marks;
    for (const RowRange& range : rows_of_pair(design, finding.other, finding.yarn)) {
      marks.push_back(Mark{range.first, range.last, 0, right, 0, {}});
    }
    return marks;
  }
  default: return {Mark{0, top, 0, right, 0, {}}};
  }
}

} // namespace

std::vector<Mark> marks_of(const std::vector<Finding>& findings, const Document& design, const Profile& profile) {
  std::vector<Mark> marks;
  marks.reserve(findings.size());
  const Placement placement(design, profile);
  const Grid& grid = design.grid;
  for (std::size_t index = 0; index < findings.size(); ++index) {
    const Finding& finding = findings[index];
    const bool in_row = finding.row >= 0 && finding.row < grid.height() && finding.id != FindingId::yarns_too_alike;
    const std::size_t first = marks.size();
    if (in_row) {
      marks.push_back(run_of(finding, placement, grid.width()));
    } else {
      std::ranges::move(wide_marks_of(finding, design), std::back_inserter(marks));
    }
    for (std::size_t mark = first; mark < marks.size(); ++mark) {
      marks[mark].finding = static_cast<int>(index);
    }
  }
  std::ranges::stable_sort(marks, {}, &Mark::row);
  return marks;
}

} // namespace punchwright::editor
