// The journal's form: what is written is read back whole, with the steps around it; anything else is refused.
// Every byte is cut off and changed once: a journal never says something that nobody drew.
#include "design/repeat_file.hpp"
#include "design/step_words.hpp"
#include "journal/journal.hpp"
#include "support/builders.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using namespace punchwright::test;

namespace {

// Three steps, the last of them undone.
Journal sample() {
  Journal journal;
  journal.file = "/home/kim/100 % wool\n/caf\xe9.repeat"; // names are bytes
  journal.suggested_name = "buoys";
  journal.file_digest = 0x123456789abcdef0U;
  journal.kept = 1'795'694'400;
  journal.design = drawn({"..#.", "#..#"});
  REQUIRE(!journal.history.apply(journal.design, SetCells{{{1, 1}}, true}));
  Document settings = journal.design;
  settings.title = "Buoys in a row";
  REQUIRE(!journal.history.apply(journal.design, ChangeSettings{settings}));
  REQUIRE(!journal.history.apply(journal.design, InsertRows{1, 2}));
  journal.history.undo(journal.design);
  return journal;
}

} // namespace

TEST_CASE("what is written is read back") {
  const Journal written = sample();
  const auto read = read_journal(write_journal(written), "a.journal");
  REQUIRE(read);
  CHECK(read->file == written.file);
  CHECK(read->suggested_name == "buoys");
  CHECK(read->file_digest == written.file_digest);
  CHECK(read->kept == written.kept);
  CHECK(read->design == written.design);
  CHECK(!read->history.saved());
  CHECK(write_journal(*read) == write_journal(written));
}

TEST_CASE("the steps can be undone and done again as if the window had never closed") {
  Journal written = sample();
  auto read = read_journal(write_journal(written), "a.journal");
  REQUIRE(read);
  Journal& journal = *read;
  CHECK(journal.history.done() == 2);
  REQUIRE(journal.history.steps().size() == 3);
  for (std::size_t step = 0; step < 3; ++step) {
    CHECK(words_of(journal.history.steps()[step]) == words_of(written.history.steps()[step]));
  }
  for (const bool back : {false, true, true, true, true, false, false, false, true}) {
    CHECK((back ? journal.history.undo(journal.design) : journal.history.redo(journal.design)) ==
          (back ? written.history.undo(written.design) : written.history.redo(written.design)));
    CHECK(journal.design == written.design);
  }
}

TEST_CASE("the steps keep the rows that the list of what was done names") {
  Journal written;
  written.design = drawn({"....", "....", "....", "...."});
  REQUIRE(!written.history.apply(written.design, SetCells{{{1, 1}, {2, 2}}, true}));
  REQUIRE(!written.history.apply(written.design, MirrorUpsideDown{}));
  REQUIRE(!written.history.apply(written.design, SetCells{{{0, 3}}, true}));
  written.history.undo(written.design);
  const auto words = [](const Journal& journal) {
    std::vector<std::string> list;
    for (const History::Step& step : journal.history.steps()) {
      list.push_back(words_of(step));
    }
    return list;
  };
  CHECK(words(written) ==
        std::vector<std::string>{"draw, rows 2 to 3", name_of(Edit(MirrorUpsideDown{})), "draw, row 4"});
  auto read = read_journal(write_journal(written), "a.journal");
  REQUIRE(read);
  CHECK(words(*read) == words(written));
  // Kept once more, and once again after an undo: nothing is said twice.
  read->history.undo(read->design);
  auto again = read_journal(write_journal(*read), "a.journal");
  REQUIRE(again);
  CHECK(words(*again) == words(written));
}

TEST_CASE("random work, kept at a random moment, is undone to the same beginning") {
  Dice dice(11);
  for (int round = 0; round < 40; ++round) {
    Journal journal;
    journal.design = drawn({"....", "...."});
    const int edits = dice.throw_one(300);
    std::vector<std::string> states = {write_repeat(journal.design)};
    for (int count = 0; count < edits; ++count) {
      const Grid& grid = journal.design.grid;
      const Cell cell{dice.throw_one(grid.width()), dice.throw_one(grid.height())};
      const bool rows = dice.throw_one(8) == 0 && grid.height() < 60;
      Edit edit = rows ? Edit(InsertRows{cell.row, 1}) : Edit(SetCells{{cell}, dice.heads()});
      if (dice.throw_one(6) == 0) {
        ChangeMarks mark{journal.design.marks, "catch"};
        set_mark(mark.marks.caught, grid, cell.column, cell.row, dice.heads());
        edit = mark;
      }
      REQUIRE(!journal.history.apply(journal.design, edit));
      states.resize(journal.history.done());
      states.push_back(write_repeat(journal.design));
    }
    auto read = read_journal(write_journal(journal), "a.journal");
    REQUIRE(read);
    REQUIRE(read->design == journal.design);
    const std::size_t kept = std::min(journal.history.done(), most_kept_steps);
    REQUIRE(read->history.done() == kept);
    for (std::size_t step = 1; step <= kept; ++step) {
      REQUIRE(read->history.undo(read->design));
      REQUIRE(write_repeat(read->design) == states[states.size() - 1 - step]);
    }
  }
}

TEST_CASE("a journal cut short at any byte, or longer than it was, is refused") {
  const std::string text = write_journal(sample());
  for (std::size_t length = 0; length < text.size(); ++length) {
    CHECK(!read_journal(std::string_view(text).substr(0, length), "a.journal"));
  }
  CHECK(!read_journal(text + "\n", "a.journal"));
  CHECK(read_journal(text, "a.journal").ok());
}

TEST_CASE("a journal with any byte changed is refused") {
  const std::string text = write_journal(sample());
  for (std::size_t place = 0; place < text.size(); ++place) {
    for (const int change : {1, 2, 16, 32, 128, 255}) {
      std::string damaged = text;
      damaged[place] = static_cast<char>(damaged[place] ^ change);
      REQUIRE(!read_journal(damaged, "a.journal"));
    }
  }
}

// With a checksum that is right: the form itself is looked at.
TEST_CASE("a foreign form with the right checksum is refused, and nothing is read beyond its end") {
  const std::string text = write_journal(sample());
  const std::string body = text.substr(text.find('\n') + 1);
  const auto sealed = [](const std::string& content) {
    std::string digits = "0000000000000000";
    std::uint64_t digest = digest_of(content);
    for (auto digit = digits.rbegin(); digit != digits.rend(); ++digit, digest /= 16) {
      *digit = "0123456789abcdef"[digest % 16];
    }
    return "punchwright-journal 1 " + digits + "\n" + content;
  };
  REQUIRE(read_journal(sealed(body), "a.journal").ok());
  for (std::size_t length = 0; length < body.size(); ++length) {
    REQUIRE(!read_journal(sealed(body.substr(0, length)), "a.journal"));
  }
  for (std::size_t place = 0; place < body.size(); ++place) {
    for (const char letter : {'0', '9', ' ', '\n', '%', 'x'}) {
      std::string other = body;
      other[place] = letter;
      const auto read = read_journal(sealed(other), "a.journal"); // a title may well be another one
      REQUIRE((!read || read_repeat(write_repeat(read->design), "").ok()));
    }
  }
}

TEST_CASE("what is wrong with it is said with its name") {
  CHECK(read_journal("format = 1\n", "a.journal").error().text() ==
        "a.journal: is no journal of this Punchwright; it can't be used any more");
  std::string damaged = write_journal(sample());
  damaged.back() = 'x';
  CHECK(read_journal(damaged, "a.journal").error().text() == "a.journal: is damaged; it can't be used any more");
}
