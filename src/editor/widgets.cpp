// The small parts of panels.
#include "editor/widgets.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <imgui_stdlib.h>

namespace punchwright::editor {

ImU32 ink(Colour colour, float opacity) {
  return IM_COL32(colour.red, colour.green, colour.blue, static_cast<int>(opacity * 255.0F + 0.5F));
}

ImVec4 tint(Colour colour, float opacity) {
  return ImVec4(static_cast<float>(colour.red) / 255.0F, static_cast<float>(colour.green) / 255.0F,
                static_cast<float>(colour.blue) / 255.0F, opacity);
}

void remember_place(Actions& actions, std::string_view name) {
  if (actions.publish_places) {
    const ImVec2 low = ImGui::GetItemRectMin();
    const ImVec2 high = ImGui::GetItemRectMax();
    actions.places.push_back({std::string(name), {low.x, low.y, high.x, high.y}});
  }
}

void tip(const Theme& theme, std::string_view text) {
  if (text.empty() || !ImGui::IsItemHovered(ImGuiHoveredFlags_AllowWhenDisabled)) {
    return;
  }
  ImGui::BeginTooltip();
  ImGui::PushTextWrapPos(300 * theme.scale);
  ImGui::TextUnformatted(text.data(), text.data() + text.size());
  ImGui::PopTextWrapPos();
  ImGui::EndTooltip();
}

bool button(const Theme& theme, Actions& actions, const char* name, const char* text, Look look, float width,
            bool enabled) {
  const Colour face = look == Look::chosen ? theme.accent_soft : look == Look::main ? theme.accent : theme.button;
  const Colour hover = look == Look::main     ? mixed(theme.accent, theme.text, 0.25F)
                       : look == Look::chosen ? theme.accent_hover
                                              : theme.button_hover;
  const Colour words = look == Look::main ? theme.on_accent : look == Look::chosen ? theme.accent : theme.text;
  ImGui::PushStyleColor(ImGuiCol_Button, tint(face, look == Look::quiet ? 0.0F : 1.0F));
  ImGui::PushStyleColor(ImGuiCol_ButtonHovered, tint(hover));
  ImGui::PushStyleColor(ImGuiCol_ButtonActive, tint(mixed(hover, theme.text, 0.12F)));
  ImGui::PushStyleColor(ImGuiCol_Text, tint(words));
  ImGui::BeginDisabled(!enabled);
  ImGui::PushID(name);
  const bool pressed = ImGui::Button(text, ImVec2(width, 0));
  ImGui::PopID();
  ImGui::EndDisabled();
  ImGui::PopStyleColor(4);
  remember_place(actions, name);
  return pressed;
}

void command_button(const App& app, Actions& actions, Command command, const char* text, Look look, bool enabled) {
  const CommandInfo& info = info_of(command);
  if (button(app.theme, actions, info.id, text, look, 0, enabled)) {
    actions.run(command);
  }
  const std::string keys = *info.keys != 0 ? fmt::format("  ({})", info.keys) : "";
  tip(app.theme, fmt::format("{}{}{}{}", info.name, keys, *info.tip != 0 ? "\n" : "", info.tip));
}

void heading(const Theme& theme, const char* text) {
  ImGui::Dummy(ImVec2(0, 6 * theme.scale));
  ImGui::PushFont(theme.bold);
  ImGui::TextUnformatted(text);
  ImGui::PopFont();
  const ImVec2 low = ImGui::GetItemRectMin();
  const ImVec2 high = ImGui::GetItemRectMax();
  const float right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
  const float y = (low.y + high.y) / 2;
  if (high.x + 8 * theme.scale < right) {
    ImGui::GetWindowDrawList()->AddLine(ImVec2(high.x + 8 * theme.scale, y), ImVec2(right, y), ink(theme.line));
  }
}

void hint(const Theme& theme, std::string_view text) {
  ImGui::PushStyleColor(ImGuiCol_Text, tint(theme.quiet_text));
  ImGui::PushTextWrapPos(0);
  ImGui::TextUnformatted(text.data(), text.data() + text.size());
  ImGui::PopTextWrapPos();
  ImGui::PopStyleColor();
}

void label(const Theme& theme, const char* text, float share) {
  const float start = ImGui::GetCursorPosX();
  const float wide = ImGui::GetContentRegionAvail().x;
  ImGui::AlignTextToFramePadding();
  ImGui::PushStyleColor(ImGuiCol_Text, tint(theme.text));
  ImGui::TextUnformatted(text);
  ImGui::PopStyleColor();
  ImGui::SameLine();
  ImGui::SetCursorPosX(std::max(ImGui::GetCursorPosX(), start + wide * share));
  ImGui::SetNextItemWidth(-1);
}

void send(const Field& field, Document settings) {
  field.actions.push(ChangeField{std::move(settings), field.name});
}

void text_field(const Field& field, const char* words, std::string Document::*member) {
  label(field.app.theme, words, 0.30F);
  std::string text = field.app.work.design.*member;
  ImGui::PushID(field.name);
  if (ImGui::InputText("##field", &text)) {
    Document settings = settings_of(field.app.work.design);
    settings.*member = text;
    send(field, std::move(settings));
  }
  ImGui::PopID();
  remember_place(field.actions, field.name);
}

bool number_field(const Field& field, const char* words, double& value, double low, double high, const char* form) {
  label(field.app.theme, words);
  ImGui::PushID(field.name);
  double typed = value;
  const bool changed = ImGui::InputDouble("##field", &typed, 0, 0, form);
  ImGui::PopID();
  remember_place(field.actions, field.name);
  tip(field.app.theme, fmt::format("{} to {}", low, high));
  // While a number is being typed it may be too small for a moment ("1" on the way to "16"): kept, if allowed at all.
  if (!changed || typed < low || typed > high) {
    return false;
  }
  value = typed;
  return true;
}

bool count_field(const Field& field, const char* words, int& value, int low, int high) {
  label(field.app.theme, words);
  ImGui::PushID(field.name);
  int typed = value;
  const bool changed = ImGui::InputInt("##field", &typed, 1, 5);
  ImGui::PopID();
  remember_place(field.actions, field.name);
  if (!changed || typed == value) {
    return false;
  }
  typed = std::clamp(typed, low, high);
  const bool differs = typed != value;
  value = typed;
  return differs;
}

void swatch(ImDrawList& list, const Theme& theme, ScreenBox box, Colour colour) {
  const float round = std::min(3 * theme.scale, box.height() / 4);
  list.AddRectFilled({box.left, box.top}, {box.right, box.bottom}, ink(colour), round);
  list.AddRect({box.left, box.top}, {box.right, box.bottom}, ink(theme.text, 0.45F), round);
}

void severity_sign(ImDrawList& list, const Theme& theme, ScreenPoint middle, float radius, Severity severity) {
  const ImVec2 at = to_imgui(middle);
  switch (severity) {
  case Severity::fault: {
    const float reach = radius * 1.15F;
    list.AddQuadFilled({at.x, at.y - reach}, {at.x + reach, at.y}, {at.x, at.y + reach}, {at.x - reach, at.y},
                       ink(theme.fault));
    list.AddLine({at.x - radius * 0.35F, at.y - radius * 0.35F}, {at.x + radius * 0.35F, at.y + radius * 0.35F},
                 ink(theme.panel), 1.6F * theme.scale);
    list.AddLine({at.x - radius * 0.35F, at.y + radius * 0.35F}, {at.x + radius * 0.35F, at.y - radius * 0.35F},
                 ink(theme.panel), 1.6F * theme.scale);
    return;
  }
  case Severity::warning:
    list.AddTriangleFilled({at.x, at.y - radius}, {at.x + radius, at.y + radius * 0.8F},
                           {at.x - radius, at.y + radius * 0.8F}, ink(theme.warning));
    list.AddLine({at.x, at.y - radius * 0.45F}, {at.x, at.y + radius * 0.2F}, ink(theme.panel), 1.6F * theme.scale);
    list.AddCircleFilled({at.x, at.y + radius * 0.5F}, 1.0F * theme.scale, ink(theme.panel));
    return;
  case Severity::note: break;
  }
  list.AddCircle(at, radius * 0.85F, ink(theme.note), 0, 1.6F * theme.scale);
  list.AddCircleFilled(at, radius * 0.32F, ink(theme.note));
}

} // namespace punchwright::editor
