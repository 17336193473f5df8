// The stamp of a file changes with whatever another program does to it, also where that program hides it.
#include "files/file_stamp.hpp"
#include "files/files.hpp"
#include "files/scratch_folder.hpp"

#include <doctest/doctest.h>
#include <thread>

using namespace punchwright;
using namespace punchwright::test;
namespace fs = std::filesystem;

namespace {

// File systems tell changes apart by a clock that ticks every few ms (ext4: that of the kernel's timer).
void let_the_clock_tick() {
  std::this_thread::sleep_for(std::chrono::milliseconds(50));
}

} // namespace

TEST_CASE("a file that nobody touches keeps its stamp, and reading it doesn't change it") {
  const ScratchFolder folder;
  const fs::path path = folder / "cove.repeat";
  REQUIRE(!write_file(path, "buoys"));
  const FileStamp before = stamp_of(path);
  CHECK(before.there);
  CHECK(before.size == 5);
  let_the_clock_tick();
  REQUIRE(read_file(path, 100));
  CHECK(stamp_of(path) == before);
}

TEST_CASE("written in place, replaced, or moved there: another stamp, though size and time are set back") {
  const ScratchFolder folder;
  const fs::path path = folder / "cove.repeat";
  REQUIRE(!write_file(path, "buoys"));
  const fs::file_time_type time = fs::last_write_time(path);
  const FileStamp before = stamp_of(path);
  let_the_clock_tick();
  std::ofstream(path) << "waves";
  fs::last_write_time(path, time);
  const FileStamp written = stamp_of(path);
  CHECK(written.size == before.size);
  CHECK(written != before);

  REQUIRE(!write_file(folder / "other", "waves"));
  fs::last_write_time(folder / "other", time);
  fs::rename(folder / "other", path);
  CHECK(stamp_of(path) != written);
}

TEST_CASE("a link has the stamp of what it leads to; without a file there is none") {
  const ScratchFolder folder;
  REQUIRE(!write_file(folder / "cove.repeat", "buoys"));
  fs::create_symlink(folder / "cove.repeat", folder / "link");
  CHECK(stamp_of(folder / "link") == stamp_of(folder / "cove.repeat"));
  fs::remove(folder / "cove.repeat");
  CHECK(stamp_of(folder / "link") == FileStamp{});
  CHECK(!stamp_of(folder / "nowhere").there);
}
