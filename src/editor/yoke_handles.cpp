// Handles that are dragged: larger where the pointer takes them than they look.
// What they say stands beside the pointer while they are held.
#include "editor/yoke_handles.hpp"

#include "words/words.hpp"

#include <cmath>

namespace punchwright::editor {

bool drag_handle(const Theme& theme, Actions& actions, const std::string& name, ImVec2 at, const std::string& words,
                 ImVec2& by, bool& held) {
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const float radius = 6 * theme.scale;
  const float reach = 11 * theme.scale;
  const ScreenBox box{at.x - reach, at.y - reach, at.x + reach, at.y + reach};
  ImGui::SetCursorScreenPos({box.left, box.top});
  ImGui::InvisibleButton(name.c_str(), {2 * reach, 2 * reach});
  if (actions.publish_places) {
    actions.places.push_back({name, box});
  }
  const bool lively = ImGui::IsItemHovered() || ImGui::IsItemActive();
  if (lively) {
    ImGui::SetMouseCursor(ImGuiMouseCursor_Hand);
  }
  list.AddCircleFilled(at, radius * (lively ? 1.3F : 1.0F), ink(lively ? theme.accent : theme.panel));
  list.AddCircle(at, radius * (lively ? 1.3F : 1.0F), ink(theme.accent), 0, 2.2F * theme.scale);
  if (ImGui::IsItemActive()) {
    held = true;
    tip_beside(theme, words, {box});
  } else if (ImGui::IsItemHovered()) {
    tip(theme, said("{}; drag it, or type the number on the left", words));
  }
  const auto way = way_of_drag();
  by = to_imgui(way.value_or(ScreenPoint{}));
  return ImGui::IsItemActive() || way;
}

double rounded_drag(double cm, LengthUnit unit) {
  constexpr double in_cm = 0.1;
  constexpr double in_inches = 0.05;
  const double step = unit == LengthUnit::inches ? in_inches * mm_per_inch / 10 : in_cm;
  return std::round(std::round(cm / step) * step * 1000) / 1000;
}

double at_drag_start(const std::string& name, double now) {
  ImGuiStorage& kept = *ImGui::GetStateStorage();
  const ImGuiID id = ImGui::GetID((name + " start").c_str());
  if (ImGui::IsItemActivated()) {
    kept.SetFloat(id, static_cast<float>(now));
  }
  return kept.GetFloat(id);
}

} // namespace punchwright::editor
