// Drawings as small pictures in the tools: contrast stitches in the colour of text, whatever their yarns.
#pragma once

#include "editor/widgets.hpp"

namespace punchwright::editor {

// In the middle of the box, as large as it has room for; `stitch_by_row` is the proportion of a stitch.
void thumbnail(const Theme& theme, const Grid& drawing, const ScreenBox& box, double stitch_by_row);

// Where that picture lies.
[[nodiscard]] ScreenBox box_of_thumbnail(const Grid& drawing, const ScreenBox& box, double stitch_by_row);

// A button with such a picture; true when pressed.
bool picture_button(const App& app, Actions& actions, const std::string& name, const Grid& drawing, ImVec2 size,
                    bool chosen, double stitch_by_row);

} // namespace punchwright::editor
