// Sheets to bytes: PDF (cairo, and an update for the viewer's print settings), SVG (pugixml), PNG (cairo's pixels,
// stb_image_write, a pHYs chunk). All give the same bytes for the same sheets, whatever the day and the locale.
#pragma once

#include "design/result.hpp"
#include "sheets/drawing.hpp"

#include <string>
#include <vector>

namespace punchwright {

// One page a sheet; asks viewers not to scale (ViewerPreferences /PrintScaling /None). A page longer than 5,080 mm
// (14,400 pt) is an error.
[[nodiscard]] Result<std::string> pdf_of(const std::vector<Sheet>& sheets);

// viewBox in mm, width and height in mm, one <g id> a group.
[[nodiscard]] std::string svg_of(const Sheet& sheet);

// A part of a sheet as pixels: `width` × `height` of them, from `corner` on, on white. Nothing of it need be on the
// sheet.
struct SheetPixels {
  int width = 0;
  int height = 0;
  std::vector<unsigned char> rgb; // 3 bytes a pixel, the top row first
};
[[nodiscard]] Result<SheetPixels> pixels_of(const Sheet& sheet, double pixels_per_mm, Point corner, int width,
                                            int height);

// 10 pixels a mm is 254 dpi and says so in pHYs.
[[nodiscard]] Result<std::string> png_of(const Sheet& sheet, int pixels_per_mm);

// An RGB picture, 3 bytes a pixel, as a PNG; `pixels_per_metre_*` 0: no pHYs chunk.
[[nodiscard]] Result<std::string> png_of_pixels(int width, int height, const std::vector<unsigned char>& rgb,
                                                int pixels_per_metre_x, int pixels_per_metre_y);

} // namespace punchwright
