// Rows of one colour that lie on one another are one entry for people, and a finding each for scripts.
#include "rules/findings.hpp"
#include "support/builders.hpp"
#include "support/machines.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using test::drawn;

namespace {

std::vector<Finding> notes_on_rows(const Document& document) {
  std::vector<Finding> found = check(document, test::card_machine());
  std::erase_if(found, [](const Finding& finding) {
    return finding.id != FindingId::row_all_main && finding.id != FindingId::row_all_contrast;
  });
  return found;
}

std::vector<std::string> entries(const Document& document) {
  const auto findings = notes_on_rows(document);
  std::vector<std::string> texts;
  for (const FindingGroup& group : gathered(findings)) {
    texts.push_back(words_of(group, findings, document, test::card_machine()).text);
  }
  return texts;
}

} // namespace

TEST_CASE("an empty drawing has a finding for every row, and one entry") {
  const Document document = blank_document(24, 40);
  CHECK(notes_on_rows(document).size() == 40);
  CHECK(entries(document) == std::vector<std::string>{"rows 1 to 40 are knitted in Oat alone"});
}

TEST_CASE("only neighbours in the same yarn are gathered") {
  Document document = drawn({"##", "##", "..", "#.", "..", ".."});
  const std::string loose = ": every needle is selected, and Oat would lie loose across the whole piece";
  CHECK(entries(document) == std::vector<std::string>{"rows 1 and 2 are knitted in Oat alone",
                                                      "row 4 is knitted in Oat alone",
                                                      "rows 5 and 6 are knitted in Ink alone" + loose});
  document.yarns = test::five_yarns();
  document.bands = {Band{1, 'A', 'B', {}}, Band{5, 'C', 'B', {}}}; // another main
  CHECK(entries(document)[0] == "row 1 is knitted in Oat alone");
  CHECK(entries(document)[1] == "row 2 is knitted in Brick alone");
}

TEST_CASE("what to do is said of all of them") {
  const Document document = drawn({"##", "##", "##"});
  const auto findings = notes_on_rows(document);
  CHECK(words_of(FindingGroup{0, 3}, findings, document, test::card_machine()).remedy ==
        "take Oat out of the feeder before them and put it back after them; after an odd number of such rows Oat hangs "
        "at the other edge: cut it and rejoin it");
  CHECK(words_of(FindingGroup{1, 1}, findings, document, test::card_machine()).text ==
        words_of(findings[1], document, test::card_machine()).text);
}

TEST_CASE("other findings stay by themselves, and every finding is in one group") {
  Document document = drawn({"#.......", "#.......", "........", "........"});
  document.yarns[1].colour = document.yarns[0].colour;
  const auto findings = check(document, test::card_machine());
  std::size_t next = 0;
  for (const FindingGroup& group : gathered(findings)) {
    CHECK(group.first == next);
    CHECK(group.count == (findings[group.first].id == FindingId::row_all_main ? 2U : 1U));
    next += group.count;
  }
  CHECK(next == findings.size());
  CHECK(gathered({}).empty());
}
