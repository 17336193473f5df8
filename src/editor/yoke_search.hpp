// Sizes of the open yoke whose stitch counts aren't found at once, worked out in a thread of their own; and where none
// fit, what would. Both can take half a minute for wide pieces, and the window goes on meanwhile.
#pragma once

#include "editor/beside.hpp"
#include "pieces/no_fit.hpp"
#include "pieces/yoke_plan.hpp"

#include <optional>
#include <vector>

namespace punchwright::editor {

struct App;

struct SizeAnswer {
  std::size_t size = 0;
  std::optional<SizePlan> plan;
  std::optional<WouldFit> would_fit; // neither: the search gave up
};

// What can't be stopped makes the last one who holds it wait: let `given_up` hold it until it is ready.
using YokeSearch = Beside<std::vector<SizeAnswer>>;

// Begins what the yoke's page waits for once the yoke has come to rest, and takes what is ready.
Progress follow_yoke_search(App& app);
// Begins it and waits for it: for pictures, and for tests.
void finish_yoke_search(App& app);

} // namespace punchwright::editor
