// Beginning it, following it, giving it up.
#include "editor/long_work.hpp"

#include "editor/applying.hpp"
#include "words/words.hpp"

#include <utility>

namespace punchwright::editor {
namespace {

// It would be lost, or would be in the way.
bool something_in_hand(const App& app) {
  const Session& session = app.session;
  return session.stroke || session.line_drag || session.floating || is_open(session.dialog);
}

void take_result(App& app) {
  const std::shared_ptr<LongWork> work = std::exchange(app.session.long_work, nullptr);
  if (work->opening == app.work.opening && work->revision == app.work.history.revision()) {
    work->beside.take()(app);
  } else {
    say(app, tr("The drawing has changed since it was asked: ask again"), Tone::trouble);
  }
}

} // namespace

LongWork::LongWork(const App& app, std::function<Taking()> work)
    : opening(app.work.opening), revision(app.work.history.revision()),
      beside([begun = std::move(work)](const std::stop_token&) { return begun(); }) {}

void work_out(App& app, std::size_t most_stitches_at_once, const std::string& meanwhile, std::function<Taking()> work) {
  give_up_long_work(app);
  const Grid& grid = app.work.design.grid;
  const auto stitches = static_cast<std::size_t>(grid.width()) * static_cast<std::size_t>(grid.height());
  if (stitches <= most_stitches_at_once) {
    return work()(app);
  }
  app.session.long_work = std::make_shared<LongWork>(app, std::move(work));
  say(app, meanwhile);
}

bool give_up_long_work(App& app) {
  if (!app.session.long_work) {
    return false;
  }
  // Letting go of it would wait for its thread.
  app.session.given_up_work.push_back(std::exchange(app.session.long_work, nullptr));
  return true;
}

Progress follow_long_work(App& app) {
  std::erase_if(app.session.given_up_work, [](const auto& work) { return work->beside.ready(); });
  if (!app.session.long_work) {
    return {};
  }
  if (!app.session.long_work->beside.ready()) {
    return not_ready_yet;
  }
  if (something_in_hand(app)) {
    return {}; // looked at again when that is let go
  }
  take_result(app);
  return {std::nullopt, true};
}

void finish_long_work(App& app) {
  if (app.session.long_work) {
    take_result(app);
  }
}

} // namespace punchwright::editor
