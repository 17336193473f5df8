// Reads TOML 1.0 statement by statement. Scalars are only delimited here; toml++ judges them later.
// Recursion is bounded by the nesting that is allowed.
#include "design/toml_statements.hpp"

#include "design/toml_cursor.hpp"
#include "design/toml_strings.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright {
namespace {

constexpr int deepest_nesting = 16;
constexpr std::size_t longest_key = 8;       // parts between dots
constexpr std::size_t most_values = 100'000; // a full-sized drawing has some 2,100

constexpr const char* allowed_key =
    noted("allowed: a key of the letters a to z, digits, '-' and '_', or in quotation marks");
constexpr const char* allowed_value =
    noted("allowed: text in quotation marks, a number, true, false, a list in '[' and ']'");

class Scanner : TomlCursor {
public:
  using TomlCursor::TomlCursor;

  Result<std::vector<TomlStatement>> run() {
    while (at_ < text_.size()) {
      if (!statement()) {
        return *error_;
      }
    }
    return std::move(statements_);
  }

private:
  std::size_t values_ = 0;
  std::vector<TomlStatement> statements_;

  bool statement() {
    skip_blanks();
    TomlStatement next;
    next.line = line_;
    bool good = true;
    if (peek() == '\n') {
      next.kind = TomlKind::blank_line;
    } else if (peek() == '#') {
      next.kind = TomlKind::comment;
      next.comment = comment().text;
    } else if (peek() == '[') {
      good = header(next) && rest_of_line(next);
    } else {
      next.kind = TomlKind::key_value;
      good = key_and_value(next.key, next.value, next.inside, 0) && rest_of_line(next);
    }
    if (!good) {
      return false;
    }
    if (!ended()) {
      newline();
    }
    statements_.push_back(std::move(next));
    return true;
  }

  bool rest_of_line(TomlStatement& statement) {
    skip_blanks();
    if (peek() == '#') {
      statement.comment = comment().with_blanks;
    }
    if (peek() == '\n') {
      return true;
    }
    return fail(at_,
                statement.kind == TomlKind::key_value ? said("{} after the value", found())
                                                      : said("{} after the table's name", found()),
                tr("allowed: a comment, or the end of the line"));
  }

  bool header(TomlStatement& statement) {
    const std::size_t begin = at_;
    statement.kind = next_is("[[") ? TomlKind::array_table : TomlKind::table;
    const std::string_view close = statement.kind == TomlKind::array_table ? "]]" : "]";
    at_ += close.size();
    if (!key(statement.key)) {
      return false;
    }
    if (!next_is(close)) {
      return fail(at_, said("{} in a table's name", found()), said("allowed: '{}'", close));
    }
    at_ += close.size();
    return count_value(begin);
  }

  bool key(TomlKey& parts) {
    const std::size_t begin = at_;
    for (;;) {
      skip_blanks();
      if (!key_part(parts)) {
        return false;
      }
      skip_blanks();
      if (peek() != '.') {
        return true;
      }
      ++at_;
      if (parts.size() == longest_key) {
        return fail(begin, said("a key of more than {} parts", longest_key),
                    said("allowed: at most {} parts between dots", longest_key));
      }
    }
  }

  bool key_part(TomlKey& parts) {
    const std::size_t begin = at_;
    if (peek() == '"' || peek() == '\'') {
      if (next_is("\"\"\"") || next_is("'''")) {
        return fail(at_, tr("a key in three quotation marks"), tr("allowed: a key in one pair of quotation marks"));
      }
      if (!text_in_quotes()) {
        return false;
      }
      const std::string_view raw = text_.substr(begin, at_ - begin);
      parts.push_back({unquoted(raw), raw});
      return true;
    }
    while (!ended() && is_bare(text_[at_])) {
      ++at_;
    }
    if (at_ == begin) {
      return fail(at_, said("{} where a key should stand", found()), tr(allowed_key));
    }
    if (!ended() && static_cast<unsigned char>(text_[at_]) >= 0x80) {
      return fail(at_, said("{} in a key", found()), tr(allowed_key));
    }
    const std::string_view raw = text_.substr(begin, at_ - begin);
    parts.push_back({std::string(raw), raw});
    return true;
  }

  bool key_and_value(TomlKey& name, TomlValue& content, std::vector<TomlComment>& inside, int depth) {
    if (!key(name)) {
      return false;
    }
    if (peek() != '=') {
      return fail(at_, said("{} after the key '{}'", found(), name.back().name), tr("allowed: '=' and a value"));
    }
    ++at_;
    skip_blanks();
    return value(content, inside, depth);
  }

  bool count_value(std::size_t offset) {
    if (++values_ > most_values) {
      return fail(offset, said("more than {} values", most_values), tr("allowed: fewer"));
    }
    return true;
  }

  bool value(TomlValue& content, std::vector<TomlComment>& inside, int depth) {
    content.begin = at_;
    content.first_line = line_;
    if (!count_value(at_)) {
      return false;
    }
    if (depth > deepest_nesting) {
      return fail(at_, said("lists or tables more than {} deep", deepest_nesting), tr("allowed: fewer levels"));
    }
    bool good = false;
    switch (peek()) {
    case '"':
    case '\'': good = text_in_quotes(); break;
    case '[': good = list(content, inside, depth); break;
    case '{': good = inline_table(content, inside, depth); break;
    default: good = scalar(); break;
    }
    content.end = at_;
    content.last_line = line_;
    return good;
  }

  bool scalar() {
    const std::size_t begin = at_;
    const auto run = [&] {
      while (!ended() && is_scalar(text_[at_])) {
        ++at_;
      }
    };
    run();
    if (at_ == begin) {
      return fail(at_, said("{} where a value should stand", found()), tr(allowed_value));
    }
    if (is_text_without_marks(text_.substr(begin, at_ - begin))) {
      return fail(begin,
                  said("'{}' without quotation marks", text_.substr(begin, std::min<std::size_t>(at_ - begin, 40))),
                  tr(allowed_value));
    }
    // A date and a time may be parted by one blank.
    const std::string_view word = text_.substr(begin, at_ - begin);
    if (word.size() == 10 && word[4] == '-' && word[7] == '-' && peek() == ' ' && peek(1) >= '0' && peek(1) <= '9') {
      ++at_;
      run();
    }
    return true;
  }

  bool list(TomlValue& content, std::vector<TomlComment>& inside, int depth) {
    const std::size_t begin = at_;
    ++at_;
    for (;;) {
      skip_space(inside);
      if (peek() == ']') {
        ++at_;
        return true;
      }
      if (ended() || at_table_header()) {
        return fail(begin, tr("a list without its closing ']'"), tr("allowed: values with ',' between them, then ']'"));
      }
      content.entries.emplace_back();
      if (!value(content.entries.back(), inside, depth + 1)) {
        return false;
      }
      skip_space(inside);
      if (peek() == ',') {
        ++at_;
      } else if (!ended() && peek() != ']') { // an unfinished list is reported with its beginning
        return fail(at_, said("{} in the list that begins in line {}", found(), content.first_line),
                    tr("allowed: ',' or ']'"));
      }
    }
  }

  bool inline_table(TomlValue& content, std::vector<TomlComment>& inside, int depth) {
    content.table = true;
    ++at_;
    skip_blanks();
    if (peek() == '}') {
      ++at_;
      return true;
    }
    for (;;) {
      TomlValue entry;
      if (!key_and_value(entry.key, entry, inside, depth + 1)) {
        return false;
      }
      content.entries.push_back(std::move(entry));
      skip_blanks();
      if (peek() == '}') {
        ++at_;
        return true;
      }
      if (peek() != ',') {
        return fail(at_, said("{} in a table on one line", found()), tr("allowed: ',' or '}'"));
      }
      ++at_;
      skip_blanks();
    }
  }
};

} // namespace

Result<std::vector<TomlStatement>> toml_statements(std::string_view text, const std::string& file) {
  return Scanner(text, file).run();
}

} // namespace punchwright
