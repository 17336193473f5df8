// The cursor's steps; each stays on the character that it can't take.
#include "design/toml_cursor.hpp"

#include "words/words.hpp"

#include <fmt/core.h>

namespace punchwright {

bool is_bare(char letter) {
  return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z') || (letter >= '0' && letter <= '9') ||
         letter == '-' || letter == '_';
}

bool is_scalar(char letter) {
  return is_bare(letter) || letter == '+' || letter == '.' || letter == ':';
}

bool is_text_without_marks(std::string_view word) {
  if (word == "true" || word == "false") {
    return false;
  }
  if (word.front() == '+' || word.front() == '-') {
    word.remove_prefix(1);
  }
  return word != "inf" && word != "nan" && (word.empty() || word.front() < '0' || word.front() > '9');
}

bool TomlCursor::fail(std::size_t offset, std::string message, std::string remedy) {
  const Spot spot = spot_at(text_, offset);
  error_ = Error{file_, spot.line, spot.column, std::move(message), std::move(remedy)};
  return false;
}

std::string TomlCursor::found() const {
  if (ended()) {
    return tr("the end of the file");
  }
  if (text_[at_] == '\n') {
    return tr("the end of the line");
  }
  std::size_t end = at_ + 1;
  while (end < text_.size() && (static_cast<unsigned char>(text_[end]) & 0xc0U) == 0x80U) {
    ++end;
  }
  return fmt::format("'{}'", text_.substr(at_, end - at_));
}

void TomlCursor::skip_blanks() {
  while (!ended() && (text_[at_] == ' ' || text_[at_] == '\t')) {
    ++at_;
  }
}

void TomlCursor::newline() {
  ++at_;
  ++line_;
}

TomlComment TomlCursor::comment() {
  std::size_t gap = at_;
  while (gap > 0 && (text_[gap - 1] == ' ' || text_[gap - 1] == '\t')) {
    --gap;
  }
  const std::size_t begin = at_;
  const std::size_t newline_at = text_.find('\n', at_);
  at_ = newline_at == std::string_view::npos ? text_.size() : newline_at;
  std::size_t end = at_;
  while (end > begin && (text_[end - 1] == ' ' || text_[end - 1] == '\t')) {
    --end;
  }
  const bool own_line = gap == 0 || text_[gap - 1] == '\n';
  return {begin, line_, own_line, text_.substr(begin, end - begin), text_.substr(gap, end - gap)};
}

void TomlCursor::skip_space(std::vector<TomlComment>& inside) {
  for (;;) {
    skip_blanks();
    if (ended()) {
      return;
    }
    if (text_[at_] == '\n') {
      newline();
    } else if (text_[at_] == '#') {
      inside.push_back(comment());
    } else {
      return;
    }
  }
}

bool TomlCursor::text_in_quotes() {
  const std::size_t begin = at_;
  const char mark = text_[at_];
  const std::string three(3, mark);
  const bool several_lines = next_is(three);
  at_ += several_lines ? 3 : 1;
  while (!ended()) {
    if (several_lines && next_is(three)) {
      at_ += 3;
      for (int extra = 0; extra < 2 && peek() == mark; ++extra) { // up to two marks may belong to the text
        ++at_;
      }
      return true;
    }
    if (!several_lines && text_[at_] == mark) {
      ++at_;
      return true;
    }
    if (!several_lines && text_[at_] == '\n') {
      break;
    }
    if (mark == '"' && text_[at_] == '\\' && peek(1) != '\n') {
      ++at_;
    }
    if (peek() == '\n') {
      ++line_;
    }
    ++at_;
  }
  return fail(begin, tr("text without its closing quotation mark"),
              tr("allowed: \"text\" on one line, or \"\"\"text\"\"\" over several"));
}

bool TomlCursor::at_table_header() const {
  if (peek() != '[' || at_ == 0 || text_[at_ - 1] != '\n') {
    return false;
  }
  std::size_t begin = at_;
  while (begin < text_.size() && text_[begin] == '[') {
    ++begin;
  }
  std::size_t end = begin;
  while (end < text_.size() && is_bare(text_[end])) {
    ++end;
  }
  return end > begin && end < text_.size() && text_[end] == ']' &&
         is_text_without_marks(text_.substr(begin, end - begin));
}

} // namespace punchwright
