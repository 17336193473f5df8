// UTF-8 (RFC 3629) to Unicode numbers and back.
#include "drawing/utf8.hpp"

#include <array>

namespace punchwright {

std::optional<std::u32string> decoded(std::string_view utf8) {
  constexpr std::array<char32_t, 4> least = {0, 0x80, 0x800, 0x10000}; // with that many bytes following
  std::u32string text;
  for (std::size_t place = 0; place < utf8.size();) {
    const auto byte = static_cast<unsigned char>(utf8[place++]);
    const std::size_t following = byte < 0x80 ? 0 : byte >= 0xf0 ? 3 : byte >= 0xe0 ? 2 : 1;
    if ((byte >= 0x80 && byte < 0xc0) || byte >= 0xf8 || place + following > utf8.size()) {
      return std::nullopt;
    }
    char32_t character = following == 0 ? byte : byte & (0x3fU >> following);
    for (std::size_t count = 0; count < following; ++count) {
      const auto next = static_cast<unsigned char>(utf8[place++]);
      if ((next & 0xc0U) != 0x80) {
        return std::nullopt;
      }
      character = (character << 6) | (next & 0x3fU);
    }
    if (character < least[following] || character > 0x10ffff || (character >= 0xd800 && character < 0xe000)) {
      return std::nullopt;
    }
    text += character;
  }
  return text;
}

std::u32string characters_of(std::string_view utf8) {
  return decoded(utf8).value_or(std::u32string());
}

std::string encoded(char32_t character) {
  const auto tail = [&](int shift) { return static_cast<char>(0x80 | ((character >> shift) & 0x3f)); };
  if (character < 0x80) {
    return {static_cast<char>(character)};
  }
  if (character < 0x800) {
    return {static_cast<char>(0xc0 | (character >> 6)), tail(0)};
  }
  if (character < 0x10000) {
    return {static_cast<char>(0xe0 | (character >> 12)), tail(6), tail(0)};
  }
  return {static_cast<char>(0xf0 | (character >> 18)), tail(12), tail(6), tail(0)};
}

} // namespace punchwright
