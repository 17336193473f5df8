// Other yarns for a pair, tried without changing the design: which there are, and what taking one would make of the
// yarns and bands. Pure functions.
#pragma once

#include "design/document.hpp"
#include "editor/yarn_palette.hpp"

#include <string_view>
#include <vector>

namespace punchwright::editor {

enum class PairChange { contrast, main };

struct YarnPair {
  YarnColour main;
  YarnColour contrast;
  double ratio = 1; // WCAG contrast ratio
  bool present = false;
};

// The pair as it is, then the design's own yarns and the palette in place of one of the two.
[[nodiscard]] std::vector<YarnPair> pairs_to_try(const Document& design, char main, char contrast, PairChange change,
                                                 std::string_view words);

struct YarnsAndBands {
  std::vector<Yarn> yarns;
  std::vector<Band> bands;
};
// All bands of that main and contrast take the pair. A yarn that no other band uses is renamed; else the list gets one
// more, or one that is there already is used.
[[nodiscard]] YarnsAndBands with_pair(const Document& design, char main, char contrast, const YarnPair& pair);

// The band with main and contrast exchanged; of a band of one yarn nothing.
[[nodiscard]] std::vector<Band> with_yarns_swapped(const Document& design, std::size_t band);

// The rows of the pair's first band, at most `rows` of them, as a design of two yarns: for small pictures.
[[nodiscard]] Document sample_of_pair(const Document& design, char main, char contrast, int rows);

// The name, or "Yarn B".
[[nodiscard]] std::string shown_name(const Yarn& yarn);

} // namespace punchwright::editor
