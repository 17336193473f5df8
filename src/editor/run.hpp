// The editor from start to end.
#pragma once

#include "editor/options.hpp"

namespace punchwright::editor {

// The status to end with: 0 done, 2 no window can be opened or the picture can't be written.
[[nodiscard]] int run(const Options& options);

} // namespace punchwright::editor
