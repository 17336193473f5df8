// Looking ahead for one option.
#include "cli/language.hpp"

#include <algorithm>
#include <string_view>

namespace punchwright::cli {

const Language* language_asked_for(int count, const char* const* arguments) {
  constexpr std::string_view option = "--language";
  for (int place = 1; place < count; ++place) {
    std::string_view argument = arguments[place];
    if (argument == "--") {
      break; // names of files follow
    }
    if (!argument.starts_with(option)) {
      continue;
    }
    argument.remove_prefix(option.size());
    if (argument.empty() && place + 1 < count) {
      argument = arguments[place + 1];
    } else if (argument.starts_with('=')) {
      argument.remove_prefix(1);
    }
    const auto known = std::ranges::find(languages(), argument, &Language::code);
    return known == languages().end() ? nullptr : &*known;
  }
  return nullptr;
}

std::string codes_of_languages() {
  std::string codes;
  for (const Language& language : languages()) {
    codes += (codes.empty() ? "" : ", ") + std::string(language.code);
  }
  return codes;
}

} // namespace punchwright::cli
