// The entries of the list of findings.
// All are of one height, so that those out of sight needn't be measured.
#pragma once

#include "editor/panels.hpp"

#include <cstddef>

namespace punchwright::editor {

// From one entry to the next, px, with so many lines of words.
[[nodiscard]] float step_of_entry(const Theme& theme, int lines = 1);

// As many as the longest words need, four at most, where there is room for all entries so; what is left over has dots
// for it.
[[nodiscard]] int lines_of_words(const App& app, float wide, float tall);

// Those from the first to before the last, and the wanted one brought into sight.
void entries(const App& app, Actions& actions, std::ptrdiff_t first, std::ptrdiff_t last, std::ptrdiff_t wanted,
             int lines = 1);

} // namespace punchwright::editor
