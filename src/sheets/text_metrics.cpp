// UTF-8 decoding and the widths of characters, read once from the font's own tables.
// Layout asks for widths hundreds of times a page, so they are kept as a plain table of numbers.
#include "sheets/text_metrics.hpp"

#include "sheets/drawing.hpp"

#include <algorithm>
#include <array>
#include <ft2build.h>
#include FT_FREETYPE_H
#include FT_ADVANCES_H

namespace punchwright {
namespace {

constexpr char32_t replacement = 0xFFFD;
constexpr double width_without_font = 0.6; // em; only where the font file is missing

bool is_continuation(char byte) {
  return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U;
}

// One character from the start of `rest`, which isn't empty.
Character first_character(std::string_view rest) {
  const auto lead = static_cast<unsigned char>(rest.front());
  if (lead < 0x80) {
    return {lead, 1};
  }
  const int length =
      lead >= 0xC2 && lead < 0xE0 ? 2 : (lead >= 0xE0 && lead < 0xF0 ? 3 : (lead >= 0xF0 && lead < 0xF5 ? 4 : 0));
  if (length == 0 || rest.size() < static_cast<std::size_t>(length)) {
    return {replacement, 1};
  }
  char32_t code = lead & (0xFFU >> (length + 1));
  for (int index = 1; index < length; ++index) {
    const char byte = rest[static_cast<std::size_t>(index)];
    if (!is_continuation(byte)) {
      return {replacement, 1};
    }
    code = (code << 6) | (static_cast<unsigned char>(byte) & 0x3FU);
  }
  const bool overlong = (length == 3 && code < 0x800) || (length == 4 && code < 0x10000);
  const bool no_character = (code >= 0xD800 && code < 0xE000) || code > 0x10FFFF;
  return overlong || no_character ? Character{replacement, 1} : Character{code, length};
}

bool is_control(char32_t code) {
  return code < 0x20 || (code >= 0x7F && code < 0xA0) || code == 0xFFFE || code == 0xFFFF;
}

// One face of the typeface, open.
class OpenFace {
public:
  explicit OpenFace(bool bold) {
    if (FT_Init_FreeType(&library_) == 0 && FT_New_Face(library_, font_file(bold).c_str(), 0, &face_) != 0) {
      face_ = nullptr;
    }
  }
  OpenFace(const OpenFace&) = delete;
  OpenFace& operator=(const OpenFace&) = delete;
  ~OpenFace() {
    if (face_ != nullptr) {
      FT_Done_Face(face_);
    }
    if (library_ != nullptr) {
      FT_Done_FreeType(library_);
    }
  }

  // In em.
  [[nodiscard]] double width(char32_t code) const {
    FT_Fixed advance = 0;
    const bool known =
        face_ != nullptr && FT_Get_Advance(face_, FT_Get_Char_Index(face_, code), FT_LOAD_NO_SCALE, &advance) == 0;
    return known ? static_cast<double>(advance) / face_->units_per_EM : width_without_font;
  }

private:
  FT_Library library_ = nullptr;
  FT_Face face_ = nullptr;
};

// Advance widths in em of the characters that sheets are made of: Latin letters, figures and punctuation.
class WidthTable {
public:
  explicit WidthTable(bool bold) : bold_(bold) {
    const OpenFace face(bold);
    for (char32_t code = 0; code < latin_.size(); ++code) {
      latin_[code] = face.width(code);
    }
    for (char32_t code = 0; code < signs_.size(); ++code) {
      signs_[code] = face.width(first_sign + code);
    }
  }

  // Any other character, in a title for instance, is looked up in the font.
  [[nodiscard]] double width(char32_t code) const {
    if (code < latin_.size()) {
      return latin_[code];
    }
    if (code >= first_sign && code - first_sign < signs_.size()) {
      return signs_[code - first_sign];
    }
    return OpenFace(bold_).width(code);
  }

private:
  static constexpr char32_t first_sign = 0x2000;
  bool bold_;
  std::array<double, 0x180> latin_{};
  std::array<double, 0x40> signs_{};
};

// Never changes once it is read; the bold face is only read where something is bold.
const WidthTable& width_table(bool bold) {
  if (bold) {
    static const WidthTable heavy(true);
    return heavy;
  }
  static const WidthTable regular(false);
  return regular;
}

std::vector<std::string_view> words_in(std::string_view text) {
  std::vector<std::string_view> words;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    if (end > 0) {
      words.push_back(text.substr(0, end));
    }
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return words;
}

// Of a word that is wider than a line by itself: as many lines as it fills, and the rest is given back. A line has one
// character at least.
std::string break_off_whole_lines(std::vector<std::string>& lines, std::string word, double height_mm, bool bold,
                                  double width) {
  while (width_of(word, height_mm, bold) > width) {
    const auto characters = characters_of(word);
    std::size_t bytes = 0;
    double used = 0;
    for (const Character& character : characters) {
      used += width_table(bold).width(character.code) * height_mm;
      if (bytes > 0 && used > width) {
        break;
      }
      bytes += static_cast<std::size_t>(character.bytes);
    }
    if (bytes == word.size()) {
      break;
    }
    lines.push_back(word.substr(0, bytes));
    word.erase(0, bytes);
  }
  return word;
}

} // namespace

std::vector<Character> characters_of(std::string_view text) {
  std::vector<Character> characters;
  characters.reserve(text.size());
  while (!text.empty()) {
    Character character = first_character(text);
    text.remove_prefix(static_cast<std::size_t>(character.bytes));
    if (is_control(character.code)) {
      character.code = ' ';
    }
    characters.push_back(character);
  }
  return characters;
}

std::string utf8_of(const std::vector<Character>& characters) {
  std::string text;
  const auto add = [&text](char32_t byte) { text.push_back(static_cast<char>(static_cast<unsigned char>(byte))); };
  for (const auto& character : characters) {
    const char32_t code = character.code;
    if (code < 0x80) {
      add(code);
    } else if (code < 0x800) {
      add(0xC0 | (code >> 6));
      add(0x80 | (code & 0x3F));
    } else if (code < 0x10000) {
      add(0xE0 | (code >> 12));
      add(0x80 | ((code >> 6) & 0x3F));
      add(0x80 | (code & 0x3F));
    } else {
      add(0xF0 | (code >> 18));
      add(0x80 | ((code >> 12) & 0x3F));
      add(0x80 | ((code >> 6) & 0x3F));
      add(0x80 | (code & 0x3F));
    }
  }
  return text;
}

std::string font_file(bool bold) {
  return std::string(PUNCHWRIGHT_FONTS) + (bold ? "/DejaVuSans-Bold.ttf" : "/DejaVuSans.ttf");
}

double width_of(const std::string& text, double height_mm, bool bold) {
  const WidthTable& table = width_table(bold);
  double em = 0;
  for (const auto& character : characters_of(text)) {
    em += table.width(character.code);
  }
  return em * height_mm;
}

std::vector<std::string> lines_of(const std::string& text, double height_mm, bool bold, double width) {
  std::vector<std::string> lines;
  std::string line;
  for (const std::string_view word : words_in(text)) {
    const std::string longer = line.empty() ? std::string(word) : line + ' ' + std::string(word);
    if (width_of(longer, height_mm, bold) <= width) {
      line = longer;
      continue;
    }
    if (!line.empty()) {
      lines.push_back(line);
    }
    line = break_off_whole_lines(lines, std::string(word), height_mm, bold, width);
  }
  if (!line.empty()) {
    lines.push_back(line);
  }
  return lines;
}

std::string unbroken(const std::string& text) {
  std::string out;
  for (const char letter : text) {
    letter == ' ' ? out += "\u00a0" : out += letter;
  }
  return out;
}

double widest_word(const std::string& text, double height_mm, bool bold) {
  double widest = 0;
  for (const std::string_view word : words_in(text)) {
    widest = std::max(widest, width_of(std::string(word), height_mm, bold));
  }
  return widest;
}

} // namespace punchwright
