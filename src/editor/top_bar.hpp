// The ground and the edge of a bar of buttons above the drawing or the yoke.
#pragma once

#include "editor/panels.hpp"

namespace punchwright::editor {

constexpr float bar_margin = 10;       // at either end, units of layout
constexpr float bar_between_lines = 6; // likewise

// px.
[[nodiscard]] float height_of_bar(int lines, float unit);

void begin_bar(const App& app, const char* name, const ScreenBox& box);
void end_bar(const App& app, const ScreenBox& box);

} // namespace punchwright::editor
