// Colours as they look to somebody else: their lightness alone, and with each common colour vision deficiency. Only how
// a design is seen; nothing of it is kept. And how light a colour looks, as a number.
#pragma once

#include "design/document.hpp"
#include "words/words.hpp"

#include <array>

namespace punchwright::editor {

enum class ColourSight { as_is, lightness, protan, deutan, tritan };

struct SightInfo {
  ColourSight sight = ColourSight::as_is;
  const char* id = "";   // for tests
  const char* name = ""; // "Lightness only"
  const char* tip = "";
};
inline constexpr std::array colour_sights = {
    SightInfo{ColourSight::as_is, "as-is", noted("Colours as they are"), noted("What was chosen")},
    SightInfo{ColourSight::lightness, "lightness", noted("Lightness only"),
              noted("The value check: two yarns that become the same grey hardly show a pattern")},
    SightInfo{ColourSight::protan, "protan", noted("Without the red receptor"),
              noted("Protanopia: reds are dark, red and green alike")},
    SightInfo{ColourSight::deutan, "deutan", noted("Without the green receptor"),
              noted("Deuteranopia: red and green alike")},
    SightInfo{ColourSight::tritan, "tritan", noted("Without the blue receptor"),
              noted("Tritanopia: blue and green alike, rare")}};

[[nodiscard]] const SightInfo& info_of(ColourSight sight);

[[nodiscard]] Colour seen_as(Colour colour, ColourSight sight);

// CIE L*, 0 (black) to 100 (white), of an sRGB colour under its own white. CIE 15:2004, 8.2.1.
[[nodiscard]] double lightness_of(Colour colour);

// What turns the light of red, green and blue (0 to 1, linear) into what is seen; row by row.
using SightMatrix = std::array<std::array<double, 3>, 3>;
[[nodiscard]] const SightMatrix& matrix_of(ColourSight sight); // of protan, deutan, tritan; else nothing is changed

} // namespace punchwright::editor
