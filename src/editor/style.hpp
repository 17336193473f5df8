// ImGui dressed in the theme: colours, roundness, spacing, type faces.
#pragma once

#include "editor/theme.hpp"

namespace punchwright::editor {

void dress(const Theme& theme);

// Loads the type faces at `scale` and puts them into the theme; ImGui's own face where the files are missing.
void load_type_faces(Theme& theme, float scale);

// Whether the type face for running text has that sign (Unicode).
[[nodiscard]] bool is_loaded(unsigned code);

} // namespace punchwright::editor
