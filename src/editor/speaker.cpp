// Programs that speak, started as children without a shell.
#include "editor/speaker.hpp"

#include "editor/app.hpp"
#include "plan/bench_moves.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <csignal>
#include <cstdlib>
#include <initializer_list>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

namespace punchwright::editor {

namespace fs = std::filesystem;

namespace {

// Words a minute of espeak-ng: 175 is its own; its manual gives 80 to 450.
int words_a_minute(int rate) {
  return rate >= 0 ? 175 + rate * (450 - 175) / 100 : 175 + rate * (175 - 80) / 100;
}

// Starts the program with nothing to read, and nothing of what it writes on our terminal.
pid_t start(const std::vector<std::string>& command) {
  std::vector<char*> arguments;
  for (const std::string& word : command) {
    arguments.push_back(const_cast<char*>(word.c_str())); // posix_spawn leaves them as they are
  }
  arguments.push_back(nullptr);
  posix_spawn_file_actions_t files;
  if (posix_spawn_file_actions_init(&files) != 0) {
    return 0;
  }
  pid_t child = 0;
  const bool started = posix_spawn_file_actions_addopen(&files, 0, "/dev/null", 0, 0) == 0 &&
                       posix_spawn_file_actions_addopen(&files, 1, "/dev/null", 1, 0) == 0 &&
                       posix_spawn_file_actions_addopen(&files, 2, "/dev/null", 1, 0) == 0 &&
                       posix_spawn(&child, command.front().c_str(), &files, nullptr, arguments.data(), environ) == 0;
  posix_spawn_file_actions_destroy(&files);
  return started ? child : 0;
}

} // namespace

std::vector<std::string> speaking_command(Voice voice, const fs::path& program, int rate, const std::string& words) {
  std::vector<std::string> command{program.string()};
  const auto add = [&command](std::initializer_list<std::string> more) { command.insert(command.end(), more); };
  // English in the voice that the person has chosen for it; other words need a voice of their language.
  const std::string language(chosen_language().code == "en" ? "" : chosen_language().code);
  switch (voice) {
  case Voice::speech_dispatcher: // waits until it is said; a newer text takes the place of an older one
    add({"--wait", "--application-name", "punchwright", "--priority", "text", "--rate", std::to_string(rate)});
    if (!language.empty()) {
      add({"--language", language});
    }
    break;
  case Voice::espeak:
    add({"-s", std::to_string(words_a_minute(rate))});
    if (!language.empty()) {
      add({"-v", language});
    }
    break;
  case Voice::none: return {};
  }
  add({"--", words});
  return command;
}

fs::path program_in(std::string_view path, std::string_view name) {
  while (!path.empty()) {
    const std::size_t end = path.find(':');
    const fs::path folder(path.substr(0, end));
    path = end == std::string_view::npos ? std::string_view() : path.substr(end + 1);
    std::error_code ignored;
    fs::path program = folder / name;
    if (folder.is_absolute() && fs::is_regular_file(program, ignored) && access(program.c_str(), X_OK) == 0) {
      return program;
    }
  }
  return {};
}

Speaker::Speaker() {
  const char* const path = std::getenv("PATH");
  const std::string_view folders = path != nullptr ? path : "";
  program_ = program_in(folders, "spd-say");
  voice_ = program_.empty() ? Voice::none : Voice::speech_dispatcher;
  if (program_.empty()) {
    program_ = program_in(folders, "espeak-ng");
    voice_ = program_.empty() ? Voice::none : Voice::espeak;
  }
}

Speaker::~Speaker() {
  fall_silent(true);
  int state = 0;
  for (const pid_t child : leaving_) {
    waitpid(child, &state, 0);
  }
}

void Speaker::fall_silent(bool for_good) {
  int state = 0;
  std::erase_if(leaving_, [&state](pid_t child) { return waitpid(child, &state, WNOHANG) != 0; });
  if (child_ == 0) {
    return;
  }
  const bool speaking = waitpid(child_, &state, WNOHANG) == 0;
  if (speaking) {
    kill(child_, SIGKILL); // at once, and then it is surely gone
    waitpid(child_, &state, 0);
  }
  child_ = 0;
  // The dispatcher itself goes on with what it was given, unless another text takes its place.
  if (speaking && for_good && voice_ == Voice::speech_dispatcher) {
    if (const pid_t cancel = start({program_.string(), "--cancel"}); cancel != 0) {
      leaving_.push_back(cancel);
    }
  }
}

void Speaker::follow(const App& app) {
  const Bench& bench = app.bench;
  if (bench.to_say == said_) {
    return;
  }
  said_ = bench.to_say;
  const bool speaks = bench.open && (app.settings.speak_steps || bench.aloud) && can_speak() && bench.moves != nullptr;
  fall_silent(!speaks);
  if (!speaks) {
    return;
  }
  const BenchMoves& moves = *bench.moves;
  const std::string words = bench.place.done < moves.count()
                                ? words_of(moves, bench.place.done, app.work.design, app.caches.rows)
                                : tr("All steps are done.");
  child_ = start(speaking_command(voice_, program_, app.settings.speech_rate, spoken(words)));
}

} // namespace punchwright::editor
