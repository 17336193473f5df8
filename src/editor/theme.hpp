// The editor's colours, sizes and type faces, in one place. Text has at least 4.5:1 on its ground, by a test.
#pragma once

#include "design/document.hpp"

#include <cmath>

struct ImFont;

namespace punchwright::editor {

struct Theme {
  Colour ground{0xee, 0xeb, 0xe4}; // behind everything
  Colour panel{0xfa, 0xf8, 0xf4};  // panels at the sides
  Colour field{0xff, 0xff, 0xff};  // what is typed into
  Colour line{0xd8, 0xd2, 0xc6};   // between parts
  Colour text{0x23, 0x2b, 0x33};
  Colour quiet_text{0x5c, 0x62, 0x66};
  Colour accent{0x0c, 0x6a, 0x72}; // what is chosen, what can be pressed
  Colour accent_soft{0xd3, 0xe8, 0xe7};
  Colour accent_hover{0xc0, 0xdd, 0xdc};
  Colour button{0xec, 0xe7, 0xdc};
  Colour button_hover{0xe0, 0xd9, 0xca};
  Colour on_accent{0xff, 0xff, 0xff};
  Colour fault{0xb4, 0x23, 0x18};
  Colour warning{0x8a, 0x55, 0x00};
  Colour note{0x35, 0x5f, 0x93};
  Colour good{0x1f, 0x6b, 0x3a};
  Colour canvas{0xdf, 0xda, 0xd0}; // around the drawing
  Colour strip{0xf4, 0xe6, 0xb8};  // inserted rows

  // Set by the window once the type faces are loaded.
  ImFont* regular = nullptr;
  ImFont* bold = nullptr;
  ImFont* small = nullptr;
  float scale = 1.0F; // px per unit of layout: content scale times text size
};

[[nodiscard]] inline Colour mixed(Colour one, Colour another, float share) {
  const auto mix = [share](std::uint8_t a, std::uint8_t b) {
    return static_cast<std::uint8_t>(std::lround(std::lerp(static_cast<float>(a), static_cast<float>(b), share)));
  };
  return {mix(one.red, another.red), mix(one.green, another.green), mix(one.blue, another.blue)};
}

} // namespace punchwright::editor
