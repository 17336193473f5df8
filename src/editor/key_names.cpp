// The names of keys that print nothing.
#include "editor/key_names.hpp"

#include <GLFW/glfw3.h>
#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <imgui.h>
#include <string_view>
#include <utility>

namespace punchwright::editor {

namespace {

constexpr std::array<std::pair<int, std::string_view>, 26> named = {{
    {GLFW_KEY_LEFT, "left"},
    {GLFW_KEY_RIGHT, "right"},
    {GLFW_KEY_UP, "up"},
    {GLFW_KEY_DOWN, "down"},
    {GLFW_KEY_SPACE, "space"},
    {GLFW_KEY_ENTER, "return"},
    {GLFW_KEY_KP_ENTER, "keypad return"},
    {GLFW_KEY_ESCAPE, "escape"},
    {GLFW_KEY_TAB, "tab"},
    {GLFW_KEY_BACKSPACE, "backspace"},
    {GLFW_KEY_DELETE, "delete"},
    {GLFW_KEY_INSERT, "insert"},
    {GLFW_KEY_HOME, "home"},
    {GLFW_KEY_END, "end"},
    {GLFW_KEY_PAGE_UP, "page up"},
    {GLFW_KEY_PAGE_DOWN, "page down"},
    {GLFW_KEY_LEFT_CONTROL, "control"},
    {GLFW_KEY_RIGHT_CONTROL, "control"},
    {GLFW_KEY_LEFT_SHIFT, "shift"},
    {GLFW_KEY_RIGHT_SHIFT, "shift"},
    {GLFW_KEY_LEFT_ALT, "alt"},
    {GLFW_KEY_RIGHT_ALT, "alt right"},
    {GLFW_KEY_MENU, "menu"},
    {GLFW_KEY_KP_ADD, "keypad +"},
    {GLFW_KEY_KP_SUBTRACT, "keypad -"},
    {GLFW_KEY_PAUSE, "pause"},
}};

constexpr std::array<std::pair<std::string_view, int>, 21> for_fields = {{
    {"left", ImGuiKey_LeftArrow},
    {"right", ImGuiKey_RightArrow},
    {"up", ImGuiKey_UpArrow},
    {"down", ImGuiKey_DownArrow},
    {"page up", ImGuiKey_PageUp},
    {"page down", ImGuiKey_PageDown},
    {"home", ImGuiKey_Home},
    {"end", ImGuiKey_End},
    {"insert", ImGuiKey_Insert},
    {"delete", ImGuiKey_Delete},
    {"backspace", ImGuiKey_Backspace},
    {"space", ImGuiKey_Space},
    {"return", ImGuiKey_Enter},
    {"escape", ImGuiKey_Escape},
    {"keypad return", ImGuiKey_KeyPadEnter},
    {"a", ImGuiKey_A},
    {"c", ImGuiKey_C},
    {"v", ImGuiKey_V},
    {"x", ImGuiKey_X},
    {"y", ImGuiKey_Y},
    {"z", ImGuiKey_Z},
}};

} // namespace

std::string key_name(int glfw_key, const char* printed, bool shift) {
  const auto found = std::ranges::find(named, glfw_key, &std::pair<int, std::string_view>::first);
  if (found != named.end()) {
    return std::string(found->second);
  }
  if (glfw_key >= GLFW_KEY_F1 && glfw_key <= GLFW_KEY_F25) {
    return fmt::format("f{}", glfw_key - GLFW_KEY_F1 + 1);
  }
  std::string name = printed != nullptr ? printed : "";
  const bool one_sign = name.size() == 1;
  if (shift && !name.empty() && glfw_key >= GLFW_KEY_0 && glfw_key <= GLFW_KEY_9 &&
      !(one_sign && name[0] >= '0' && name[0] <= '9')) {
    return std::string(1, static_cast<char>('0' + glfw_key - GLFW_KEY_0));
  }
  if (name.size() > 1 && glfw_key >= GLFW_KEY_A && glfw_key <= GLFW_KEY_Z) {
    return std::string(1, static_cast<char>('a' + glfw_key - GLFW_KEY_A));
  }
  if (name.size() == 1 && name[0] >= 'A' && name[0] <= 'Z') {
    name[0] = static_cast<char>(name[0] + 32);
  }
  return name;
}

std::optional<int> imgui_key(const std::string& name) {
  const auto found = std::ranges::find(for_fields, name, &std::pair<std::string_view, int>::first);
  return found == for_fields.end() ? std::nullopt : std::optional(found->second);
}

} // namespace punchwright::editor
