// What the line below the drawing says while there is no message: what the pointer does now.
#pragma once

#include "editor/app.hpp"

#include <string>

namespace punchwright::editor {

// What the chosen tool draws, or the size of the marked area and what can be done with it; never empty.
[[nodiscard]] std::string words_for_pointer(const App& app);

} // namespace punchwright::editor
