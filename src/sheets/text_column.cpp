// Running text: lines broken by the widths that the writers use.
#include "sheets/text_column.hpp"

#include "sheets/shapes.hpp"
#include "sheets/text_metrics.hpp"

namespace punchwright {
namespace {

constexpr double line_spacing = 1.32; // of the type size
constexpr double heading_size = 3.4;
constexpr double item_indent = 2.6;
constexpr double item_gap = 0.18; // of the type size, after an item

} // namespace

void TextColumn::heading(const std::string& text) {
  gap(1.2);
  paragraph(text, heading_size, true);
  gap(0.5);
}

bool TextColumn::paragraph(const std::string& text, double height_mm, bool bold) {
  return set(text, height_mm, bold, 0);
}

bool TextColumn::item(const std::string& text, double height_mm) {
  if (y_ + height_mm * line_spacing > bottom_) {
    return false;
  }
  CircleShape dot;
  dot.centre = {x_ + 0.9, y_ + height_mm * 0.66};
  dot.radius = 0.42;
  dot.paint = fill_paint(ink::dark);
  shapes_.push_back(dot);
  const bool complete = set(text, height_mm, false, item_indent);
  gap(height_mm * item_gap);
  return complete;
}

double TextColumn::height_of_item(const std::string& text, double height_mm) const {
  const auto lines = lines_of(text, height_mm, false, width_ - item_indent);
  return static_cast<double>(lines.size()) * height_mm * line_spacing + height_mm * item_gap;
}

bool TextColumn::set(const std::string& text, double height_mm, bool bold, double indent) {
  for (const std::string& line : lines_of(text, height_mm, bold, width_ - indent)) {
    if (y_ + height_mm * line_spacing > bottom_ + 1e-6) {
      return false;
    }
    shapes_.push_back(text_shape({x_ + indent, y_ + height_mm}, fitting_text(line, height_mm, bold, width_ - indent),
                                 height_mm, Anchor::start, bold));
    y_ += height_mm * line_spacing;
  }
  return true;
}

} // namespace punchwright
