// What the bench shows, as words.
#include "editor/bench.hpp"

#include "editor/app.hpp"
#include "plan/bench_moves.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <cctype>

namespace punchwright::editor {

std::optional<int> bench_step_for(const KeyEvent& key) {
  // "b": what pedals with a switch alone send as they come (from memory).
  constexpr std::array forward = {"space", "right", "down", "page down", "return", "keypad return", "b"};
  constexpr std::array back = {"left", "up", "page up", "backspace"};
  if (!key.down || key.repeat || key.with.control || key.with.alt) {
    return std::nullopt;
  }
  const auto is = [&key](const char* name) { return key.name == name; };
  if (std::ranges::any_of(forward, is)) {
    return 1;
  }
  return std::ranges::any_of(back, is) ? std::optional(-1) : std::nullopt;
}

const BenchMoves& bench_moves_now(App& app) {
  Bench& bench = app.bench;
  const std::uint64_t revision = app.work.history.revision();
  if (bench.moves == nullptr || bench.opening != app.work.opening || bench.revision != revision) {
    refresh(app);
    bench.moves = std::make_shared<const BenchMoves>(bench_moves(app.work.design, app.work.profile, app.caches.rows));
    bench.opening = app.work.opening;
    bench.revision = revision;
  }
  return *bench.moves;
}

bool works_at_bench(Command command) {
  const Menu menu = info_of(command).menu;
  return menu == Menu::file || menu == Menu::knitting || menu == Menu::help || command == Command::larger_text ||
         command == Command::smaller_text || command == Command::open_menus || command == Command::focus_drawing;
}

std::string row_words(const BenchMoves& bench, int move) {
  if (move >= bench.count()) {
    return said("All {} rows are knitted", bench.rows);
  }
  const BenchMove& here = bench.moves[static_cast<std::size_t>(move)];
  if (here.row == 0) {
    return here.rows_before == 0 ? tr("Before row 1") : said("After row {}", here.rows_before);
  }
  return here.knits ? said("Row {} of {}", here.row, bench.rows) : said("Before row {} of {}", here.row, bench.rows);
}

std::string pass_words(const BenchMoves& bench, int move) {
  if (move >= bench.count() || bench.moves[static_cast<std::size_t>(move)].pass == 0) {
    return {};
  }
  const BenchMove& here = bench.moves[static_cast<std::size_t>(move)];
  return said("row {} of {} in this step", here.pass, here.passes);
}

std::string spoken(const std::string& words) {
  const auto is_word = [](char letter) { return std::isalnum(static_cast<unsigned char>(letter)) != 0; };
  const auto is_digit = [](char letter) { return letter >= '0' && letter <= '9'; };
  std::string aloud;
  for (std::size_t place = 0; place < words.size(); ++place) {
    const char letter = words[place];
    const bool begins = place == 0 || !is_word(words[place - 1]);
    if ((letter == 'L' || letter == 'R') && begins && place + 1 < words.size() && is_digit(words[place + 1])) {
      aloud += letter == 'L' ? tr("left ") : tr("right ");
    } else if (words.compare(place, 3, "–") == 0) { // between the ends of a run
      aloud += tr(" to ");
      place += 2;
    } else {
      aloud += letter;
    }
  }
  return aloud;
}

} // namespace punchwright::editor
