// Keeps the screen from going dark while somebody knits by it, through what the desktop offers for that: the
// freedesktop.org screen saver interface, else the desktop portal. Where there is neither, nothing happens.
#pragma once

#include <memory>

namespace punchwright::editor {

class ScreenAwake {
public:
  ScreenAwake();
  ~ScreenAwake(); // lets the screen sleep again, and waits a moment at most for the desktop to hear of it
  ScreenAwake(const ScreenAwake&) = delete;
  ScreenAwake& operator=(const ScreenAwake&) = delete;

  // Returns at once: the desktop is spoken to on a thread of its own, which ends when it has answered.
  void keep(bool awake);

private:
  struct Talk;
  std::shared_ptr<Talk> talk_; // the last one
  bool awake_ = false;
};

} // namespace punchwright::editor
