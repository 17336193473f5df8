// Writing what the dialog for files asks for, other than a document's own file.
#pragma once

#include "editor/app.hpp"

#include <filesystem>

namespace punchwright::editor {

// Keeps the dialog, with the reason, where it can't be; asks before files are replaced.
void export_files(App& app, PathDialog dialog, const std::filesystem::path& path, bool replace);

} // namespace punchwright::editor
