// TOML's quoting and its numbers.
// The escapes are those of TOML 1.0, section 'String'.
#include "design/toml_strings.hpp"

#include "design/toml_text.hpp"

#include <array>
#include <charconv>
#include <cstdint>
#include <fmt/core.h>

namespace punchwright {
namespace {

void append_escaped(std::string& out, char letter) {
  switch (letter) {
  case '\\': out += "\\\\"; break;
  case '\b': out += "\\b"; break;
  case '\t': out += "\\t"; break;
  case '\n': out += "\\n"; break;
  case '\f': out += "\\f"; break;
  case '\r': out += "\\r"; break;
  default:
    if (static_cast<unsigned char>(letter) < 0x20 || letter == 0x7f) {
      out += fmt::format("\\u{:04X}", static_cast<unsigned>(letter));
    } else {
      out += letter;
    }
  }
}

void append_utf8(std::string& out, std::uint32_t point) {
  const auto tail = [&](unsigned shift) { out += static_cast<char>(0x80U | ((point >> shift) & 0x3fU)); };
  if (point < 0x80) {
    out += static_cast<char>(point);
  } else if (point < 0x800) {
    out += static_cast<char>(0xc0U | (point >> 6U));
    tail(0);
  } else if (point < 0x10000) {
    out += static_cast<char>(0xe0U | (point >> 12U));
    tail(6);
    tail(0);
  } else {
    out += static_cast<char>(0xf0U | ((point >> 18U) & 0x07U));
    tail(12);
    tail(6);
    tail(0);
  }
}

// Bytes that are no UTF-8 would make a file that cannot be read again: U+FFFD takes their place.
std::string well_formed(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t length = character_length(text, at);
    out += length == 0 ? std::string_view("\xef\xbf\xbd") : text.substr(at, length);
    at += length == 0 ? 1 : length;
  }
  return out;
}

} // namespace

std::string toml_quoted(std::string_view any_text) {
  const std::string text = well_formed(any_text);
  std::string out = "\"";
  for (const char letter : text) {
    if (letter == '"') {
      out += "\\\"";
    } else {
      append_escaped(out, letter);
    }
  }
  return out + '"';
}

std::string toml_paragraphs(std::string_view any_text) {
  const std::string text = well_formed(any_text);
  if (text.find('\n') == std::string_view::npos) {
    return toml_quoted(text);
  }
  std::string out = "\"\"\"\n"; // a line end right after the marks is not part of the text
  for (std::size_t at = 0; at < text.size(); ++at) {
    const char letter = text[at];
    if (letter == '\n') {
      out += '\n';
    } else if (letter == '"' && (at + 1 == text.size() || text[at + 1] == '"')) {
      out += "\\\"";
    } else if (letter == '"') {
      out += '"';
    } else {
      append_escaped(out, letter);
    }
  }
  return out + "\"\"\"";
}

std::string toml_number(double number) {
  std::array<char, 512> digits{}; // the longest double in fixed form has some 330
  const auto [end, trouble] =
      std::to_chars(digits.data(), digits.data() + digits.size(), number, std::chars_format::fixed);
  std::string out(digits.data(), trouble == std::errc{} ? end : digits.data());
  if (out.find('.') == std::string::npos) {
    out += ".0";
  }
  return out;
}

std::string unquoted(std::string_view raw) {
  if (raw.size() < 2) {
    return std::string(raw);
  }
  const bool escapes = raw.front() == '"';
  raw = raw.substr(1, raw.size() - 2);
  std::string out;
  for (std::size_t at = 0; at < raw.size(); ++at) {
    if (!escapes || raw[at] != '\\' || at + 1 == raw.size()) {
      out += raw[at];
      continue;
    }
    const char letter = raw[++at];
    switch (letter) {
    case 'b': out += '\b'; break;
    case 't': out += '\t'; break;
    case 'n': out += '\n'; break;
    case 'f': out += '\f'; break;
    case 'r': out += '\r'; break;
    case 'u':
    case 'U': {
      const std::string_view digits = raw.substr(at + 1, letter == 'u' ? 4 : 8);
      std::uint32_t point = 0;
      std::from_chars(digits.data(), digits.data() + digits.size(), point, 16);
      append_utf8(out, point);
      at += digits.size();
      break;
    }
    default: out += letter;
    }
  }
  return out;
}

} // namespace punchwright
