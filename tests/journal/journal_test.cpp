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

KeptDesign& in(Journal& journal) {
  return std::get<KeptDesign>(journal.work);
}

const KeptDesign& in(const Journal& journal) {
  return std::get<KeptDesign>(journal.work);
}

// A yoke with two steps behind it and one before it.
Journal yoke_sample() {
  Yoke yoke;
  yoke.title = "Harbour poncho";
  yoke.sizes = {"small", "large"};
  yoke.pieces = {{"front", {{48, 52}}, {{22, 23}}, ""}, {"back", {}, {}, "front"}};
  yoke.depth_cm = {{22.5}};
  yoke.tiers = {{"/home/kim/b%oys.repeat", {{4}}}, {"/home/kim/waves.repeat", {{0}}}};
  Yoke deeper = yoke;
  deeper.depth_cm = {{22.5, 24}};
  Yoke first = yoke;
  first.pieces[0].bottom_cm = {{47}};
  Yoke before = first;
  before.title = "";
  Journal journal;
  journal.file = "/home/kim/harbour.yoke";
  journal.file_digest = 7;
  journal.work = KeptYoke{yoke, {{"width", first}, {"title\nin two lines", before}}, {{"depth", deeper}}};
  return journal;
}

// Three steps, the last of them undone.
Journal sample() {
  Journal journal;
  journal.file = "/home/kim/100 % wool\n/caf\xe9.repeat"; // names are bytes
  journal.suggested_name = "buoys";
  journal.file_digest = 0x123456789abcdef0U;
  journal.kept = 1'795'694'400;
  in(journal).design = drawn({"..#.", "#..#"});
  REQUIRE(!in(journal).history.apply(in(journal).design, SetCells{{{1, 1}}, true}));
  Document settings = in(journal).design;
  settings.title = "Buoys in a row";
  REQUIRE(!in(journal).history.apply(in(journal).design, ChangeSettings{settings}));
  REQUIRE(!in(journal).history.apply(in(journal).design, InsertRows{1, 2}));
  in(journal).history.undo(in(journal).design);
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
  CHECK(in(*read).design == in(written).design);
  CHECK(!in(*read).history.saved());
  CHECK(write_journal(*read) == write_journal(written));
}

TEST_CASE("a yoke is read back with the steps on both its sides") {
  const Journal written = yoke_sample();
  const auto read = read_journal(write_journal(written), "a.journal");
  REQUIRE(read);
  CHECK(read->file == written.file);
  const auto* const kept = std::get_if<KeptYoke>(&read->work);
  REQUIRE(kept != nullptr);
  const auto& meant = std::get<KeptYoke>(written.work);
  CHECK(kept->yoke == meant.yoke);
  CHECK(kept->done == meant.done);
  CHECK(kept->undone == meant.undone);
  CHECK(write_journal(*read) == write_journal(written));
}

TEST_CASE("of a yoke's steps the nearest two hundred are kept") {
  Journal journal = yoke_sample();
  auto& kept = std::get<KeptYoke>(journal.work);
  kept.done.assign(most_kept_steps + 7, kept.done.front());
  const auto read = read_journal(write_journal(journal), "a.journal");
  REQUIRE(read);
  CHECK(std::get<KeptYoke>(read->work).done.size() == most_kept_steps);
}

TEST_CASE("the steps can be undone and done again as if the window had never closed") {
  Journal written = sample();
  auto read = read_journal(write_journal(written), "a.journal");
  REQUIRE(read);
  Journal& journal = *read;
  CHECK(in(journal).history.done() == 2);
  REQUIRE(in(journal).history.steps().size() == 3);
  for (std::size_t step = 0; step < 3; ++step) {
    CHECK(words_of(in(journal).history.steps()[step]) == words_of(in(written).history.steps()[step]));
  }
  for (const bool back : {false, true, true, true, true, false, false, false, true}) {
    CHECK((back ? in(journal).history.undo(in(journal).design) : in(journal).history.redo(in(journal).design)) ==
          (back ? in(written).history.undo(in(written).design) : in(written).history.redo(in(written).design)));
    CHECK(in(journal).design == in(written).design);
  }
}

TEST_CASE("the steps keep the rows that the list of what was done names") {
  Journal written;
  in(written).design = drawn({"....", "....", "....", "...."});
  REQUIRE(!in(written).history.apply(in(written).design, SetCells{{{1, 1}, {2, 2}}, true}));
  REQUIRE(!in(written).history.apply(in(written).design, MirrorUpsideDown{}));
  REQUIRE(!in(written).history.apply(in(written).design, SetCells{{{0, 3}}, true}));
  in(written).history.undo(in(written).design);
  const auto words = [](const Journal& journal) {
    std::vector<std::string> list;
    for (const History::Step& step : in(journal).history.steps()) {
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
  in(*read).history.undo(in(*read).design);
  auto again = read_journal(write_journal(*read), "a.journal");
  REQUIRE(again);
  CHECK(words(*again) == words(written));
}

TEST_CASE("random work, kept at a random moment, is undone to the same beginning") {
  Dice dice(11);
  for (int round = 0; round < 40; ++round) {
    Journal journal;
    in(journal).design = drawn({"....", "...."});
    const int edits = dice.throw_one(300);
    std::vector<std::string> states = {write_repeat(in(journal).design)};
    for (int count = 0; count < edits; ++count) {
      const Grid& grid = in(journal).design.grid;
      const Cell cell{dice.throw_one(grid.width()), dice.throw_one(grid.height())};
      const bool rows = dice.throw_one(8) == 0 && grid.height() < 60;
      Edit edit = rows ? Edit(InsertRows{cell.row, 1}) : Edit(SetCells{{cell}, dice.heads()});
      if (dice.throw_one(6) == 0) {
        ChangeMarks mark{in(journal).design.marks, "catch"};
        set_mark(mark.marks.caught, grid, cell.column, cell.row, dice.heads());
        edit = mark;
      }
      REQUIRE(!in(journal).history.apply(in(journal).design, edit));
      states.resize(in(journal).history.done());
      states.push_back(write_repeat(in(journal).design));
    }
    auto read = read_journal(write_journal(journal), "a.journal");
    REQUIRE(read);
    REQUIRE(in(*read).design == in(journal).design);
    const std::size_t kept = std::min(in(journal).history.done(), most_kept_steps);
    REQUIRE(in(*read).history.done() == kept);
    for (std::size_t step = 1; step <= kept; ++step) {
      REQUIRE(in(*read).history.undo(in(*read).design));
      REQUIRE(write_repeat(in(*read).design) == states[states.size() - 1 - step]);
    }
  }
}

TEST_CASE("a journal cut short at any byte, or longer than it was, is refused") {
  for (const Journal& journal : {sample(), yoke_sample()}) {
    const std::string text = write_journal(journal);
    for (std::size_t length = 0; length < text.size(); ++length) {
      CHECK(!read_journal(std::string_view(text).substr(0, length), "a.journal"));
    }
    CHECK(!read_journal(text + "\n", "a.journal"));
    CHECK(read_journal(text, "a.journal").ok());
  }
}

TEST_CASE("a journal with any byte changed is refused") {
  for (const Journal& journal : {sample(), yoke_sample()}) {
    const std::string text = write_journal(journal);
    for (std::size_t place = 0; place < text.size(); ++place) {
      for (const int change : {1, 2, 16, 32, 128, 255}) {
        std::string damaged = text;
        damaged[place] = static_cast<char>(damaged[place] ^ change);
        REQUIRE(!read_journal(damaged, "a.journal"));
      }
    }
  }
}

// With a checksum that is right: the form itself is looked at.
TEST_CASE("a foreign form with the right checksum is refused, and nothing is read beyond its end") {
  for (const Journal& journal : {sample(), yoke_sample()}) {
    const std::string text = write_journal(journal);
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
        REQUIRE((!read || read_journal(write_journal(*read), "a.journal").ok()));
      }
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
