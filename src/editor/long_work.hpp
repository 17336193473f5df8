// What takes longer than a frame on a large drawing, worked out in a thread of its own while the window goes on; on a
// small one at once. What comes of it is taken between two frames, as long as the drawing is the one that was asked
// about.
#pragma once

#include "editor/beside.hpp"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <string>

namespace punchwright::editor {

struct App;

// Changes the app by what was worked out.
using Taking = std::function<void(App&)>;

struct LongWork {
  LongWork(const App& app, std::function<Taking()> work);

  std::uint64_t opening = 0; // of the drawing that was asked about
  std::uint64_t revision = 0;
  Beside<Taking> beside; // can't be stopped
};

// At once where the drawing has that many stitches at most. `work` is called in another thread: it holds copies of all
// that it looks at. `meanwhile` is what the status line says until then.
void work_out(App& app, std::size_t most_stitches_at_once, const std::string& meanwhile, std::function<Taking()> work);
// Nobody waits for it any more. False: nothing was worked out.
bool give_up_long_work(App& app);

// Takes what is ready, unless something is in the hand.
Progress follow_long_work(App& app);
// Waits for it: for pictures, and for tests.
void finish_long_work(App& app);

} // namespace punchwright::editor
