// Folders in which a program keeps things for its user: settings, work between two savings, the place at the bench.
// XDG's Base Directory Specification, 0.8: what is missing is made with mode 0700, and what is there is left as it is.
#pragma once

#include "design/result.hpp"

#include <filesystem>

namespace punchwright {

// Makes the folder and those above it. The home folder itself is never made: where it is missing, nobody lives there,
// or its disk isn't there yet, and what was written would lie below the place where that one comes. An empty home:
// there is none to look for.
[[nodiscard]] Failure make_user_folder(const std::filesystem::path& folder, const std::filesystem::path& home);

} // namespace punchwright
