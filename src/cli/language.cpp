// The language that is asked for, before anything is said.
#include "cli/language.hpp"

#include "words/early_option.hpp"

#include <algorithm>
#include <string_view>

namespace punchwright::cli {

const Language* language_asked_for(int count, const char* const* arguments) {
  const auto code = early_option({arguments, static_cast<std::size_t>(count)}, "--language");
  const auto known = std::ranges::find(languages(), code.value_or(std::string_view()), &Language::code);
  return known == languages().end() ? nullptr : &*known;
}

} // namespace punchwright::cli
