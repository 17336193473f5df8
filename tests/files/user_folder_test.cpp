// Where a program keeps things for its user (XDG's Base Directory Specification, 0.8): "If, when attempting to write a
// file, the destination directory is non-existent an attempt should be made to create it with permission 0700. If the
// destination directory exists already the permissions should not be changed."
#include "files/scratch_folder.hpp"
#include "files/user_folder.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using namespace punchwright::test;
namespace fs = std::filesystem;

namespace {

unsigned rights_of(const fs::path& path) {
  return static_cast<unsigned>(fs::status(path).permissions());
}

} // namespace

TEST_CASE("what is missing is made for the user alone, and what is there is left as it is") {
  const ScratchFolder folder;
  const fs::path home = folder / "home";
  fs::create_directories(home / ".local");
  fs::permissions(home / ".local", fs::perms{0755});
  REQUIRE(!make_user_folder(home / ".local/state/punchwright/journals/", home));
  CHECK(rights_of(home / ".local") == 0755U);
  CHECK(rights_of(home / ".local/state") == 0700U);
  CHECK(rights_of(home / ".local/state/punchwright") == 0700U);
  CHECK(rights_of(home / ".local/state/punchwright/journals") == 0700U);
  CHECK(!make_user_folder(home / ".local/state/punchwright/journals", home));
}

TEST_CASE("a home folder that is missing is not made, whatever leads to it") {
  const ScratchFolder folder;
  const fs::path home = folder / "nobody";
  for (const char* const below : {".config/punchwright", "../nobody/.config", "./x"}) {
    CAPTURE(below);
    const Failure failure = make_user_folder(home / below, home);
    REQUIRE(failure);
    CHECK(failure->message == "there is no home folder " + home.string());
    CHECK(!fs::exists(home));
  }
  put(folder / "file", "no folder");
  CHECK(make_user_folder(folder / "file/.config", folder / "file"));
}

TEST_CASE("a folder that a variable names elsewhere needs no home") {
  const ScratchFolder folder;
  CHECK(!make_user_folder(folder / "state/punchwright", folder / "nobody"));
  CHECK(!make_user_folder(folder / "other/punchwright", {}));
  CHECK(!make_user_folder(folder / "nobody-else/punchwright", folder / "nobody"));
  CHECK(fs::is_directory(folder / "nobody-else/punchwright"));
}

TEST_CASE("what stands in the way is said") {
  const ScratchFolder folder;
  put(folder / "file", "no folder");
  const Failure failure = make_user_folder(folder / "file/punchwright", {});
  REQUIRE(failure);
  CHECK(failure->file == (folder / "file").string());
  CHECK(failure->message == "Not a directory");
}
