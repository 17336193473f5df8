// Draws a sheet's shapes with cairo, for paper and for pixels alike, so that the two can't drift apart.
// Owns cairo's handles; the rest of the room never sees one.
#pragma once

#include "design/result.hpp"
#include "sheets/drawing.hpp"

#include <cairo.h>
#include <memory>
#include <string>

namespace punchwright {

struct CairoDeleter {
  void operator()(cairo_t* context) const { cairo_destroy(context); }
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
  void operator()(cairo_font_face_t* face) const { cairo_font_face_destroy(face); }
};
using CairoContext = std::unique_ptr<cairo_t, CairoDeleter>;
using CairoSurface = std::unique_ptr<cairo_surface_t, CairoDeleter>;
using CairoFontFace = std::unique_ptr<cairo_font_face_t, CairoDeleter>;

// The two faces, loaded. Each keeps its font file open as long as cairo needs it.
struct SheetFonts {
  CairoFontFace regular;
  CairoFontFace bold;
};
[[nodiscard]] Result<SheetFonts> load_sheet_fonts();

// One unit of the context is one mm; text is set as characters with glyphs, so that it can be selected and searched.
void draw_sheet(cairo_t* context, const Sheet& sheet, const SheetFonts& fonts);

[[nodiscard]] Error cairo_error(const std::string& what, cairo_status_t status);

} // namespace punchwright
