// The loop: wait, feed, draw, apply. After everything that happens three frames are drawn, then it waits again, so an
// editor that nobody touches uses no processor.
#include "editor/run.hpp"

#include "editor/actions.hpp"
#include "editor/frame_times.hpp"
#include "editor/kept_steps.hpp"
#include "editor/kept_work.hpp"
#include "editor/long_work.hpp"
#include "editor/memory_in_use.hpp"
#include "editor/one_frame.hpp"
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
#include <fstream>
#include <iostream>
#include <optional>
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

// Waits, looks at what happened, draws until all is settled.
class Loop {
public:
  Loop(App& work, Window& shown, const Options& options, Keepers& kept) : app(work), window(shown), keepers(kept) {
    if (!options.state_to.empty()) {
      state.open(options.state_to);
    }
    app.bench.speaks = speaker.can_speak();
  }

  void run() {
    while (!app.session.quit) {
      wait();
      if (take_what_happened()) {
        frames_due = frames_after_event;
        late_frames = 0;
        may_settle = true;
      }
      if (frames_due > 0) {
        draw();
      }
    }
    window.tell_size(app.settings);
    keep_settings(app, true);
    keepers.close(app);
  }

private:
  // Not at all where there is something to draw.
  void wait() {
    const std::string message = app.session.message;
    const Wait keep_again = keepers.follow(app);
    const Progress search = follow_search(app);
    const Progress work = follow_long_work(app);
    const Progress yoke = follow_yoke_search(app);
    news = search.taken || work.taken || yoke.taken || app.session.message != message;
    if (frames_due > 0 || window.input_waiting() || news) {
      window.look();
    } else {
      rest(sooner(sooner(keep_again, search.look_again), sooner(work.look_again, yoke.look_again)));
    }
  }

  // Nothing is to be done until then, if that is known. After a while the memory of what was done is given back, once.
  void rest(const Wait& again) {
    using Clock = std::chrono::steady_clock;
    constexpr std::chrono::milliseconds a_while(2000);
    const auto idle = std::chrono::duration_cast<std::chrono::milliseconds>(Clock::now() - drawn_at);
    if (!gave_back && idle >= a_while) {
      give_free_memory_back();
      gave_back = true;
    }
    if (const Wait until = gave_back ? again : sooner(again, std::max(a_while - idle, std::chrono::milliseconds(1)))) {
      window.wait(*until);
    } else {
      window.wait();
    }
  }

  // Whether anything did.
  bool take_what_happened() {
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
    return happened;
  }

  void draw() {
    --frames_due;
    drawn_at = std::chrono::steady_clock::now();
    gave_back = false;
    const Actions actions = one_frame(app, window, {.publish_places = state.is_open()});
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

  App& app;
  Window& window;
  Keepers& keepers;
  std::ofstream state;
  ScreenAwake awake;
  Speaker speaker;
  std::uint64_t number = 0; // of the frame
  int frames_due = frames_after_event;
  std::chrono::steady_clock::time_point drawn_at;
  bool gave_back = false;  // since then, what memory is free
  int late_frames = 0;     // drawn since the last event beyond those
  bool news = false;       // from work that goes on beside the window
  bool returned = false;   // until the open files were looked at, which waits for dialogs
  bool may_settle = false; // once after each event: a field may say the same in every frame, and must not keep it awake
};

int write_picture(App& app, Window& window, const Options& options) {
  for (int frame = 0; frame < 4; ++frame) {
    one_frame(app, window, {.draw = false});
    if (frame == 1) {
      show_asked_for(app, options);
      finish_long_work(app);
      finish_yoke_search(app);
    }
  }
  prepare_pictures(app, window);
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

} // namespace

int run(const Options& options) {
  give_large_blocks_back();
  const auto start = std::chrono::steady_clock::now();
  App app = make_app();
  app.settings_file.system_language = options.system_language;
  app.work.design.piece.stitches = whole_repeats_in_the_middle(app.work.design, app.work.profile);
  const bool shown = options.picture.empty();
  const bool for_a_person = shown && options.frames_benchmark == 0;
  const std::string note = options.settings ? load_settings(app, *options.settings) : std::string();
  if (for_a_person) { // pictures and figures don't depend on who makes them
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
    return print_frame_times(app, **window, options.frames_benchmark, start);
  }
  offer_recovery(app, std::move(found.works));
  Loop(app, **window, options, keepers).run();
  return 0;
}

} // namespace punchwright::editor
