// ImGui dressed in the theme: colours, roundness, spacing, type faces.
#pragma once

#include "editor/theme.hpp"

namespace punchwright::editor {

void dress(const Theme& theme);

// Loads the type faces at `scale` and puts them into the theme; ImGui's own face where the files are missing.
void load_type_faces(Theme& theme, float scale);

// The same at once with a face of so many px for the bench; 0: none.
void load_type_faces(Theme& theme, float scale, float large);
// Height of a capital letter as a part of a face's size.
[[nodiscard]] float capital_height(const ImFont& face);

// Whether the type face for running text has that sign (Unicode).
[[nodiscard]] bool is_loaded(unsigned code);

} // namespace punchwright::editor
