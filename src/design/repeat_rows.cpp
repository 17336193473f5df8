// Checks and packs the rows of the drawing.
// Stitches are counted in characters, as a reader of the file counts them.
#include "design/repeat_rows.hpp"

#include "words/words.hpp"

#include <algorithm>

namespace punchwright {
namespace {

// A line of the file, from 1.
std::string_view line_of(std::string_view text, int line) {
  for (; line > 1; --line) {
    text.remove_prefix(text.find('\n') + 1);
  }
  return text.substr(0, text.find('\n'));
}

// Whether the row stands in the file just as it reads: on one line and without escapes.
bool as_typed(const toml::node& entry, std::string_view row, std::string_view text) {
  const Spot spot = spot_of(entry);
  const std::string_view line = line_of(text, spot.line);
  std::size_t at = 0;
  for (int column = 1; column < spot.column && at < line.size(); ++column) {
    at += std::max<std::size_t>(1, character_length(line, at));
  }
  return at < line.size() && line.substr(at + 1).starts_with(row);
}

// The place of byte `offset` of the row; its beginning where it is not typed as it reads.
Spot spot_in_row(const toml::node& entry, std::string_view row, std::size_t offset, std::string_view text) {
  Spot spot = spot_of(entry);
  if (as_typed(entry, row, text)) {
    spot.column += spot_at(row, offset).column; // the quotation mark is one more
  }
  return spot;
}

} // namespace

Spot spot_of_stitch(const toml::array& rows, int row, int column, std::string_view text) {
  const toml::node& entry = rows[rows.size() - 1 - static_cast<std::size_t>(row)];
  return spot_in_row(entry, entry.as_string()->get(), static_cast<std::size_t>(column), text);
}

Grid read_repeat_rows(const TomlTable& repeat, int width, std::string_view text, TomlErrors& errors) {
  const std::string allowed = said("a list of 1 to {} rows of '.' and '#'", tallest_repeat);
  const toml::array* const rows = repeat.node("rows")->as_array();
  if (rows == nullptr) {
    repeat.refuse("rows", allowed);
    return {};
  }
  if (rows->empty() || rows->size() > static_cast<std::size_t>(tallest_repeat)) {
    errors.add(repeat.value_spot("rows"), said("'repeat.rows' has {} rows", rows->size()),
               said("allowed: {}", allowed));
    return {};
  }
  const auto columns = static_cast<std::size_t>(width);
  Grid grid(width, static_cast<int>(rows->size()));
  for (std::size_t index = 0; index < rows->size(); ++index) {
    const toml::node& entry = (*rows)[index];
    const auto row = static_cast<int>(rows->size() - 1 - index);
    if (!entry.is_string()) {
      errors.add(spot_of(entry), said("row {} is {}", row + 1, found_text(entry)),
                 tr("allowed: '.' and '#' in quotation marks"));
      return {};
    }
    const std::string& stitches = entry.as_string()->get();
    const std::size_t strange = stitches.find_first_not_of(".#");
    if (strange != std::string::npos) {
      const std::string_view letter = std::string_view(stitches).substr(strange, character_length(stitches, strange));
      const bool shown = static_cast<unsigned char>(letter.front()) >= 0x20;
      errors.add(spot_in_row(entry, stitches, strange, text),
                 said("{} in row {}", shown ? fmt::format("'{}'", letter) : tr("a control character"), row + 1),
                 tr("allowed: '.' for main and '#' for contrast"));
      return {};
    }
    if (stitches.size() != columns) {
      errors.add(spot_in_row(entry, stitches, std::min(columns, stitches.size()), text),
                 said_count(std::ssize(stitches), "row {1} has {0} stitch, 'repeat.width' is {2}",
                            "row {1} has {0} stitches, 'repeat.width' is {2}", row + 1, width),
                 said_count(width, "allowed: rows of {} stitch", "allowed: rows of {} stitches"));
      return {};
    }
    grid.set_row_text(row, stitches);
  }
  return grid;
}

} // namespace punchwright
