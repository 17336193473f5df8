// The editor's own file chooser, inside the dialog.
#pragma once

#include "editor/actions.hpp"

namespace punchwright::editor {

void path_panel(const App& app, Actions& actions, const PathDialog& dialog);

} // namespace punchwright::editor
