// The settings of the printed card, which stand on the card's tab and beside the print preview.
#pragma once

#include "editor/actions.hpp"

namespace punchwright::editor {

void paper_field(const App& app, Actions& actions);
void loop_field(const App& app, Actions& actions);
// What the printed rulers measured, and the correction that follows from it.
void correction_fields(const App& app, Actions& actions);

} // namespace punchwright::editor
