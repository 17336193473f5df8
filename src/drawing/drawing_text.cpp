// A drawing as plain text, as it goes through the clipboard and comes from anywhere.
#include "drawing/marked_area.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <vector>

namespace punchwright {
namespace {

Error at(std::size_t line, std::size_t column, std::string message, std::string remedy) {
  return Error{tr("text"), static_cast<int>(line), static_cast<int>(column), std::move(message), std::move(remedy)};
}

// A row as it stands in the text: behind a mail's marks and the blanks that all rows begin with.
struct TextRow {
  std::string_view signs;
  std::size_t line = 0;    // from 1
  std::size_t before = 0;  // bytes of the line that were passed over
  std::string_view behind; // the blanks at its end

  void pass_over(std::size_t bytes) {
    signs.remove_prefix(bytes);
    before += bytes;
  }
};

// The bytes of the blank that the text begins with, 0: none. Web pages indent by blanks that don't break the line.
std::size_t blank_at_front(std::string_view text) {
  constexpr std::string_view unbroken = "\u00a0";
  return text.starts_with(' ') || text.starts_with('\t') ? 1 : text.starts_with(unbroken) ? unbroken.size() : 0;
}

std::size_t blanks_at_front(std::string_view text) {
  std::size_t all = 0;
  while (const std::size_t blank = blank_at_front(text.substr(all))) {
    all += blank;
  }
  return all;
}

// Line ends are LF, CR LF or CR. Without the lines in which nothing stands: they come between rows in mail.
std::vector<TextRow> rows_of_text(std::string_view text) {
  std::vector<TextRow> rows;
  for (std::size_t line = 1; !text.empty(); ++line) {
    const auto end = text.find_first_of("\r\n");
    rows.push_back({text.substr(0, end), line, 0, {}});
    if (end == std::string_view::npos) {
      break;
    }
    text.remove_prefix(end + (text.substr(end).starts_with("\r\n") ? 2 : 1));
  }
  return rows;
}

void leave_out_empty(std::vector<TextRow>& rows) {
  std::erase_if(rows, [](const TextRow& row) { return blanks_at_front(row.signs) == row.signs.size(); });
}

// ">" before every row, as mail marks what it quotes; once for each time that it was quoted.
void pass_over_quoting(std::vector<TextRow>& rows) {
  const auto quoted = [](const TextRow& row) { return row.signs.substr(blanks_at_front(row.signs)).starts_with('>'); };
  while (!rows.empty() && std::ranges::all_of(rows, quoted)) {
    for (TextRow& row : rows) {
      row.pass_over(blanks_at_front(row.signs) + 1);
    }
    leave_out_empty(rows);
  }
}

// The blanks that all rows begin with, and those at the ends.
void pass_over_blanks(std::vector<TextRow>& rows) {
  std::string_view common = rows.empty() ? std::string_view() : rows.front().signs;
  common = common.substr(0, blanks_at_front(common));
  for (const TextRow& row : rows) {
    while (!row.signs.starts_with(common)) {
      common.remove_suffix(1);
    }
  }
  common = common.substr(0, blanks_at_front(common)); // no half of a blank of two bytes
  for (TextRow& row : rows) {
    row.pass_over(common.size());
    const auto last = row.signs.find_last_not_of(" \t");
    row.behind = row.signs.substr(last + 1); // all of it where there is nothing else
    row.signs = row.signs.substr(0, last + 1);
  }
}

std::vector<TextRow> drawn_rows_of(std::string_view text) {
  constexpr std::string_view byte_order_mark = "\ufeff";
  std::vector<TextRow> rows =
      rows_of_text(text.starts_with(byte_order_mark) ? text.substr(byte_order_mark.size()) : text);
  leave_out_empty(rows);
  pass_over_quoting(rows);
  pass_over_blanks(rows);
  return rows;
}

// The sign as a person would name it; a character of several bytes whole.
std::string name_of_sign(std::string_view from) {
  const auto byte = static_cast<unsigned char>(from.front());
  if (byte == ' ') {
    return tr("a blank");
  }
  if (byte == '\t') {
    return tr("a tab");
  }
  if (byte < 0x20 || byte == 0x7f) {
    return said("the control character {:#04x}", byte);
  }
  std::size_t length = 1;
  while (byte >= 0xc0 && length < from.size() && (static_cast<unsigned char>(from[length]) & 0xc0) == 0x80) {
    ++length;
  }
  return byte >= 0x80 && length == 1 ? said("the byte {:#04x}", byte) : fmt::format("'{}'", from.substr(0, length));
}

} // namespace

std::string text_of(const Grid& drawing) {
  std::string text;
  for (int row = drawing.height() - 1; row >= 0; --row) {
    text += drawing.row_text(row) + '\n';
  }
  return text;
}

Result<Grid> drawing_from_text(std::string_view text) {
  const std::string allowed = tr("lines of '.' for main and '#' for contrast, all of one length");
  const std::vector<TextRow> rows = drawn_rows_of(text);
  if (rows.empty()) {
    return at(0, 0, tr("the text holds no stitches"), allowed);
  }
  if (rows.size() > tallest_repeat) {
    return at(tallest_repeat + 1, 0, said("the text has {} lines", rows.size()),
              said("a drawing has {} rows at most", tallest_repeat));
  }
  const std::size_t width = rows.front().signs.size();
  for (const TextRow& row : rows) {
    const auto strange = row.signs.find_first_not_of(".#");
    if (strange != std::string_view::npos) {
      return at(row.line, row.before + strange + 1, said("{} is no stitch", name_of_sign(row.signs.substr(strange))),
                allowed);
    }
    if (row.signs.size() > widest_repeat) {
      return at(row.line, row.before + widest_repeat + 1, said("the line has {} stitches", row.signs.size()),
                said("a drawing has {} stitches at most", widest_repeat));
    }
    if (row.signs.size() != width && !row.behind.empty()) {
      return at(row.line, row.before + row.signs.size() + 1, said("{} is no stitch", name_of_sign(row.behind)),
                allowed);
    }
    if (row.signs.size() != width) {
      return at(row.line, 0, said("the line has {} stitches, the first one {}", row.signs.size(), width), allowed);
    }
  }
  Grid drawing(static_cast<int>(width), static_cast<int>(rows.size()));
  int height = drawing.height();
  for (const TextRow& row : rows) {
    drawing.set_row_text(--height, row.signs);
  }
  return drawing;
}

} // namespace punchwright
