// Names of temporary files, and the clearing away of those that a killed process left behind.
// ".puffins.repeat.punchwright-harbour-4711-0.tmp": the target, the machine, the process, a count.
#pragma once

#include <filesystem>

namespace punchwright {

// In the target's folder; the target's name is shortened where a file system would refuse the whole.
[[nodiscard]] std::filesystem::path temporary_name(const std::filesystem::path& target, int count);

// Removes temporary files of this target whose process is gone. Errors don't matter: the next saving tries again.
void clear_leftovers(const std::filesystem::path& target);

} // namespace punchwright
