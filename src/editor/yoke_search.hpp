// Sizes of the open yoke whose stitch counts aren't found at once, worked out in a thread of their own; and where none
// fit, what would. Both can take half a minute for wide pieces, and the window goes on meanwhile.
#pragma once

#include "pieces/no_fit.hpp"
#include "pieces/yoke_plan.hpp"

#include <chrono>
#include <future>
#include <optional>
#include <stop_token>
#include <vector>

namespace punchwright::editor {

struct App;

struct SizeAnswer {
  std::size_t size = 0;
  std::optional<SizePlan> plan;
  std::optional<WouldFit> would_fit; // neither: the search gave up
};

// It ends with the last one who holds it, who waits for what can't be stopped: let `given_up` hold it until it is
// ready.
class YokeSearch {
public:
  YokeSearch(OpenedYoke opened, std::vector<std::size_t> sizes);
  ~YokeSearch();
  YokeSearch(const YokeSearch&) = delete;
  YokeSearch& operator=(const YokeSearch&) = delete;

  void stop() { stop_.request_stop(); }
  [[nodiscard]] bool ready() const;
  [[nodiscard]] std::vector<SizeAnswer> take(); // waits for it; once

private:
  std::stop_source stop_;
  std::future<std::vector<SizeAnswer>> answers_;
};

// Begins what the yoke's page waits for once the yoke has come to rest, and takes what is ready. How long to wait
// before looking again; none where nothing is worked out.
struct YokeProgress {
  std::optional<std::chrono::milliseconds> look_again;
  bool taken = false;
};
YokeProgress follow_yoke_search(App& app);
// Begins it and waits for it: for pictures, and for tests.
void finish_yoke_search(App& app);

} // namespace punchwright::editor
