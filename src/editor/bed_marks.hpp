// Where the piece's seam stitches and the middle of the bed lie: in the drawing by columns, in the piece by stitches.
#pragma once

#include "design/document.hpp"
#include "machine/profile.hpp"

#include <vector>

namespace punchwright::editor {

struct BedMarks {
  std::vector<int> left_seam; // drawn columns of the seam stitches at the piece's left end, as the knitter sees it
  std::vector<int> right_seam;
  int middle_column = 0; // the drawn column of R1; the bed's middle lies on its right, L1 knits the next one
  // In the piece, in stitches from its left edge as the side shown has it.
  double middle = 0; // may lie outside the piece
  int seam = 0;      // stitches at each end
  int stitches = 1;
};

[[nodiscard]] BedMarks bed_marks_of(const Document& design, const Profile& profile, Face face);

// The needles' names at the drawing's foot, units of layout.
inline constexpr float needle_numbers_tall = 25;

} // namespace punchwright::editor
