// A TOML text in its statements, with what a parser throws away: comments, blank lines, each value as it was typed.
// It also refuses, with their places, forms that toml++ 3.3 cannot bear (keys that are not ASCII, '[.', deep nesting).
#pragma once

#include "design/toml_text.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

struct TomlKeyPart {
  std::string name;     // without quotation marks
  std::string_view raw; // as typed
};
using TomlKey = std::vector<TomlKeyPart>;

// A value, or an entry of a list or an inline table.
struct TomlValue {
  TomlKey key;           // of an entry of an inline table
  std::size_t begin = 0; // bytes of the text
  std::size_t end = 0;
  int first_line = 0;
  int last_line = 0;
  bool table = false;
  std::vector<TomlValue> entries;
};

struct TomlComment {
  std::size_t at = 0; // of its '#'
  int line = 0;
  bool own_line = false;
  std::string_view text;        // from '#', blanks at the end taken off
  std::string_view with_blanks; // from the first blank before '#'
};

enum class TomlKind { blank_line, comment, table, array_table, key_value };

struct TomlStatement {
  TomlKind kind = TomlKind::blank_line;
  int line = 0;
  TomlKey key;
  TomlValue value;
  std::vector<TomlComment> inside; // comments between the value's first and last character
  std::string_view comment;        // a comment line, or the comment at the statement's end with the blanks before it
};

// Views in the statements point into `text`, which has gone through checked_toml_text.
[[nodiscard]] Result<std::vector<TomlStatement>> toml_statements(std::string_view text, const std::string& file);

} // namespace punchwright
