// What is said about single stitches besides their colour: floats that are caught by hand or accepted, and stitches
// that mending leaves alone. Layers over the drawing, so that whatever moves stitches moves their marks alike.
#pragma once

#include "design/grid.hpp"

#include <string>
#include <string_view>

namespace punchwright {

// Each layer is of the drawing's size, or empty (0 by 0) where it marks no stitch; so equal marks are equal values.
struct StitchMarks {
  Grid caught;   // the float behind that stitch is lifted onto its needle before the next row is knitted
  Grid accepted; // behind that stitch a float may be too long
  Grid kept;     // mending never changes that stitch

  [[nodiscard]] bool none() const { return caught.width() == 0 && accepted.width() == 0 && kept.width() == 0; }
  bool operator==(const StitchMarks&) const = default;
};

// False where the layer is empty.
[[nodiscard]] inline bool is_marked(const Grid& layer, int column, int row) {
  return layer.width() != 0 && layer.at(column, row);
}
[[nodiscard]] bool any_marked(const Grid& layer, int row);
// Marks a stitch of `drawing`, or takes its mark away; the layer is empty again behind its last mark.
void set_mark(Grid& layer, const Grid& drawing, int column, int row, bool marked);
// The layer, empty where it marks nothing.
[[nodiscard]] Grid without_blank(Grid layer);

// "4, 9-12": the marked columns of a row from 1, ascending, neighbours as first and last. The form of files.
[[nodiscard]] std::string columns_text(const Grid& layer, int row);
// Marks the columns that such a text names; false where it isn't one, or names none or one beyond the width. The layer
// has a size.
[[nodiscard]] bool set_columns_text(Grid& layer, int row, std::string_view text);

} // namespace punchwright
