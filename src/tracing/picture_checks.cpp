// Of a JPEG the markers and their segments up to the end of the picture, as ITU-T T.81, annex B, lays them out; of a
// pixmap its head.
#include "tracing/picture_checks.hpp"

#include <cstddef>

namespace punchwright {
namespace {

constexpr int marker_sign = 0xff; // any number of them, then the marker's kind
constexpr int start_of_image = 0xd8;
constexpr int end_of_image = 0xd9;
constexpr int huffman_tables = 0xc4;
constexpr int most_codes = 256;
constexpr int code_lengths = 16;

class Bytes {
public:
  explicit Bytes(std::string_view bytes) : bytes_(bytes) {}

  [[nodiscard]] bool ended() const { return at_ >= bytes_.size(); }
  int next() { return ended() ? 0 : static_cast<unsigned char>(bytes_[at_++]); }
  int next_two() {
    const int high = next();
    return high << 8 | next();
  }
  void skip(int count) { at_ += count > 0 ? static_cast<std::size_t>(count) : 0; }

  // The kind of the next marker; whatever lies before it is passed over, be it pixels or padding.
  int next_marker() {
    while (!ended() && next() != marker_sign) {
    }
    int kind = marker_sign;
    while (!ended() && kind == marker_sign) {
      kind = next();
    }
    return kind;
  }

private:
  std::string_view bytes_;
  std::size_t at_ = 0;
};

// Markers without a segment: a 0xff among the pixels, TEM, the restarts, the start of a picture.
bool stands_alone(int kind) {
  return kind <= 0x01 || (kind >= 0xd0 && kind <= start_of_image);
}

bool tables_fit(Bytes& bytes, int left) {
  while (left > 0) {
    bytes.next(); // class and number of the table
    int codes = 0;
    for (int length = 1; length <= code_lengths; ++length) {
      codes += bytes.next();
    }
    if (codes > most_codes) {
      return false;
    }
    bytes.skip(codes);
    left -= 1 + code_lengths + codes;
  }
  return true;
}

} // namespace

bool huffman_tables_fit(std::string_view bytes) {
  if (!bytes.starts_with('\xff')) {
    return true;
  }
  constexpr int length_itself = 2;
  Bytes jpeg(bytes);
  if (jpeg.next_marker() != start_of_image) {
    return true;
  }
  while (!jpeg.ended()) {
    const int kind = jpeg.next_marker();
    if (kind == end_of_image) {
      return true;
    }
    if (stands_alone(kind)) {
      continue;
    }
    const int length = jpeg.next_two() - length_itself;
    if (kind != huffman_tables) {
      jpeg.skip(length);
    } else if (!tables_fit(jpeg, length)) {
      return false;
    }
  }
  return true;
}

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
