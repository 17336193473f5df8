// The piece as it will look, knit side or purl side.
#include "editor/panels.hpp"
#include "editor/widgets.hpp"

#include <cmath>
#include <cstdint>
#include <fmt/format.h>

namespace punchwright::editor {

void piece_panel(const App& app, Actions& actions, const ScreenBox& box, Placed& placed) {
  const Theme& theme = app.theme;
  const float unit = theme.scale;
  begin_part(app, "piece", box);
  const auto side = [&](const char* name, const char* words, Face face) {
    if (button(theme, actions, name, words, app.view.face == face ? Look::chosen : Look::quiet)) {
      actions.push(ChooseFace{face});
    }
    tip(theme, face == Face::knit ? "As it is worn (K changes sides)" : "As it hangs on the machine (K changes sides)");
  };
  const float wide = ImGui::CalcTextSize("Knit sidePurl side").x + 4 * ImGui::GetStyle().FramePadding.x + 4 * unit;
  ImGui::PushFont(theme.bold);
  const bool room_for_title = ImGui::CalcTextSize("The piece").x + wide + 36 * unit < box.width();
  if (room_for_title) {
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted("The piece");
  }
  ImGui::PopFont();
  if (room_for_title) {
    ImGui::SameLine(box.width() - wide - 12 * unit);
  }
  side("knit side", "Knit side", Face::knit);
  ImGui::SameLine(0, 4 * unit);
  side("purl side", "Purl side", Face::purl);

  const Document& design = app.work.design;
  const int stitches = stitches_of(design);
  const auto rows = app.caches.rows.rows.size();
  const std::string size =
      fmt::format("{} stitches × {} rows: {:.0f} × {:.0f} cm", stitches, rows, stitches * design.gauge.stitch_mm() / 10,
                  static_cast<double>(rows) * design.gauge.row_mm() / 10);
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const float text = ImGui::CalcTextSize(size.c_str(), nullptr, false, ImGui::GetContentRegionAvail().x).y;
  const ScreenBox room{std::floor(corner.x), std::floor(corner.y), std::floor(box.right - 12 * unit),
                       std::max(std::floor(corner.y) + 1, std::floor(box.bottom - text - 16 * unit))};
  placed.piece = room;
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.AddRectFilled({room.left, room.top}, {room.right, room.bottom}, ink(theme.ground), 6 * unit);
  const PiecePicture& piece = app.caches.piece;
  if (piece.texture != 0 && piece.width > 0) {
    const float left = std::floor(room.middle().x - static_cast<float>(piece.width) / 2);
    const float top = std::floor(room.middle().y - static_cast<float>(piece.height) / 2);
    list.AddImage(reinterpret_cast<ImTextureID>(static_cast<std::intptr_t>(piece.texture)), {left, top},
                  {left + static_cast<float>(piece.width), top + static_cast<float>(piece.height)});
  }
  ImGui::SetCursorScreenPos({room.left, room.bottom + 4 * unit});
  hint(theme, size);
  list.AddLine({box.left + 0.5F, box.top}, {box.left + 0.5F, box.bottom}, ink(theme.line));
  ImGui::End();
}

} // namespace punchwright::editor
