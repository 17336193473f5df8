// Values with their places and their messages, on top of toml++.
// The parser's exceptions end in this file.
#include "design/toml_values.hpp"

#include "words/words.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright {
namespace {

constexpr std::size_t longest_quote = 40; // characters of a found text that a message repeats

// What to do about an error that only the parser sees.
std::string parser_remedy(std::string_view what) {
  if (what.find("redefine") != std::string_view::npos) {
    return tr("allowed: each key and each table once");
  }
  if (what.find("escape") != std::string_view::npos) {
    return tr("allowed: \\\\ for a backslash, \\\" for a quotation mark, or text in single quotation marks");
  }
  if (what.find("integer") != std::string_view::npos || what.find("floating") != std::string_view::npos) {
    return tr("allowed: a number such as 16, 16.5 or -1; text needs quotation marks");
  }
  return tr("allowed: what TOML 1.0 describes");
}

// Where a number begins that the parser couldn't hold: it names the place behind it. Columns are characters, from 1.
int column_of_number_before(std::string_view text, int line, int column) {
  for (int passed = 1; passed < line; ++passed) {
    text.remove_prefix(std::min(text.find('\n'), text.size() - 1) + 1);
  }
  std::size_t end = 0; // in bytes
  for (int passed = 1; passed < column && end < text.size(); ++passed) {
    do {
      ++end;
    } while (end < text.size() && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U);
  }
  constexpr std::string_view in_numbers = "0123456789abcdefABCDEFox_+-.";
  while (end > 0 && column > 1 && in_numbers.find(text[end - 1]) != std::string_view::npos) {
    --end;
    --column;
  }
  return column;
}

Result<toml::table> parse_toml(std::string_view text, const std::string& file) {
  try {
    return toml::parse(text);
  } catch (const toml::parse_error& trouble) {
    const auto place = trouble.source().begin;
    std::string_view what = trouble.description();
    constexpr std::string_view usual = "Error while parsing ";
    what.remove_prefix(what.starts_with(usual) ? usual.size() : 0);
    const auto line = static_cast<int>(place.line);
    auto column = static_cast<int>(place.column);
    if (what.find("not representable") != std::string_view::npos) {
      column = column_of_number_before(text, line, column);
    }
    return Error{file, line, column, said("not TOML: {}", what), parser_remedy(what)};
  }
}

} // namespace

Result<TomlRead> read_toml(std::string_view text, const std::string& file) {
  Result<std::string> checked = checked_toml_text(text, file);
  if (!checked) {
    return checked.error();
  }
  TomlRead read;
  read.text = std::make_unique<const std::string>(std::move(checked).value());
  auto statements = toml_statements(*read.text, file);
  if (!statements) {
    return statements.error();
  }
  read.statements = std::move(statements).value();
  auto table = parse_toml(*read.text, file);
  if (!table) {
    return table.error();
  }
  read.table = std::move(table).value();
  return read;
}

Spot spot_of(const toml::node& node) {
  return {static_cast<int>(node.source().begin.line), static_cast<int>(node.source().begin.column)};
}

void refuse_other_form(const toml::table& file, FileForm wanted, TomlErrors& errors) {
  const auto refuse = [&](const toml::node& sign, const char* message, const char* remedy) {
    errors.add(spot_of(sign), message,
               wanted == FileForm::machine ? tr("name a .machine file, or a machine that is built in") : remedy);
  };
  const toml::node* const repeat = file.get("repeat");
  const toml::node* const bed = file.get("bed");
  const toml::node* yoke = nullptr;
  for (const char* const name : {"piece", "tier"}) { // a repeat has one [piece]
    const toml::node* const found = file.get(name);
    yoke = yoke == nullptr && found != nullptr && found->is_array() ? found : yoke;
  }
  const std::array<const toml::node*, 3> signs{repeat, yoke, bed};
  if (signs[static_cast<std::size_t>(wanted)] != nullptr) {
    return;
  }
  if (repeat != nullptr) {
    refuse(
        *repeat, tr("this is a repeat, not what is wanted here"),
        tr("see it with punchwright check or punchwright rows; a yoke of it is begun with punchwright yoke --new and "
           "--tier"));
  } else if (yoke != nullptr) {
    refuse(
        *yoke, tr("this is a yoke, not what is wanted here"),
        tr("see it with punchwright yoke, from a file whose name ends in .yoke; or take the .repeat file of one of its "
           "tiers"));
  } else if (bed != nullptr) {
    refuse(*bed, tr("this is a machine, not what is wanted here"),
           tr("name it as 'profile' under [machine] in the file of a repeat or a yoke"));
  }
}

std::string found_text(const toml::node& node) {
  if (const auto* text = node.as_string()) {
    std::string shown;
    std::size_t count = 0;
    const std::string_view all = text->get();
    for (std::size_t at = 0; at < all.size(); ++count) {
      if (count == longest_quote) {
        shown += "…";
        break;
      }
      const std::size_t length = character_length(all, at);
      const bool control = static_cast<unsigned char>(all[at]) < 0x20;
      shown += control || length == 0 ? std::string_view("?") : all.substr(at, length);
      at += length == 0 ? 1 : length;
    }
    return '"' + shown + '"';
  }
  if (const auto* whole = node.as_integer()) {
    return fmt::format("{}", whole->get());
  }
  if (const auto* number = node.as_floating_point()) {
    const double value = number->get();
    const bool looks_whole = std::isfinite(value) && value == std::floor(value) && std::fabs(value) < 1e15;
    return looks_whole ? fmt::format("{:.1f}", value) : fmt::format("{}", value);
  }
  if (const auto* flag = node.as_boolean()) {
    return flag->get() ? "true" : "false";
  }
  if (node.is_array_of_tables()) {
    return tr("a list of tables");
  }
  if (node.is_array()) {
    return tr("a list");
  }
  return node.is_table() ? tr("a table") : tr("a date or time");
}

Spot TomlTable::value_spot(std::string_view key) const {
  const toml::node* const found = table_.get(key);
  const Spot spot = spot_of(found != nullptr ? *found : static_cast<const toml::node&>(table_));
  return spot.line > 0 ? spot : Spot{1, 1};
}

Spot TomlTable::key_spot(std::string_view key) const {
  const auto found = table_.find(key);
  if (found == table_.end()) {
    return value_spot(key);
  }
  const auto place = found->first.source().begin;
  return {static_cast<int>(place.line), static_cast<int>(place.column)};
}

void TomlTable::refuse(std::string_view key, const std::string& allowed) const {
  if (!require(key, allowed)) {
    return;
  }
  errors_.add(value_spot(key), said("{} is {}", name_of(key), found_text(*table_.get(key))),
              said("allowed: {}", allowed));
}

bool TomlTable::require(std::string_view key, const std::string& allowed) const {
  if (!has(key)) {
    errors_.add(value_spot(key), said("{} is missing", name_of(key)), said("allowed: {}", allowed));
  }
  return has(key);
}

std::optional<int> TomlTable::whole(std::string_view key, int least, int most) const {
  if (!has(key)) {
    return std::nullopt;
  }
  const auto* const found = table_.get(key)->as_integer();
  if (found == nullptr || found->get() < least || found->get() > most) {
    refuse(key, least == most ? std::to_string(least) : said("a whole number from {} to {}", least, most));
    return std::nullopt;
  }
  return static_cast<int>(found->get());
}

std::optional<double> TomlTable::number(std::string_view key, double least, double most) const {
  if (!has(key)) {
    return std::nullopt;
  }
  const toml::node& found = *table_.get(key);
  const std::optional<double> value = found.is_number() ? found.value<double>() : std::nullopt;
  const bool allowed = value && *value >= least && *value <= most; // so written, it refuses nan too
  if (!allowed) {
    refuse(key, said("a number from {} to {}", least, most));
    return std::nullopt;
  }
  return value;
}

std::optional<std::string> TomlTable::text(std::string_view key, const std::string& what) const {
  if (!has(key)) {
    return std::nullopt;
  }
  auto value = table_.get(key)->value_exact<std::string>();
  if (!value) {
    refuse(key, what);
  }
  return value;
}

std::optional<bool> TomlTable::flag(std::string_view key) const {
  if (!has(key)) {
    return std::nullopt;
  }
  const auto value = table_.get(key)->value_exact<bool>();
  if (!value) {
    refuse(key, tr("true or false"));
  }
  return value;
}

std::optional<Needle> TomlTable::needle(std::string_view key) const {
  if (!has(key)) {
    return std::nullopt;
  }
  const auto name = table_.get(key)->value_exact<std::string>();
  const auto found = name ? needle_named(*name) : std::nullopt;
  if (!found) {
    refuse(key, tr("a needle, L or R and its number: \"L36\", \"R1\""));
  }
  return found;
}

std::vector<TomlTable> TomlTable::tables(std::string_view key, const std::string& allowed, std::size_t most) const {
  std::vector<TomlTable> found;
  if (!has(key)) {
    return found;
  }
  const toml::array* const list = table_.get(key)->as_array();
  if (list == nullptr || list->empty() || list->size() > most) {
    const bool many = list != nullptr && !list->empty();
    const std::string what = list == nullptr ? found_text(*table_.get(key))
                             : many          ? said("a list of {}", list->size())
                                             : tr("an empty list");
    errors_.add(value_spot(key), said("'{}' is {}", key, what),
                many ? said("allowed: {}, at most {}", allowed, most) : said("allowed: {}", allowed));
    return found;
  }
  for (const toml::node& entry : *list) {
    const toml::table* const one = entry.as_table();
    if (one == nullptr) {
      errors_.add(spot_of(entry), said("'{}' holds {}", key, found_text(entry)), said("allowed: {}", allowed));
      return {};
    }
    found.emplace_back(*one, "", said(" of {} {}", key, found.size() + 1), errors_);
  }
  return found;
}

const toml::table* TomlTable::inner(std::string_view key) const {
  if (!has(key)) {
    return nullptr;
  }
  const auto* const found = table_.get(key)->as_table();
  if (found == nullptr) {
    refuse(key, said("a table, [{}{}]", before_, key));
  }
  return found;
}

} // namespace punchwright
