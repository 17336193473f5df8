// How wide text stands in a terminal: by its signs, not its bytes, since words and names may be in any language.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>

namespace punchwright::cli {

[[nodiscard]] inline std::size_t width_of(std::string_view text) {
  return static_cast<std::size_t>(
      std::ranges::count_if(text, [](char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U; }));
}

// With blanks behind it, or before it.
[[nodiscard]] inline std::string padded(std::string_view text, std::size_t width) {
  return std::string(text) + std::string(width - std::min(width, width_of(text)), ' ');
}
[[nodiscard]] inline std::string padded_before(std::string_view text, std::size_t width) {
  return std::string(width - std::min(width, width_of(text)), ' ') + std::string(text);
}

} // namespace punchwright::cli
