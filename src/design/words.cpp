// Trimming, listing and capitals.
#include "design/words.hpp"

#include "words/words.hpp"

namespace punchwright {

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) {
    text.remove_prefix(1);
  }
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t' || text.back() == '\r')) {
    text.remove_suffix(1);
  }
  return text;
}

std::string listed(const std::vector<std::string>& words) {
  std::string text;
  for (std::size_t place = 0; place < words.size(); ++place) {
    text = place == 0                  ? words[place]
           : place + 1 == words.size() ? said("{} and {}", text, words[place])
                                       : text + ", " + words[place];
  }
  return text;
}

std::string one_of(const std::vector<std::string>& words) {
  std::string text;
  for (std::size_t place = 0; place < words.size(); ++place) {
    text = place == 0                  ? words[place]
           : place + 1 == words.size() ? said("{} or {}", text, words[place])
                                       : text + ", " + words[place];
  }
  return text;
}

std::string rows_from_to(std::int64_t first, std::int64_t last) {
  return first == last ? said("row {}", first) : said("rows {} to {}", first, last);
}

std::string with_capital(std::string_view text) {
  std::string out(text);
  if (!out.empty() && out.front() >= 'a' && out.front() <= 'z') {
    out.front() = static_cast<char>(out.front() - 'a' + 'A');
  } else if (out.starts_with("ä") || out.starts_with("ö") || out.starts_with("ü")) {
    out[1] = static_cast<char>(out[1] - 0x20); // Latin-1's capitals stand 32 before its small letters
  }
  return out;
}

std::string shell_word(std::string_view name) {
  constexpr std::string_view plain = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-./,:+@%";
  std::string word = name.starts_with('-') ? "./" : "";
  word += name;
  if (!word.empty() && word.find_first_not_of(plain) == std::string::npos) {
    return word;
  }
  std::string quoted = "'";
  for (const char letter : word) {
    quoted += letter == '\'' ? std::string("'\\''") : std::string(1, letter);
  }
  return quoted + "'";
}

} // namespace punchwright
