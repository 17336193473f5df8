// Writing what the dialog for files asks for, other than a document's own file.
#pragma once

#include "editor/app.hpp"

#include <filesystem>
#include <string>

namespace punchwright::editor {

// What the names of the design's files begin with, and the name that a file for that purpose is first offered.
[[nodiscard]] std::string name_without_kind(const App& app);
[[nodiscard]] std::string usual_name(const App& app, Purpose purpose);

// The print preview on the sheet that was looked at last, or on one that the machine has.
void show_preview(App& app);

// Keeps the dialog, with the reason, where it can't be; asks before files are replaced.
void export_files(App& app, PathDialog dialog, const std::filesystem::path& path, bool replace);

} // namespace punchwright::editor
