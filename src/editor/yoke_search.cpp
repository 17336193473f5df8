// Beginning, following, giving up. What was asked is a copy: the yoke goes on changing.
#include "editor/yoke_search.hpp"

#include "editor/app.hpp"

#include <utility>

namespace punchwright::editor {
namespace {

std::vector<SizeAnswer> answers_to(const OpenedYoke& opened, const std::vector<std::size_t>& sizes,
                                   const std::stop_token& stop) {
  std::vector<SizeAnswer> answers;
  for (const std::size_t size : sizes) {
    if (stop.stop_requested()) {
      break;
    }
    PlanTried tried = try_plan(opened, size, most_count_parts, stop);
    SizeAnswer answer{size, std::move(tried.plan), std::nullopt};
    if (!answer.plan && !tried.gave_up) {
      answer.would_fit = what_would_fit(opened, size, stop);
    }
    answers.push_back(std::move(answer));
  }
  return answers;
}

bool is_of_the_open_yoke(const App& app) {
  const YokeCache& cache = app.caches.yoke;
  return app.yoke.opened && cache.opening == app.yoke.opening && cache.revision == app.yoke.revision;
}

void begin(App& app) {
  YokeCache& cache = app.caches.yoke;
  if (!cache.search && !cache.waiting.empty() && is_of_the_open_yoke(app)) {
    cache.search =
        std::make_shared<YokeSearch>([yoke = *app.yoke.opened, sizes = cache.waiting](const std::stop_token& stop) {
          return answers_to(yoke, sizes, stop);
        });
  }
}

void take(App& app) {
  const std::shared_ptr<YokeSearch> search = std::exchange(app.caches.yoke.search, nullptr);
  if (is_of_the_open_yoke(app)) {
    take_yoke_answers(app, search->take());
  }
}

} // namespace

Progress follow_yoke_search(App& app) {
  YokeCache& cache = app.caches.yoke;
  std::erase_if(cache.given_up, [](const auto& search) { return search->ready(); });
  if (!cache.search) {
    if (cache.waiting.empty() || !is_of_the_open_yoke(app)) {
      return {};
    }
    // A yoke that changes in every frame, as in a drag, is not searched: only one that was left alone for a look.
    if (std::exchange(cache.looked_at, cache.planned) == cache.planned) {
      begin(app);
    }
    return not_ready_yet;
  }
  if (!cache.search->ready()) {
    return not_ready_yet;
  }
  take(app);
  return {std::nullopt, true};
}

void finish_yoke_search(App& app) {
  begin(app);
  if (app.caches.yoke.search) {
    take(app);
  }
}

} // namespace punchwright::editor
