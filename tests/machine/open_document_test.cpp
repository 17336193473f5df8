// A .repeat file with its machine: built in, or in a .machine file beside it; and what only both together can tell.
// The reader of files is a function of the test.
#include "machine/open_document.hpp"
#include "machine/profile_file.hpp"

#include <doctest/doctest.h>

using namespace punchwright;

namespace {

std::string repeat_text(const std::string& machine_and_piece) {
  return "format = 1\n" + machine_and_piece +
         "[[yarn]]\nkey = \"A\"\n[[yarn]]\nkey = \"B\"\n[repeat]\nwidth = 2\nrows = [\".#\"]\n"
         "[[band]]\nrows = 1\nmain = \"A\"\ncontrast = \"B\"\n";
}

Result<std::string> no_file(const std::filesystem::path& path) {
  return Error{path.string(), 0, 0, "cannot be opened: No such file or directory", "check the name"};
}

} // namespace

TEST_CASE("a built-in profile needs no file") {
  const auto opened =
      open_document(repeat_text("season = 1\n[machine]\nprofile = \"fine-card-24\"\n"), "a/b.repeat", no_file);
  REQUIRE(opened);
  CHECK(opened->profile.name == "fine-card-24");
  CHECK(opened->document.profile == "fine-card-24");
  CHECK(opened->notes == std::vector<ReadingNote>{{2, "unknown key 'season' is kept as it is"}});
}

TEST_CASE("a .machine file is looked for beside the .repeat file, or where its path says") {
  const auto from = [](const std::string& profile, const std::string& repeat) {
    std::filesystem::path asked;
    const auto opened = open_document(repeat_text("[machine]\nprofile = \"" + profile + "\"\n"), repeat,
                                      [&](const std::filesystem::path& path) -> Result<std::string> {
                                        asked = path;
                                        return write_machine(*built_in_profile("bulky-card-12"));
                                      });
    REQUIRE(opened);
    CHECK(opened->profile == *built_in_profile("bulky-card-12"));
    return asked.string();
  };
  CHECK(from("ours.machine", "bands/waves.repeat") == "bands/ours.machine");
  CHECK(from("../beds/ours.machine", "bands/waves.repeat") == "bands/../beds/ours.machine");
  CHECK(from("/beds/ours.machine", "bands/waves.repeat") == "/beds/ours.machine");
  CHECK(from("ours.machine", "waves.repeat") == "ours.machine");
}

TEST_CASE("an unknown profile, and a .machine file that is not there, are faults of the profile's key") {
  const auto error = [](const std::string& profile) {
    const auto opened =
        open_document(repeat_text("[machine]\n  profile = \"" + profile + "\"\n"), "a/b.repeat", no_file);
    REQUIRE_FALSE(opened.ok());
    return opened.error().text();
  };
  CHECK(error("bulky") == "a/b.repeat:3:13: \"bulky\" is no machine profile; allowed: fine-card-24, standard-card-24, "
                          "bulky-card-24, bulky-card-12, plastic-by-hand, or the path of a .machine file");
  CHECK(error("ours.machine") ==
        "a/b.repeat:3:13: a/ours.machine: cannot be opened: No such file or directory; check the name");
}

TEST_CASE("a fault in a .machine file has its place there") {
  const auto opened = open_document(repeat_text("[machine]\nprofile = \"ours.machine\"\n"), "a/b.repeat",
                                    [](const std::filesystem::path&) { return Result<std::string>("format = 2\n"); });
  REQUIRE_FALSE(opened.ok());
  CHECK(opened.error().text() == "a/ours.machine:1:10: 'format' is 2; allowed: 1");
}

TEST_CASE("a fault in the .repeat file comes before the machine is looked for") {
  const auto opened = open_document("format = 2\n", "b.repeat", no_file);
  REQUIRE_FALSE(opened.ok());
  CHECK(opened.error().text() == "b.repeat:1:10: 'format' is 2; allowed: 1");
}

TEST_CASE("a first column is for machines without a card") {
  const std::string piece = "[piece]\nfirst_column = 2\n";
  const std::string remedy =
      "allowed: on machines without a card; here the card decides which column a needle knits, so "
      "leave it out";
  const auto by_hand =
      open_document(repeat_text("[machine]\nprofile = \"plastic-by-hand\"\n" + piece), "b.repeat", no_file);
  REQUIRE(by_hand);
  CHECK(by_hand->document.piece.first_column == 2);
  const auto by_card =
      open_document(repeat_text("[machine]\nprofile = \"bulky-card-12\"\n" + piece), "b.repeat", no_file);
  REQUIRE_FALSE(by_card.ok());
  CHECK(by_card.error().text() ==
        "b.repeat:5:1: 'piece.first_column' on a machine with a card, bulky-card-12; " + remedy);
  const auto by_default = open_document(repeat_text(piece), "b.repeat", no_file);
  REQUIRE_FALSE(by_default.ok());
  CHECK(by_default.error().text() ==
        "b.repeat:3:1: 'piece.first_column' on a machine with a card, bulky-card-24; " + remedy);
}
