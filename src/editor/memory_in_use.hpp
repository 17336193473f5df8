// How much memory the program holds for itself, for the figures of the benchmark.
#pragma once

#include <optional>

namespace punchwright::editor {

// Anonymous resident memory of this process, MiB (the kernel's smaps_rollup, proc_pid_smaps(5)); absent where the
// kernel doesn't tell.
[[nodiscard]] std::optional<double> anonymous_megabytes();

} // namespace punchwright::editor
