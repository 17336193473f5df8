// The alphabet in both heights: complete, no two signs alike, set in a line, refused by name.
#include "drawing/alphabet.hpp"
#include "drawing/marked_area.hpp"
#include "drawing/turns.hpp"
#include "drawing/utf8.hpp"

#include <doctest/doctest.h>
#include <map>
#include <utility>

using namespace punchwright;

namespace {

constexpr auto both_heights = {LetterHeight::five, LetterHeight::seven};

std::string set_in(LetterHeight height, std::string_view text) {
  const auto lettering = letters(text, height, Face::knit);
  REQUIRE(lettering.ok());
  return text_of(lettering->drawing);
}

std::string refused(std::string_view text) {
  const auto lettering = letters(text, LetterHeight::seven, Face::knit);
  REQUIRE_FALSE(lettering.ok());
  return lettering.error().text();
}

// ISO 8859-1 without its control characters, the eight letters and signs that ISO 8859-15 put in, the letters of Welsh,
// Dutch, Catalan and German that neither has, and the quotation marks, dashes and signs that phones and word processors
// write by themselves (Unicode, general punctuation).
std::u32string promised() {
  std::u32string all;
  for (char32_t character = 0x20; character <= 0xff; ++character) {
    if (character < 0x7f || character >= 0xa0) {
      all += character;
    }
  }
  return all + U"ŒœŸ€ŠšŽž" + U"ŴŵŶŷẀẁẂẃẄẅỲỳĲĳĿŀẞ" + U"’‘“”„‚‹›–—…•′″";
}

} // namespace

TEST_SUITE("alphabet") {
  TEST_CASE("complete in both heights, and no two signs alike") {
    for (const auto height : both_heights) {
      const Alphabet alphabet(height);
      for (const char32_t character : promised()) {
        CAPTURE(encoded(character));
        CHECK(alphabet.find(character) != nullptr);
      }
      std::map<std::string, char32_t> seen;
      for (const char32_t character : alphabet.characters()) {
        const Glyph& glyph = *alphabet.find(character);
        const std::string look = text_of(glyph.drawing) + std::to_string(glyph.lowest_row);
        const bool twin =
            std::u32string(U"\u00a0\u00ad\u2009\u2010\u2011\u202f").find(character) != std::u32string::npos;
        CAPTURE(encoded(character));
        if (!twin) {
          CHECK_MESSAGE(seen.emplace(look, character).second, encoded(seen[look]));
        }
      }
    }
  }

  TEST_CASE("capitals and digits have the height that is promised, and stand on the line") {
    for (const auto height : both_heights) {
      const Alphabet alphabet(height);
      for (const char32_t character : std::u32string(U"ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789ÆÐØÞŒẞĲĿ")) {
        CAPTURE(encoded(character));
        CHECK(alphabet.find(character)->lowest_row == 0);
        CHECK(alphabet.find(character)->highest_row() == rows_of(height) - 1);
      }
      for (const char32_t character : std::u32string(U"acemnorsuvwxzı")) {
        CHECK(alphabet.find(character)->lowest_row == 0);
        CHECK(alphabet.find(character)->highest_row() == (height == LetterHeight::five ? 3 : 4));
      }
      for (const char32_t character : std::u32string(U"gjpqyþµçÇ,;ĳŷ‚„")) {
        CHECK(alphabet.find(character)->lowest_row < 0);
      }
    }
  }

  TEST_CASE("an accented letter is its letter, a row, and the mark; capitals rise above the others") {
    CHECK(set_in(LetterHeight::seven, "Ö") == "#..#\n....\n.##.\n#..#\n#..#\n#..#\n#..#\n#..#\n.##.\n");
    CHECK(set_in(LetterHeight::five, "é") == "..#.\n.#..\n....\n.##.\n####\n#...\n.###\n");
    CHECK(set_in(LetterHeight::five, "ï") == "#.#\n...\n.#.\n.#.\n.#.\n.#.\n");
    const Alphabet alphabet(LetterHeight::seven);
    for (const char32_t character : std::u32string(U"ÀÁÂÃÄÅÈÉÊËÌÍÎÏÑÒÓÔÕÖÙÚÛÜÝŸŠŽŴŶ")) {
      CHECK(alphabet.find(character)->highest_row() >= 8);
    }
  }

  // The float limit that a new design starts with.
  TEST_CASE("within a letter no yarn passes behind more than 5 stitches of the other") {
    for (const auto height : both_heights) {
      const Alphabet alphabet(height);
      for (const char32_t character : alphabet.characters()) {
        const Grid& drawing = alphabet.find(character)->drawing;
        for (int row = 0; row < drawing.height(); ++row) {
          CAPTURE(encoded(character));
          CHECK(drawing.row_text(row).find("#......") == std::string::npos);
          CHECK(drawing.row_text(row).find("######") == std::string::npos);
        }
      }
    }
  }
}

TEST_SUITE("lettering") {
  TEST_CASE("a stitch between letters; rows above and below as they are needed") {
    CHECK(set_in(LetterHeight::five, "Hi") == "....."
                                              "#\n#..#..\n#..#.#\n####.#\n#..#.#\n#..#.#\n");
    const auto tail = letters("jig", LetterHeight::seven, Face::knit);
    CHECK(tail->rows_below == 2);
    CHECK(tail->drawing.height() == 9);
    CHECK(tail->drawing.width() == 2 + 1 + 1 + 1 + 4);
    CHECK(letters("HULL", LetterHeight::seven, Face::knit)->drawing.height() == 7);
    CHECK(letters("ace", LetterHeight::seven, Face::knit)->drawing.height() == 7);
  }

  TEST_CASE("blanks and hyphens of every kind are a blank and a hyphen") {
    const std::string hyphen = set_in(LetterHeight::five, "a-b");
    CHECK(set_in(LetterHeight::five, "a\u2010b") == hyphen);
    CHECK(set_in(LetterHeight::five, "a\u2011b") == hyphen);
    CHECK(set_in(LetterHeight::five, "a\u202fb") == set_in(LetterHeight::five, "a b"));
  }

  TEST_CASE("what a phone makes of an apostrophe, a quotation and a dash") {
    CHECK(set_in(LetterHeight::five, "’") == ".#\n.#\n#.\n..\n..\n");
    CHECK(letters("„Böe“ – ‚Hafen‘", LetterHeight::seven, Face::knit).ok());
    CHECK(letters("Don’t…", LetterHeight::five, Face::knit).ok());
    CHECK(letters("„", LetterHeight::five, Face::knit)->rows_below == 1);
  }

  TEST_CASE("for the purl side it is mirrored") {
    for (const auto height : both_heights) {
      const auto knit = letters("Bell rock", height, Face::knit);
      const auto purl = letters("Bell rock", height, Face::purl);
      CHECK(purl->drawing == mirrored_left_right(knit->drawing));
      CHECK_FALSE(purl->drawing == knit->drawing);
    }
  }

  TEST_CASE("each letter's place is told, in the mirror too") {
    const auto knit = letters("jig", LetterHeight::seven, Face::knit);
    const auto purl = letters("jig", LetterHeight::seven, Face::purl);
    REQUIRE(knit->places.size() == 3);
    REQUIRE(purl->places.size() == 3);
    const auto at = [](const LetterPlace& place) { return std::pair(place.column, place.columns); };
    CHECK(knit->places[1].character == U'i');
    CHECK(at(knit->places[0]) == std::pair(0, 2));
    CHECK(at(knit->places[1]) == std::pair(3, 1));
    CHECK(at(knit->places[2]) == std::pair(5, 4));
    CHECK(at(purl->places[0]) == std::pair(7, 2));
    CHECK(at(purl->places[1]) == std::pair(5, 1));
    CHECK(at(purl->places[2]) == std::pair(0, 4));
  }

  TEST_CASE("an accent that follows its letter makes the same letter") {
    CHECK(set_in(LetterHeight::seven, "e\u0301") == set_in(LetterHeight::seven, "\u00e9"));
    CHECK(set_in(LetterHeight::seven, "A\u030a") == set_in(LetterHeight::seven, "\u00c5"));
    CHECK(set_in(LetterHeight::seven, "i\u0308") == set_in(LetterHeight::seven, "\u00ef"));
    CHECK(set_in(LetterHeight::five, "w\u0302") == set_in(LetterHeight::five, "\u0175"));
    CHECK(refused("x\u0301").starts_with("'\u0301' (U+0301), character 2"));
  }

  TEST_CASE("what can't be lettered, by name and place") {
    const std::string remedy = "; letters, digits, signs and accents of Western European languages";
    CHECK(refused("abЖ") == "'Ж' (U+0416), character 3 of the text, isn't in the alphabet" + remedy);
    CHECK(refused("a\nb") == "U+000A, character 2 of the text, isn't in the alphabet" + remedy);
    CHECK(refused("") == "there is no text to letter; type a word");
    CHECK(refused("a\xff").starts_with("the text isn't UTF-8"));
    CHECK(refused(std::string(60, 'm')) ==
          "the text is 359 stitches wide; 200 stitches at most: less text, or the smaller letters");
  }
}

TEST_SUITE("text as characters") {
  TEST_CASE("there and back, and what is no UTF-8 (RFC 3629)") {
    for (const char32_t character : {U'a', U'é', U'€', U'\U0001f426', U'\U0010ffff'}) {
      CHECK(characters_of(encoded(character)) == std::u32string{character});
    }
    for (const auto* text : {"\x80", "\xc3", "\xc0\x80", "\xe0\x80\x80", "\xed\xa0\x80", "\xf4\x90\x80\x80",
                             "\xf8\x88\x80\x80\x80", "\xc3("}) {
      CHECK_FALSE(decoded(text).has_value());
    }
  }
}
