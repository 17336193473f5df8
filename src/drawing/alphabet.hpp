// Lettering: a bitmap alphabet of our own in two heights, as stitches to set down.
// Capitals, small letters, digits, punctuation and the accents of Western Europe (ISO 8859-1, Œ œ Ÿ € Š š Ž ž, what
// Welsh, Dutch, Catalan and German have beyond them), and the signs that phones and word processors put for typed ones.
#pragma once

#include "design/grid.hpp"
#include "design/result.hpp"
#include "design/units.hpp"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

enum class LetterHeight { five, seven }; // rows of a capital without accent

[[nodiscard]] constexpr int rows_of(LetterHeight height) {
  return height == LetterHeight::five ? 5 : 7;
}

struct Glyph {
  Grid drawing;       // from its lowest row to its highest
  int lowest_row = 0; // above the line that letters stand on; below 0: a tail or a comma, above 0: a mark at the top

  [[nodiscard]] int highest_row() const { return lowest_row + drawing.height() - 1; }
};

class Alphabet {
public:
  explicit Alphabet(LetterHeight height);

  // Null where the character isn't in the alphabet.
  [[nodiscard]] const Glyph* find(char32_t character) const;
  [[nodiscard]] std::vector<char32_t> characters() const; // in the order of their numbers
  [[nodiscard]] LetterHeight height() const { return height_; }

private:
  LetterHeight height_;
  std::map<char32_t, Glyph> glyphs_;
};

constexpr int letter_spacing = 1; // stitches between two letters

struct LetterPlace {
  char32_t character = U' ';
  int column = 0; // its first, in the drawing
  int columns = 0;
};

struct Lettering {
  Grid drawing;
  int rows_below = 0;              // rows of the drawing below the line that the letters stand on
  std::vector<LetterPlace> places; // of each character, as they are read
};

// One line of text (UTF-8; accents may follow their letter as characters of their own). As high as its capitals at
// least, with as many rows above and below as its letters need. `worn` is the side of the cloth on which it is read:
// for the purl side it is mirrored, since drawings show the knit side. Refused: no text, a character that the alphabet
// lacks, by name and place; bytes that aren't UTF-8; more than 200 stitches.
[[nodiscard]] Result<Lettering> letters(const Alphabet& alphabet, std::string_view text, Face worn);
[[nodiscard]] Result<Lettering> letters(std::string_view text, LetterHeight height, Face worn);

} // namespace punchwright
