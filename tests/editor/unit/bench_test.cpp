// The bench without a window: keys, the place that is kept, type by the eye's angle, needles that can be counted.
#include "editor/actions.hpp"
#include "editor/applying.hpp"
#include "editor/bench_type.hpp"
#include "editor/needle_strip.hpp"
#include "editor/speaker.hpp"
#include "editor/widgets.hpp"
#include "plan/bench_moves.hpp"
#include "support/folder.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace punchwright;
using namespace punchwright::editor;
using punchwright::test::Folder;

namespace fs = std::filesystem;

namespace {

App app_with(const std::string& demo, const fs::path& folder) {
  App app = make_app();
  app.bench.folder = folder;
  apply(app, DropFile{fs::path(PUNCHWRIGHT_SOURCE_DIR) / "patterns" / (demo + ".repeat")});
  return app;
}

void step(App& app, int times) {
  for (int count = 0; count < times; ++count) {
    apply(app, StepBench{1});
  }
}

KeyEvent key(const char* name, bool repeat = false) {
  return {name, true, repeat, {}};
}

} // namespace

TEST_CASE("space, arrows, page keys and Return move on or back; a pedal that is held down counts once") {
  for (const char* const name : {"space", "right", "down", "page down", "return", "keypad return", "b"}) {
    CHECK(bench_step_for(key(name)) == 1);
    CHECK_FALSE(bench_step_for(key(name, true)).has_value());
  }
  for (const char* const name : {"left", "up", "page up", "backspace"}) {
    CHECK(bench_step_for(key(name)) == -1);
  }
  CHECK_FALSE(bench_step_for(key("h")).has_value());
  CHECK_FALSE(bench_step_for(KeyEvent{"space", false, false, {}}).has_value());
  CHECK_FALSE(bench_step_for(KeyEvent{"left", true, false, {true, false, false}}).has_value());
}

TEST_CASE("the place is on the disk after every step, and another window goes on there") {
  const Folder folder;
  App app = app_with("hood-border", folder.path);
  apply(app, Run{Command::at_the_bench});
  REQUIRE(app.bench.open);
  step(app, 20);
  App again = app_with("hood-border", folder.path); // the first one was killed
  apply(again, Run{Command::at_the_bench});
  CHECK(again.bench.place == app.bench.place);
  CHECK(again.bench.place.done == 20);
  CHECK(again.bench.place.rows > 0);
  CHECK(rows_today(again) == again.bench.place.rows);
  apply(again, StepBench{-1});
  CHECK(rows_today(again) == again.bench.place.rows);
  CHECK(again.bench.place.rows == app.bench.place.rows - 1);
}

TEST_CASE("the list of steps leads to a place without counting rows of the day") {
  const Folder folder;
  App app = app_with("hood-border", folder.path);
  apply(app, GoToMove{20});
  CHECK(app.bench.open);
  CHECK(app.bench.place.done == 20);
  CHECK(rows_today(app) == 0);
}

TEST_CASE("where the design has changed it is asked: stay at the row, or start over") {
  const Folder folder;
  App app = app_with("hood-border", folder.path);
  apply(app, Run{Command::at_the_bench});
  step(app, 20);
  const int rows = app.bench.place.rows;
  apply(app, Run{Command::at_the_bench}); // left
  apply(app, Run{Command::toggle_stitch});
  apply(app, Run{Command::at_the_bench});
  REQUIRE(std::holds_alternative<BenchChangedDialog>(app.session.dialog));
  CHECK_FALSE(app.bench.open);
  CHECK(std::get<BenchChangedDialog>(app.session.dialog).rows == rows);
  App other = app;
  apply(app, AnswerBench{true});
  CHECK(app.bench.open);
  CHECK(app.bench.place.rows == rows);
  apply(other, AnswerBench{false});
  CHECK(other.bench.open);
  CHECK(other.bench.place.done == 0);
  CHECK(rows_today(other) == rows); // they were knitted all the same
}

TEST_CASE("a stitch changed or another design opened leaves the bench") {
  const Folder folder;
  App app = app_with("hood-border", folder.path);
  apply(app, Run{Command::at_the_bench});
  step(app, 15);
  apply(app, Run{Command::toggle_stitch});
  CHECK_FALSE(app.bench.open);
  apply(app, Run{Command::undo});
  apply(app, Run{Command::at_the_bench});
  CHECK(app.bench.place.done == 15);
  apply(app, OpenDropped{fs::path(PUNCHWRIGHT_SOURCE_DIR) / "patterns" / "tide-waves.repeat"});
  CHECK_FALSE(app.bench.open);
  apply(app, Run{Command::at_the_bench});
  CHECK(app.bench.place.done == 0);
}

TEST_CASE("a damaged place is as good as none, and a folder that can't be written is said once") {
  const Folder folder;
  App app = app_with("hood-border", folder.path);
  apply(app, Run{Command::at_the_bench});
  step(app, 3);
  for (const auto& file : fs::directory_iterator(folder.path)) {
    std::ofstream(file.path()) << "done = [";
  }
  App again = app_with("hood-border", folder.path);
  apply(again, Run{Command::at_the_bench});
  CHECK(again.bench.place.done == 0);

  std::ofstream(folder.path / "file") << "no folder";
  App nowhere = app_with("hood-border", folder.path / "file" / "bench");
  apply(nowhere, Run{Command::at_the_bench});
  CHECK(nowhere.session.message.find("can't be kept") != std::string::npos);
  step(nowhere, 2);
  CHECK(nowhere.session.message.empty());
  CHECK(nowhere.bench.place.done == 2);
}

TEST_CASE("at the bench the commands that change the drawing say why they don't work") {
  const Folder folder;
  App app = app_with("hood-border", folder.path);
  CHECK_FALSE(why_not(app, Command::bench_forward).empty());
  apply(app, Run{Command::at_the_bench});
  CHECK(why_not(app, Command::bench_forward).empty());
  CHECK(why_not(app, Command::save).empty());
  CHECK(why_not(app, Command::larger_text).empty());
  CHECK_FALSE(why_not(app, Command::mirror_sideways).empty());
  CHECK_FALSE(why_not(app, Command::undo).empty());
}

TEST_CASE("the row and the pass in words") {
  const Folder folder;
  App app = app_with("hood-border", folder.path);
  const BenchMoves& bench = bench_moves_now(app);
  CHECK(row_words(bench, 0) == "Before row 1");
  int knits = 0;
  while (
      !(bench.moves[static_cast<std::size_t>(knits)].knits && bench.moves[static_cast<std::size_t>(knits)].row == 1)) {
    ++knits;
  }
  CHECK(row_words(bench, knits - 1) == "Before row 1 of 12");
  CHECK(row_words(bench, knits + 4) == "Row 5 of 12");
  CHECK(pass_words(bench, knits + 4) == "row 5 of 12 in this step");
  CHECK(pass_words(bench, 0).empty());
  CHECK(row_words(bench, bench.count()) == "All 12 rows are knitted");
}

// ISO 9241-303 recommends 20 to 22 minutes of arc for a capital letter, and at least 16 (from memory of its text); at 2
// m 20 minutes are 2 · 2000 mm · tan(10') = 11.64 mm.
TEST_CASE("type for two metres is as large as the eye's angle asks for, whatever the screen's pixels") {
  CHECK(height_seen_mm(2, 20) == doctest::Approx(11.636).epsilon(0.001));
  CHECK(distance_seen_m(height_seen_mm(2, 16), 16) == doctest::Approx(2));
  const BenchType coarse = bench_type(2, 25.4 / 96, 0.626);
  CHECK(coarse.good == 71); // 11.636 mm / 0.2646 mm / 0.626
  CHECK(coarse.least == 57);
  const BenchType fine = bench_type(2, 25.4 / 192, 0.626);
  CHECK(fine.good == doctest::Approx(2 * coarse.good).epsilon(0.02));
  CHECK(bench_type(1, 25.4 / 96, 0.626).good == doctest::Approx(coarse.good / 2).epsilon(0.03));
}

TEST_CASE("a pixel's width is what the screen says, unless that can't be or was measured otherwise") {
  CHECK(pixel_mm(1920, 310, 0, 1) == doctest::Approx(0.1615).epsilon(0.001));
  CHECK(pixel_mm(1920, 310, 480, 1) == doctest::Approx(0.25));
  CHECK(pixel_mm(1920, 0, 0, 1) == doctest::Approx(25.4 / 96));
  CHECK(pixel_mm(1920, 16, 0, 1) == doctest::Approx(25.4 / 96)); // some screens give their proportion, 16 by 9
  CHECK(pixel_mm(0, 0, 0, 2) == doctest::Approx(25.4 / 192));
}

TEST_CASE("needles stand in groups of ten and five, counted outwards from the middle") {
  const NeedleStrip strip = needle_strip({left_needle(12), 25, 1000, 5, 20, 1}); // L12 to R13
  REQUIRE(strip.lines.size() == 1);
  const auto& groups = strip.lines.front().groups;
  REQUIRE(groups.size() == 4); // L12-L11, L10-L1, R1-R10, R11-R13
  CHECK(groups[0].first == left_needle(12));
  CHECK(groups[0].last == left_needle(11));
  CHECK(groups[1].count() == 10);
  CHECK(groups[2].first == right_needle(1));
  CHECK(groups[3].last == right_needle(13));
  CHECK(strip.pitch == 20);
  const auto gap = [&](const StripGroup& group, Needle one, Needle other) {
    return strip.x_of(group, other) - strip.x_of(group, one);
  };
  CHECK(gap(groups[1], left_needle(6), left_needle(5)) > strip.pitch * 1.3F); // L6 | L5
  CHECK(gap(groups[1], left_needle(7), left_needle(6)) == doctest::Approx(strip.pitch));
  CHECK(gap(groups[2], right_needle(5), right_needle(6)) > strip.pitch * 1.3F);
  CHECK(groups[2].left - groups[1].right > strip.pitch);
}

TEST_CASE("a wide piece takes several lines rather than needles too fine to count, and all of them lie in the room") {
  const StripWishes wishes{left_needle(100), 200, 900, 9, 20, 4};
  const NeedleStrip strip = needle_strip(wishes);
  CHECK(strip.lines.size() > 1);
  CHECK(strip.pitch >= 9);
  int needles = 0;
  for (const StripLine& line : strip.lines) {
    for (const StripGroup& group : line.groups) {
      needles += group.count();
      CHECK(group.left >= 0);
      CHECK(group.right <= wishes.width + 0.5F);
    }
  }
  CHECK(needles == 200);
  StripWishes one_line = wishes;
  one_line.most_lines = 1;
  CHECK(needle_strip(one_line).lines.size() == 1); // finer, but there
}

TEST_CASE("a voice reads needles by their sides, and the words go through no shell") {
  CHECK(spoken("Push L36 and R35 back.") == "Push left 36 and right 35 back.");
  CHECK(spoken("bring forward L12–L9 R3 (5 needles)") == "bring forward left 12 to left 9 right 3 (5 needles)");
  CHECK(spoken("Lamp R") == "Lamp R");
  const auto dispatcher = speaking_command(Voice::speech_dispatcher, "/usr/bin/spd-say", -20, "-x; rm $HOME");
  CHECK(dispatcher.front() == "/usr/bin/spd-say");
  CHECK(dispatcher.back() == "-x; rm $HOME");
  CHECK(dispatcher[dispatcher.size() - 2] == "--");
  const auto espeak = speaking_command(Voice::espeak, "/usr/bin/espeak-ng", 0, "Knit.");
  CHECK(espeak == std::vector<std::string>{"/usr/bin/espeak-ng", "-s", "175", "--", "Knit."});
  CHECK(speaking_command(Voice::espeak, "e", 100, "")[2] == "450"); // its manual's limits
  CHECK(speaking_command(Voice::espeak, "e", -100, "")[2] == "80");
}

TEST_CASE("words in another language are read by a voice of that language") {
  choose_language(language_of("de"), {});
  const auto dispatcher = speaking_command(Voice::speech_dispatcher, "/usr/bin/spd-say", 0, "Stricken.");
  const auto espeak = speaking_command(Voice::espeak, "/usr/bin/espeak-ng", 0, "Stricken.");
  choose_language(language_of("en"), {});
  const auto asked = std::ranges::find(dispatcher, "--language");
  REQUIRE(asked != dispatcher.end());
  CHECK(*std::next(asked) == "de");
  CHECK(dispatcher.back() == "Stricken.");
  CHECK(espeak == std::vector<std::string>{"/usr/bin/espeak-ng", "-s", "175", "-v", "de", "--", "Stricken."});
}

// espeak-ng itself (Debian's package), with its option -w to write what it would play: a WAVE file, whose length is
// that of the words.
TEST_CASE("the real voice speaks a step, and faster at a higher rate") {
  const Folder folder;
  const auto length = [&](int rate, const std::string& words) {
    const fs::path wave = folder.path / (std::to_string(rate) + ".wav");
    std::vector<std::string> command =
        speaking_command(Voice::espeak, program_in("/usr/bin:/bin", "espeak-ng"), rate, words);
    command.insert(command.end() - 2, {"-w", wave.string()});
    std::vector<char*> arguments;
    for (std::string& word : command) {
      arguments.push_back(word.data());
    }
    arguments.push_back(nullptr);
    pid_t child = 0;
    REQUIRE(posix_spawn(&child, command.front().c_str(), nullptr, nullptr, arguments.data(), environ) == 0);
    int state = 0;
    REQUIRE(waitpid(child, &state, 0) == child);
    REQUIRE(state == 0);
    return fs::file_size(wave);
  };
  const std::string step = spoken("Knit 9 rows, ending on the left. Push L36 and R35 back.");
  CHECK(length(0, step) > 22050 * 2); // more than a second, at 22,050 samples of two bytes
  CHECK(length(100, step) < length(0, step));
  CHECK(length(-100, step) > length(0, step));
  CHECK(length(0, "-x " + step) > length(0, step)); // words, not an option
}

TEST_CASE("a program is looked for in the folders of PATH that are absolute") {
  CHECK(program_in("/nowhere:/bin:/usr/bin", "sh").filename() == "sh");
  CHECK(program_in("", "sh").empty());
  CHECK(program_in("bin:.", "sh").empty());
  CHECK(program_in("/bin", "no such program").empty());
}
