// The loop: wait, feed, draw, apply. After everything that happens three frames are drawn, then it waits again, so an
// editor that nobody touches uses no processor.
#include "editor/run.hpp"

#include "editor/actions.hpp"
#include "editor/kept_steps.hpp"
#include "editor/kept_work.hpp"
#include "editor/long_work.hpp"
#include "editor/memory_in_use.hpp"
#include "editor/own_motifs.hpp"
#include "editor/panels.hpp"
#include "editor/screen_awake.hpp"
#include "editor/shown_at_start.hpp"
#include "editor/speaker.hpp"
#include "editor/state_line.hpp"
#include "editor/user_settings.hpp"
#include "editor/window.hpp"
#include "editor/wrong_search.hpp"
#include "editor/yoke_search.hpp"
#include "files/files.hpp"
#include "rules/whole_repeats.hpp"
#include "sheets/writers.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <fmt/format.h>
#include <fstream>
#include <iostream>
#include <optional>
#include <utility>
#include <vector>

namespace punchwright::editor {

namespace {

constexpr int frames_after_event = 3; // ImGui settles sizes and hovering over two
constexpr int most_late_frames = 6;   // in which menus and tips come into sight, one opening another

void open_first(App& app, const Options& options) {
  if (!options.file.empty()) {
    std::error_code ignored;
    apply(app, DropFile{std::filesystem::absolute(options.file, ignored)});
  }
  app.view.face = options.face;
  app.view.piece_large = options.large_piece;
  app.view.sight = options.sight;
  if (options.zoom > 0) {
    app.view.zoom = options.zoom;
  }
  app.view.tab = options.tab.value_or(app.view.tab);
  app.view.yoke.shows = options.yoke.value_or(app.view.yoke.shows);
}

bool asks_for_clipboard(const Actions& actions) {
  return std::ranges::any_of(actions.list, [](const Action& action) {
    const Run* const run = std::get_if<Run>(&action);
    return run != nullptr && (run->command == Command::paste || run->command == Command::fill_marked);
  });
}

void make_what_shows(App& app, Window& window) {
  if (stitches_show(app)) {
    window.make(app.caches.stitch);
  }
}

// Builds one frame and carries out what came of it. True where the frame was drawn on the screen.
Actions one_frame(App& app, Window& window, bool publish, bool draw) {
  refresh(app);
  window.upload(app.caches.piece);
  window.upload(app.caches.preview);
  window.upload(app.caches.yoke.picture);
  make_what_shows(app, window);
  Actions actions;
  actions.publish_places = publish;
  const Portion input = window.begin_frame(app);
  draw_frame(app, input, actions);
  actions.unsettled = something_opens() || actions.unsettled;
  window.end_frame(app, draw && !window.input_waiting());
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

bool changes_something(const Actions& actions) {
  return std::ranges::any_of(actions.list,
                             [](const Action& action) { return !std::holds_alternative<Placed>(action); });
}

WindowWishes wishes_for(const Settings& settings, const Options& options) {
  WindowWishes wishes;
  const bool kept = options.width == 0 && settings.window_width > 0 && settings.window_height > 0;
  wishes.width = options.width > 0 ? options.width : kept ? settings.window_width : wishes.width;
  wishes.height = options.height > 0 ? options.height : kept ? settings.window_height : wishes.height;
  wishes.visible = options.picture.empty();
  wishes.maximized = kept && settings.maximized && wishes.visible;
  wishes.scale = options.scale;
  wishes.text_scale = static_cast<float>(settings.text_percent) / 100;
  return wishes;
}

int no_window(const Error& error) {
  std::cerr << said("punchwright-editor: {}.\nWithout a window, use the command line: punchwright check, card, "
                    "needles, rows or fabric FILE (punchwright --help)\n",
                    error.text());
  return 2;
}

using Wait = std::optional<std::chrono::milliseconds>; // none: until something happens

Wait sooner(const Wait& one, const Wait& other) {
  return !one || (other && *other < *one) ? other : one;
}

// What the window keeps for the user beside the files that she saves.
struct Keepers {
  Keepers(const std::filesystem::path& journals, const std::filesystem::path& steps)
      : design(journals, KeptSide::design), yoke(journals, KeptSide::yoke), design_steps(steps, KeptSide::design),
        yoke_steps(steps, KeptSide::yoke) {}

  // The time until it should be called again.
  Wait follow(App& app) {
    const WorkKeeper::Clock::time_point now = WorkKeeper::Clock::now();
    const auto one = design.follow(app, now);
    const auto other = yoke.follow(app, now);
    design_steps.follow(app);
    yoke_steps.follow(app);
    return sooner(one, other);
  }

  void close(App& app) {
    design_steps.wait();
    yoke_steps.wait();
    design.close(app);
    yoke.close(app);
  }

  WorkKeeper design;
  WorkKeeper yoke;
  StepKeeper design_steps;
  StepKeeper yoke_steps;
};

int work_in_window(App& app, Window& window, const Options& options, Keepers& keepers) {
  std::ofstream state;
  if (!options.state_to.empty()) {
    state.open(options.state_to);
  }
  ScreenAwake awake;
  Speaker speaker;
  app.bench.speaks = speaker.can_speak();
  std::uint64_t number = 0;
  int frames_due = frames_after_event;
  int late_frames = 0;     // drawn since the last event beyond those
  bool returned = false;   // until the open files were looked at, which waits for dialogs
  bool may_settle = false; // once after each event: a field may say the same in every frame, and must not keep it awake
  while (!app.session.quit) {
    const std::string message = app.session.message;
    const auto keep_again = keepers.follow(app);
    const SearchProgress search = follow_search(app);
    const WorkProgress work = follow_long_work(app);
    const YokeProgress yoke = follow_yoke_search(app);
    const bool news = search.answered || work.taken || yoke.taken || app.session.message != message;
    if (frames_due > 0 || window.input_waiting() || news) {
      window.look();
    } else if (const auto again =
                   sooner(sooner(keep_again, search.look_again), sooner(work.look_again, yoke.look_again))) {
      window.wait(*again);
    } else {
      window.wait();
    }
    bool happened = window.input_waiting() || window.take_redraw_request() || news;
    for (const std::filesystem::path& path : window.take_dropped()) {
      apply(app, DropFile{path});
      happened = true;
    }
    if (window.take_close_request()) {
      apply(app, Run{Command::quit});
      happened = true;
    }
    returned = window.take_return() || returned;
    if (returned && !is_open(app.session.dialog)) {
      apply(app, LookAtFiles{});
      returned = is_open(app.session.dialog); // the other file, once that is answered
      happened = true;
    }
    if (happened) {
      frames_due = frames_after_event;
      late_frames = 0;
      may_settle = true;
    }
    if (frames_due == 0) {
      continue;
    }
    --frames_due;
    const Actions actions = one_frame(app, window, state.is_open(), true);
    if (may_settle && changes_something(actions)) {
      frames_due = frames_after_event; // what it changed is drawn, and settles as after an event
      may_settle = false;
    } else if (frames_due == 0 && actions.unsettled && late_frames < most_late_frames) {
      frames_due = 1;
      ++late_frames;
    }
    window.set_title(window_title(app));
    awake.keep(app.bench.open);
    speaker.follow(app);
    if (frames_due == 0 && !window.button_held()) { // a panel's edge that is being dragged would write at every step
      keep_settings(app, false);
    }
    if (state.is_open()) {
      refresh(app);
      state << state_line(app, actions, {++number, frames_due == 0 && !window.input_waiting()}) << std::flush;
    }
  }
  window.tell_size(app.settings);
  keep_settings(app, true);
  keepers.close(app);
  return 0;
}

int write_picture(App& app, Window& window, const Options& options) {
  for (int frame = 0; frame < 4; ++frame) {
    one_frame(app, window, false, false);
    if (frame == 1) {
      show_asked_for(app, options);
      finish_long_work(app);
      finish_yoke_search(app);
    }
  }
  refresh(app);
  window.upload(app.caches.piece);
  window.upload(app.caches.preview);
  window.upload(app.caches.yoke.picture);
  make_what_shows(app, window);
  Actions actions;
  const Portion input = window.begin_frame(app);
  draw_frame(app, input, actions);
  const auto png = png_of_pixels(window.width(), window.height(), window.draw_to_pixels(app), 0, 0);
  if (!options.state_to.empty()) {
    std::ofstream(options.state_to) << state_line(app, actions, {1, true});
  }
  const Failure failure = png ? write_file(options.picture, *png) : Failure(png.error());
  if (failure) {
    std::cerr << "punchwright-editor: " << failure->text() << '\n';
    return 2;
  }
  return 0;
}

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

int time_frames(App& app, Window& window, int count, double first_ms) {
  for (int frame = 0; frame < 10; ++frame) {
    one_frame(app, window, false, true); // settle
  }
  Clock::duration building{};
  const Clock::time_point start = Clock::now();
  for (int frame = 0; frame < count; ++frame) {
    refresh(app);
    window.upload(app.caches.piece);
    window.upload(app.caches.preview);
    window.upload(app.caches.yoke.picture);
    make_what_shows(app, window);
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
  const double whole = milliseconds(Clock::now() - start) / count;
  // The same with a stitch changed in every frame: checks, rows and the picture of the piece are made anew. Of a yoke a
  // width is dragged instead.
  const auto draw_and_show = [&] {
    app.yoke.shown ? drag_a_width(app) : apply(app, Run{Command::toggle_stitch});
    one_frame(app, window, false, false);
  };
  for (int frame = 0; frame < 50; ++frame) {
    draw_and_show(); // whatever is kept for later frames has been made now
  }
  const double memory_before = anonymous_megabytes().value_or(0);
  const Clock::time_point start_drawing = Clock::now();
  for (int frame = 0; frame < count; ++frame) {
    draw_and_show();
  }
  const double drawing = milliseconds(Clock::now() - start_drawing) / count;
  fmt::print("first_frame_ms {:.3f}\nframe_build_ms {:.4f}\nframe_ms {:.4f}\nframe_after_stroke_ms {:.4f}\n"
             "anonymous_mb {:.1f}\nanonymous_mb_after_strokes {:.1f}\n",
             first_ms, milliseconds(building) / count, whole, drawing, memory_before,
             anonymous_megabytes().value_or(0));
  return std::fflush(stdout) == 0 ? 0 : 2;
}

} // namespace

int run(const Options& options) {
  give_large_blocks_back();
  const Clock::time_point start = Clock::now();
  App app = make_app();
  app.settings_file.system_language = options.system_language;
  app.work.design.piece.stitches = whole_repeats_in_the_middle(app.work.design, app.work.profile);
  const bool shown = options.picture.empty();
  const bool for_a_person = shown && options.frames_benchmark == 0;
  std::string note;
  if (!options.settings.empty()) {
    std::error_code ignored;
    note = load_settings(app, std::filesystem::absolute(options.settings, ignored));
    app.bench.folder = for_a_person ? usual_state_folder("bench") : std::filesystem::path();
  } else if (for_a_person) { // pictures and figures don't depend on who makes them
    note = load_settings(app, usual_settings_path());
    app.bench.folder = usual_state_folder("bench");
  }
  if (!options.motifs.empty()) {
    std::error_code ignored;
    app.motif_folder = std::filesystem::absolute(options.motifs, ignored);
  } else if (for_a_person) {
    app.motif_folder = usual_motif_folder();
  }
  open_first(app, options);
  if (for_a_person && options.file.empty()) {
    apply(app, Run{Command::start_page});
  }
  const std::filesystem::path journals = for_a_person ? usual_state_folder("journals") : std::filesystem::path();
  FoundWorks found = find_works(journals);
  Keepers keepers(journals, for_a_person ? usual_state_folder("steps") : std::filesystem::path());
  for (const std::string& remark : found.remarks) {
    apply(app, Say{remark, Tone::trouble});
  }
  say_at_start(app, note);
  auto window = Window::open(wishes_for(app.settings, options));
  if (!window) {
    return no_window(window.error());
  }
  if (!options.picture.empty()) {
    return write_picture(app, **window, options);
  }
  if (options.frames_benchmark > 0) {
    one_frame(app, **window, false, true);
    return time_frames(app, **window, options.frames_benchmark, milliseconds(Clock::now() - start));
  }
  offer_recovery(app, std::move(found.works));
  return work_in_window(app, **window, options, keepers);
}

} // namespace punchwright::editor
