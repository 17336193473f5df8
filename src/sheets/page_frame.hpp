// The paper and its corrected millimetres: everything is laid out in mm as a ruler on the print will show them, and
// only at the end divided by the print correction, so that a printer that stretches by 1.2 % still gives true sizes.
#pragma once

#include "sheets/drawing.hpp"

namespace punchwright {

constexpr double free_margin = 10.0; // mm of paper kept free all round: printers can't reach the edge

// Sizes here are in corrected mm; only paper_* are those of the paper itself.
struct PageFrame {
  double paper_width = 210;
  double paper_height = 297;
  double scale_x = 1; // what a ruler says, divided by what it should say
  double scale_y = 1;

  [[nodiscard]] double left() const { return free_margin * scale_x; }
  [[nodiscard]] double right() const { return (paper_width - free_margin) * scale_x; }
  [[nodiscard]] double top() const { return free_margin * scale_y; }
  [[nodiscard]] double bottom() const { return (paper_height - free_margin) * scale_y; }
  [[nodiscard]] double width() const { return right() - left(); }
  [[nodiscard]] double height() const { return bottom() - top(); }
};

// A4: ISO 216; Letter: ANSI Y14.1. A roll starts as an A4 page and grows, see roll_frame().
[[nodiscard]] PageFrame frame_for(Paper paper, double scale_x, double scale_y);
// A piece of roll, at least 210 mm wide, for something of that many corrected mm.
[[nodiscard]] PageFrame roll_frame(double width, double height, double scale_x, double scale_y);

// The sheet that is sent to the printer: laid out in corrected mm, divided by the correction.
[[nodiscard]] Sheet printed_sheet(Sheet laid_out, const PageFrame& frame);

} // namespace punchwright
