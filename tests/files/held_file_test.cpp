// A held file is held by one process at a time, and free once that process is gone, killed or not.
#include "files/held_file.hpp"
#include "files/scratch_folder.hpp"

#include <csignal>
#include <doctest/doctest.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace punchwright;
using namespace punchwright::test;
namespace fs = std::filesystem;

TEST_CASE("a held file is refused to others until it is removed") {
  const ScratchFolder folder;
  const fs::path path = folder / "window.lock";
  auto held = HeldFile::take(path);
  REQUIRE(held);
  CHECK(!HeldFile::take(path));
  CHECK(in_child([&] { return HeldFile::take(path) ? 1 : 0; }) == 0);
  held->remove();
  CHECK(names_in(folder.path()).empty());
  CHECK(HeldFile::take(path).has_value());
  CHECK(!HeldFile::take(folder / "nowhere" / "window.lock"));
}

TEST_CASE("a killed process holds nothing") {
  const ScratchFolder folder;
  const fs::path path = folder / "window.lock";
  std::array<int, 2> ends{};
  REQUIRE(::pipe(ends.data()) == 0);
  const pid_t child = ::fork();
  if (child == 0) {
    const auto held = HeldFile::take(path);
    (void)!::write(ends[1], held ? "y" : "n", 1);
    for (;;) {
      ::pause();
    }
  }
  char answer = 0;
  REQUIRE(::read(ends[0], &answer, 1) == 1);
  REQUIRE(answer == 'y');
  CHECK(!HeldFile::take(path));
  ::kill(child, SIGKILL);
  ::waitpid(child, nullptr, 0);
  CHECK(fs::exists(path));
  CHECK(HeldFile::take(path).has_value());
}
