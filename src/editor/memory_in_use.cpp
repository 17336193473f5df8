// The sum that the kernel keeps of a process' mappings, and what malloc and Dear ImGui are told to give back.
#include "editor/memory_in_use.hpp"

#include <algorithm>
#include <fstream>
#include <imgui_internal.h>
#include <malloc.h>
#include <string>

namespace punchwright::editor {

std::optional<double> anonymous_megabytes() {
  std::ifstream rollup("/proc/self/smaps_rollup");
  for (std::string word; rollup >> word;) {
    if (double kilobytes = 0; word == "Anonymous:" && rollup >> kilobytes) {
      return kilobytes / 1024;
    }
  }
  return std::nullopt;
}

void give_large_blocks_back() {
  constexpr int large = 8 << 20; // bytes; it no longer grows with what is freed then
  ::mallopt(M_MMAP_THRESHOLD, large);
  ::mallopt(M_TRIM_THRESHOLD, large);
}

void give_free_memory_back() {
  ::malloc_trim(0);
}

void give_drawing_room_back() {
  constexpr int least_vertices = 32'768; // below that it isn't worth the while
  constexpr int times_too_large = 4;
  for (ImGuiWindow* const window : ImGui::GetCurrentContext()->Windows) {
    ImDrawList& list = window->DrawListInst;
    if (list.VtxBuffer.Capacity > times_too_large * std::max(list.VtxBuffer.Size, least_vertices)) {
      list._ClearFreeMemory();
    }
  }
}

} // namespace punchwright::editor
