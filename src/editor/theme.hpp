// The editor's colours, sizes and type faces, in one place. Text has at least 4.5:1 on its ground, by a test.
#pragma once

#include "design/document.hpp"

#include <cmath>
#include <vector>

struct ImFont;

namespace punchwright::editor {

// The light colours; dark_palette() has the others.
struct Palette {
  Colour ground{0xee, 0xeb, 0xe4}; // behind everything
  Colour panel{0xfa, 0xf8, 0xf4};  // panels at the sides
  Colour field{0xff, 0xff, 0xff};  // what is typed into
  Colour line{0xd8, 0xd2, 0xc6};   // between parts
  Colour text{0x23, 0x2b, 0x33};
  Colour quiet_text{0x56, 0x5c, 0x60};
  Colour accent{0x0c, 0x6a, 0x72}; // what is chosen, what can be pressed
  Colour accent_soft{0xd3, 0xe8, 0xe7};
  Colour accent_hover{0xc8, 0xe3, 0xe2};
  Colour button{0xec, 0xe7, 0xdc};
  Colour button_hover{0xe0, 0xd9, 0xca};
  Colour on_accent{0xff, 0xff, 0xff}; // text on accent, fault, warning, note
  Colour fault{0xb4, 0x23, 0x18};
  Colour warning{0x80, 0x4e, 0x00};
  Colour note{0x35, 0x5f, 0x93};
  Colour good{0x1f, 0x6b, 0x3a};
  Colour canvas{0xdf, 0xda, 0xd0};     // around the drawing
  Colour strip{0xf4, 0xe6, 0xb8};      // inserted rows
  Colour shade{0x23, 0x2b, 0x33};      // over what waits behind a dialog
  Colour dark_word{0x00, 0x00, 0x00};  // on a yarn's own colour, whichever is seen better
  Colour light_word{0xff, 0xff, 0xff}; // neither changes with the theme, as yarns don't

  bool operator==(const Palette&) const = default;
};

[[nodiscard]] Palette dark_palette();

// A text and what it stands on; tests see that the two differ enough.
struct TextPair {
  const char* place = "";
  Colour text;
  Colour ground;
};
// Every pair that the window draws.
[[nodiscard]] std::vector<TextPair> text_pairs(const Palette& palette);
// Signs and lines that say something without words: 3:1 is enough for them (WCAG 2.1, success criterion 1.4.11).
[[nodiscard]] std::vector<TextPair> sign_pairs(const Palette& palette);

struct Theme : Palette {
  // Set by the window once the type faces are loaded.
  ImFont* regular = nullptr;
  ImFont* bold = nullptr;
  ImFont* small = nullptr;
  ImFont* large = nullptr; // for the bench; null: not loaded
  float scale = 1.0F;      // px per unit of layout: content scale times text size
};

[[nodiscard]] inline Colour mixed(Colour one, Colour another, float share) {
  const auto mix = [share](std::uint8_t a, std::uint8_t b) {
    return static_cast<std::uint8_t>(std::lround(std::lerp(static_cast<float>(a), static_cast<float>(b), share)));
  };
  return {mix(one.red, another.red), mix(one.green, another.green), mix(one.blue, another.blue)};
}

} // namespace punchwright::editor
