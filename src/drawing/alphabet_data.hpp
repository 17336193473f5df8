// The drawn letters of both heights as text, for alphabet.cpp only.
#pragma once

#include <string_view>

namespace punchwright {

[[nodiscard]] std::string_view letters_of_five_rows();
[[nodiscard]] std::string_view letters_of_seven_rows();

} // namespace punchwright
