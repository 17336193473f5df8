// The alphabet read from its drawn sheets, accented letters put together from letter and mark.
#include "drawing/alphabet.hpp"

#include "drawing/alphabet_data.hpp"
#include "drawing/marked_area.hpp"
#include "drawing/utf8.hpp"

#include <algorithm>
#include <array>
#include <cassert>

namespace punchwright {
namespace {

using Words = std::vector<std::string_view>;

Words words_of(std::string_view line) {
  Words words;
  while (!line.empty()) {
    const auto first = line.find_first_not_of(' ');
    if (first == std::string_view::npos) {
      break;
    }
    line.remove_prefix(first);
    const auto end = std::min(line.find(' '), line.size());
    words.push_back(line.substr(0, end));
    line.remove_prefix(end);
  }
  return words;
}

// Blocks of lines that aren't empty.
std::vector<std::vector<Words>> blocks_of(std::string_view sheet) {
  std::vector<std::vector<Words>> blocks(1);
  while (!sheet.empty()) {
    const auto end = std::min(sheet.find('\n'), sheet.size());
    const auto words = words_of(sheet.substr(0, end));
    sheet.remove_prefix(std::min(end + 1, sheet.size()));
    if (!words.empty()) {
      blocks.back().push_back(words);
    } else if (!blocks.back().empty()) {
      blocks.emplace_back();
    }
  }
  if (blocks.back().empty()) {
    blocks.pop_back();
  }
  return blocks;
}

// Without the rows above and below in which nothing is drawn; a blank keeps one row.
Glyph trimmed(const std::vector<std::string_view>& rows_from_top, int lowest_row) {
  const auto drawn = [](std::string_view row) { return row.find('#') != std::string_view::npos; };
  auto top = std::ranges::find_if(rows_from_top, drawn);
  auto bottom = std::find_if(rows_from_top.rbegin(), rows_from_top.rend(), drawn).base();
  if (top == rows_from_top.end()) {
    top = rows_from_top.end() - 1;
    bottom = rows_from_top.end();
  }
  Glyph glyph{Grid(static_cast<int>(top->size()), static_cast<int>(bottom - top)),
              lowest_row + static_cast<int>(rows_from_top.end() - bottom)};
  for (int row = glyph.drawing.height(); top != bottom; ++top) {
    glyph.drawing.set_row_text(--row, *top);
  }
  return glyph;
}

using Sheet = std::map<std::string, Glyph, std::less<>>;

Sheet read_sheet(std::string_view text) {
  Sheet sheet;
  for (auto& block : blocks_of(text)) {
    int raised = 0;
    if (block.front().front() == "raise") {
      raised = block.front().back().front() - '0';
      block.erase(block.begin());
    }
    const Words names = block.front();
    for (std::size_t place = 0; place < names.size(); ++place) {
      std::vector<std::string_view> rows;
      int below = 0;
      bool line_passed = false;
      for (std::size_t line = 1; line < block.size(); ++line) {
        assert(block[line].size() == names.size());
        if (block[line][place].front() == '-') {
          line_passed = true;
          continue;
        }
        below += line_passed ? 1 : 0;
        rows.push_back(block[line][place]);
      }
      sheet.emplace(names[place], trimmed(rows, raised - below));
    }
  }
  return sheet;
}

struct Accented {
  std::string_view mark;
  std::string_view letters; // each followed by the letter that it is made of
};

constexpr std::array accented_letters = {
    Accented{"grave", "ÀAÈEÌIÒOÙUẀWỲYàaèeìıòoùuẁwỳy"},
    Accented{"acute", "ÁAÉEÍIÓOÚUÝYẂWáaéeíıóoúuýyẃw"},
    Accented{"circumflex", "ÂAÊEÎIÔOÛUŴWŶYâaêeîıôoûuŵwŷy"},
    Accented{"tilde", "ÃAÑNÕOãañnõo"},
    Accented{"diaeresis", "ÄAËEÏIÖOÜUŸYẄWäaëeïıöoüuÿyẅw"},
    Accented{"ring", "ÅAåa"},
    Accented{"caron", "ŠSŽZšsžz"},
    Accented{"cedilla", "ÇCçc"},
};

// The mark in the middle above the letter, a row between; a cedilla hangs from the letter.
Glyph composed(const Glyph& letter, const Glyph& mark, std::string_view name) {
  const int width = std::max(letter.drawing.width(), mark.drawing.width());
  const int mark_row = name == "cedilla" ? -mark.drawing.height() : letter.highest_row() + 2;
  const int lowest = std::min(letter.lowest_row, mark_row);
  const int highest = std::max(letter.highest_row(), mark_row + mark.drawing.height() - 1);
  Glyph glyph{Grid(width, highest - lowest + 1), lowest};
  glyph.drawing =
      set_down(glyph.drawing, {(width - letter.drawing.width()) / 2, letter.lowest_row - lowest}, letter.drawing);
  glyph.drawing = set_down(glyph.drawing, {(width - mark.drawing.width()) / 2, mark_row - lowest}, mark.drawing);
  return glyph;
}

} // namespace

Alphabet::Alphabet(LetterHeight height) : height_(height) {
  const Sheet sheet = read_sheet(height == LetterHeight::five ? letters_of_five_rows() : letters_of_seven_rows());
  for (const auto& [name, glyph] : sheet) {
    if (const auto characters = characters_of(name); characters.size() == 1) {
      glyphs_[characters.front()] = glyph;
    }
  }
  for (const auto& [mark, pairs] : accented_letters) {
    const auto characters = characters_of(pairs);
    for (std::size_t pair = 0; pair + 1 < characters.size(); pair += 2) {
      const Glyph& letter = glyphs_.at(characters[pair + 1]);
      const std::string even = letter.drawing.width() % 2 == 0 ? std::string(mark) + '+' : std::string(mark);
      glyphs_[characters[pair]] = composed(letter, sheet.find(even)->second, mark);
    }
  }
  glyphs_[U' '] = sheet.find("space")->second;
  for (const char32_t blank : {U'\u00a0', U'\u2009', U'\u202f'}) {
    glyphs_[blank] = glyphs_[U' '];
  }
  for (const char32_t hyphen : {U'\u00ad', U'\u2010', U'\u2011'}) {
    glyphs_[hyphen] = glyphs_[U'-'];
  }
}

const Glyph* Alphabet::find(char32_t character) const {
  const auto found = glyphs_.find(character);
  return found == glyphs_.end() ? nullptr : &found->second;
}

std::vector<char32_t> Alphabet::characters() const {
  std::vector<char32_t> all;
  for (const auto& [character, glyph] : glyphs_) {
    all.push_back(character);
  }
  return all;
}

} // namespace punchwright
