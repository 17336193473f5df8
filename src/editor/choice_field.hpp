// A field that takes one of a few values, shown in words; used wherever settings have such a choice.
#pragma once

#include "editor/widgets.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace punchwright::editor {

// An entry of a list that has dropped down; the keys begin at the one that is chosen. True when another is pressed.
inline bool list_entry(const char* words, bool chosen) {
  const bool pressed = ImGui::Selectable(words, chosen);
  if (chosen) {
    ImGui::SetItemDefaultFocus();
  }
  return pressed && !chosen;
}

struct Choice {
  const char* words;
  int value;
};

// A combo box over an enumeration.
template <class Value, std::size_t count>
bool choose(const Field& field, const char* words, Value& value, const std::array<Choice, count>& choices) {
  float widest = 0;
  for (const Choice& choice : choices) {
    widest = std::max(widest, ImGui::CalcTextSize(choice.words).x);
  }
  label(field.app.theme, words, 0.46F, widest + ImGui::GetFrameHeight() + 2 * ImGui::GetStyle().FramePadding.x);
  bool changed = false;
  const char* shown = choices[static_cast<std::size_t>(value)].words;
  ImGui::PushID(field.name);
  if (ImGui::BeginCombo("##choice", shown)) {
    for (const Choice& choice : choices) {
      const auto meant = static_cast<Value>(choice.value);
      if (list_entry(choice.words, meant == value)) {
        value = meant;
        changed = true;
      }
      remember_place(field.actions, fmt::format("{} {}", field.name, choice.value));
    }
    ImGui::EndCombo();
  }
  ImGui::PopID();
  remember_place(field.actions, field.name);
  return changed;
}

} // namespace punchwright::editor
