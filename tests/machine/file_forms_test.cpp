// The examples of docs/file-forms.md are files that load, and its tables name every key that the program writes.
// Else the page would drift away from the program.
#include "design/repeat_file.hpp"
#include "machine/profile_file.hpp"

#include <doctest/doctest.h>
#include <fstream>
#include <sstream>
#include <vector>

using namespace punchwright;

namespace {

std::string page() {
  std::ifstream file(PUNCHWRIGHT_SOURCE_DIR "/docs/file-forms.md");
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

// The indented blocks that begin with the number of the form.
std::vector<std::string> examples() {
  std::vector<std::string> found;
  std::istringstream lines(page());
  bool inside = false;
  for (std::string line; std::getline(lines, line);) {
    if (line.starts_with("    format = 1")) {
      found.emplace_back();
      inside = true;
    }
    inside = inside && (line.empty() || line.starts_with("    "));
    if (inside) {
      found.back() += (line.empty() ? line : line.substr(4)) + '\n';
    }
  }
  return found;
}

// "`rows`" for each line "rows = …" of a file that the program wrote.
void check_keys(const std::string& written) {
  const std::string text = page();
  std::istringstream lines(written);
  for (std::string line; std::getline(lines, line);) {
    const auto equals = line.find(" = ");
    if (equals != std::string::npos && line[0] != '"') {
      CAPTURE(line);
      CHECK(text.find('`' + line.substr(0, equals) + '`') != std::string::npos);
    }
  }
}

} // namespace

TEST_CASE("the examples of the page load") {
  const std::vector<std::string> found = examples();
  REQUIRE(found.size() == 3); // the third is a .yoke, which its own room reads
  const auto repeat = read_repeat(found[0], "example.repeat");
  INFO((repeat ? std::string() : repeat.error().text()));
  REQUIRE(repeat);
  CHECK(repeat->document.title == "Buoys at low water");
  CHECK(repeat->notes.empty());
  const auto machine = read_machine(found[1], "example.machine");
  INFO((machine ? std::string() : machine.error().text()));
  REQUIRE(machine);
  CHECK(machine->name == "harbour-room");
}

TEST_CASE("the page names every key") {
  Document document = blank_document(2, 1);
  document.bands[0].plain_below = 1;
  document.piece.stitches = 2;
  document.piece.first_needle = Needle{0};
  document.piece.first_column = 1;
  document.rules.longest_float = 5;
  check_keys(write_repeat(document));
  document.rules = {std::nullopt, 25.0, 1, ChangeSide::any};
  check_keys(write_repeat(document));
  check_keys(write_machine(built_in_profiles().front()));
}
