// Typed values out of a parsed TOML table, each with the error that names its place, what was found and what is
// allowed. The first error stands; after one, the readers hand out fallbacks, so that reading code needs no checks in
// between.
#pragma once

#include "design/result.hpp"
#include "design/toml_statements.hpp"
#include "design/toml_text.hpp"
#include "design/units.hpp"
#include "design/words.hpp"
#include "words/words.hpp"

#include <array>
#include <cstdint>
#include <fmt/format.h>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <toml++/toml.h>
#include <utility>
#include <vector>

namespace punchwright {

// The file's name and its first error.
class TomlErrors {
public:
  explicit TomlErrors(std::string file) : file_(std::move(file)) {}

  void add(Spot spot, std::string message, std::string remedy) {
    if (!first_) {
      first_ = Error{file_, spot.line, spot.column, std::move(message), std::move(remedy)};
    }
  }
  [[nodiscard]] const std::optional<Error>& first() const { return first_; }

private:
  std::string file_;
  std::optional<Error> first_;
};

// A text that was made fit, taken apart and parsed.
struct TomlRead {
  std::unique_ptr<const std::string> text; // never moves: the statements point into it
  std::vector<TomlStatement> statements;
  toml::table table;
};
// `file` is for errors.
[[nodiscard]] Result<TomlRead> read_toml(std::string_view text, const std::string& file);

[[nodiscard]] Spot spot_of(const toml::node& node);

// Our forms of files, told apart by tables that each of them needs and no other has.
enum class FileForm { repeat, yoke, machine };
// A file that has none of the tables of the form that is wanted, but those of another one: which it is, and what takes
// it. Said before any key is found missing in it.
void refuse_other_form(const toml::table& file, FileForm wanted, TomlErrors& errors);

// What stands there, for a message: "sixteen" in quotation marks, 16, 'a list', 'a table'.
[[nodiscard]] std::string found_text(const toml::node& node);

class TomlTable {
public:
  // `before` and `after` make a key's name in messages: "gauge." gives 'gauge.rows'; " of band 2" gives 'rows' of
  // band 2.
  TomlTable(const toml::table& table, std::string before, std::string after, TomlErrors& errors)
      : table_(table), before_(std::move(before)), after_(std::move(after)), errors_(errors) {}

  [[nodiscard]] bool has(std::string_view key) const { return table_.contains(key); }
  [[nodiscard]] const toml::node* node(std::string_view key) const { return table_.get(key); }
  [[nodiscard]] std::string name_of(std::string_view key) const {
    return fmt::format("'{}{}'{}", before_, key, after_);
  }
  // Where the value stands; where it is missing, the table.
  [[nodiscard]] Spot value_spot(std::string_view key) const;
  [[nodiscard]] Spot key_spot(std::string_view key) const;

  // An error at the value: "'gauge.rows' is 0", and what is allowed.
  void refuse(std::string_view key, const std::string& allowed) const;
  // An error at the value when there is none; true when there is one.
  bool require(std::string_view key, const std::string& allowed) const;

  [[nodiscard]] std::optional<int> whole(std::string_view key, int least, int most) const;
  [[nodiscard]] std::optional<double> number(std::string_view key, double least, double most) const;
  [[nodiscard]] std::optional<std::string> text(std::string_view key,
                                                const std::string& what = tr("text in quotation marks")) const;
  [[nodiscard]] std::optional<bool> flag(std::string_view key) const;
  [[nodiscard]] std::optional<Needle> needle(std::string_view key) const;

  template <class Meaning, std::size_t count>
  [[nodiscard]] std::optional<Meaning>
  word(std::string_view key, const std::array<std::pair<std::string_view, Meaning>, count>& words) const {
    if (!has(key)) {
      return std::nullopt;
    }
    std::vector<std::string> allowed;
    for (const auto& [name, meaning] : words) {
      if (table_.get(key)->value_exact<std::string>() == name) {
        return meaning;
      }
      allowed.push_back(fmt::format("\"{}\"", name));
    }
    refuse(key, one_of(allowed));
    return std::nullopt;
  }

  // The tables of [[key]]: none where it is missing; none and an error where it is no list of 1 to `most` tables.
  [[nodiscard]] std::vector<TomlTable> tables(std::string_view key, const std::string& allowed,
                                              std::size_t most = SIZE_MAX) const;

  // The table under that key: nullptr where there is none, or an error where it is something else.
  [[nodiscard]] const toml::table* inner(std::string_view key) const;

private:
  const toml::table& table_;
  std::string before_;
  std::string after_;
  TomlErrors& errors_;
};

} // namespace punchwright
