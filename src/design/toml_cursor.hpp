// A place in a TOML text that goes forward: blanks, comments and quoted texts, whatever statement they belong to.
// Kept apart from the statements, which know the grammar.
#pragma once

#include "design/toml_statements.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

// A letter of a key without quotation marks.
[[nodiscard]] bool is_bare(char letter);
// A letter of a number, date, true or false.
[[nodiscard]] bool is_scalar(char letter);
// True of words that can be no number, date, true or false.
[[nodiscard]] bool is_text_without_marks(std::string_view word);

class TomlCursor {
public:
  TomlCursor(std::string_view text, const std::string& file) : text_(text), file_(file) {}

protected:
  [[nodiscard]] char peek(std::size_t ahead = 0) const {
    return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\n';
  }
  [[nodiscard]] bool ended() const { return at_ >= text_.size(); }
  [[nodiscard]] bool next_is(std::string_view what) const { return text_.substr(at_).starts_with(what); }

  // Keeps the error, and returns false.
  bool fail(std::size_t offset, std::string message, std::string remedy);

  // The character at the cursor, for a message.
  [[nodiscard]] std::string found() const;

  void skip_blanks();
  void newline();
  // The cursor is on '#'.
  TomlComment comment();
  // Blanks, line ends and comments, inside a list.
  void skip_space(std::vector<TomlComment>& inside);
  // The cursor is on a quotation mark; false where the text doesn't end.
  bool text_in_quotes();
  // A line "[gauge]" or "[[band]]": no list's value, whose words would be in quotation marks.
  [[nodiscard]] bool at_table_header() const;

  std::string_view text_;
  const std::string& file_;
  std::size_t at_ = 0;
  int line_ = 1;
  std::optional<Error> error_;
};

} // namespace punchwright
