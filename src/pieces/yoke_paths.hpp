// The paths that a yoke names, of its tiers and its machine: whole, and as seen from a folder.
// A yoke that is written elsewhere than it was read from names the same files.
#pragma once

#include "pieces/yoke.hpp"

#include <filesystem>

namespace punchwright {

// With whole paths, as seen from the folder of `file`; and as the file in `folder` names them.
[[nodiscard]] Yoke with_whole_paths(Yoke yoke, const std::filesystem::path& file);
[[nodiscard]] Yoke as_written_in(Yoke yoke, const std::filesystem::path& folder);

} // namespace punchwright
