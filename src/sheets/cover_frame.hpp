// What every first page has in common: title, 'print at 100 %', the two rulers, the 100 mm square with how to use them;
// and the areas that remain for its own text.
#pragma once

#include "sheets/page_frame.hpp"
#include "sheets/text_column.hpp"

#include <string>
#include <vector>

namespace punchwright {

struct PageArea {
  double left = 0;
  double top = 0;
  double right = 0;
  double bottom = 0;
};

//     +---------------------------+
//     | title, print at 100 %     |
//     | upper left  | upper right |
//     | |  square    | beside     |
//     | |  100 mm    | square     |
//     | | below left | below right|
//     | +---ruler---------        |
//     +---------------------------+
struct CoverAreas {
  PageArea upper_left;
  PageArea upper_right;
  PageArea beside_square;
  PageArea below_left;
  PageArea below_right;

  [[nodiscard]] static TextColumn column(std::vector<Shape>& shapes, const PageArea& area) {
    return TextColumn(shapes, {area.left, area.top}, area.right - area.left, area.bottom);
  }
};

[[nodiscard]] CoverAreas add_cover_frame(std::vector<Shape>& shapes, const PageFrame& frame, const std::string& title,
                                         const std::string& subtitle, int pages);

} // namespace punchwright
