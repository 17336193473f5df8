// Names of needles, written and read.
#include "design/units.hpp"

#include <charconv>

namespace punchwright {

std::string name_of(Needle needle) {
  return needle.position < 0 ? 'L' + std::to_string(-needle.position) : 'R' + std::to_string(needle.position + 1);
}

std::optional<Needle> needle_named(std::string_view name) {
  if (name.size() < 2 || name.size() > 5 || (name[0] != 'L' && name[0] != 'R') || name[1] == '0') {
    return std::nullopt;
  }
  int number = 0;
  const char* const end = name.data() + name.size();
  const auto [stop, trouble] = std::from_chars(name.data() + 1, end, number);
  if (trouble != std::errc{} || stop != end || number < 1) {
    return std::nullopt;
  }
  return name[0] == 'L' ? left_needle(number) : right_needle(number);
}

} // namespace punchwright
