// Where the demos lie: beside the program in its own tree, or where it was installed.
#pragma once

#include <filesystem>
#include <vector>

namespace punchwright::editor {

// The first of the candidates that is a folder; empty: there are no demos.
[[nodiscard]] std::filesystem::path demos_folder(const std::filesystem::path& program);
// Its .repeat files by name.
[[nodiscard]] std::vector<std::filesystem::path> demos_in(const std::filesystem::path& folder);

} // namespace punchwright::editor
