// Short ways to write down the shapes that every sheet uses, and the few colours and line widths they share.
#pragma once

#include "sheets/drawing.hpp"

#include <string>
#include <utility>

namespace punchwright {

namespace ink { // printed on white; the light ones stay visible on a home printer
constexpr Colour black{0, 0, 0};
constexpr Colour dark{70, 74, 82};
constexpr Colour middle{130, 136, 146};
constexpr Colour light{176, 182, 190};
constexpr Colour faint{222, 226, 231};
constexpr Colour wash{243, 245, 247};
} // namespace ink

[[nodiscard]] inline Paint line_paint(Colour colour, double width_mm) {
  return Paint{colour, width_mm, std::nullopt, false};
}
[[nodiscard]] inline Paint dashed_paint(Colour colour, double width_mm) {
  return Paint{colour, width_mm, std::nullopt, true};
}
[[nodiscard]] inline Paint fill_paint(Colour colour) {
  return Paint{std::nullopt, 0, colour, false};
}

[[nodiscard]] inline PolylineShape line_shape(Point from, Point to, Paint paint) {
  return PolylineShape{{from, to}, false, paint, {}};
}
[[nodiscard]] inline TextShape text_shape(Point at, std::string text, double height_mm, Anchor anchor = Anchor::start,
                                          bool bold = false, Colour colour = ink::black) {
  return TextShape{at, std::move(text), height_mm, anchor, bold, 0, colour};
}

// The text, or as much of it as fits with an ellipsis.
[[nodiscard]] inline std::string fitting_text(std::string text, double height_mm, bool bold, double width) {
  if (width_of(text, height_mm, bold) <= width) {
    return text;
  }
  while (!text.empty() && width_of(text + "…", height_mm, bold) > width) {
    while (!text.empty() && (static_cast<unsigned char>(text.back()) & 0xC0U) == 0x80U) {
      text.pop_back();
    }
    if (!text.empty()) {
      text.pop_back();
    }
  }
  return text + "…";
}

// A title in bold, set smaller where it is long, down to `smallest`, before it is cut.
[[nodiscard]] inline TextShape title_shape(Point at, std::string text, double height_mm, double smallest,
                                           double width) {
  const double wide = width_of(text, height_mm, true);
  const double height = wide <= width ? height_mm : std::max(smallest, height_mm * width / wide * 0.999);
  return text_shape(at, fitting_text(std::move(text), height, true, width), height, Anchor::start, true);
}

} // namespace punchwright
