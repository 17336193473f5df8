// How long frames take, and how much memory the editor uses: for the `bench` target.
#pragma once

#include "editor/app.hpp"
#include "editor/window.hpp"

#include <chrono>

namespace punchwright::editor {

// Prints them, a line each: milliseconds, as the mean of `count` frames, and MB. The first frame is counted from
// `start`. Returns the status to end with.
[[nodiscard]] int print_frame_times(App& app, Window& window, int count, std::chrono::steady_clock::time_point start);

} // namespace punchwright::editor
