// Pictures by ImageMagick and netpbm (Debian's packages of these names), for comparing drawn shapes with: one pixel a
// stitch, black contrast. Line 0 of a picture is its top; callers that need row 0 lowest turn it.
#pragma once

#include <array>
#include <charconv>
#include <cstdio>
#include <cstdlib>
#include <doctest/doctest.h>
#include <fstream>
#include <string>
#include <vector>

namespace punchwright::test {

using Picture = std::vector<std::string>; // '.' white, '#' black, '+' grey; the top line first

// The lines of a plain PGM with a largest value of 255.
inline Picture picture_of(const std::string& pgm) {
  REQUIRE(pgm.starts_with("P2"));
  std::vector<int> numbers;
  for (const char* place = pgm.data() + 2; place < pgm.data() + pgm.size();) {
    int number = 0;
    const auto [stop, trouble] = std::from_chars(place, pgm.data() + pgm.size(), number);
    if (trouble == std::errc{}) {
      numbers.push_back(number);
    }
    place = stop + 1;
  }
  REQUIRE(numbers.size() > 3);
  const auto width = static_cast<std::size_t>(numbers[0]);
  const auto height = static_cast<std::size_t>(numbers[1]);
  REQUIRE(numbers.size() == 3 + width * height);
  Picture picture(height, std::string(width, '.'));
  for (std::size_t pixel = 0; pixel < width * height; ++pixel) {
    const int grey = numbers[3 + pixel];
    picture[pixel / width][pixel % width] = grey < 64 ? '#' : grey > 192 ? '.' : '+';
  }
  return picture;
}

// What a command writes to its output as a plain PGM.
inline Picture picture_by(const std::string& command) {
  std::FILE* const pipe = popen(command.c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::string text;
  std::array<char, 4096> part{};
  while (const auto count = std::fread(part.data(), 1, part.size(), pipe)) {
    text.append(part.data(), count);
  }
  REQUIRE(pclose(pipe) == 0);
  return picture_of(text);
}

// What `convert ARGUMENTS` draws, for instance "-size 9x9 xc:white -draw '…'".
inline Picture imagemagick(const std::string& arguments) {
  return picture_by("convert " + arguments + " -depth 8 -compress none pgm:-");
}

// A file that ImageMagick reads, gone at the end.
class PictureFile {
public:
  explicit PictureFile(const Picture& picture) {
    const int file = mkstemp(path_.data());
    REQUIRE(file >= 0);
    std::ofstream out(path_);
    out << "P1\n" << picture.front().size() << ' ' << picture.size() << '\n';
    for (const std::string& line : picture) {
      for (const char pixel : line) {
        out << (pixel == '#' ? "1 " : "0 ");
      }
      out << '\n';
    }
    std::fclose(fdopen(file, "r"));
  }
  ~PictureFile() { std::remove(path_.c_str()); }
  PictureFile(const PictureFile&) = delete;
  PictureFile& operator=(const PictureFile&) = delete;
  [[nodiscard]] std::string argument() const { return "pbm:" + path_; }

private:
  std::string path_ = "/tmp/punchwright-picture-XXXXXX";
};

} // namespace punchwright::test
