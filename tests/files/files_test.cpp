// Replacing a file: the old content or the new, whole, with its rights, its links and a clear word where it fails.
// A child process takes the part of a user without rights, of a killed program, or of one under a size limit.
#include "files/files.hpp"
#include "files/leftovers.hpp"
#include "files/scratch_folder.hpp"

#include <csignal>
#include <cstdint>
#include <cstring>
#include <doctest/doctest.h>
#include <fcntl.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <sys/xattr.h>
#include <thread>
#include <unistd.h>

using namespace punchwright;
using namespace punchwright::test;
namespace fs = std::filesystem;

namespace {

constexpr std::size_t plenty = 1U << 20U;
constexpr uid_t nobody = 65534;

std::string text_of(const Failure& failure) {
  return failure ? failure->text() : "saved";
}

} // namespace

TEST_CASE("a file is written and read back, in place of an old one too") {
  const ScratchFolder folder;
  const fs::path file = folder / "waves.repeat";
  CHECK(text_of(write_file(file, "old")) == "saved");
  CHECK(text_of(write_file(file, std::string(200'000, 'x') + '\0' + "end")) == "saved");
  CHECK(content_of(file) == std::string(200'000, 'x') + '\0' + "end");
  const auto read = read_file(file, plenty);
  REQUIRE(read);
  CHECK(*read == content_of(file));
  CHECK(text_of(write_file(file, "")) == "saved");
  CHECK(content_of(file).empty());
  CHECK(names_in(folder.path()) == std::vector<std::string>{"waves.repeat"});
}

TEST_CASE("a name without a folder means the working folder") {
  const ScratchFolder folder;
  CHECK(in_child([&] {
          fs::current_path(folder.path());
          return write_file("plain.repeat", "new") ? 1 : 0;
        }) == 0);
  CHECK(content_of(folder / "plain.repeat") == "new");
}

TEST_CASE("what cannot be read is said, with what to do") {
  const ScratchFolder folder;
  put(folder / "large", std::string(11, 'x'));
  CHECK(read_file(folder / "large", 11).ok());
  CHECK(read_file(folder / "large", 10).error().text() ==
        (folder / "large").string() + ": has more than 10 bytes; allowed: a smaller file");
  CHECK(read_file(folder / "none", plenty).error().text() ==
        (folder / "none").string() +
            ": cannot be opened: No such file or directory; check the name; the folder must exist");
  CHECK(read_file(folder.path(), plenty).error().text() ==
        folder.path().string() + ": cannot be read: Is a directory; this is a folder; give the name of a file");
}

TEST_CASE("mode, owner and extended attributes stay; a new file follows the umask") {
  const ScratchFolder folder;
  const fs::path file = folder / "private.repeat";
  for (const mode_t mode : {0600U, 0640U, 0664U, 0444U}) {
    put(file, "old");
    REQUIRE(::chmod(file.c_str(), mode) == 0);
    if (::getuid() == 0) {
      REQUIRE(::chown(file.c_str(), nobody, nobody) == 0);
    } else if (mode == 0444U) {
      continue; // nobody but root may write such a file
    }
    const bool attributes = ::setxattr(file.c_str(), "user.gauge", "16", 2, 0) == 0;
    CHECK(text_of(write_file(file, "new")) == "saved");
    CHECK((state_of(file).st_mode & 07777U) == mode);
    CHECK(state_of(file).st_uid == (::getuid() == 0 ? nobody : ::getuid()));
    std::array<char, 8> value{};
    if (attributes) {
      CHECK(::getxattr(file.c_str(), "user.gauge", value.data(), value.size()) == 2);
    }
    fs::remove(file);
  }
  const mode_t before = ::umask(027);
  CHECK(text_of(write_file(folder / "fresh", "new")) == "saved");
  ::umask(before);
  CHECK((state_of(folder / "fresh").st_mode & 07777U) == 0640U);
}

// Form: Linux, include/uapi/linux/posix_acl_xattr.h; entries as POSIX.1e draft 17, 23.1.
TEST_CASE("an access control list stays") {
  struct Entry {
    std::uint16_t tag;
    std::uint16_t rights;
    std::uint32_t who;
  };
  struct List {
    std::uint32_t version = 2;
    std::array<Entry, 5> entries{{{0x01, 6, 0xffffffff},   // the owner
                                  {0x02, 4, nobody},       // one more user may read
                                  {0x04, 0, 0xffffffff},   // the group
                                  {0x10, 4, 0xffffffff},   // the mask
                                  {0x20, 0, 0xffffffff}}}; // others
  };
  constexpr const char* name = "system.posix_acl_access";
  const List list;
  const ScratchFolder folder;
  const fs::path file = folder / "shared.repeat";
  put(file, "old");
  if (::setxattr(file.c_str(), name, &list, sizeof list, 0) != 0) {
    MESSAGE("this file system keeps no access control lists");
    return;
  }
  CHECK(text_of(write_file(file, "new")) == "saved");
  CHECK(content_of(file) == "new");
  std::array<char, sizeof list> kept{};
  CHECK(::getxattr(file.c_str(), name, kept.data(), kept.size()) == ssize_t{sizeof list});
  CHECK(std::memcmp(kept.data(), &list, sizeof list) == 0);
}

TEST_CASE("a symbolic link stays a link, and its file gets the content, also where it does not exist yet") {
  const ScratchFolder folder;
  fs::create_directory(folder / "deep");
  put(folder / "deep" / "real", "old");
  fs::create_symlink("deep/real", folder / "link");
  fs::create_symlink("link", folder / "link to link");
  fs::create_symlink("deep/later", folder / "dangling");
  CHECK(text_of(write_file(folder / "link to link", "new")) == "saved");
  CHECK(text_of(write_file(folder / "dangling", "first")) == "saved");
  CHECK(fs::is_symlink(folder / "link to link"));
  CHECK(fs::is_symlink(folder / "link"));
  CHECK(fs::is_symlink(folder / "dangling"));
  CHECK(content_of(folder / "deep" / "real") == "new");
  CHECK(content_of(folder / "deep" / "later") == "first");
  CHECK(names_in(folder / "deep") == std::vector<std::string>{"later", "real"});
}

TEST_CASE("links that lead in a circle are refused") {
  const ScratchFolder folder;
  fs::create_symlink("two", folder / "one");
  fs::create_symlink("one", folder / "two");
  CHECK(text_of(write_file(folder / "one", "new"))
            .ends_with("symbolic links lead round in a circle; choose another name"));
}

TEST_CASE("devices and pipes are written through, and a full device is an error") {
  const ScratchFolder folder;
  CHECK(text_of(write_file("/dev/null", "gone")) == "saved");
  CHECK(text_of(write_file("/dev/full", "never")) ==
        "/dev/full: cannot be written: No space left on device; free some space, or choose another place");
  CHECK(fs::is_character_file("/dev/full"));
  const fs::path pipe = folder / "pipe";
  REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
  std::string through;
  std::thread reader([&] { through = content_of(pipe); });
  CHECK(text_of(write_file(pipe, "through")) == "saved");
  reader.join();
  CHECK(through == "through");
  CHECK(fs::is_fifo(pipe));
}

TEST_CASE("standard output and input go by the name -") {
  const ScratchFolder folder;
  put(folder / "in", "from there");
  const auto copy = [&](const char* output) {
    return in_child([&] {
      ::dup2(::open((folder / "in").c_str(), O_RDONLY), STDIN_FILENO);
      ::dup2(::open(output, O_WRONLY | O_CREAT, 0600), STDOUT_FILENO);
      const auto text = read_file("-", plenty);
      return text && !write_file("-", *text) ? 0 : 1;
    });
  };
  CHECK(copy((folder / "out").c_str()) == 0);
  CHECK(content_of(folder / "out") == "from there");
  CHECK(copy("/dev/full") == 1);
}

TEST_CASE("a pipe whose reader has gone is an error, not the end of the program") {
  std::array<int, 2> ends{};
  REQUIRE(::pipe(ends.data()) == 0);
  ::close(ends[0]);
  CHECK(in_child([&] {
          ::dup2(ends[1], STDOUT_FILENO);
          const Failure failure = write_file("-", "nobody reads this");
          return failure && failure->remedy == "the reader at the other end has gone" ? 0 : 1;
        }) == 0);
  ::close(ends[1]);
}

TEST_CASE("a read-only folder, and a file that may not be written, leave the old content") {
  if (::getuid() != 0) {
    return; // only root can become the user without rights
  }
  const ScratchFolder folder;
  REQUIRE(::chmod(folder.path().c_str(), 0755) == 0);
  put(folder / "open", "old");
  REQUIRE(::chmod((folder / "open").c_str(), 0666) == 0);
  const auto as_nobody = [&](const fs::path& file) {
    return in_child([&] {
      if (::setgid(nobody) != 0 || ::setuid(nobody) != 0) {
        return 2;
      }
      const Failure failure = write_file(file, "new");
      return failure && failure->message == "cannot be written: Permission denied" ? 0 : 1;
    });
  };
  CHECK(as_nobody(folder / "open") == 0);
  CHECK(content_of(folder / "open") == "old");
  // The folder is open now, so a rename would do; but the file is another's and read-only.
  REQUIRE(::chmod(folder.path().c_str(), 0777) == 0);
  REQUIRE(::chmod((folder / "open").c_str(), 0644) == 0);
  CHECK(as_nobody(folder / "open") == 0);
  CHECK(content_of(folder / "open") == "old");
  CHECK(names_in(folder.path()) == std::vector<std::string>{"open"});
}

TEST_CASE("a full disk leaves the old content and nothing else") {
  const ScratchFolder folder;
  if (::mount("none", folder.path().c_str(), "tmpfs", 0, "size=64k") != 0) {
    return; // mounting is not allowed here; /dev/full is tried above
  }
  put(folder / "one", "old");
  put(folder / "linked", std::string(20'000, 'o'));
  fs::create_hard_link(folder / "linked", folder / "other name");
  const std::string large(100'000, 'n');
  const std::string replaced = text_of(write_file(folder / "one", large));
  const std::string through = text_of(write_file(folder / "linked", large));
  const std::string expected = ": cannot be written: No space left on device; free some space, or choose another place";
  CHECK(replaced == (folder / "one").string() + expected);
  CHECK(through == (folder / "linked").string() + expected);
  CHECK(content_of(folder / "one") == "old");
  CHECK(content_of(folder / "other name") == std::string(20'000, 'o'));
  CHECK(names_in(folder.path()) == std::vector<std::string>{"linked", "one", "other name"});
  ::umount(folder.path().c_str());
}

TEST_CASE("a size limit is an error, not the end of the program") {
  const ScratchFolder folder;
  put(folder / "one", "old");
  CHECK(in_child([&] {
          const rlimit limit{4096, 4096};
          ::setrlimit(RLIMIT_FSIZE, &limit);
          const Failure failure = write_file(folder / "one", std::string(10'000, 'n'));
          const Failure small = write_file(folder / "two", "small");
          return failure && failure->message == "cannot be written: File too large" && !small ? 0 : 1;
        }) == 0);
  CHECK(content_of(folder / "one") == "old");
  CHECK(names_in(folder.path()) == std::vector<std::string>{"one", "two"});
}

TEST_CASE("only leftovers of this file and of processes that are gone are cleared away") {
  const ScratchFolder folder;
  const fs::path file = folder / "waves.repeat";
  const pid_t gone = ::fork();
  if (gone == 0) {
    ::_exit(0);
  }
  ::waitpid(gone, nullptr, 0);
  const std::string own = temporary_name(file, 0).filename().string();
  const auto of_process = [&](pid_t process, std::string rest) {
    const std::string number = '-' + std::to_string(::getpid()) + "-0.tmp";
    return own.substr(0, own.size() - number.size()) + '-' + std::to_string(process) + std::move(rest);
  };
  put(folder / of_process(gone, "-0.tmp"), "leftover");
  put(folder / of_process(gone, "-12.tmp"), "leftover");
  const std::vector<std::string> others = {of_process(::getppid(), "-0.tmp"), of_process(gone, "-x.tmp"),
                                           of_process(gone, "-0.tmpx"), ".other" + of_process(gone, "-0.tmp"), "a.tmp"};
  for (const std::string& name : others) {
    put(folder / name, "not ours to clear");
  }
  CHECK(text_of(write_file(file, "new")) == "saved");
  std::vector<std::string> expected = others;
  expected.emplace_back("waves.repeat");
  std::ranges::sort(expected);
  CHECK(names_in(folder.path()) == expected);
}

TEST_CASE("a very long name can be saved, and one too long says so") {
  const ScratchFolder folder;
  const fs::path longest = folder / std::string(255, 'n');
  CHECK(text_of(write_file(longest, "one")) == "saved");
  CHECK(text_of(write_file(longest, "two")) == "saved");
  CHECK(content_of(longest) == "two");
  CHECK(text_of(write_file(folder / std::string(256, 'n'), "no"))
            .ends_with("cannot be written: File name too long; choose a shorter name"));
  CHECK(text_of(write_file(folder / "no such folder" / "file", "no"))
            .ends_with("No such file or directory; check the name; the folder must exist"));
  CHECK(text_of(write_file(folder.path(), "no")).ends_with("this is a folder; give the name of a file"));
}
