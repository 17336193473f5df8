// Of a pixmap the head.
#include "tracing/picture_checks.hpp"

#include <cstddef>

namespace punchwright {

bool pixmap_numbers_fit(std::string_view bytes) {
  if (!bytes.starts_with("P5") && !bytes.starts_with("P6")) {
    return true;
  }
  constexpr int numbers = 3; // width, height, lightest value
  constexpr int most_digits = 9;
  constexpr std::size_t sign = 2;
  int seen = 0;
  int digits = 0;
  bool comment = false;
  for (const char letter : bytes.substr(sign)) {
    comment = letter == '\n' || letter == '\r' ? false : comment || letter == '#';
    if (!comment && letter >= '0' && letter <= '9') {
      if (++digits > most_digits) {
        return false;
      }
    } else if (digits > 0) {
      digits = 0;
      if (++seen == numbers) {
        return true;
      }
    }
  }
  return true;
}

} // namespace punchwright
