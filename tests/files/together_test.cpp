// Several files that change together or not at all, and files with several names, which change in place.
// A child process takes the part of a user without rights, or of a killed program.
#include "files/files.hpp"
#include "files/scratch_folder.hpp"
#include "files/writing.hpp"

#include <doctest/doctest.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace punchwright;
using namespace punchwright::test;
namespace fs = std::filesystem;

namespace {

constexpr uid_t nobody = 65534;

std::string text_of(const Failure& failure) {
  return failure ? failure->text() : "saved";
}

} // namespace

TEST_SUITE("several files") {
  TEST_CASE("are written, old ones replaced, new ones made") {
    const ScratchFolder folder;
    put(folder / "card.svg", "old");
    CHECK(text_of(write_files({{folder / "card.svg", "first"}, {folder / "card-2.svg", "second"}})) == "saved");
    CHECK(content_of(folder / "card.svg") == "first");
    CHECK(content_of(folder / "card-2.svg") == "second");
    CHECK(names_in(folder.path()) == std::vector<std::string>{"card-2.svg", "card.svg"});
    CHECK(text_of(write_files({})) == "saved");
  }

  TEST_CASE("where one cannot be written none is, whatever hinders it") {
    const ScratchFolder folder;
    put(folder / "card.svg", "old");
    put(folder / "named twice", "old too");
    fs::create_hard_link(folder / "named twice", folder / "other name");
    fs::create_directory(folder / "card-3.svg");
    for (const fs::path& hindered : {folder / "card-3.svg", folder / "nowhere" / "card-3.svg",
                                     folder / std::string(300, 'n'), fs::path("/dev/full")}) {
      CAPTURE(hindered);
      CHECK(text_of(write_files({{folder / "card.svg", "first"},
                                 {folder / "card-2.svg", "second"},
                                 {folder / "named twice", "through"},
                                 {hindered, "third"}})) != "saved");
      CHECK(content_of(folder / "card.svg") == "old");
      CHECK(content_of(folder / "other name") == "old too");
      CHECK(names_in(folder.path()) == std::vector<std::string>{"card-3.svg", "card.svg", "named twice", "other name"});
    }
  }

  // In a folder with the sticky bit a file of somebody else can be written, but nothing may take its place: the last of
  // all steps fails, when the others are done.
  TEST_CASE("what is in its place already is taken back") {
    if (::getuid() != 0) {
      return; // only root can become the user without rights
    }
    const ScratchFolder folder;
    REQUIRE(::chmod(folder.path().c_str(), 01777) == 0);
    put(folder / "own", "old");
    REQUIRE(::chown((folder / "own").c_str(), nobody, nobody) == 0);
    put(folder / "twice", "old too");
    fs::create_hard_link(folder / "twice", folder / "other name");
    put(folder / "somebody else's", "theirs");
    for (const char* name : {"twice", "somebody else's"}) {
      REQUIRE(::chmod((folder / name).c_str(), 0666) == 0);
    }
    CHECK(in_child([&] {
            if (::setgid(nobody) != 0 || ::setuid(nobody) != 0) {
              return 2;
            }
            const Failure failure = write_files({{folder / "own", "new"},
                                                 {folder / "fresh", "new"},
                                                 {folder / "twice", "new"},
                                                 {folder / "somebody else's", "new"}});
            return failure && failure->message == "cannot be written: Operation not permitted" ? 0 : 1;
          }) == 0);
    CHECK(content_of(folder / "own") == "old");
    CHECK(content_of(folder / "other name") == "old too");
    CHECK(content_of(folder / "somebody else's") == "theirs");
    CHECK(names_in(folder.path()) == std::vector<std::string>{"other name", "own", "somebody else's", "twice"});
  }
}

TEST_SUITE("a file with several names") {
  TEST_CASE("keeps them, and nothing is left beside it") {
    const ScratchFolder folder;
    put(folder / "one", "a longer old text");
    fs::create_hard_link(folder / "one", folder / "two");
    CHECK(text_of(write_file(folder / "one", "new")) == "saved");
    CHECK(content_of(folder / "two") == "new");
    CHECK(fs::hard_link_count(folder / "one") == 2);
    CHECK(names_in(folder.path()) == std::vector<std::string>{"one", "two"});
  }

  TEST_CASE("where nothing can lie beside it, it is not touched") {
    if (::getuid() != 0) {
      return; // only root can become the user without rights
    }
    const ScratchFolder folder;
    put(folder / "one", "old");
    fs::create_hard_link(folder / "one", folder / "two");
    REQUIRE(::chmod((folder / "one").c_str(), 0666) == 0);
    REQUIRE(::chmod(folder.path().c_str(), 0755) == 0);
    CHECK(in_child([&] {
            if (::setgid(nobody) != 0 || ::setuid(nobody) != 0) {
              return 2;
            }
            const Failure failure = write_file(folder / "one", "new");
            return failure && failure->message == "cannot be written: Permission denied" ? 0 : 1;
          }) == 0);
    CHECK(content_of(folder / "two") == "old");
  }

  TEST_CASE("the name beside it fits where the file's own name fits") {
    CHECK(whole_name("folder/puffins.repeat") == "folder/puffins.repeat.punchwright-whole");
    CHECK(whole_name(std::string(255, 'n')).string().size() == 255);
  }
}
