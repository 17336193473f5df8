// The sum that the kernel keeps of a process' mappings.
#include "editor/memory_in_use.hpp"

#include <fstream>
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

} // namespace punchwright::editor
