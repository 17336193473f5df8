// XBM, the bitmaps of the X Window System: C text with two defines and an array, as Xlib's manual describes it (Xlib -
// C Language X Interface, 16.9). Bytes with the lowest bit leftmost; the older form has 16-bit words instead.
#include "pictures/picture_forms.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <charconv>

namespace punchwright {
namespace {

bool is_word_sign(char sign) {
  return (sign >= '0' && sign <= '9') || (sign >= 'a' && sign <= 'z') || (sign >= 'A' && sign <= 'Z') || sign == '_';
}

class XbmReader {
public:
  XbmReader(std::string_view bytes, const LargestPicture& largest) : rest_(bytes), largest_(largest) {}

  Result<Pixels> read() {
    std::int64_t width = 0;
    std::int64_t height = 0;
    bool words = false; // of 16 bits
    std::string_view before;
    for (std::string_view word = next(); word != "{"; word = next()) {
      if (word.empty()) {
        return picture_error(tr("the XBM has no stitches between { and }"), tr("save or fetch it again"));
      }
      const auto value = number_in(word);
      if (value && before.ends_with("width")) {
        width = *value;
      } else if (value && before.ends_with("height")) {
        height = *value;
      }
      words = words || word == "short";
      before = word;
    }
    if (const Failure failure = too_large(width, height, largest_)) {
      return *failure;
    }
    return lines({static_cast<int>(width), static_cast<int>(height), {}}, words ? 16 : 8);
  }

private:
  // A word or number, or a single other sign; empty at the end. Blanks, commas and comments lie between.
  std::string_view next() {
    for (;;) {
      rest_.remove_prefix(std::min(rest_.find_first_not_of(" \t\r\n,"), rest_.size()));
      if (!rest_.starts_with("/*")) {
        break;
      }
      const std::size_t end = rest_.find("*/", 2);
      rest_.remove_prefix(end == std::string_view::npos ? rest_.size() : end + 2);
    }
    std::size_t length = 0;
    while (length < rest_.size() && is_word_sign(rest_[length])) {
      ++length;
    }
    length = std::min(std::max<std::size_t>(length, 1), rest_.size());
    const std::string_view word = rest_.substr(0, length);
    rest_.remove_prefix(length);
    return word;
  }

  static std::optional<std::int64_t> number_in(std::string_view word) {
    const bool hexadecimal = word.starts_with("0x") || word.starts_with("0X");
    const std::string_view digits = word.substr(hexadecimal ? 2 : 0);
    std::int64_t value = 0;
    const char* const end = digits.data() + digits.size();
    const auto [stop, trouble] = std::from_chars(digits.data(), end, value, hexadecimal ? 16 : 10);
    return trouble == std::errc{} && stop == end && value >= 0 ? std::optional(value) : std::nullopt;
  }

  Result<Pixels> lines(Pixels pixels, int bits) {
    for (int line = 0; line < pixels.height; ++line) {
      std::int64_t value = 0;
      for (int column = 0; column < pixels.width; ++column) {
        if (column % bits == 0) {
          const auto read = number_in(next());
          if (!read || *read >> bits != 0) {
            return picture_error(said("line {} of {} of the XBM can't be read", line + 1, pixels.height),
                                 tr("save or fetch it again"));
          }
          value = *read;
        }
        pixels.colours.push_back((value >> (column % bits) & 1) != 0 ? black_pixel : white_pixel);
      }
    }
    return pixels;
  }

  std::string_view rest_;
  LargestPicture largest_;
};

} // namespace

Result<Pixels> read_xbm(std::string_view bytes, const LargestPicture& largest) {
  return XbmReader(bytes, largest).read();
}

} // namespace punchwright
