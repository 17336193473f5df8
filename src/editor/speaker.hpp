// Speaks the steps at the bench, where a program that can is installed: speech-dispatcher's spd-say, or espeak-ng.
// Silence is the default.
#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>
#include <sys/types.h>
#include <vector>

namespace punchwright::editor {

struct App;

enum class Voice { none, speech_dispatcher, espeak };

// The program and its arguments; the words are one of them and go through no shell. `rate`: -100 to 100.
[[nodiscard]] std::vector<std::string> speaking_command(Voice voice, const std::filesystem::path& program, int rate,
                                                        const std::string& words);
// The program of that name in the folders of a PATH; empty: there is none.
[[nodiscard]] std::filesystem::path program_in(std::string_view path, std::string_view name);

class Speaker {
public:
  Speaker(); // looks which program is there
  ~Speaker();
  Speaker(const Speaker&) = delete;
  Speaker& operator=(const Speaker&) = delete;

  [[nodiscard]] bool can_speak() const { return voice_ != Voice::none; }
  // Says the step that the bench came to since the last call, and breaks off what it was saying. Returns at once.
  void follow(const App& app);

private:
  void fall_silent(bool for_good);

  Voice voice_ = Voice::none;
  std::filesystem::path program_;
  pid_t child_ = 0;            // 0: none that runs
  std::vector<pid_t> leaving_; // ended soon by themselves
  std::uint64_t said_ = 0;
};

} // namespace punchwright::editor
