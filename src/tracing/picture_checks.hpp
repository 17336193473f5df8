// A look at a picture before stb_image reads it, for what Debian 12's version of it believes: tables that are larger
// than its own, and numbers that no int holds.
#pragma once

#include <string_view>

namespace punchwright {

// False where a JPEG's Huffman table has more than 256 codes: each is for one byte (ITU-T T.81, B.2.4.2 and C.1). True
// of bytes that are no JPEG.
[[nodiscard]] bool huffman_tables_fit(std::string_view bytes);

// False where one of the three numbers in the head of a PGM or PPM has more than 9 digits. True of bytes that are
// neither.
[[nodiscard]] bool pixmap_numbers_fit(std::string_view bytes);

} // namespace punchwright
