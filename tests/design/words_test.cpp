// Words in a row, and the names of steps in the form of journals and back.
#include "design/step_words.hpp"
#include "design/words.hpp"

#include <doctest/doctest.h>

using namespace punchwright;

TEST_CASE("words are listed with commas and one last word between") {
  CHECK(listed({}).empty());
  CHECK(listed({"3"}) == "3");
  CHECK(listed({"3", "7"}) == "3 and 7");
  CHECK(listed({"3", "7", "9"}) == "3, 7 and 9");
  CHECK(one_of({"\"a4\""}) == "\"a4\"");
  CHECK(one_of({"a", "b", "c"}) == "a, b or c");
  CHECK(rows_from_to(3, 3) == "row 3");
  CHECK(rows_from_to(3, 8) == "rows 3 to 8");
}

TEST_CASE("a sentence of its own begins with a capital, umlauts too") {
  CHECK(with_capital("row 3") == "Row 3");
  CHECK(with_capital("über") == "Über");
  CHECK(with_capital("ärmel") == "Ärmel");
  CHECK(with_capital("3 rows") == "3 rows");
  CHECK(with_capital("").empty());
}

TEST_CASE("a step is kept with its rows, and what is kept reads the same") {
  Document design = blank_document(8, 12);
  History history;
  REQUIRE_FALSE(history.apply(design, SetCells{{{1, 2}, {1, 7}}, true}));
  REQUIRE_FALSE(history.apply(design, SetCells{{{1, 4}}, true}));
  REQUIRE_FALSE(history.apply(design, InsertRows{0, 1}));
  CHECK(kept_words_of(history.steps()[0]) == "draw, rows 3 to 8");
  CHECK(kept_words_of(history.steps()[1]) == "draw, row 5");
  CHECK(kept_words_of(history.steps()[2]) == "insert rows");
  for (const History::Step& step : history.steps()) {
    CHECK(words_of(step) == kept_words_of(step)); // in English
    CHECK(step_in_words(kept_words_of(step)) == kept_words_of(step));
  }
}

TEST_CASE("rows that go round the upper edge are named as they were drawn, unless there are gaps among them") {
  const auto words_for = [](const std::vector<Cell>& cells) {
    Document design = blank_document(8, 12);
    History history;
    REQUIRE_FALSE(history.apply(design, SetCells{cells, true}));
    const std::string words = kept_words_of(history.steps()[0]);
    CHECK(step_in_words(words) == words);
    return words;
  };
  CHECK(words_for({{1, 9}, {1, 10}, {1, 11}, {1, 0}, {1, 1}, {1, 2}}) == "draw, rows 10 to 3");
  CHECK(words_for({{1, 11}, {2, 11}, {1, 0}}) == "draw, rows 12 to 1");
  CHECK(words_for({{1, 0}, {1, 6}, {1, 11}}) == "draw, rows 1 to 12");
  std::vector<Cell> all;
  for (int row = 0; row < 12; ++row) {
    all.push_back({1, row});
  }
  CHECK(words_for(all) == "draw, rows 1 to 12");
  all.erase(all.begin() + 5); // of a drawing that is mirrored as a whole, a row may be symmetric and stay
  CHECK(words_for(all) == "draw, rows 1 to 12");
  CHECK(words_for({{1, 8}, {1, 9}, {1, 10}, {1, 11}, {1, 0}, {1, 1}, {1, 2}}) == "draw, rows 1 to 12");
}

TEST_CASE("names that hold another name, and names that only look like ones with rows, stay whole") {
  for (const char* const name :
       {"set down \"Gull in flight\"", "set down “puffin, row 3 of”", "lay out: half drop, rows 1 to 40",
        "lay out: ", "set down \"", "move, rows", "move, row ", "move, rows 3 to ", ""}) {
    CHECK(step_in_words(name) == name);
  }
}

// POSIX, Shell Command Language, 2.2.2: within single quotation marks every letter stands for itself.
TEST_CASE("a name in a command is one word of the shell") {
  CHECK(shell_word("tiers/corks.repeat") == "tiers/corks.repeat");
  CHECK(shell_word("my tiers/corks.repeat") == "'my tiers/corks.repeat'");
  CHECK(shell_word("gull's.repeat") == "'gull'\\''s.repeat'");
  CHECK(shell_word("$HOME/*.repeat") == "'$HOME/*.repeat'");
  CHECK(shell_word("Bänder.repeat") == "'Bänder.repeat'");
  CHECK(shell_word("-o.repeat") == "./-o.repeat");
  CHECK(shell_word("~.repeat") == "'~.repeat'");
  CHECK(shell_word("") == "''");
}
