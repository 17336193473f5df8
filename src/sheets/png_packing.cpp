// stb_image_write compiled into the room, with zlib to deflate: stb's own takes half a second for a page.
#include <cstdlib>
#include <zlib.h>

namespace {

constexpr int quick_level = 1; // line art packs as well at this level as at any

// As stb asks for it: a zlib stream in memory that free() gives back, or null.
unsigned char* deflated(const unsigned char* bytes, int length, int* packed_length, int) {
  const auto size = static_cast<uLong>(length);
  uLongf packed = compressBound(size);
  auto* const target = static_cast<unsigned char*>(std::malloc(packed));
  if (target != nullptr && compress2(target, &packed, bytes, size, quick_level) != Z_OK) {
    std::free(target);
    return nullptr;
  }
  *packed_length = static_cast<int>(packed);
  return target;
}

unsigned int check_sum(const unsigned char* bytes, int length) {
  return static_cast<unsigned int>(crc32(0, bytes, static_cast<uInt>(length)));
}

} // namespace

#define STBIW_ZLIB_COMPRESS deflated
#define STBIW_CRC32 check_sum
#define STBI_WRITE_NO_STDIO
#define STB_IMAGE_WRITE_IMPLEMENTATION
#include <stb_image_write.h>
