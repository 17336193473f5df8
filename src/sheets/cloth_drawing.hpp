// The cloth's knit side in lines, in the gauge's proportion, for sheets: sharp at every size, and small in the file.
#pragma once

#include "design/document.hpp"
#include "machine/profile.hpp"
#include "rows/rows.hpp"
#include "sheets/drawing.hpp"

#include <string>
#include <vector>

namespace punchwright {

struct ClothDrawn {
  double width = 0; // mm on the sheet
  double height = 0;
  int columns = 0; // shown; fewer than the piece has where it is too large
  int rows = 0;
};

// Row 1 lowest, no larger than the box. Of a large piece its lowest rows and the columns from the knit side's left.
ClothDrawn draw_cloth(std::vector<Shape>& shapes, Point corner, double width, double height, const Document& document,
                      const Profile& profile, const RowsToKnit& rows);

// A knitted sample of one yarn, so many stitches wide and high.
void draw_sample(std::vector<Shape>& shapes, Point corner, double stitch_mm, double row_mm, int columns, int rows,
                 Colour yarn);

} // namespace punchwright
