// Work in a thread of its own while the window goes on: it begins when it is made, can be asked to stop, and is waited
// for by the last one who holds it.
#pragma once

#include <chrono>
#include <functional>
#include <future>
#include <optional>
#include <stop_token>
#include <utility>

namespace punchwright::editor {

template <class Answer> class Beside {
public:
  // `work` runs in another thread: it holds copies of all that it looks at, and ends soon once it is asked to stop.
  explicit Beside(std::function<Answer(const std::stop_token&)> work)
      : answer_(std::async(std::launch::async,
                           [begun = std::move(work), stop = stop_.get_token()] { return begun(stop); })) {}
  ~Beside() {
    stop();
    if (answer_.valid()) {
      answer_.wait();
    }
  }
  Beside(const Beside&) = delete;
  Beside& operator=(const Beside&) = delete;

  void stop() { stop_.request_stop(); }
  [[nodiscard]] bool ready() const {
    return !answer_.valid() || answer_.wait_for(std::chrono::seconds(0)) == std::future_status::ready;
  }
  [[nodiscard]] Answer take() { return answer_.get(); } // waits for it; once

private:
  std::stop_source stop_;
  std::future<Answer> answer_;
};

// What came of looking at it between two frames.
struct Progress {
  std::optional<std::chrono::milliseconds> look_again; // after that time; none: nothing is worked out
  bool taken = false;                                  // and shows in the next frame
};
constexpr Progress not_ready_yet{std::chrono::milliseconds(10), false};

} // namespace punchwright::editor
