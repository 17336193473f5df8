// The sentences of the steps. Apart from the order of doing things, so that each can be read and corrected by itself.
#pragma once

#include "plan/steps.hpp"

namespace punchwright {

[[nodiscard]] std::string_view word_for_side(Side side);
// The yarn's name on one line, or its key.
[[nodiscard]] std::string name_of_yarn(const Document& document, char key);
// "L36 and R35", or runs with their count: "L36–L30, R3 (8 needles)".
[[nodiscard]] std::string needles_words(const std::vector<Needle>& needles);
// "Knit 9 rows (rows 3 to 11), ending on the left."
[[nodiscard]] std::string knit_words(int first_row, int last_row, Side ends);

} // namespace punchwright
