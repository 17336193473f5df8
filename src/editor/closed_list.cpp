// Measured in the face that is chosen.
// Whole words are kept from the end.
#include "editor/closed_list.hpp"

#include "editor/widgets.hpp"

namespace punchwright::editor {

std::string shortened_in_middle(const std::string& text, float room) {
  if (ImGui::CalcTextSize(text.c_str()).x <= room) {
    return text;
  }
  // Whole words from the end, up to half the room; then as much of the beginning as fits.
  std::size_t end = text.size();
  for (std::size_t from = text.rfind(' '); from != std::string::npos && from > 0; from = text.rfind(' ', from - 1)) {
    if (ImGui::CalcTextSize(text.c_str() + from).x > room / 2) {
      break;
    }
    end = from;
  }
  const std::string rest = text.substr(end);
  return end == text.size() ? shortened(text, room)
                            : shortened(text.substr(0, end), room - ImGui::CalcTextSize(rest.c_str()).x) + rest;
}

float room_in_closed_list(float wide) {
  return wide - ImGui::GetFrameHeight() - 2 * ImGui::GetStyle().FramePadding.x;
}

} // namespace punchwright::editor
