// Makes text fit for a TOML parser before one sees it: size, encoding, line ends and control characters.
// The parser's own checks come too late for some of these, so they are made here, with their places.
#pragma once

#include "design/result.hpp"

#include <string>
#include <string_view>

namespace punchwright {

// A place in a file, line and column from 1; columns count characters, not bytes.
struct Spot {
  int line = 0;
  int column = 0;

  bool operator==(const Spot&) const = default;
};

constexpr std::size_t largest_toml_text = std::size_t{8} << 20U; // bytes

// The place of the byte at `offset`.
[[nodiscard]] Spot spot_at(std::string_view text, std::size_t offset);

// Bytes of the UTF-8 character at `at`; 0 where there is no well-formed one.
[[nodiscard]] std::size_t character_length(std::string_view text, std::size_t at);
// Whether every character is well-formed: only then a text can be quoted in a TOML file. Names of files need not be.
[[nodiscard]] bool is_utf8(std::string_view text);

// The text with '\n' as its only line end and without a byte order mark.
[[nodiscard]] Result<std::string> checked_toml_text(std::string_view text, const std::string& file);

} // namespace punchwright
