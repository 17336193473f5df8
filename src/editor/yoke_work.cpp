// Steps of a yoke.
#include "editor/yoke_work.hpp"

#include <algorithm>
#include <utility>

namespace punchwright::editor {

void record_step(YokeWork& work, const Yoke& before, const std::string& field) {
  const bool goes_on = !work.open_field.empty() && work.open_field == field && work.done == work.steps.size() &&
                       work.done > 0 && work.saved_at != work.done;
  ++work.revision;
  if (goes_on) {
    work.steps.back().after = work.opened->yoke;
    return;
  }
  if (work.saved_at && *work.saved_at > work.done) {
    work.saved_at.reset();
  }
  work.steps.resize(work.done);
  work.steps.push_back({field, before, work.opened->yoke});
  work.done = work.steps.size();
}

KeptYoke kept_yoke(const YokeWork& work, std::size_t most_steps) {
  KeptYoke kept{work.opened->yoke, {}, {}};
  const std::size_t back = std::min(work.done, most_steps);
  for (std::size_t step = work.done; step > work.done - back; --step) {
    kept.done.push_back({work.steps[step - 1].name, work.steps[step - 1].before});
  }
  const std::size_t end = std::min(work.steps.size(), work.done + most_steps);
  for (std::size_t step = work.done; step < end; ++step) {
    kept.undone.push_back({work.steps[step].name, work.steps[step].after});
  }
  return kept;
}

void put_steps(YokeWork& work, KeptYoke kept) {
  work.steps.clear();
  Yoke after = kept.yoke;
  for (KeptYoke::Step& step : kept.done) {
    work.steps.push_back({std::move(step.name), step.other, std::move(after)});
    after = std::move(step.other);
  }
  std::ranges::reverse(work.steps);
  work.done = work.steps.size();
  Yoke before = std::move(kept.yoke);
  for (KeptYoke::Step& step : kept.undone) {
    work.steps.push_back({std::move(step.name), std::move(before), step.other});
    before = std::move(step.other);
  }
  work.saved_at.reset();
}

bool has_yoke_name(const std::filesystem::path& path) {
  return path.extension() == ".yoke";
}

} // namespace punchwright::editor
