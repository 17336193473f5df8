// Menus' entries, measured and written.
#include "editor/menu_entries.hpp"

#include "editor/widgets.hpp"

#include <cmath>
#include <imgui_internal.h>
#include <utility>

namespace punchwright::editor {

namespace {

struct Written {
  std::string words; // with their line breaks
  ImVec2 size;
  float key = 0; // px wide
  EntryPlaces places;

  [[nodiscard]] float height() const { return size.y + (places.key_below ? ImGui::GetTextLineHeight() : 0); }
};

Written written(const MenuLayout& layout, const MenuEntry& entry) {
  const float key = ImGui::CalcTextSize(entry.key.c_str()).x;
  const EntryPlaces places = entry_places(layout, ImGui::CalcTextSize(entry.words.c_str()).x, key);
  std::string words = in_lines(entry.words, places.words_room);
  const ImVec2 size = ImGui::CalcTextSize(words.c_str());
  return {std::move(words), size, key, places};
}

void remember_text(Actions& actions, const std::string& name, ImVec2 low, ImVec2 size) {
  if (actions.publish_places) {
    actions.places.push_back({name, {low.x, low.y, low.x + size.x, low.y + size.y}});
  }
}

// Whether the pointer has rested since the menu that is being drawn opened.
bool pointer_rests() {
  float& way = *ImGui::GetStateStorage()->GetFloatRef(ImHashStr("way of the pointer")); // px since it opened
  const ImGuiIO& io = ImGui::GetIO();
  const float enough = ImGui::GetFontSize() / 3;
  way += std::abs(io.MouseDelta.x) + std::abs(io.MouseDelta.y) + (io.MouseWheel != 0 ? enough : 0);
  if (ImGui::IsWindowAppearing()) {
    way = 0;
  }
  return way < enough && pointer_leads();
}

} // namespace

MenuLayout menu_layout_here(float words, float keys) {
  const ImGuiStyle& style = ImGui::GetStyle();
  const float borders = 2 * (ImGui::GetCurrentWindow()->WindowPadding.x + style.DisplaySafeAreaPadding.x);
  const float room = ImGui::GetIO().DisplaySize.x - borders - style.ScrollbarSize; // a long menu scrolls
  MenuLayout layout = menu_layout(words, keys, room, style.ItemSpacing.x, ImGui::GetFontSize());
  layout.waits = pointer_rests();
  return layout;
}

float width_of_menu_title(const char* words) {
  return ImGui::CalcTextSize(words).x;
}

float height_of_entry(const MenuLayout& layout, const MenuEntry& entry) {
  return written(layout, entry).height();
}

void write_entry(const Theme& theme, Actions& actions, const MenuLayout& layout, const MenuEntry& entry,
                 ScreenPoint corner) {
  const Written text = written(layout, entry);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const ImVec2 low = to_imgui(corner);
  list.AddText(low, ink(entry.usable ? theme.text : theme.quiet_text), text.words.c_str());
  remember_text(actions, entry.place + " words", low, text.size);
  if (!entry.key.empty()) {
    const ImVec2 key(low.x + text.places.key_left, low.y + (text.places.key_below ? text.size.y : 0));
    list.AddText(key, ink(theme.quiet_text), entry.key.c_str());
    remember_text(actions, entry.place + " key", key, {text.key, ImGui::GetTextLineHeight()});
  }
}

bool menu_entry(const Theme& theme, Actions& actions, const MenuLayout& layout, const MenuEntry& entry) {
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  // As ImGui's own entries: chosen where the button is let go, and gone to where the pointer rests. Keys choose whether
  // the menu waits for the pointer or not.
  const bool not_meant = layout.waits && ImGui::IsMouseReleased(ImGuiMouseButton_Left);
  const int as_in_menus = ImGuiSelectableFlags_SelectOnRelease | ImGuiSelectableFlags_SetNavIdOnHover |
                          ImGuiSelectableFlags_SpanAvailWidth | (not_meant ? ImGuiSelectableFlags_DontClosePopups : 0);
  ImGui::PushID(entry.place.c_str());
  ImGui::BeginDisabled(!entry.usable);
  const bool chosen = ImGui::Selectable("", false, as_in_menus, {layout.wide, height_of_entry(layout, entry)});
  remember_place(actions, entry.place);
  ImGui::EndDisabled();
  ImGui::PopID();
  write_entry(theme, actions, layout, entry, from_imgui(corner));
  if (entry.ticked) {
    const float size = ImGui::GetFontSize();
    ImGui::RenderCheckMark(ImGui::GetWindowDrawList(), {corner.x + layout.wide - size * 0.9F, corner.y + size * 0.067F},
                           ink(theme.text), size * 0.866F);
  }
  return chosen && !not_meant;
}

} // namespace punchwright::editor
