// The first look at a text that claims to be TOML.
// UTF-8 by the table of the Unicode standard (table 3-7, well-formed byte sequences).
#include "design/toml_text.hpp"

#include "words/words.hpp"

#include <algorithm>

namespace punchwright {
namespace {

Error error_at(const std::string& file, std::string_view text, std::size_t offset, std::string message,
               std::string remedy) {
  const Spot spot = spot_at(text, offset);
  return Error{file, spot.line, spot.column, std::move(message), std::move(remedy)};
}

} // namespace

Spot spot_at(std::string_view text, std::size_t offset) {
  const std::string_view before = text.substr(0, offset);
  const auto newline = before.rfind('\n');
  const std::string_view line = newline == std::string_view::npos ? before : before.substr(newline + 1);
  // A character's later bytes are 10xxxxxx.
  const auto characters =
      std::ranges::count_if(line, [](char byte) { return (static_cast<unsigned char>(byte) & 0xc0U) != 0x80U; });
  return {static_cast<int>(std::ranges::count(before, '\n')) + 1, static_cast<int>(characters) + 1};
}

std::size_t character_length(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t index) {
    return index < text.size() ? static_cast<unsigned char>(text[index]) : static_cast<unsigned char>(0);
  };
  const auto follows = [&](std::size_t index, unsigned low = 0x80, unsigned high = 0xbf) {
    return byte(index) >= low && byte(index) <= high;
  };
  const unsigned first = byte(at);
  if (first < 0x80) {
    return 1;
  }
  if (first >= 0xc2 && first <= 0xdf) {
    return follows(at + 1) ? 2 : 0;
  }
  if (first >= 0xe0 && first <= 0xef) {
    const unsigned low = first == 0xe0 ? 0xa0 : 0x80;
    const unsigned high = first == 0xed ? 0x9f : 0xbf;
    return follows(at + 1, low, high) && follows(at + 2) ? 3 : 0;
  }
  if (first >= 0xf0 && first <= 0xf4) {
    const unsigned low = first == 0xf0 ? 0x90 : 0x80;
    const unsigned high = first == 0xf4 ? 0x8f : 0xbf;
    return follows(at + 1, low, high) && follows(at + 2) && follows(at + 3) ? 4 : 0;
  }
  return 0;
}

bool is_utf8(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t length = character_length(text, at);
    if (length == 0) {
      return false;
    }
    at += length;
  }
  return true;
}

Result<std::string> checked_toml_text(std::string_view text, const std::string& file) {
  if (text.size() > largest_toml_text) {
    return Error{file, 1, 1, said("the file has {} bytes", text.size()),
                 said("allowed: at most {} bytes (8 MiB)", largest_toml_text)};
  }
  if (text.starts_with("\xef\xbb\xbf")) {
    text.remove_prefix(3);
  }
  std::string checked;
  checked.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const auto byte = static_cast<unsigned char>(text[at]);
    if (byte == '\r' && at + 1 < text.size() && text[at + 1] == '\n') {
      ++at;
      continue;
    }
    if ((byte < 0x20 && byte != '\t' && byte != '\n') || byte == 0x7f) {
      return error_at(file, text, at, said("control character U+{:04X}", byte),
                      said("allowed: '\\u{:04X}' written out, in quoted text", byte));
    }
    const std::size_t length = character_length(text, at);
    if (length == 0) {
      return error_at(file, text, at, said("byte 0x{:02X} is not UTF-8 text here", byte),
                      tr("allowed: a text file, saved as UTF-8"));
    }
    checked.append(text.substr(at, length));
    at += length;
  }
  return checked;
}

} // namespace punchwright
