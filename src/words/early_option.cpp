// Looking ahead for one option.
#include "words/early_option.hpp"

namespace punchwright {

std::optional<std::string_view> early_option(std::span<const char* const> arguments, std::string_view option) {
  for (std::size_t place = 0; place < arguments.size(); ++place) {
    std::string_view argument = arguments[place];
    if (argument == "--") {
      break; // names of files follow
    }
    if (!argument.starts_with(option)) {
      continue;
    }
    argument.remove_prefix(option.size());
    if (argument.empty()) {
      return place + 1 < arguments.size() ? arguments[place + 1] : std::string_view();
    }
    if (argument.starts_with('=')) {
      return argument.substr(1);
    }
  }
  return std::nullopt;
}

} // namespace punchwright
