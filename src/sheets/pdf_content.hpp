// A sheet's shapes as the drawing operators of a PDF page (ISO 32000-1, clause 8), in mm.
// Circles, of which a card has a thousand or two, are drawn once for each size and paint and then only set down.
#pragma once

#include "sheets/drawing.hpp"
#include "sheets/pdf_font.hpp"

#include <string>
#include <vector>

namespace punchwright {

// A circle around the origin that pages refer to by its index: /C0, /C1 …
struct CircleKind {
  double radius = 0;
  Paint paint;
  bool operator==(const CircleKind&) const = default;
};

// Shared by all pages of a file.
struct PdfResources {
  PdfFont regular;
  PdfFont bold;
  std::vector<CircleKind> circles;
};

// Into `text`, whose former content goes.
void write_page(std::string& text, const Sheet& sheet, PdfResources& resources);
[[nodiscard]] std::string circle_content(const CircleKind& kind);

// A number with at most three digits behind the point: a thousandth of a mm.
void add_number(std::string& text, double value);

} // namespace punchwright
