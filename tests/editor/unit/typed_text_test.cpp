// Numbers as people type them, and text that wraps on the screen only.
#include "editor/typed_text.hpp"
#include "words/words.hpp"

#include <doctest/doctest.h>

using namespace punchwright::editor;

TEST_CASE("a number is read with a point or a comma, and nothing else is taken for one") {
  CHECK(number_typed("22.5") == 22.5);
  CHECK(number_typed("22,5") == 22.5);
  CHECK(number_typed(" +7 ") == 7);
  for (const char* const text : {"", "22,5,1", "1.000,5", "2 2", "22mm", "nan", "inf", "-"}) {
    CAPTURE(text);
    CHECK_FALSE(number_typed(text).has_value());
  }
}

TEST_CASE("a count is whole, and one too long to hold is the largest there is") {
  CHECK(count_typed("24") == 24);
  CHECK(count_typed("-3") == -3);
  CHECK(count_typed("99999999999").value_or(0) > 1000000);
  CHECK_FALSE(count_typed("24,5").has_value());
  CHECK_FALSE(count_typed("").has_value());
}

TEST_CASE("a number is shown with the decimals that it has") {
  CHECK(number_shown(16, 1) == "16.0");
  CHECK(number_shown(252.35, 2) == "252.35");
  CHECK(number_shown(22.25, 1) == "22.25");
  CHECK(number_shown(103.5, 2) == "103.50");
}

TEST_CASE("a number in a field is written as the reader's language has it, and read again") {
  punchwright::choose_language(punchwright::language_of("de"), {});
  const std::string shown = number_shown(40.5, 1);
  const std::string exact = number_shown(22.125, 1);
  punchwright::choose_language(punchwright::language_of("en"), {});
  CHECK(shown == "40,5");
  CHECK(exact == "22,125");
  CHECK(number_typed(exact) == 22.125);
}

namespace {

// Every letter one wide.
float letters(std::string_view text) {
  return static_cast<float>(text.size());
}

} // namespace

TEST_CASE("lines wrap at spaces, byte for byte at the same place") {
  CHECK(wrapped_at("pots and ropes on the quay", 10, letters) == "pots and\nropes on\nthe quay");
  CHECK(wrapped_at("one\ntwo three", 9, letters) == "one\ntwo three");
  CHECK(wrapped_at("a-word-without-any-space b", 5, letters) == "a-word-without-any-space\nb");
  CHECK(wrapped_at("", 5, letters).empty());
}

TEST_CASE("an edit of the wrapped text is the same edit of the text, which has no breaks but the user's own") {
  const std::string text = "pots and ropes on the quay";
  const std::string wrapped = wrapped_at(text, 10, letters);
  const auto edited = [&](std::size_t at, std::size_t removed, const char* added) {
    std::string after = wrapped;
    after.replace(at, removed, added);
    return unwrapped_edit(text, wrapped, after);
  };
  CHECK(edited(wrapped.size(), 0, "!") == text + "!");
  CHECK(edited(0, 4, "Nets") == "Nets and ropes on the quay");
  CHECK(edited(8, 1, "") == "pots andropes on the quay"); // the break at the end of a line was a space
  CHECK(edited(4, 0, "\n") == "pots\n and ropes on the quay");
  CHECK(edited(0, wrapped.size(), "") == "");
}
