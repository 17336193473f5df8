// Text as the writers set it: UTF-8 to characters, and how wide they are in the sheets' typeface, DejaVu Sans.
// The font files are read straight through FreeType, since a font service's start-up costs more than a whole page.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

struct Character {
  char32_t code = 0;
  int bytes = 1; // of the text that it stands for
};

// Broken UTF-8 gives U+FFFD; control characters, and what XML forbids, give a space.
[[nodiscard]] std::vector<Character> characters_of(std::string_view text);
[[nodiscard]] std::string utf8_of(const std::vector<Character>& characters);

// Path of the regular or the bold face.
[[nodiscard]] std::string font_file(bool bold);

// The words in lines no wider than `width` mm; a word that is wider by itself is broken.
[[nodiscard]] std::vector<std::string> lines_of(const std::string& text, double height_mm, bool bold, double width);
// On one line: with spaces at which none ends (U+00A0).
[[nodiscard]] std::string unbroken(const std::string& text);
[[nodiscard]] double widest_word(const std::string& text, double height_mm, bool bold);

} // namespace punchwright
