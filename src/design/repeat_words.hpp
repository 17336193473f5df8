// The words of the .repeat form, in one place for its reader and its writer.
// They are what people and other programs type, so they never change.
#pragma once

#include "design/document.hpp"
#include "design/toml_extras.hpp"

#include <array>
#include <string_view>
#include <utility>

namespace punchwright {

constexpr std::array<std::pair<std::string_view, Side>, 2> side_words{{{"left", Side::left}, {"right", Side::right}}};

constexpr std::array<std::pair<std::string_view, EndNeedles>, 3> end_needle_words{
    {{"profile", EndNeedles::as_profile}, {"always", EndNeedles::always}, {"never", EndNeedles::never}}};

constexpr std::array<std::pair<std::string_view, ChangeSide>, 3> change_side_words{
    {{"any", ChangeSide::any}, {"left", ChangeSide::left}, {"right", ChangeSide::right}}};

constexpr std::array<std::pair<std::string_view, Paper>, 3> paper_words{
    {{"a4", Paper::a4}, {"letter", Paper::letter}, {"roll", Paper::roll}}};

template <class Meaning, std::size_t count>
[[nodiscard]] constexpr std::string_view
word_for(Meaning meaning, const std::array<std::pair<std::string_view, Meaning>, count>& words) {
  for (const auto& [word, meant] : words) {
    if (meant == meaning) {
      return word;
    }
  }
  return words.front().first;
}

// One letter or digit.
[[nodiscard]] constexpr bool is_yarn_key(std::string_view text) {
  return text.size() == 1 && ((text[0] >= 'a' && text[0] <= 'z') || (text[0] >= 'A' && text[0] <= 'Z') ||
                              (text[0] >= '0' && text[0] <= '9'));
}

// The tables and keys of the form. Yarns are told apart by their keys, bands by their numbers from below.
[[nodiscard]] TomlForm repeat_form(const Document& document);

} // namespace punchwright
