// gettext with a folder and a language of our own choosing: a translation is found on a machine without that locale,
// too.
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <clocale>
#include <cstdlib>
#include <iterator>
#include <libintl.h>
#include <system_error>

namespace punchwright {

namespace {

constexpr const char* domain = "punchwright";
constexpr std::array spoken = {Language{"en", "English", '.'}, Language{"de", "Deutsch", ','}};

const Language*& chosen() {
  static const Language* language = spoken.data();
  return language;
}

std::string_view variable(const char* name) {
  const char* const value = std::getenv(name); // NOLINT(concurrency-mt-unsafe): before any thread
  return value == nullptr ? std::string_view() : value;
}

const Language* spoken_of(std::string_view locale) {
  const std::string_view code = locale.substr(0, locale.find_first_of("_.@"));
  const auto* const found = std::ranges::find(spoken, code, &Language::code);
  return found == spoken.end() ? nullptr : found;
}

bool is_plain(std::string_view locale) {
  return locale.empty() || locale == "POSIX" || locale == "C" || locale.starts_with("C.");
}

} // namespace

std::span<const Language> languages() {
  return spoken;
}

std::vector<std::string> codes_of_languages() {
  std::vector<std::string> codes;
  std::ranges::transform(spoken, std::back_inserter(codes),
                         [](const Language& language) { return std::string(language.code); });
  return codes;
}

const Language& language_of(std::string_view code) {
  const Language* const found = spoken_of(code);
  return found == nullptr ? spoken.front() : *found;
}

const Language& language_of_environment() {
  std::string_view locale = variable("LC_ALL");
  for (const char* const name : {"LC_MESSAGES", "LANG"}) {
    locale = locale.empty() ? variable(name) : locale;
  }
  if (is_plain(locale)) {
    return spoken.front();
  }
  std::string_view wishes = variable("LANGUAGE");
  while (!wishes.empty()) {
    const std::size_t end = std::min(wishes.find(':'), wishes.size());
    if (const Language* const found = spoken_of(wishes.substr(0, end))) {
      return *found;
    }
    wishes.remove_prefix(std::min(end + 1, wishes.size()));
  }
  return language_of(locale);
}

void choose_language(const Language& language, const std::filesystem::path& folder) {
  chosen() = &language;
  // gettext asks LANGUAGE only in a locale that isn't plain "C"; this one is there on every machine.
  setlocale(LC_MESSAGES, "C.UTF-8");                         // NOLINT(concurrency-mt-unsafe): before any thread
  setenv("LANGUAGE", std::string(language.code).c_str(), 1); // NOLINT(concurrency-mt-unsafe): before any thread
  bindtextdomain(domain, folder.c_str());
  bind_textdomain_codeset(domain, "UTF-8");
  textdomain(domain);
}

const Language& chosen_language() {
  return *chosen();
}

std::filesystem::path folder_of_translations() {
  std::error_code ignored;
  const std::filesystem::path program = std::filesystem::read_symlink("/proc/self/exe", ignored).parent_path();
  for (const std::filesystem::path& folder : {program / "../share/locale", program / "locale", program / "../locale"}) {
    if (std::filesystem::exists(folder / "de" / "LC_MESSAGES" / "punchwright.mo", ignored)) {
      return folder.lexically_normal();
    }
  }
  return program / "../share/locale";
}

const char* tr(const char* words) {
  return *words == 0 ? words : dgettext(domain, words); // the translation of no words is the file's head
}

const char* tr_count(const char* one, const char* many, long count) {
  return dngettext(domain, one, many, static_cast<unsigned long>(std::labs(count)));
}

std::string decimal(double number, int decimals) {
  std::string text = fmt::format("{:.{}f}", number, decimals);
  std::ranges::replace(text, '.', chosen_language().decimal_sign);
  return text;
}

std::string short_decimal(double number, int most_decimals) {
  std::string text = decimal(number, most_decimals);
  if (most_decimals > 0) {
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == chosen_language().decimal_sign) {
      text.pop_back();
    }
  }
  return text;
}

} // namespace punchwright
