// A bar stands on the window's ground and has a line below it.
#include "editor/top_bar.hpp"

#include "editor/widgets.hpp"

#include <imgui.h>

namespace punchwright::editor {

namespace {

constexpr float above_and_below = 6; // units of layout

} // namespace

float height_of_bar(int lines, float unit) {
  const auto count = static_cast<float>(lines);
  return count * ImGui::GetFrameHeight() + (count - 1) * bar_between_lines * unit + 2 * above_and_below * unit;
}

void begin_bar(const App& app, const char* name, const ScreenBox& box) {
  const float unit = app.theme.scale;
  ImGui::PushStyleColor(ImGuiCol_WindowBg, tint(app.theme.ground));
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, ImVec2(bar_margin * unit, above_and_below * unit));
  begin_part(app, name, box, ImGuiWindowFlags_NoNav | ImGuiWindowFlags_NoFocusOnAppearing);
}

void end_bar(const App& app, const ScreenBox& box) {
  ImGui::GetWindowDrawList()->AddLine({box.left, box.bottom - 1}, {box.right, box.bottom - 1}, ink(app.theme.line));
  ImGui::End();
  ImGui::PopStyleVar();
  ImGui::PopStyleColor();
}

} // namespace punchwright::editor
