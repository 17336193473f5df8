// Words, compared without regard to large and small letters.
#include "drawing/word_search.hpp"

#include <algorithm>
#include <string>

namespace punchwright {
namespace {

std::string in_small_letters(std::string_view text) {
  std::string small(text);
  unsigned char before = 0;
  for (char& letter : small) {
    const auto byte = static_cast<unsigned char>(letter);
    const bool of_latin_1 =
        before == 0xc3 && byte >= 0x80 && byte <= 0x9e && byte != 0x97; // "À" to "Þ" in UTF-8, not "×"
    if ((letter >= 'A' && letter <= 'Z') || of_latin_1) {
      letter = static_cast<char>(byte + 0x20); // small letters stand 32 behind their capitals
    }
    before = byte;
  }
  return small;
}

bool begins_a_word(std::string_view text, std::string_view beginning) {
  for (auto place = text.find(beginning); place != std::string_view::npos; place = text.find(beginning, place + 1)) {
    if (place == 0 || std::string_view(" -(").find(text[place - 1]) != std::string_view::npos) {
      return true;
    }
  }
  return false;
}

} // namespace

bool begins_with(std::string_view text, std::string_view wanted) {
  return in_small_letters(text).starts_with(in_small_letters(wanted));
}

bool has_words(std::string_view text, std::string_view wanted) {
  const std::string small_text = in_small_letters(text);
  const std::string small_wanted = in_small_letters(wanted);
  std::string_view rest = small_wanted;
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find(' '), rest.size());
    if (end > 0 && !begins_a_word(small_text, rest.substr(0, end))) {
      return false;
    }
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return true;
}

} // namespace punchwright
