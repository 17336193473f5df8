// A column of running text on a sheet: paragraphs set one below another, with the knowledge of what still fits.
#pragma once

#include "sheets/drawing.hpp"

#include <string>
#include <vector>

namespace punchwright {

class TextColumn {
public:
  // From `top_left` down to `bottom`.
  TextColumn(std::vector<Shape>& shapes, Point top_left, double width, double bottom)
      : shapes_(shapes), x_(top_left.x), y_(top_left.y), width_(width), bottom_(bottom) {}

  void heading(const std::string& text);
  // Lines that would run over the bottom are left out; false then.
  bool paragraph(const std::string& text, double height_mm = 2.9, bool bold = false);
  // With a dot in front and an indent.
  bool item(const std::string& text, double height_mm = 2.9);
  void gap(double mm) { y_ += mm; }

  [[nodiscard]] double height_of_item(const std::string& text, double height_mm = 2.9) const;
  [[nodiscard]] double y() const { return y_; }
  [[nodiscard]] double room() const { return bottom_ - y_; }

private:
  bool set(const std::string& text, double height_mm, bool bold, double indent);

  std::vector<Shape>& shapes_;
  double x_;
  double y_; // top of the next line
  double width_;
  double bottom_;
};

} // namespace punchwright
