// What is dragged in the schematic: a round handle, and what stood there when the drag began.
// ImGui keeps both, so that nothing in the yoke's own state belongs to a drag.
#pragma once

#include "design/lengths.hpp"
#include "editor/widgets.hpp"

#include <string>

namespace punchwright::editor {

// True while it is dragged, with how far in px since the drag began; `held` then becomes true, too.
bool drag_handle(const Theme& theme, Actions& actions, const std::string& name, ImVec2 at, const std::string& words,
                 ImVec2& by, bool& held);
// Of the handle before: the number when the drag began; `now` where it begins in this frame.
[[nodiscard]] double at_drag_start(const std::string& name, double now);
// What a dragged length rounds to.
[[nodiscard]] double rounded_drag(double cm, LengthUnit unit);

} // namespace punchwright::editor
