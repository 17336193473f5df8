// Strokes of one length at equal distances, gathered into dashed lines: the ticks of a ruler are the dashes of one
// broad line. Stroke by stroke, the rulers' ticks take as long as all the rest of a page.
#pragma once

#include "sheets/drawing.hpp"

#include <vector>

namespace punchwright {

struct Stroke {
  Point from;
  Point to;
};

struct DashedLine {
  Stroke line;
  double pen_mm = 0;
  double dash_mm = 0;
  double gap_mm = 0; // 0: not dashed
  [[nodiscard]] bool same_pen(const DashedLine& other) const {
    return pen_mm == other.pen_mm && dash_mm == other.dash_mm && gap_mm == other.gap_mm;
  }
};

// All of `strokes`, drawn with a pen of `pen_mm` and without caps. Lines with the same pen are neighbours.
[[nodiscard]] std::vector<DashedLine> dashed_lines(const std::vector<Stroke>& strokes, double pen_mm);

} // namespace punchwright
