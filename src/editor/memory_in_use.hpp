// How much memory the program holds for itself, for the figures of the benchmark; and what it gives back, so that a
// long day's work takes no more than its largest moment needs.
#pragma once

#include <optional>

namespace punchwright::editor {

// Anonymous resident memory of this process, MiB (the kernel's smaps_rollup, proc_pid_smaps(5)); absent where the
// kernel doesn't tell.
[[nodiscard]] std::optional<double> anonymous_megabytes();

// From now on: blocks of 8 MiB and more go back to the system when they are freed, such as the rows of a design that
// was knitted a thousand times (mallopt(3)). Else glibc keeps up to 32 MB of each kind for the next time; smaller ones
// are worth keeping for the next frame.
void give_large_blocks_back();

// What was freed between blocks that are still in use (malloc_trim(3)): glibc by itself gives back only what lies above
// all others, so that one small block can keep a day's largest moment. Takes a few milliseconds: for when nothing
// happens.
void give_free_memory_back();

// Between two frames, once the last one is drawn: where a window's drawing took far less room than one before it (a
// mend of 20,000 stitches in frames takes 30 MB), that room is given back. Dear ImGui keeps it as long as the window is
// open.
void give_drawing_room_back();

} // namespace punchwright::editor
