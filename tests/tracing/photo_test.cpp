// Reading pictures, and which way up they lie.
#include "tracing/photo.hpp"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <doctest/doctest.h>
#include <string>
#include <unistd.h>

using namespace punchwright;
using namespace std::string_literals;

namespace {

std::string made_by(const std::string& command) {
  std::FILE* const pipe = popen(command.c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::string bytes;
  for (int letter = std::fgetc(pipe); letter != EOF; letter = std::fgetc(pipe)) {
    bytes += static_cast<char>(letter);
  }
  REQUIRE(pclose(pipe) == 0);
  return bytes;
}

// An EXIF segment that says nothing but the orientation, put behind a JPEG's first two bytes.
std::string with_orientation(const std::string& jpeg, char orientation, bool little) {
  const std::string tiff = little ? "II*\0\x08\0\0\0\x01\0\x12\x01\x03\0\x01\0\0\0"s + orientation + "\0\0\0\0\0\0\0"s
                                  : "MM\0*\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0"s + orientation + "\0\0\0\0\0\0"s;
  const std::string content = "Exif\0\0"s + tiff;
  const std::size_t length = content.size() + 2;
  return jpeg.substr(0, 2) + "\xff\xe1"s + static_cast<char>(length >> 8) + static_cast<char>(length & 255) + content +
         jpeg.substr(2);
}

// Two pixels beside each other and two below: their lightness as letters from dark a to light d.
std::string looks(const Photo& photo) {
  std::string text;
  for (int y = 0; y < photo.height; ++y) {
    for (int x = 0; x < photo.width; ++x) {
      text += static_cast<char>('a' + photo.colour_at(x, y).red / 64);
    }
    text += '/';
  }
  return text;
}

} // namespace

TEST_CASE("PNG, JPEG, BMP, PGM and PPM are read") {
  for (const std::string form : {"png", "jpg", "bmp", "pgm", "ppm"}) {
    CAPTURE(form);
    const auto photo = read_photo(made_by("convert -size 5x3 xc:'#808080' -quality 100 " + form + ":-"), "a");
    REQUIRE(photo);
    CHECK(photo->width == 5);
    CHECK(photo->height == 3);
    CHECK(photo->colour_at(4, 2) == Colour{128, 128, 128});
  }
}

TEST_CASE("a JPEG whose Huffman table has more codes than there can be is refused") {
  const std::string whole = made_by("convert -size 5x3 plasma:fractal jpg:-");
  const std::size_t table = whole.find("\xff\xc4"s);
  REQUIRE(table != std::string::npos);
  REQUIRE(read_photo(whole, "a"));
  constexpr std::size_t first_length = 5; // behind marker, length and number
  std::string broken = whole;
  broken[table + first_length + 14] = '\x80';
  broken[table + first_length + 15] = '\x7f'; // with those of the other lengths at least 256 and one
  const auto photo = read_photo(broken, "a.jpg");
  REQUIRE_FALSE(photo);
  CHECK(photo.error().text() == "a.jpg: the picture is broken or incomplete; save it again, as PNG for instance");
  // In a picture of several scans tables stand between the pixels too.
  std::string scans = made_by("convert -size 40x40 plasma:fractal -interlace JPEG jpg:-");
  REQUIRE(read_photo(scans, "a"));
  const std::size_t last = scans.rfind("\xff\xc4"s);
  REQUIRE(last > scans.find("\xff\xda"s));
  scans[last + first_length + 14] = '\xff';
  scans[last + first_length + 15] = '\xff';
  CHECK_FALSE(read_photo(scans, "a"));
}

TEST_CASE("a photograph has the colours that another program reads, the inks of a print too") {
  for (const std::string made : {"-quality 90 -sampling-factor 2x2", "-quality 80 -interlace JPEG -sampling-factor 2x1",
                                 "-colorspace Gray -quality 90", "-colorspace CMYK -quality 95"}) {
    CAPTURE(made);
    const std::string path = "/tmp/punchwright-photo-" + std::to_string(getpid()) + ".jpg";
    made_by("convert -seed 7 -size 45x31 plasma:red-blue " + made + " " + path);
    const auto photo = read_photo(made_by("cat " + path), "a");
    // Outside check: ImageMagick; its colours of inks are a plain product too where the picture has no profile.
    const auto reference = read_photo(made_by("convert " + path + " -colorspace sRGB ppm:-"), "a");
    std::remove(path.c_str());
    REQUIRE(photo);
    REQUIRE(reference);
    REQUIRE(photo->colours.size() == reference->colours.size());
    int farthest = 0;
    for (std::size_t part = 0; part < photo->colours.size(); ++part) {
      farthest = std::max(farthest, std::abs(photo->colours[part] - reference->colours[part]));
    }
    CHECK(farthest <= 2);
  }
}

TEST_CASE("a picture that ends too early, or whose bytes were changed on the way, is refused") {
  const std::string jpeg = made_by("convert -seed 7 -size 60x60 plasma:red-blue -quality 90 jpg:-");
  REQUIRE(read_photo(jpeg, "a"));
  CHECK(read_photo(jpeg.substr(0, jpeg.size() / 2), "cut.jpg").error().text() ==
        "cut.jpg: the picture is broken or incomplete; save it again, as PNG for instance");
  // PNG (W3C recommendation, second edition, 5.3) has a sum for each of its parts.
  std::string png = made_by("convert -seed 7 -size 60x60 plasma:red-blue png:-");
  REQUIRE(read_photo(png, "a"));
  const std::size_t pixels = png.find("IDAT");
  REQUIRE(pixels != std::string::npos);
  png[pixels + 100] = static_cast<char>(png[pixels + 100] ^ 1);
  CHECK_FALSE(read_photo(png, "a"));
}

// A picture's rows alone in BMP, PGM and PPM: what isn't in the file would be made up.
TEST_CASE("a picture that isn't packed is refused where its pixels can't be in the file") {
  for (const std::string form : {"bmp3:-", "-monochrome bmp3:-", "-colors 16 bmp3:-", "pgm:-", "ppm:-"}) {
    CAPTURE(form);
    const std::string whole = made_by("convert -seed 7 -size 61x60 plasma:red-blue -depth 8 " + form);
    REQUIRE(read_photo(whole, "a"));
    CHECK(read_photo(whole.substr(0, whole.size() / 2), "cut").error().text() ==
          "cut: the picture is broken or incomplete; save it again, as PNG for instance");
  }
}

TEST_CASE("a bitmap whose first row is the upper one is read, and refused where it claims to be huge") {
  std::string bitmap = made_by("convert -size 3x2 xc:red bmp3:-");
  constexpr std::size_t height_at = 22; // BITMAPINFOHEADER, biHeight; below 0: top-down
  bitmap.replace(height_at, 4, "\xfe\xff\xff\xff"s);
  REQUIRE(read_photo(bitmap, "a"));
  CHECK(read_photo(bitmap, "a")->height == 2);
  bitmap.replace(18, 8, "\x20\x4e\x00\x00\xe0\xb1\xff\xff"s);
  CHECK(read_photo(bitmap, "a").error().text() ==
        "a: the picture has 20000 × 20000 pixels; 120 million at most: make it smaller first");
}

TEST_CASE("what a camera leaves between two parts of a photograph doesn't matter") {
  const std::string jpeg = made_by("convert -seed 7 -size 20x20 plasma:red-blue -quality 90 jpg:-");
  const std::size_t table = jpeg.find("\xff\xdb"s);
  REQUIRE(table != std::string::npos);
  const auto padded = read_photo(jpeg.substr(0, table) + std::string(3, '\0') + jpeg.substr(table), "a");
  REQUIRE(padded);
  CHECK(padded->colours == read_photo(jpeg, "a")->colours);
}

TEST_CASE("a picture that claims to be huge is refused before anything is unpacked") {
  // The same small picture, with 20000 × 20000 in its head.
  std::string jpeg = made_by("convert -size 16x16 xc:red jpg:-");
  const std::size_t frame = jpeg.find("\xff\xc0"s);
  REQUIRE(frame != std::string::npos);
  jpeg.replace(frame + 5, 4, "\x4e\x20\x4e\x20"s);
  CHECK(read_photo(jpeg, "a").error().text() ==
        "a: the picture has 20000 × 20000 pixels; 120 million at most: make it smaller first");
}

TEST_CASE("numbers that no picture has are refused before they are believed") {
  CHECK_FALSE(read_photo("P5\n13333333333 2\n255\n....", "a"));
  CHECK_FALSE(read_photo("P6 1 1 # 255\n 99999999999999999999\n...", "a"));
  CHECK(read_photo("P5 # 99999999999\n1 1\n255\n.", "a"));
}

TEST_CASE("what is transparent lies on white") {
  const auto photo = read_photo(made_by("convert -size 2x1 xc:'rgba(0,0,0,0.5)' png32:-"), "a");
  REQUIRE(photo);
  CHECK(photo->colour_at(0, 0).red == doctest::Approx(127).epsilon(0.02));
}

TEST_CASE("a photograph lies as its camera says (EXIF 2.32, tag 0x0112)") {
  // Light from a, top left, to d, bottom right; what ImageMagick's -auto-orient makes of each is the outside check.
  const std::string jpeg =
      made_by("convert -size 32x48 xc:black -fill '#505050' -draw 'rectangle 16,0 31,23' -fill '#909090' "
              "-draw 'rectangle 0,24 15,47' -fill '#e0e0e0' -draw 'rectangle 16,24 31,47' "
              "-quality 100 -sampling-factor 1x1 jpg:-");
  for (const bool little : {true, false}) {
    for (char orientation = 1; orientation <= 8; ++orientation) {
      CAPTURE(int{orientation});
      const std::string turned = with_orientation(jpeg, orientation, little);
      CHECK(orientation_of(turned) == orientation);
      const auto photo = read_photo(turned, "a");
      REQUIRE(photo);
      const std::string path = "/tmp/punchwright-orientation-" + std::to_string(little) + ".jpg";
      std::FILE* const file = std::fopen(path.c_str(), "wb");
      REQUIRE(file != nullptr);
      std::fwrite(turned.data(), 1, turned.size(), file);
      std::fclose(file);
      const auto reference = read_photo(made_by("convert " + path + " -auto-orient -strip png:-"), "a");
      std::remove(path.c_str());
      REQUIRE(reference);
      CHECK(looks(*photo) == looks(*reference));
    }
  }
}

TEST_CASE("other files are refused with what helps, broken ones too") {
  CHECK(read_photo("format = 1", "band.repeat").error().text().find("no picture") != std::string::npos);
  CHECK(read_photo("", "empty.png").error().text().find("empty.png") != std::string::npos);
  const std::string png = made_by("convert -size 50x50 plasma: png:-");
  for (std::size_t length = 1; length < png.size(); length += 97) {
    const auto photo = read_photo(png.substr(0, length), "cut.png");
    if (!photo) {
      CHECK(photo.error().text().find("cut.png") != std::string::npos);
    }
  }
  CHECK(orientation_of("\xff\xd8\xff\xe1\x00\x10"s + "Exif\0\0II*\0\xff\xff\xff\xff"s) == 1);
}
