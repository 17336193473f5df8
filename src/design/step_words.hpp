// A step of the history in words, with the rows whose stitches it changed: of an afternoon's strokes each is called
// "draw", and only the rows tell them apart. Steps are named and kept in English, and translated when they are shown.
#pragma once

#include "design/history.hpp"

#include <string>
#include <string_view>

namespace punchwright {

// "draw, rows 3 to 8" or "draw, row 3", rows from 1; "draw, rows 10 to 2" round the upper edge; the name alone where
// more than stitches changed, or nothing but marks. In English: the form of journals.
[[nodiscard]] std::string kept_words_of(const History::Step& step);
// Such words, or a step's mere name, in the reader's language.
[[nodiscard]] std::string step_in_words(std::string_view kept);
// Both in one.
[[nodiscard]] std::string words_of(const History::Step& step);

} // namespace punchwright
