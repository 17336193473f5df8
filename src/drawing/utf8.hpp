// Text as characters: UTF-8 to Unicode numbers and back, for lettering and for words in messages.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace punchwright {

// Nothing where the bytes aren't UTF-8: overlong, cut short, surrogates or above U+10FFFF.
[[nodiscard]] std::optional<std::u32string> decoded(std::string_view utf8);

// The same for text that is known to be UTF-8; empty where it isn't.
[[nodiscard]] std::u32string characters_of(std::string_view utf8);

[[nodiscard]] std::string encoded(char32_t character);

} // namespace punchwright
