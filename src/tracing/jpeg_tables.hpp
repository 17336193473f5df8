// A look at a JPEG before stb_image reads it: Debian 12's writes beyond its tables where a file's Huffman tables name
// more codes than there can be.
#pragma once

#include <string_view>

namespace punchwright {

// False where a Huffman table has more than 256 codes: each is for one byte (ITU-T T.81, B.2.4.2 and C.1). True of
// bytes that are no JPEG.
[[nodiscard]] bool huffman_tables_fit(std::string_view bytes);

} // namespace punchwright
