// The bench: opened where the knitting was left, and its place written at every step, so that a kill at any moment
// loses one key press at most.
#include "editor/applying.hpp"
#include "editor/play.hpp"
#include "editor/user_settings.hpp"
#include "editor/wrong.hpp"
#include "files/files.hpp"
#include "plan/bench_moves.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <ctime>
#include <fmt/format.h>

namespace punchwright::editor {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t largest_place = std::size_t{64} * 1024; // bytes

// By the clock on the wall, as the knitter counts her days.
std::string today() {
  const std::time_t now = std::time(nullptr);
  std::tm parts{};
  localtime_r(&now, &parts);
  return fmt::format("{:04}-{:02}-{:02}", parts.tm_year + 1900, parts.tm_mon + 1, parts.tm_mday);
}

// Empty: there is no such place.
fs::path file_of_place(const App& app) {
  const Bench& bench = app.bench;
  return bench.folder.empty() ? fs::path() : bench.folder / bench_file_name(app.session.path, bench.moves->digest);
}

void keep_place(App& app) {
  const fs::path file = file_of_place(app);
  if (file.empty()) {
    return;
  }
  app.bench.place.design = app.session.path;
  Failure failure = make_kept_folder(file.parent_path());
  if (!failure) {
    failure = write_file(file, write_bench_place(app.bench.place));
  }
  if (failure && !app.bench.trouble_said) {
    app.bench.trouble_said = true;
    say(app, said("The place can't be kept ({}): it lasts until the window closes", failure->message), Tone::trouble);
  }
}

// What was kept for this design; what can't be read is as good as none, and is written over at the next step.
BenchPlace kept_place(const App& app) {
  const fs::path file = file_of_place(app);
  std::error_code ignored;
  if (file.empty() || !fs::is_regular_file(file, ignored)) {
    return {};
  }
  const auto text = read_file(file, largest_place);
  const auto place = text ? read_bench_place(*text, file.filename().string()) : Result<BenchPlace>(text.error());
  return place ? *place : BenchPlace{};
}

void put_at(App& app, int move) {
  Bench& bench = app.bench;
  const BenchMoves& moves = *bench.moves;
  bench.place.done = std::clamp(move, 0, moves.count());
  bench.place.digest = moves.digest;
  const auto place = static_cast<std::size_t>(bench.place.done);
  bench.place.rows = place < moves.moves.size() ? moves.moves[place].rows_before : moves.rows;
}

void speak(App& app, bool aloud) {
  app.bench.aloud = aloud;
  ++app.bench.to_say;
}

void begin_at(App& app, int move) {
  close_step(app);
  put_at(app, move);
  app.bench.open = true;
  speak(app, false);
  keep_place(app);
}

} // namespace

void open_bench(App& app) {
  const BenchMoves& moves = bench_moves_now(app);
  if (moves.count() == 0) {
    return say(app, said("{} rows are too many for the bench, which takes {}", moves.rows, most_rows_at_the_bench),
               Tone::trouble);
  }
  if (app.bench.place.digest.empty()) { // else this window knows it
    app.bench.place = kept_place(app);
  }
  const BenchPlace& place = app.bench.place;
  if (!place.digest.empty() && place.digest != moves.digest && place.rows > 0) {
    app.session.dialog = BenchChangedDialog{place.rows, moves.rows};
    return;
  }
  const bool same = place.digest == moves.digest;
  begin_at(app, same ? place.done : 0);
  if (same && place.rows > 0) {
    say(app, said("Goes on where it was left, after row {}", place.rows));
  }
}

void answer_bench(App& app, bool stay) {
  const BenchMoves& moves = bench_moves_now(app);
  close_dialog(app);
  begin_at(app, stay ? move_after_rows(moves, std::min(app.bench.place.rows, moves.rows)) : 0);
}

void close_bench(App& app) {
  app.bench.open = false;
  speak(app, false); // which is silence now
  app.view.focus_drawing = true;
}

void step_bench(App& app, int by) {
  Bench& bench = app.bench;
  if (!bench.open || bench.moves == nullptr) {
    return;
  }
  const int before = bench.place.rows;
  const int done = bench.place.done;
  put_at(app, done + by);
  if (bench.place.done == done) {
    return;
  }
  app.session.message.clear();
  count_rows_on(bench.place, today(), bench.place.rows - before);
  speak(app, false);
  keep_place(app);
}

// By the list: a jump knits no rows.
void go_to_move(App& app, int move) {
  const BenchMoves& moves = bench_moves_now(app);
  if (moves.count() == 0) {
    return open_bench(app); // which says why not
  }
  if (app.bench.place.digest != moves.digest) {
    const BenchPlace kept = kept_place(app);
    app.bench.place.days = kept.days;
  }
  begin_at(app, move);
}

void leave_outdated_bench(App& app) {
  Bench& bench = app.bench;
  if (bench.opening != app.work.opening) {
    bench.place = {}; // another design's
  }
  if (bench.open && (bench.opening != app.work.opening || bench.revision != app.work.history.revision())) {
    close_bench(app);
    say(app, tr("The bench was left, since the design has changed"));
  }
}

int rows_today(const App& app) {
  return rows_on(app.bench.place, today());
}

void run_knitting_command(App& app, Command command) {
  switch (command) {
  case Command::at_the_bench: return app.bench.open ? close_bench(app) : open_bench(app);
  case Command::bench_forward: return step_bench(app, 1);
  case Command::bench_back: return step_bench(app, -1);
  case Command::say_step: return app.bench.open ? speak(app, true) : say(app, tr("Only at the bench (F5)"));
  case Command::step_list: {
    const BenchMoves& moves = bench_moves_now(app);
    const auto done = static_cast<std::size_t>(app.bench.place.done);
    const bool here = app.bench.place.digest == moves.digest && done < moves.moves.size();
    app.session.dialog = StepListDialog{here ? moves.moves[done].step : 0, true};
    return;
  }
  case Command::play: app.session.dialog = play_dialog_for(app); return;
  case Command::what_went_wrong: app.session.dialog = wrong_dialog_for(app); return;
  default: return;
  }
}

} // namespace punchwright::editor
