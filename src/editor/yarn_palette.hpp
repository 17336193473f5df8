// Yarn colours with names, to choose from; our own, from the harbour and what lies around it.
#pragma once

#include "design/document.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright::editor {

struct YarnColour {
  std::string name;
  Colour colour;
  bool operator==(const YarnColour&) const = default;
};

// From light to dark within each family of colours.
[[nodiscard]] std::vector<YarnColour> yarn_palette();
// Those in whose name or family each word begins a word: "blue", "red", "light"; names
// that hold all of them first.
[[nodiscard]] std::vector<YarnColour> yarn_colours_found(std::string_view words);

} // namespace punchwright::editor
