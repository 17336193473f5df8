// What the line below the drawing says while there is no message: what the pointer does now.
#pragma once

#include "editor/app.hpp"

#include <string>

namespace punchwright::editor {

// What the chosen tool draws, or the size of the marked area and what can be done with it; never empty.
[[nodiscard]] std::string words_for_pointer(const App& app);

// How colours are seen, while it isn't as they are: what is shown isn't what was chosen, and it lasts.
[[nodiscard]] std::string words_for_sight(const App& app);
// "2 plain rows, Oat": what is knitted below a row of the drawing and isn't drawn; empty: nothing.
[[nodiscard]] std::string words_for_inserted(const App& app, int row);
// The yarns of a drawn row by key and name, and the rows inserted below it.
[[nodiscard]] std::string words_for_row_yarns(const App& app, int row);

} // namespace punchwright::editor
