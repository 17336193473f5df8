// The numbers and notes in a card's margins.
#include "card_designs.hpp"
#include "sheets/card_notes.hpp"

#include <algorithm>
#include <doctest/doctest.h>

using namespace punchwright;

namespace {

CardNotes notes_of(const Document& document, const Profile& profile) {
  const auto rows = rows_to_knit(document, profile);
  return card_notes(document, profile, rows, card_plan(document, *profile.card, rows));
}

int row_of_number(const CardNotes& notes, int number) {
  const auto found = std::ranges::find(notes.lines, number, &LineNote::number);
  return found == notes.lines.end() ? 0 : found->row;
}

std::string action_of_number(const CardNotes& notes, int number) {
  const auto found = std::ranges::find(notes.lines, number, &LineNote::number);
  return found == notes.lines.end() ? "" : found->action;
}

} // namespace

TEST_CASE("number n stands beside punched row n + offset") {
  // Readers 5 and 7 rows below the visible line: needlesofsteel.blogspot.com, May 2007; 7: alessandrina.com,
  // 2015-09-03.
  for (const int offset : {0, 5, 7}) {
    const auto notes = notes_of(slanting_design(40), card_machine(offset));
    CAPTURE(offset);
    CHECK(row_of_number(notes, 1) == 1 + offset);
    CHECK(row_of_number(notes, 20) == 20 + offset);
  }
}

TEST_CASE("numbers beyond the card's last overlap row are left out") {
  const auto notes = notes_of(slanting_design(40), card_machine(7));
  CHECK(notes.last_number == 35); // 35 + 7 = 42: the second overlap row
  CHECK(row_of_number(notes, 36) == 0);
}

TEST_CASE("on several cards the numbers carry over to the next one") {
  const auto notes = notes_of(slanting_design(100), card_machine(7));
  CHECK(row_of_number(notes, 54) == 61); // the second card's first row
}

TEST_CASE("on a loop the numbers wrap round, and all of them have a line") {
  Document document = slanting_design(40);
  document.card.loop = true;
  const auto notes = notes_of(document, card_machine(7));
  CHECK(row_of_number(notes, 33) == 40);
  CHECK(row_of_number(notes, 34) == 1);
  CHECK(row_of_number(notes, 40) == 7);
  CHECK(notes.beyond.empty());
}

TEST_CASE("what is done before a row stands beside its number, with the yarns' names") {
  Document document = slanting_design(40);
  document.yarns.push_back({'C', "Brick", {170, 60, 40}});
  document.bands = {{20, 'A', 'B', {}}, {20, 'A', 'C', {}}};
  document.rules.plain_rows = 1;
  Profile profile = card_machine();
  profile.selects = Selects::next_pass;
  profile.end_needles = true;
  const auto notes = notes_of(document, profile);
  CHECK(action_of_number(notes, 1) == "Ink in");
  CHECK(action_of_number(notes, 21) == "Ink out, end needles back"); // the inserted plain row
  CHECK(action_of_number(notes, 22) == "Brick in");
  CHECK(action_of_number(notes, 2).empty());
  CHECK(notes.at_end == "Brick out, all needles back; plain row; all needles back");
}

TEST_CASE("on a loop, threading at the very beginning is marked as done the first time only") {
  Document document = slanting_design(40);
  document.card.loop = true;
  document.piece.times = 3;
  CHECK(action_of_number(notes_of(document, card_machine()), 1) == "first time Ink in");
  document.piece.times = 1;
  CHECK(action_of_number(notes_of(document, card_machine()), 1) == "Ink in");
}

TEST_CASE("an action whose number has no line is kept apart, and is in the list of all") {
  Document document = slanting_design(40);
  for (int column = 0; column < 24; ++column) {
    document.grid.set(column, 38, false); // row 39 is plain
  }
  const auto notes = notes_of(document, card_machine(7));
  REQUIRE(notes.beyond.size() == 2);
  CHECK(notes.beyond[0].number == 39);
  CHECK(notes.beyond[1].number == 40);
  CHECK(std::ranges::any_of(notes.all, [](const auto& entry) { return entry.first == 39; }));
}
