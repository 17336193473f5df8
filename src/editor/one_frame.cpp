// Nothing changes while a frame is built: what panels send is applied after it.
#include "editor/one_frame.hpp"

#include "editor/memory_in_use.hpp"
#include "editor/panels.hpp"

#include <algorithm>
#include <chrono>
#include <optional>
#include <string>
#include <utility>

namespace punchwright::editor {
namespace {

bool asks_for_clipboard(const Actions& actions) {
  return std::ranges::any_of(actions.list, [](const Action& action) {
    const Run* const run = std::get_if<Run>(&action);
    return run != nullptr && (run->command == Command::paste || run->command == Command::fill_marked);
  });
}

} // namespace

void prepare_pictures(App& app, Window& window) {
  refresh(app);
  window.upload(app.caches.piece);
  window.upload(app.caches.preview);
  window.upload(app.caches.yoke.picture);
  if (stitches_show(app)) {
    window.make(app.caches.stitch);
  }
}

Actions one_frame(App& app, Window& window, const FrameWishes& wishes) {
  prepare_pictures(app, window);
  Actions actions;
  actions.publish_places = wishes.publish_places;
  const Portion input = window.begin_frame(app);
  draw_frame(app, input, actions);
  actions.unsettled = something_opens() || actions.unsettled;
  window.end_frame(app, wishes.draw && !window.input_waiting());
  give_drawing_room_back();
  app.session.clipboard = asks_for_clipboard(actions) ? window.clipboard_text() : std::string();
  app.session.now = std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
  for (const Action& action : actions.list) {
    apply(app, action);
  }
  if (const auto copied = std::exchange(app.session.copied, std::nullopt)) {
    window.set_clipboard_text(*copied);
  }
  return actions;
}

} // namespace punchwright::editor
