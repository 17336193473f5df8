// A drawing as plain text, as it goes through the clipboard and comes from anywhere.
#include "drawing/marked_area.hpp"
#include "words/words.hpp"

#include <fmt/format.h>
#include <vector>

namespace punchwright {
namespace {

Error at(std::size_t line, std::size_t column, std::string message, std::string remedy) {
  return Error{tr("text"), static_cast<int>(line), static_cast<int>(column), std::move(message), std::move(remedy)};
}

// Without line ends, be they LF, CR LF or CR, and without the empty lines at the end.
std::vector<std::string_view> lines_of_text(std::string_view text) {
  std::vector<std::string_view> lines;
  while (!text.empty()) {
    const auto end = text.find_first_of("\r\n");
    lines.push_back(text.substr(0, end));
    if (end == std::string_view::npos) {
      break;
    }
    text.remove_prefix(end + (text.substr(end).starts_with("\r\n") ? 2 : 1));
  }
  while (!lines.empty() && lines.back().empty()) {
    lines.pop_back();
  }
  return lines;
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
  const auto lines = lines_of_text(text);
  if (lines.empty()) {
    return at(0, 0, tr("the text holds no stitches"), allowed);
  }
  if (lines.size() > tallest_repeat) {
    return at(tallest_repeat + 1, 0, said("the text has {} lines", lines.size()),
              said("a drawing has {} rows at most", tallest_repeat));
  }
  for (std::size_t line = 0; line < lines.size(); ++line) {
    const auto strange = lines[line].find_first_not_of(".#");
    if (strange != std::string_view::npos) {
      return at(line + 1, strange + 1, said("{} is no stitch", name_of_sign(lines[line].substr(strange))), allowed);
    }
    if (lines[line].size() > widest_repeat) {
      return at(line + 1, widest_repeat + 1, said("the line has {} stitches", lines[line].size()),
                said("a drawing has {} stitches at most", widest_repeat));
    }
    if (lines[line].empty() || lines[line].size() != lines.front().size()) {
      return at(line + 1, 0,
                said("the line has {} stitches, the first one {}", lines[line].size(), lines.front().size()), allowed);
    }
  }
  Grid drawing(static_cast<int>(lines.front().size()), static_cast<int>(lines.size()));
  int row = drawing.height();
  for (const std::string_view line : lines) {
    drawing.set_row_text(--row, line);
  }
  return drawing;
}

} // namespace punchwright
