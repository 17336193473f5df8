// PBM, the bitmaps of netpbm, as its manual page pbm(5) describes them: plain (P1) and packed (P4).
#include "pictures/picture_forms.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright {
namespace {

bool is_blank(char sign) {
  return sign == ' ' || (sign >= '\t' && sign <= '\r');
}

class PbmReader {
public:
  PbmReader(std::string_view bytes, const LargestPicture& largest) : rest_(bytes), largest_(largest) {}

  Result<Pixels> read() {
    const bool packed = rest_.starts_with("P4");
    rest_.remove_prefix(2);
    const auto width = number();
    const auto height = number();
    if (!width || !height) {
      return picture_error(tr("the PBM's size can't be read"),
                           tr("write its width and height, in pixels, behind the P1 or P4"));
    }
    if (const Failure failure = too_large(*width, *height, largest_)) {
      return *failure;
    }
    Pixels pixels{static_cast<int>(*width), static_cast<int>(*height), {}};
    return packed ? packed_lines(std::move(pixels)) : plain_lines(std::move(pixels));
  }

private:
  // Blanks and comments, which go from a # to the line's end.
  void skip() {
    while (!rest_.empty() && (is_blank(rest_.front()) || rest_.front() == '#')) {
      rest_.remove_prefix(rest_.front() == '#' ? std::min(rest_.find('\n'), rest_.size()) : 1);
    }
  }

  // Numbers beyond any picture stop growing, so that they are refused as too large.
  std::optional<std::int64_t> number() {
    skip();
    std::int64_t value = 0;
    bool any = false;
    while (!rest_.empty() && rest_.front() >= '0' && rest_.front() <= '9') {
      value = std::min<std::int64_t>(value * 10 + (rest_.front() - '0'), 1'000'000'000);
      any = true;
      rest_.remove_prefix(1);
    }
    return any ? std::optional(value) : std::nullopt;
  }

  static Error ends_early(const Pixels& pixels) {
    return picture_error(
        said("the PBM ends after {} of {} pixels", pixels.colours.size(), std::int64_t{pixels.width} * pixels.height),
        tr("save or fetch it again"));
  }

  Result<Pixels> plain_lines(Pixels pixels) {
    const auto all = static_cast<std::size_t>(pixels.width) * static_cast<std::size_t>(pixels.height);
    while (pixels.colours.size() < all) {
      skip();
      if (rest_.empty()) {
        return ends_early(pixels);
      }
      if (rest_.front() != '0' && rest_.front() != '1') {
        return picture_error(said("pixel {} of the PBM is neither 0 nor 1", pixels.colours.size() + 1),
                             tr("save or fetch it again"));
      }
      pixels.colours.push_back(rest_.front() == '1' ? black_pixel : white_pixel);
      rest_.remove_prefix(1);
    }
    return pixels;
  }

  // One blank behind the height, then whole bytes a line, the highest bit leftmost.
  Result<Pixels> packed_lines(Pixels pixels) {
    rest_.remove_prefix(std::min<std::size_t>(1, rest_.size()));
    const auto bytes_in_line = static_cast<std::size_t>(pixels.width + 7) / 8;
    for (int line = 0; line < pixels.height; ++line) {
      if (rest_.size() < bytes_in_line) {
        return ends_early(pixels);
      }
      for (int column = 0; column < pixels.width; ++column) {
        const auto byte = static_cast<unsigned char>(rest_[static_cast<std::size_t>(column) / 8]);
        pixels.colours.push_back((byte >> (7 - column % 8) & 1) != 0 ? black_pixel : white_pixel);
      }
      rest_.remove_prefix(bytes_in_line);
    }
    return pixels;
  }

  std::string_view rest_;
  LargestPicture largest_;
};

} // namespace

Result<Pixels> read_pbm(std::string_view bytes, const LargestPicture& largest) {
  return PbmReader(bytes, largest).read();
}

} // namespace punchwright
