// Killing a program while it saves, at random moments: the file has its old content or its new one, whole.
// What lies beside the file afterwards tells how far the saving had come; the counts are printed.
#include "files/files.hpp"
#include "files/scratch_folder.hpp"
#include "files/writing.hpp"

#include <array>
#include <csignal>
#include <cstdlib>
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <functional>
#include <random>
#include <sys/wait.h>
#include <unistd.h>

using namespace punchwright;
using namespace punchwright::test;
namespace fs = std::filesystem;

namespace {

int kills_wanted(int usual) {
  const char* const wished = std::getenv("PUNCHWRIGHT_KILLS");
  return wished != nullptr ? std::atoi(wished) : usual;
}

const std::string even(300'000, 'e');
const std::string odd(250'000, 'o');

bool is_whole(const fs::path& file) {
  const std::string content = content_of(file);
  return content == even || content == odd;
}

// A child saves to the file without end, and is killed at a random moment after `wait_for` was seen, or after the
// child's beginning; `look` is called after each kill.
void kill_while_saving(const fs::path& file, int kills, unsigned seed, const std::function<bool()>& wait_for,
                       const std::function<void()>& look) {
  std::mt19937 random(seed);
  for (int kill = 0; kill < kills; ++kill) {
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
      for (;;) {
        (void)write_file(file, odd);
        (void)write_file(file, even);
      }
    }
    for (int wait = 0; wait < 100'000 && !wait_for(); ++wait) {
      ::usleep(20);
    }
    ::usleep(std::uniform_int_distribution<useconds_t>(0, 6'000)(random));
    ::kill(child, SIGKILL);
    ::waitpid(child, nullptr, 0);
    look();
  }
}

// How far a saving had come, by its temporary file.
enum class Moment : std::size_t { before_or_after, opened, half_written, whole };
constexpr std::array moment_words = {"no temporary file (before its opening, or after the rename)",
                                     "temporary file opened, empty", "temporary file written in part",
                                     "temporary file whole, not yet renamed"};

Moment moment_of(const fs::path& folder, const fs::path& file) {
  for (const std::string& name : names_in(folder)) {
    if (folder / name != file) {
      const std::string content = content_of(folder / name);
      return content.empty() ? Moment::opened : is_whole(folder / name) ? Moment::whole : Moment::half_written;
    }
  }
  return Moment::before_or_after;
}

} // namespace

TEST_CASE("a program killed while it saves leaves the old file or the new one, whole") {
  const ScratchFolder folder;
  const fs::path file = folder / "waves.repeat";
  put(file, even);
  const int kills = kills_wanted(1000);
  std::array<int, moment_words.size()> counts{};
  int damaged = 0;
  const auto has_begun = [&] { return names_in(folder.path()).size() > 1; };
  kill_while_saving(file, kills, 7, has_begun, [&] {
    damaged += is_whole(file) ? 0 : 1;
    ++counts[static_cast<std::size_t>(moment_of(folder.path(), file))];
    for (const std::string& name : names_in(folder.path())) {
      if (folder / name != file) {
        fs::remove(folder / name); // the next kill's moment is told by its own
      }
    }
  });
  std::string histogram = fmt::format("{} kills, {} damaged\n", kills, damaged);
  for (std::size_t place = 0; place < counts.size(); ++place) {
    histogram += fmt::format("{:6}  {}\n", counts.at(place), moment_words.at(place));
  }
  MESSAGE(histogram);
  CHECK(damaged == 0);
  const int within = kills - counts[static_cast<std::size_t>(Moment::before_or_after)];
  CHECK(within >= kills * 3 / 10); // else too few came between the opening and the rename
  CHECK(!write_file(file, odd));
  CHECK(names_in(folder.path()) == std::vector<std::string>{"waves.repeat"});
}

TEST_CASE("a program killed while it saves a file with several names leaves it whole, or its new content beside it") {
  const ScratchFolder folder;
  const fs::path file = folder / "waves.repeat";
  const fs::path beside = whole_name(file);
  put(file, even);
  REQUIRE(::chmod(file.c_str(), 0600) == 0);
  fs::create_hard_link(file, folder / "other name");
  const int kills = kills_wanted(1000) / 10;
  int times_beside = 0;
  int damaged = 0;
  // A kill while nothing lies beside it tells nothing; wait for that moment, however slow the machine is.
  kill_while_saving(
      file, kills, 8, [&] { return fs::exists(beside); },
      [&] {
        const bool there = fs::exists(beside);
        times_beside += there ? 1 : 0;
        damaged += is_whole(file) ? 0 : 1;
        REQUIRE((is_whole(file) || there));
        REQUIRE((!there || is_whole(beside)));
        REQUIRE((!there || (state_of(beside).st_mode & 0777U) == 0600U));
      });
  CHECK(times_beside > 0); // else no kill came in the middle of a saving
  MESSAGE(fmt::format("{} kills, {} with the whole content beside it, {} of these with the file itself in halves",
                      kills, times_beside, damaged));
  CHECK(!write_file(file, odd));
  CHECK(content_of(folder / "other name") == odd);
  CHECK(names_in(folder.path()) == std::vector<std::string>{"other name", "waves.repeat"});
}
