// A look at a picture before stb_image reads it, for what Debian 12's version of it believes: numbers that no int
// holds.
#pragma once

#include <string_view>

namespace punchwright {

// False where one of the three numbers in the head of a PGM or PPM has more than 9 digits. True of bytes that are
// neither.
[[nodiscard]] bool pixmap_numbers_fit(std::string_view bytes);

} // namespace punchwright
