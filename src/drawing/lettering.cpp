// A line of text set in the alphabet.
#include "drawing/alphabet.hpp"
#include "drawing/marked_area.hpp"
#include "drawing/turns.hpp"
#include "drawing/utf8.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace punchwright {
namespace {

Error refusal(std::string message, std::string remedy) {
  return Error{{}, 0, 0, std::move(message), std::move(remedy)};
}

// Letters whose accent follows as a character of its own (Unicode, combining diacritical marks), as one character.
struct Combining {
  char32_t mark;
  std::u32string_view letters; // what it makes, then what it is made of
};
constexpr std::array combining_marks = {
    Combining{0x300, U"ÀAÈEÌIÒOÙUẀWỲYàaèeìiòoùuẁwỳy"},
    Combining{0x301, U"ÁAÉEÍIÓOÚUÝYẂWáaéeíióoúuýyẃw"},
    Combining{0x302, U"ÂAÊEÎIÔOÛUŴWŶYâaêeîiôoûuŵwŷy"},
    Combining{0x303, U"ÃAÑNÕOãañnõo"},
    Combining{0x308, U"ÄAËEÏIÖOÜUŸYẄWäaëeïiöoüuÿyẅw"},
    Combining{0x30a, U"ÅAåa"},
    Combining{0x30c, U"ŠSŽZšsžz"},
    Combining{0x327, U"ÇCçc"},
};

std::u32string joined(const std::u32string& text) {
  std::u32string result;
  for (const char32_t character : text) {
    const auto mark = std::ranges::find(combining_marks, character, &Combining::mark);
    bool taken = false;
    for (std::size_t pair = 0; mark != combining_marks.end() && !result.empty() && pair < mark->letters.size();
         pair += 2) {
      if (mark->letters[pair + 1] == result.back()) {
        result.back() = mark->letters[pair];
        taken = true;
        break;
      }
    }
    if (!taken) {
      result += character;
    }
  }
  return result;
}

std::string name_of_character(char32_t character) {
  const auto number = fmt::format("U+{:04X}", static_cast<std::uint32_t>(character));
  return character < 0x20 || (character >= 0x7f && character < 0xa0)
             ? number
             : fmt::format("'{}' ({})", encoded(character), number);
}

} // namespace

Result<Lettering> letters(const Alphabet& alphabet, std::string_view text, Face worn) {
  const auto read = decoded(text);
  if (!read) {
    return refusal(tr("the text isn't UTF-8"), tr("type it, or paste it from a program that writes UTF-8"));
  }
  const std::u32string characters = joined(*read);
  if (characters.empty()) {
    return refusal(tr("there is no text to letter"), tr("type a word"));
  }
  int width = -letter_spacing;
  int lowest = 0;
  int highest = rows_of(alphabet.height()) - 1;
  for (std::size_t place = 0; place < characters.size(); ++place) {
    const Glyph* const glyph = alphabet.find(characters[place]);
    if (glyph == nullptr) {
      return refusal(
          said("{}, character {} of the text, isn't in the alphabet", name_of_character(characters[place]), place + 1),
          tr("letters, digits, signs and accents of Western European languages"));
    }
    width += letter_spacing + glyph->drawing.width();
    lowest = std::min(lowest, glyph->lowest_row);
    highest = std::max(highest, glyph->highest_row());
  }
  if (width > widest_repeat) {
    return refusal(said("the text is {} stitches wide", width),
                   said("{} stitches at most: less text, or the smaller letters", widest_repeat));
  }
  Lettering lettering{Grid(width, highest - lowest + 1), -lowest, {}};
  int column = 0;
  for (const char32_t character : characters) {
    const Glyph& glyph = *alphabet.find(character);
    lettering.drawing = set_down(lettering.drawing, {column, glyph.lowest_row - lowest}, glyph.drawing);
    const int wide = glyph.drawing.width();
    lettering.places.push_back({character, worn == Face::purl ? width - column - wide : column, wide});
    column += wide + letter_spacing;
  }
  if (worn == Face::purl) {
    lettering.drawing = mirrored_left_right(lettering.drawing);
  }
  return lettering;
}

Result<Lettering> letters(std::string_view text, LetterHeight height, Face worn) {
  return letters(Alphabet(height), text, worn);
}

} // namespace punchwright
