// Frames are built as in use, of whatever is open; nothing is asserted.
#include "editor/frame_times.hpp"

#include "editor/memory_in_use.hpp"
#include "editor/one_frame.hpp"
#include "editor/panels.hpp"
#include "pieces/yoke.hpp"

#include <cstdio>
#include <fmt/format.h>
#include <utility>

namespace punchwright::editor {
namespace {

using Clock = std::chrono::steady_clock;

double milliseconds(Clock::duration time) {
  return std::chrono::duration<double, std::milli>(time).count();
}

// To and fro by a millimetre, as one drag.
void drag_a_width(App& app) {
  Yoke yoke = app.yoke.opened->yoke;
  double& cm = yoke.pieces[widths_of(yoke, 0)].bottom_cm.values.front();
  cm += app.yoke.revision % 2 == 0 ? 0.1 : -0.1;
  apply(app, ChangeYoke{std::move(yoke), "a width"});
}

} // namespace

int print_frame_times(App& app, Window& window, int count, Clock::time_point start) {
  one_frame(app, window, {});
  const double first_ms = milliseconds(Clock::now() - start);
  for (int frame = 0; frame < 10; ++frame) {
    one_frame(app, window, {}); // settle
  }
  Clock::duration building{};
  const Clock::time_point start_building = Clock::now();
  for (int frame = 0; frame < count; ++frame) {
    prepare_pictures(app, window);
    Actions actions;
    const Portion input = window.begin_frame(app);
    const Clock::time_point before = Clock::now();
    draw_frame(app, input, actions);
    window.end_frame(app, false);
    building += Clock::now() - before;
    for (const Action& action : actions.list) {
      apply(app, action);
    }
  }
  const double whole = milliseconds(Clock::now() - start_building) / count;
  // The same with a stitch changed in every frame: checks, rows and the picture of the piece are made anew. Of a yoke a
  // width is dragged instead.
  const auto draw_and_show = [&] {
    app.yoke.shown ? drag_a_width(app) : apply(app, Run{Command::toggle_stitch});
    one_frame(app, window, {.draw = false});
  };
  for (int frame = 0; frame < 50; ++frame) {
    draw_and_show(); // whatever is kept for later frames has been made now
  }
  give_free_memory_back(); // as where nothing happens for a while
  const double memory_before = anonymous_megabytes().value_or(0);
  const Clock::time_point start_drawing = Clock::now();
  for (int frame = 0; frame < count; ++frame) {
    draw_and_show();
  }
  const double drawing = milliseconds(Clock::now() - start_drawing) / count;
  give_free_memory_back();
  fmt::print("first_frame_ms {:.3f}\nframe_build_ms {:.4f}\nframe_ms {:.4f}\nframe_after_stroke_ms {:.4f}\n"
             "anonymous_mb {:.1f}\nanonymous_mb_after_strokes {:.1f}\n",
             first_ms, milliseconds(building) / count, whole, drawing, memory_before,
             anonymous_megabytes().value_or(0));
  return std::fflush(stdout) == 0 ? 0 : 2;
}

} // namespace punchwright::editor
