// The program's words in the reader's language: English as it stands in the source, or a translation of it (gettext).
// The language is chosen once, before anything is said; from then on the same words give the same translation.
#pragma once

#include <filesystem>
#include <fmt/format.h>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

struct Language {
  std::string_view code; // ISO 639-1: "en"
  std::string_view name; // as its speakers write it
  char decimal_sign = '.';
};

// Those that the program speaks; English, which needs no translation, first.
[[nodiscard]] std::span<const Language> languages();
[[nodiscard]] std::vector<std::string> codes_of_languages();

// What the environment asks for: of LANGUAGE, else LC_ALL, LC_MESSAGES or LANG, the first that is spoken; else English.
// A locale of "C" or "POSIX" asks for English whatever LANGUAGE says, as gettext has it.
[[nodiscard]] const Language& language_of_environment();
// By its code; English where it isn't spoken.
[[nodiscard]] const Language& language_of(std::string_view code);

// From now on. Translations lie in `folder`/CODE/LC_MESSAGES/punchwright.mo; where that is missing, words stay English.
void choose_language(const Language& language, const std::filesystem::path& folder);
[[nodiscard]] const Language& chosen_language();

// Where the translations lie: beside the program's own folder, as installed (../share/locale) or as built (../locale or
// locale).
[[nodiscard]] std::filesystem::path folder_of_translations();

// Translated. The words are a literal, so that they can be collected (xgettext), or were `noted` as one.
[[nodiscard]] const char* tr(const char* words);
// A literal whose translation is looked up later: words in constants and tables.
[[nodiscard]] constexpr const char* noted(const char* words) {
  return words;
}
// One of the two, and the translation's own rule for numbers.
[[nodiscard]] const char* tr_count(const char* one, const char* many, long count);

// Translated and formatted: said("Row {} of {}", row, rows). The English form is checked by the compiler; a translation
// has the same places, in any order ("{1} … {0}"), which a test checks.
template <class... Values> [[nodiscard]] std::string said(fmt::format_string<Values...> words, Values&&... values) {
  const fmt::string_view english = words;
  return fmt::vformat(tr(english.data()), fmt::make_format_args(values...));
}
// The same with a number that decides between one and many; it is also the first value:
// said_count(stitches, "{} stitch", "{} stitches").
template <class... Values>
[[nodiscard]] std::string said_count(long count, fmt::format_string<long&, Values...> one,
                                     fmt::format_string<long&, Values...> many, Values&&... values) {
  const fmt::string_view english_one = one;
  const fmt::string_view english_many = many;
  return fmt::vformat(tr_count(english_one.data(), english_many.data(), count),
                      fmt::make_format_args(count, values...));
}

// A number with so many decimals and the language's decimal sign, for people; never for files.
[[nodiscard]] std::string decimal(double number, int decimals);
// The same without zeros at its end: "2.5", "3".
[[nodiscard]] std::string short_decimal(double number, int most_decimals);

} // namespace punchwright
