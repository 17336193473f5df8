// A user's motifs as text: what is understood, what is refused, and that what is kept comes back.
#include "drawing/motifs.hpp"
#include "support/builders.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using Lines = std::vector<std::string>;

namespace {

std::vector<Motif> read(std::string_view text) {
  auto motifs = motifs_in_text(text, "my-file");
  REQUIRE_MESSAGE(motifs.ok(), (motifs ? "" : motifs.error().text()));
  return std::move(motifs).value();
}

} // namespace

TEST_CASE("a motif has its id, name and words from its first line, its rows from the top") {
  const auto motifs = read("grey-heron: Grey heron; bird marsh\n..#\n##.\n");
  REQUIRE(motifs.size() == 1);
  CHECK(motifs[0].id == "grey-heron");
  CHECK(motifs[0].name == "Grey heron");
  CHECK(motifs[0].words == "bird marsh");
  CHECK(motifs[0].group == MotifGroup::own);
  CHECK(test::lines_of(motifs[0].drawing) == Lines{"..#", "##."});
}

TEST_CASE("several stand in one text; names may be missing, line ends may be those of another system") {
  const auto motifs = read("\r\nHeron\r\n#.\r\n\r\n\r\n.#\r\n#.\r\n\r\nold-one: Old one\r\n##");
  REQUIRE(motifs.size() == 3);
  CHECK(motifs[0].id == "my-file");
  CHECK(motifs[0].name == "Heron");
  CHECK(motifs[1].name == "my-file");
  CHECK(test::lines_of(motifs[1].drawing) == Lines{".#", "#."});
  CHECK(motifs[2].id == "old-one");
}

TEST_CASE("a colon among the words is one of theirs; what has no name has its file's") {
  const auto motifs = read("Bell buoy; sound: mark\n#.\n\nbell: buoy: red; mark\n#.\n\n: ; mark\n#.\n");
  REQUIRE(motifs.size() == 3);
  CHECK(motifs[0].id == "my-file");
  CHECK(motifs[0].name == "Bell buoy");
  CHECK(motifs[0].words == "sound: mark");
  CHECK(motifs[1].id == "bell");
  CHECK(motifs[1].name == "buoy: red");
  CHECK(motifs[2].id == "my-file");
  CHECK(motifs[2].name == "my-file");
  for (const Motif& motif : motifs) {
    CHECK(text_of_motif(read(text_of_motif(motif)).front()) == text_of_motif(motif));
  }
}

TEST_CASE("a line that is no text is refused with its number") {
  for (const auto& line : {std::string("B\xc0y"), std::string("a\0b", 3), std::string("a\x7f")}) {
    const auto motifs = motifs_in_text("a: A\n##\n\n" + line + "\n##\n", "f");
    REQUIRE_FALSE(motifs.ok());
    CHECK(motifs.error().line == 4);
    CHECK(motifs.error().text().find("UTF-8") != std::string::npos);
  }
  CHECK(read("Möwe\n##\n").front().name == "Möwe");
  CHECK(read("\xef\xbb\xbfHeron; bird\tmarsh\n##\n").front().name == "Heron");
  CHECK(test::lines_of(read("\xef\xbb\xbf##\n").front().drawing) == Lines{"##"});
}

TEST_CASE("what is no motif is refused with its line") {
  const auto refused = [](std::string_view text) {
    const auto motifs = motifs_in_text(text, "f");
    REQUIRE_FALSE(motifs.ok());
    return motifs.error().text();
  };
  CHECK(refused("").find("no motif") != std::string::npos);
  CHECK(refused("\n\n").find("no motif") != std::string::npos);
  CHECK(motifs_in_text("a: A\n##\n#x\n", "f").error().line == 3);
  CHECK(motifs_in_text("a: A\n##\n\nb: B\n##\n###\n", "f").error().line == 6);
  CHECK(motifs_in_text("a: A\n##\n\nb: B\n", "f").error().line == 4);
}

TEST_CASE("every motif of the collection comes back from its text") {
  for (const Motif& motif : motif_collection()) {
    const auto motifs = read(text_of_motif(motif));
    REQUIRE(motifs.size() == 1);
    CHECK(motifs[0].id == motif.id);
    CHECK(motifs[0].name == motif.name);
    CHECK(motifs[0].words == motif.words);
    CHECK(motifs[0].drawing == motif.drawing);
  }
}

TEST_CASE("an id is small letters, digits and hyphens") {
  CHECK(motif_id("Grey heron, left") == "grey-heron-left");
  CHECK(motif_id("  Net 2!") == "net-2");
  CHECK(motif_id("Möwe") == "m-we");
  CHECK(motif_id("…") == "motif");
}
