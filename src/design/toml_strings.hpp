// Text and numbers as TOML writes them, and quoted keys read back.
// Numbers are written here because toml++ 3.3 prints 3.14159 as 3.1415899999999999.
#pragma once

#include <string>
#include <string_view>

namespace punchwright {

// "…" on one line, with escapes where they are needed.
[[nodiscard]] std::string toml_quoted(std::string_view text);
// Over several lines where the text has several, so that files can be compared line by line.
[[nodiscard]] std::string toml_paragraphs(std::string_view text);
// Shortest form that reads back as the same number, always with a decimal point.
[[nodiscard]] std::string toml_number(double number);

// What a key in quotation marks says; an escape that TOML does not know stands for itself.
[[nodiscard]] std::string unquoted(std::string_view raw);

} // namespace punchwright
