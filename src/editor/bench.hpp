// At the bench: what the window knows of the knitting while it is shown one step at a time. What is seen of a step is
// worked out by pure functions, apart from drawing it.
#pragma once

#include "editor/commands.hpp"
#include "editor/input_queue.hpp"
#include "settings/bench_place.hpp"

#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>

namespace punchwright {
struct BenchMoves;
}

namespace punchwright::editor {

struct App;

struct Bench {
  bool open = false;
  std::shared_ptr<const BenchMoves> moves; // of the design with these two numbers; null: not worked out yet
  std::uint64_t opening = 0;
  std::uint64_t revision = 0;
  BenchPlace place;
  std::filesystem::path folder; // of the places' files; empty: they last until the window closes
  bool trouble_said = false;    // that a place can't be kept, which is said once
  double px_mm = 0;             // width of a pixel of the screen, mm; 0: the screen doesn't say
  bool speaks = false;          // a program that speaks is there
  std::uint64_t to_say = 0;     // grows with each thing to be spoken; the window's loop follows it
  bool aloud = false;           // the newest of them, even where silence is the setting
};

// A foot pedal sends one of these too: 1 forward, -1 back. A key that is held down counts once.
[[nodiscard]] std::optional<int> bench_step_for(const KeyEvent& key);

// The steps of the design as it is, worked out where they aren't yet.
[[nodiscard]] const BenchMoves& bench_moves_now(App& app);

// The row that is knitted now or next: "Row 12 of 60", "Before row 1", "All 60 rows are knitted".
[[nodiscard]] std::string row_words(const BenchMoves& bench, int move);
// "Row 3 of 9 in this step", or nothing.
[[nodiscard]] std::string pass_words(const BenchMoves& bench, int move);
// Of the piece, by the clock on the wall.
[[nodiscard]] int rows_today(const App& app);
// Whether the command makes sense while the bench covers the drawing.
[[nodiscard]] bool works_at_bench(Command command);
// What is said aloud: the words with the needles' names as a voice reads them, "left 12" for L12.
[[nodiscard]] std::string spoken(const std::string& words);

} // namespace punchwright::editor
