// Keys by what they say in the user's layout, and what ImGui's fields call the few that they need.
#pragma once

#include <optional>
#include <string>

namespace punchwright::editor {

// "z", "left", "f1" …; `printed` is what glfwGetKeyName says, or nothing. In layouts whose upper row has its digits
// with shift, shift makes them; where a letter isn't a Latin one (Greek, Cyrillic), the key is called as on a Latin
// keyboard.
[[nodiscard]] std::string key_name(int glfw_key, const char* printed, bool shift);

// ImGuiKey of that name.
[[nodiscard]] std::optional<int> imgui_key(const std::string& name);

} // namespace punchwright::editor
