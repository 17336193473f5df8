// The editor's frames without a window or a display: everything of a frame but OpenGL. What the system would send is
// put into the same queue, and ImGui is fed from it as in the window.
#pragma once

#include "editor/actions.hpp"
#include "editor/input_queue.hpp"

#include <array>
#include <cstdint>
#include <string>
#include <vector>

namespace punchwright::test {

struct FrameTime {
  double wall = 0;      // ms
  double processor = 0; // ms of this thread
};

// How many frames took so long, by the processor.
struct FrameCounts {
  static constexpr std::array below{1, 2, 5, 10, 20, 30, 50}; // ms; the last count is of those that took longer
  std::array<std::uint64_t, below.size() + 1> counts{};
  double longest = 0; // ms

  void add(double ms);
  [[nodiscard]] std::string words() const; // a line each
};

class Frames {
public:
  explicit Frames(editor::App& app);
  ~Frames();
  Frames(const Frames&) = delete;
  Frames& operator=(const Frames&) = delete;

  editor::InputQueue queue;
  std::vector<editor::Action> more; // beside those of the next frame, as from a menu
  FrameCounts counts;

  // Works out what follows from the last changes, builds the frame, carries out what came of it.
  FrameTime build();
  // Frames until the queue is empty, and what is worked out beside them is there, and one for what they changed; the
  // longest of them.
  FrameTime build_all();

private:
  editor::App& app_;
  bool awaits_work_ = false; // that is worked out beside the frames
};

} // namespace punchwright::test
