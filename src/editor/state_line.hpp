// One line of JSON a frame, for tests and scripts that drive the window: they wait for states, never for times.
#pragma once

#include "editor/actions.hpp"

#include <cstdint>
#include <string>

namespace punchwright::editor {

struct FrameFacts {
  std::uint64_t number = 0; // of the frame, from 1
  bool idle = false;        // nothing more will be drawn until something happens
};

[[nodiscard]] std::string state_line(const App& app, const Actions& actions, const FrameFacts& facts);

} // namespace punchwright::editor
