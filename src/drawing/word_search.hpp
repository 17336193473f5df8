// Finding things by words that somebody types: motifs and commands alike.
#pragma once

#include <string_view>

namespace punchwright {

// True where each word of `wanted` begins a word of `text`, small or large letters alike (of ASCII and Latin-1); words
// begin at the start and behind a blank, a hyphen or a bracket. Nothing wanted is in every text.
[[nodiscard]] bool has_words(std::string_view text, std::string_view wanted);
// Whether the text begins with just that.
[[nodiscard]] bool begins_with(std::string_view text, std::string_view wanted);

} // namespace punchwright
