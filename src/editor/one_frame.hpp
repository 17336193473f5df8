// One frame from what has changed to what is applied.
#pragma once

#include "editor/actions.hpp"
#include "editor/app.hpp"
#include "editor/window.hpp"

namespace punchwright::editor {

// Caches and pictures brought up to date for what shows, and put where the window draws them from.
void prepare_pictures(App& app, Window& window);

struct FrameWishes {
  bool publish_places = false; // where each thing stands, for tests
  bool draw = true;            // on the screen; else it is only built
};

// Builds one frame and carries out what came of it. Returns that.
Actions one_frame(App& app, Window& window, const FrameWishes& wishes);

} // namespace punchwright::editor
