// The demos' folder, found from the program's own place first, so that a tree may be moved.
#include "editor/demos.hpp"

#include <algorithm>

namespace punchwright::editor {

namespace fs = std::filesystem;

fs::path demos_folder(const fs::path& program) {
  const fs::path beside = program.parent_path();
  for (const fs::path& folder : {beside.parent_path() / "share" / "punchwright" / "patterns", // installed in PREFIX/bin
                                 beside.parent_path() / "patterns", // built in the source tree
                                 fs::path(PUNCHWRIGHT_DATA) / "patterns"}) {
    std::error_code ignored;
    if (fs::is_directory(folder, ignored)) {
      return folder;
    }
  }
  return {};
}

std::vector<fs::path> demos_in(const fs::path& folder) {
  std::vector<fs::path> demos;
  std::error_code trouble;
  for (fs::directory_iterator entry(folder, trouble), end; !trouble && entry != end; entry.increment(trouble)) {
    if (entry->path().extension() == ".repeat" || entry->path().extension() == ".yoke") {
      demos.push_back(entry->path());
    }
  }
  std::ranges::sort(demos);
  return demos;
}

} // namespace punchwright::editor
