// Small questions to a document, each answered in one place.
#include "design/document.hpp"

#include <algorithm>
#include <array>
#include <charconv>

namespace punchwright {

std::string hex_of(Colour colour) {
  constexpr std::string_view digits = "0123456789abcdef";
  std::string text = "#";
  for (const int part : {colour.red, colour.green, colour.blue}) {
    text += digits[static_cast<std::size_t>(part / 16)];
    text += digits[static_cast<std::size_t>(part % 16)];
  }
  return text;
}

std::optional<Colour> colour_from_hex(std::string_view text) {
  if (text.size() != 7 || text[0] != '#') {
    return std::nullopt;
  }
  std::array<std::uint8_t, 3> parts{};
  for (std::size_t part = 0; part < parts.size(); ++part) {
    const char* const first = text.data() + 1 + 2 * part;
    const auto [stop, trouble] = std::from_chars(first, first + 2, parts[part], 16);
    if (trouble != std::errc{} || stop != first + 2) {
      return std::nullopt;
    }
  }
  return Colour{parts[0], parts[1], parts[2]};
}

int stitches_of(const Document& document) {
  return document.piece.stitches.value_or(document.grid.width());
}

Needle first_needle_of(const Document& document) {
  return document.piece.first_needle.value_or(centred_first_needle(stitches_of(document)));
}

Needle last_needle_of(const Document& document) {
  return Needle{first_needle_of(document).position + stitches_of(document) - 1};
}

std::size_t band_index_at(const Document& document, int row) {
  std::size_t index = 0;
  for (int above = document.bands.front().rows; above <= row && index + 1 < document.bands.size();) {
    ++index;
    above += document.bands[index].rows;
  }
  return index;
}

bool two_yarns_in(const Document& document, int row) {
  return document.bands[band_index_at(document, row)].contrast.has_value();
}

const Yarn& yarn_of(const Document& document, char key) {
  const auto found = std::ranges::find(document.yarns, key, &Yarn::key);
  return found != document.yarns.end() ? *found : document.yarns.front();
}

Document blank_document(int width, int rows) {
  Document document;
  document.yarns = {Yarn{'A', "Oat", Colour{0xe8, 0xdc, 0xc2}}, Yarn{'B', "Ink", Colour{0x20, 0x30, 0x4a}}};
  document.grid = Grid(width, rows);
  document.bands = {Band{rows, 'A', 'B', std::nullopt}};
  return document;
}

} // namespace punchwright
