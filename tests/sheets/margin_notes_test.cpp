// What hands do, in the margins of the card's sheets and in the list behind them: nothing lost, cut or printed over.
#include "card_designs.hpp"
#include "sheets/card_pages.hpp"

#include <algorithm>
#include <doctest/doctest.h>
#include <set>

using namespace punchwright;

namespace {

// The contrast changes in every row, from row `first` on; before that it is always the same.
Document changing_design(int rows, int first, const std::string& contrast, const std::string& other) {
  Document document = slanting_design(rows);
  document.yarns[1].name = contrast;
  document.yarns.push_back({'C', other, {170, 60, 40}});
  document.bands.clear();
  if (first > 1) {
    document.bands.push_back({first - 1, 'A', 'B', {}});
  }
  for (int row = first; row <= rows; ++row) {
    document.bands.push_back({1, 'A', (row - first) % 2 == 0 ? 'C' : 'B', {}});
  }
  document.rules.plain_rows = 0;
  return document;
}

Profile machine_that_selects_for_the_next_pass(double sheet_width = 142) {
  Profile profile = card_machine();
  profile.selects = Selects::next_pass;
  profile.end_needles = true;
  profile.card->geometry.sheet_width = sheet_width;
  profile.card->geometry.column_1 = (sheet_width - 23 * 4.5) / 2;
  return profile;
}

std::vector<TextShape> texts_on(const Sheet& sheet) {
  std::vector<TextShape> texts;
  for (const Group& group : sheet.groups) {
    for (const Shape& shape : group.shapes) {
      if (const auto* text = std::get_if<TextShape>(&shape)) {
        texts.push_back(*text);
      }
    }
  }
  return texts;
}

// All words of a sheet in the order in which they are set, so that a wrapped note reads on.
std::string words_on(const Sheet& sheet) {
  std::string all = " ";
  for (const TextShape& text : texts_on(sheet)) {
    all += text.text + ' ';
  }
  return all;
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

bool meet(const TextShape& one, const TextShape& other) {
  const auto right = [](const TextShape& text) { return text.at.x + width_of(text.text, text.height_mm, text.bold); };
  // From the capitals' height to just below the base line.
  return one.at.y - 0.7 * one.height_mm < other.at.y && other.at.y - 0.7 * other.height_mm < one.at.y &&
         one.at.x < right(other) && other.at.x < right(one);
}

void check_nothing_over_another(const Sheet& sheet) {
  auto texts = texts_on(sheet);
  std::erase_if(texts, [](const TextShape& text) { return text.anchor != Anchor::start || text.turned_degrees != 0; });
  for (std::size_t one = 0; one < texts.size(); ++one) {
    for (std::size_t other = one + 1; other < texts.size(); ++other) {
      if (meet(texts[one], texts[other])) {
        FAIL_CHECK("'" << texts[one].text << "' over '" << texts[other].text << "'");
      }
    }
  }
}

std::vector<Sheet> pages_of(const Document& document, const Profile& profile) {
  auto pages = card_pages(card_job(document, profile));
  REQUIRE(pages.ok());
  return std::move(pages).value();
}

std::vector<Sheet> sheets_on_their_own(const Document& document, const Profile& profile) {
  std::vector<Sheet> sheets;
  const CardJob job = card_job(document, profile);
  for (const Card& card : job.plan.cards) {
    sheets.push_back(card_on_its_own(job, card));
  }
  return sheets;
}

// Every action once, by the number before which it is done, on the sheets that are not the cover.
void check_all_told(const Document& document, const Profile& profile, const std::vector<Sheet>& sheets) {
  std::string all;
  for (const Sheet& sheet : sheets) {
    all += words_on(sheet) + '\n';
  }
  const CardNotes notes = card_job(document, profile).notes;
  REQUIRE_FALSE(notes.all.empty());
  for (const auto& [number, action] : notes.all) {
    const std::string in_margin = std::to_string(number) + ": " + action + ' ';
    const std::string in_list = ' ' + std::to_string(number) + ' ' + action + ' ';
    CAPTURE(in_margin);
    const std::size_t found = all.find(' ' + in_margin);
    CHECK((found != std::string::npos || holds(all, in_list)));
    CHECK((found == std::string::npos || all.find(' ' + in_margin, found + 1) == std::string::npos));
  }
  CHECK(holds(all, notes.at_end));
  CHECK_FALSE(holds(all, "…"));
}

} // namespace

TEST_CASE("an action beside an overlap row and the overlap's own words are both legible") {
  const Profile profile = machine_that_selects_for_the_next_pass();
  // Number 6 stands beside row 13, the first overlap row of 12.
  const Document document = changing_design(12, 6, "Ink", "Brick");
  for (const Sheet& sheet : {pages_of(document, profile).at(1), sheets_on_their_own(document, profile).front()}) {
    const std::string words = words_on(sheet);
    CHECK(holds(words, "6: Ink out, Brick in"));
    CHECK(holds(words, "2 overlap rows: punch all"));
    check_nothing_over_another(sheet);
  }
}

TEST_CASE("what has no line on the last card any more is told there, all of it, and on no other card") {
  const Profile profile = machine_that_selects_for_the_next_pass();
  const Document document = changing_design(72, 61, "Ink", "Brick");
  const auto cards = sheets_on_their_own(document, profile);
  REQUIRE(cards.size() == 2);
  for (const char* note : {"68: ", "69: ", "70: ", "71: ", "72: ", "after the last row: ", "beyond the card's last"}) {
    CAPTURE(note);
    CHECK_FALSE(holds(words_on(cards[0]), note));
    CHECK(holds(words_on(cards[1]), note));
  }
  const auto pages = pages_of(document, profile);
  REQUIRE(pages.size() == 4);
  CHECK(holds(words_on(pages[3]), "72: Brick out, Ink in"));
  CHECK_FALSE(holds(words_on(pages[1]) + words_on(pages[2]), "72: "));
  check_all_told(document, profile, {pages.begin() + 1, pages.end()});
}

TEST_CASE("a note stands on the page whose part has its number") {
  const Profile profile = machine_that_selects_for_the_next_pass();
  const Document document = changing_design(60, 1, "Ink", "Brick");
  const auto pages = pages_of(document, profile);
  REQUIRE(pages.size() == 3);
  for (std::size_t page = 1; page < pages.size(); ++page) {
    std::set<std::string> numbers;
    for (const TextShape& text : texts_on(pages[page])) {
      numbers.insert(text.text);
    }
    for (int number = 25; number <= 55; ++number) { // columns have 1 to 24; 55 + 7 is the second overlap row
      CAPTURE(number);
      CHECK(numbers.contains(std::to_string(number)) ==
            holds(words_on(pages[page]), ' ' + std::to_string(number) + ": "));
    }
  }
}

TEST_CASE("long names, wide blanks, every paper and every way round: nothing is lost, cut or printed over") {
  for (const double sheet_width : {142.0, 155.0, 162.0, 168.0}) {
    for (const Paper paper : {Paper::a4, Paper::letter, Paper::roll}) {
      for (const int first : {1, 40}) {
        for (const bool turned : {false, true}) {
          Profile profile = machine_that_selects_for_the_next_pass(sheet_width);
          profile.card->turned = turned;
          Document document = changing_design(64, first, "Lighthouse White of the outer harbour wall",
                                              "Rowanberry Red as it was dyed before the storm");
          document.card.paper = paper;
          CAPTURE(sheet_width);
          CAPTURE(static_cast<int>(paper));
          CAPTURE(first);
          const auto pages = pages_of(document, profile);
          check_all_told(document, profile, {pages.begin() + 1, pages.end()});
          for (std::size_t page = 1; page < pages.size(); ++page) {
            check_nothing_over_another(pages[page]);
          }
        }
      }
    }
  }
}

TEST_CASE("where the margin has no room it points to a list, which has the whole card and whose page the cover names") {
  const Profile profile = machine_that_selects_for_the_next_pass();
  const Document document = changing_design(60, 1, "Lighthouse White of the outer harbour wall",
                                            "Rowanberry Red as it was dyed before the storm");
  const auto pages = pages_of(document, profile);
  REQUIRE(pages.size() == 6); // cover, two parts, and a list over three pages
  CHECK(holds(words_on(pages[1]), " 12: → list "));
  CHECK(holds(words_on(pages[1]), "knitting starts here"));
  CHECK(holds(words_on(pages[1]), "what is done: list on page 4"));
  CHECK(holds(words_on(pages[0]), "pages 4 to 6: list of what is done before which row"));
  CHECK(holds(words_on(pages[0]), "or, where there is no room for it, in the list on pages 4 to 6"));
  CHECK(holds(words_on(pages[3]),
              "12 Rowanberry Red as it was dyed before the storm out, Lighthouse White of the outer harbour wall in"));
  CHECK(holds(words_on(pages[5]), "after the last row"));
}

TEST_CASE("where every note stands in the margin there is no list, and the cover names none") {
  const Profile profile = machine_that_selects_for_the_next_pass();
  const auto pages = pages_of(changing_design(60, 1, "Ink", "Brick"), profile);
  CHECK(pages.size() == 3);
  CHECK(holds(words_on(pages[0]), "each stands in the card's margin. All of them are in the needle chart."));
  CHECK_FALSE(holds(words_on(pages[0]), "list on page"));
}

TEST_CASE("beside a card that leaves no column the numbers stay and the notes are in the list") {
  const auto pages = pages_of(slanting_design(30), machine_that_selects_for_the_next_pass(168));
  REQUIRE(pages.size() == 3);
  CHECK_FALSE(holds(words_on(pages[1]), "Ink in"));
  CHECK(holds(words_on(pages[1]), "what is done: list on page 3"));
  CHECK(holds(words_on(pages[2]), "knitting starts here: lock the card with row 1 under the reader"));
  CHECK(holds(words_on(pages[2]), "1 Ink in"));
}

TEST_CASE("a card on its own is as wide as its notes, and as high") {
  const Profile profile = machine_that_selects_for_the_next_pass();
  const Sheet plain = sheets_on_their_own(slanting_design(12), profile).front();
  const Document document = changing_design(12, 1, "Lighthouse White of the outer harbour wall",
                                            "Rowanberry Red as it was dyed before the storm");
  Profile dense = profile;
  dense.card->geometry.row_pitch = 1.5;
  dense.card->geometry.hole_diameter = 1.2;
  for (const Profile& machine : {profile, dense}) {
    const Sheet wide = sheets_on_their_own(document, machine).front();
    CHECK(wide.width > plain.width + 20);
    check_all_told(document, machine, {wide});
    check_nothing_over_another(wide);
    for (const TextShape& text : texts_on(wide)) {
      CHECK(text.at.x + (text.anchor == Anchor::start ? width_of(text.text, text.height_mm, text.bold) : 0) <
            wide.width);
      CHECK(text.at.y < wide.height);
    }
  }
}

TEST_CASE("on a loop the list keeps the order of knitting, and the end is the last time round") {
  Document document = changing_design(40, 1, "Lighthouse White of the outer harbour wall",
                                      "Rowanberry Red as it was dyed before the storm");
  document.card.loop = true;
  const Profile profile = machine_that_selects_for_the_next_pass();
  const auto pages = pages_of(document, profile);
  const std::string words = words_on(pages.back());
  CHECK(holds(words, "after the last time round"));
  std::string list;
  for (const Sheet& page : pages) {
    list += holds(words_on(page), "what is done before which row ") ? words_on(page) : "";
  }
  CHECK(list.find(" 12 ") < list.find(" 36 "));
  check_all_told(document, profile, {pages.begin() + 1, pages.end()});
}
