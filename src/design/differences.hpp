// What differs between two states of one design, in plain words, for somebody who has to choose between them.
#pragma once

#include "design/document.hpp"

#include <string>
#include <vector>

namespace punchwright {

// A sentence each, the drawing first; none: the states are equal. `here` is what is open, `there` the other one.
[[nodiscard]] std::vector<std::string> differences_in_words(const Document& here, const Document& there);

} // namespace punchwright
