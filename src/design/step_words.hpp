// A step of the history in words, with the rows whose stitches it changed: of an afternoon's strokes each is called
// "draw", and only the rows tell them apart.
#pragma once

#include "design/history.hpp"

#include <string>

namespace punchwright {

// "draw, rows 3 to 8" or "draw, row 3", rows from 1; the name alone where more than stitches changed, or nothing but
// marks.
[[nodiscard]] std::string words_of(const History::Step& step);

} // namespace punchwright
