// Saving and undoing lose nothing, on random designs: what is saved is read as the same, and what is undone is gone.
#include "design/history.hpp"
#include "design/repeat_file.hpp"
#include "random/random_design.hpp"
#include "support/any_edit.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using namespace punchwright::test;

namespace {

std::size_t times_in(std::string_view text, std::string_view words) {
  std::size_t times = 0;
  for (std::size_t at = text.find(words); at != std::string_view::npos; at = text.find(words, at + words.size())) {
    ++times;
  }
  return times;
}

void save_and_read(const Document& document) {
  const std::string saved = write_repeat(document);
  CAPTURE(saved);
  const auto again = read_repeat(saved, "random.repeat");
  INFO((again ? std::string() : again.error().text()));
  REQUIRE(again);
  REQUIRE(again->document == document);
  REQUIRE(write_repeat(again->document) == saved);
}

// Each comment and each key of a later version as often as in the file that was read.
void keeps_what_it_does_not_know(const std::string& file, const std::string& saved) {
  CAPTURE(file);
  CAPTURE(saved);
  for (const std::string_view sign :
       {"of the harbour room", "# indented", "# apart", "later_key = 3", "# one", "# beside it", "# farther"}) {
    CAPTURE(sign);
    REQUIRE(times_in(saved, sign) == times_in(file, sign));
  }
}

// Forwards and backwards, more of the one; in single strokes and in drags.
void edit_at_random(Dice& dice, History& history, Document& document) {
  for (int count = 1 + dice.throw_one(12); count > 0; --count) {
    switch (dice.throw_one(8)) {
    case 0: history.undo(document); break;
    case 1: history.redo(document); break;
    case 2:
      history.begin_drag("drag");
      static_cast<void>(history.apply(document, any_edit(dice, document)));
      static_cast<void>(history.apply(document, any_edit(dice, document)));
      if (dice.heads()) {
        history.cancel_drag(document);
      } else {
        history.end_drag();
      }
      break;
    default: static_cast<void>(history.apply(document, any_edit(dice, document)));
    }
  }
}

} // namespace

TEST_CASE("a design that is saved and read is the same design, and is saved as the same bytes") {
  for (std::uint64_t seed = seeds().first; seed < seeds().end(); ++seed) {
    CAPTURE(seed);
    save_and_read(random_design(seed).document);
  }
}

TEST_CASE("so it is with comments and unknown keys, of which none is lost") {
  std::uint64_t read = 0;
  for (std::uint64_t seed = seeds().first; seed < seeds().end(); ++seed) {
    CAPTURE(seed);
    Dice dice(seed);
    const std::string file = sprinkled(write_repeat(random_design(seed).document), dice);
    if (const auto with_more = read_repeat(file, "more.repeat")) {
      ++read;
      keeps_what_it_does_not_know(file, write_repeat(with_more->document));
      save_and_read(with_more->document);
    }
  }
  CHECK(read > seeds().count / 2);
}

TEST_CASE("random edits, undone, give the identical bytes; done again, those of the result") {
  std::uint64_t edited = 0;
  for (std::uint64_t seed = seeds().first; seed < seeds().end(); ++seed) {
    CAPTURE(seed);
    Dice dice(seed);
    Document document = random_design(seed).document;
    if (seed % 4 == 0) { // comments move with their rows
      if (const auto read = read_repeat(sprinkled(write_repeat(document), dice), "more.repeat")) {
        document = read->document;
      }
    }
    const std::string before = write_repeat(document);
    History history;
    edit_at_random(dice, history, document);
    while (history.redo(document)) {
    }
    const std::string after = write_repeat(document);
    edited += before != after ? 1 : 0;
    while (history.undo(document)) {
    }
    REQUIRE(write_repeat(document) == before);
    while (history.redo(document)) {
    }
    REQUIRE(write_repeat(document) == after);
  }
  CHECK(edited > seeds().count * 3 / 4);
}
