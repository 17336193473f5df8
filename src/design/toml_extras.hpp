// Finds what a file holds besides the keys that its form knows: comments, unknown keys, unknown tables.
// Works on any form that names its tables and keys, so that .repeat and .machine files share it.
#pragma once

#include "design/extras.hpp"
#include "design/toml_statements.hpp"

#include <functional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace punchwright {

// A table that a form knows. `name` is its dotted path, "" the keys before the first table.
struct TomlTableForm {
  std::string_view name;
  std::vector<std::string_view> keys;
  bool repeated = false; // [[name]]
  bool any_key = false;  // a table of names chosen by the user
};

struct TomlForm {
  std::vector<TomlTableForm> tables;
  std::string_view rows_key; // dotted: the list whose entries are counted from the last one: "repeat.rows"
  // The place of element `index` (from 0) of a repeated table: "yarn.A".
  std::function<std::string(std::string_view table, std::size_t index)> element_place;
};

struct UnknownName {
  int line = 0;
  bool table = false;
  std::string name; // "card.colour"

  bool operator==(const UnknownName&) const = default;
};

struct FoundExtras {
  Extras extras;
  std::vector<UnknownName> unknown; // in the file's order
};

// `text` is what the statements were made from; it is valid in its form.
[[nodiscard]] FoundExtras find_extras(std::string_view text, const std::vector<TomlStatement>& statements,
                                      const TomlForm& form);

} // namespace punchwright
