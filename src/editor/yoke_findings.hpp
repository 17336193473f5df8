// From finding to finding of the open yoke: what is shown when one is chosen.
#pragma once

#include "editor/app.hpp"

namespace punchwright::editor {

// The finding's size, and where it belongs to a piece or a seam, a view that shows it.
[[nodiscard]] YokeView view_at_finding(const App& app, int finding);

} // namespace punchwright::editor
