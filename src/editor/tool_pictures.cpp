// Small pictures of drawings.
#include "editor/tool_pictures.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright::editor {

ScreenBox box_of_thumbnail(const Grid& drawing, const ScreenBox& box, double stitch_by_row) {
  const auto columns = static_cast<float>(drawing.width());
  const auto rows = static_cast<float>(drawing.height());
  const float tall =
      std::min(box.height() / rows, box.width() / columns / static_cast<float>(stitch_by_row)); // px a row
  const float wide = tall * static_cast<float>(stitch_by_row);
  const float left = std::round(box.middle().x - wide * columns / 2);
  const float low = std::round(box.middle().y + tall * rows / 2);
  return {left, low - tall * rows, left + wide * columns, low};
}

void thumbnail(const Theme& theme, const Grid& drawing, const ScreenBox& box, double stitch_by_row) {
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const ScreenBox there = box_of_thumbnail(drawing, box, stitch_by_row);
  const float wide = there.width() / static_cast<float>(drawing.width());
  const float tall = there.height() / static_cast<float>(drawing.height());
  const float left = there.left;
  const float low = there.bottom;
  // Of a large drawing not every stitch, since nobody sees them.
  const int step = std::max(1, static_cast<int>(1 / std::max(0.001F, std::min(wide, tall))));
  for (int row = 0; row < drawing.height(); row += step) {
    for (int column = 0; column < drawing.width(); column += step) {
      if (drawing.at(column, row)) {
        const ImVec2 corner{left + static_cast<float>(column) * wide, low - static_cast<float>(row + step) * tall};
        const auto size = static_cast<float>(step);
        list.AddRectFilled(corner, {corner.x + size * wide, corner.y + size * tall}, ink(theme.text));
      }
    }
  }
}

bool picture_button(const App& app, Actions& actions, const std::string& name, const Grid& drawing, ImVec2 size,
                    bool chosen, double stitch_by_row) {
  const Theme& theme = app.theme;
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  ImGui::PushID(name.c_str());
  const bool pressed = ImGui::InvisibleButton("picture", size);
  ImGui::PopID();
  remember_place(actions, name, Stop::Kind::button);
  if (!ImGui::IsItemVisible()) {
    return pressed;
  }
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const ImVec2 end{corner.x + size.x, corner.y + size.y};
  const Colour ground = chosen ? theme.accent_soft : ImGui::IsItemHovered() ? theme.button_hover : theme.field;
  list.AddRectFilled(corner, end, ink(ground), 4 * theme.scale);
  list.AddRect(corner, end, ink(chosen ? theme.accent : theme.line), 4 * theme.scale, 0,
               (chosen ? 2.0F : 1.0F) * theme.scale);
  const float margin = 5 * theme.scale;
  thumbnail(theme, drawing, {corner.x + margin, corner.y + margin, end.x - margin, end.y - margin}, stitch_by_row);
  return pressed;
}

} // namespace punchwright::editor
