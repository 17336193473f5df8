// The closed field of a list that drops down: how much of a long name there is room for.
// Names of machines differ at their ends as well as at their beginnings.
#pragma once

#include <string>

namespace punchwright::editor {

// px for words in a closed field of that width.
[[nodiscard]] float room_in_closed_list(float wide);
// The text, or its beginning and its end with dots between them.
[[nodiscard]] std::string shortened_in_middle(const std::string& text, float room);

} // namespace punchwright::editor
