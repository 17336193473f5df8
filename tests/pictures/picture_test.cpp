// Two-colour pictures as drawings: what is read, and how what can't be is refused.
// Pictures that other programs have written are compared in tests/cli/import_test.py.
#include "pictures/picture.hpp"
#include "support/xbm.hpp"

#include <array>
#include <doctest/doctest.h>
#include <fstream>
#include <iterator>
#include <png.h>
#include <utility>

using namespace punchwright;

namespace {

// A 3 × 2 picture: black, white, black above white, white, black; what netpbm's pnmtopng writes from it.
std::string packed_png() {
  constexpr std::array<unsigned char, 69> bytes = {
      0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0x00, 0x00, 0x00, 0x0d, 0x49, 0x48, 0x44, 0x52, 0x00, 0x00,
      0x00, 0x03, 0x00, 0x00, 0x00, 0x02, 0x01, 0x00, 0x00, 0x00, 0x00, 0xb5, 0x0f, 0x5b, 0xb7, 0x00, 0x00, 0x00,
      0x0c, 0x49, 0x44, 0x41, 0x54, 0x08, 0x99, 0x63, 0x70, 0x60, 0x38, 0x00, 0x00, 0x01, 0x84, 0x01, 0x01, 0x5f,
      0x62, 0xbd, 0xe6, 0x00, 0x00, 0x00, 0x00, 0x49, 0x45, 0x4e, 0x44, 0xae, 0x42, 0x60, 0x82};
  return {bytes.begin(), bytes.end()};
}

Grid drawing_in(std::string_view bytes) {
  const auto picture = read_picture(bytes, "picture");
  REQUIRE_MESSAGE(picture.ok(), (picture ? "" : picture.error().text()));
  return drawing_of(*picture, ContrastIs::darker);
}

std::string refusal_of(std::string_view bytes) {
  const auto picture = read_picture(bytes, "gull.png");
  REQUIRE_FALSE(picture.ok());
  return picture.error().text();
}

// A picture of two pixels, with those colours from the left, by libpng's own writer.
Picture two_coloured(Colour left, Colour right) {
  const std::array<png_byte, 6> rgb = {left.red, left.green, left.blue, right.red, right.green, right.blue};
  png_image image{};
  image.version = PNG_IMAGE_VERSION;
  image.width = 2;
  image.height = 1;
  image.format = PNG_FORMAT_RGB;
  std::array<char, 500> bytes{};
  png_alloc_size_t size = bytes.size();
  REQUIRE(png_image_write_to_memory(&image, bytes.data(), &size, 0, rgb.data(), 6, nullptr) != 0);
  auto picture = read_picture({bytes.data(), size}, "two.png");
  REQUIRE(picture.ok());
  return std::move(picture).value();
}

std::string file(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

} // namespace

TEST_CASE("the picture's top line is the highest row, its left the first column") {
  const std::string text = "P1\n3 2\n1 0 1\n0 0 1\n";
  for (const std::string& bytes : {text, packed_png()}) {
    const Grid drawing = drawing_in(bytes);
    CHECK(drawing.width() == 3);
    CHECK(drawing.row_text(1) == "#.#");
    CHECK(drawing.row_text(0) == "..#");
  }
}

TEST_CASE("PBM is read as pbm(5) describes it: comments, no blanks between pixels, packed lines of whole bytes") {
  CHECK(drawing_in("P1 # a gull\n3# wide\n2\n101\n0#between\n01") == drawing_in("P1\n3 2\n1 0 1 0 0 1"));
  const std::string packed("P4\n9 2\n\x80\x80\x00\x80", 11);
  const Grid drawing = drawing_in(packed);
  CHECK(drawing.row_text(1) == "#.......#");
  CHECK(drawing.row_text(0) == "........#");
  CHECK(drawing_in(packed + "P4\n1 1\n\x80") == drawing); // the first of several
}

TEST_CASE("XBM is read with comments and either size of number") {
  const std::string bytes = "/* a gull */\n#define gull_width 3\n#define gull_height 2\n#define gull_x_hot 1\n"
                            "static unsigned char gull_bits[] = {\n 0x05, /* top */ 4 };\n";
  CHECK(drawing_in(bytes) == drawing_in("P1\n3 2\n1 0 1 0 0 1"));
  const Grid wide = drawing_in("#define w_width 17\n#define w_height 1\nstatic short w_bits[] = { 0x8001, 0x0001};");
  CHECK(wide.row_text(0) == "#..............##");
}

TEST_CASE("the XBM pictures of Debian's xbitmaps come out as another reader reads them") {
  for (const char* const name : {"cross_weave", "boxes", "scales", "menu12", "weird_size", "plaid", "wide_weave"}) {
    CAPTURE(name);
    CHECK(drawing_in(file(std::string("/usr/include/X11/bitmaps/") + name)) == test::read_xbm(name));
  }
}

TEST_CASE("contrast is the darker colour, or the lighter one") {
  const auto picture = read_picture("P1\n2 1\n1 0", "p");
  REQUIRE(picture.ok());
  CHECK(drawing_of(*picture, ContrastIs::darker).row_text(0) == "#.");
  CHECK(drawing_of(*picture, ContrastIs::lighter).row_text(0) == ".#");
}

// Relative luminance by WCAG 2.x, which agrees with L* of CIE 15: red 0.213, the green 0.154; the mean of the encoded
// values, weighted alike, says the opposite.
TEST_CASE("of pure red and a half-bright green the green is the darker, by the light they give") {
  const Picture picture = two_coloured({255, 0, 0}, {0, 128, 0});
  CHECK(picture.dark == Colour{0, 128, 0});
  CHECK(picture.light == Colour{255, 0, 0});
  CHECK(drawing_of(picture, ContrastIs::darker).row_text(0) == ".#");
  CHECK(two_coloured({0, 128, 0}, {255, 0, 0}).dark == Colour{0, 128, 0});
}

TEST_CASE("a design of a picture has its colours as yarns, or the usual ones for black and white") {
  Picture picture{Grid(2, 3), Colour{0x20, 0x30, 0x90}, Colour{0xe0, 0xd0, 0x40}};
  picture.darker.set(0, 2, true);
  const Document design = design_of(picture, ContrastIs::darker, "Gull");
  CHECK(design.title == "Gull");
  CHECK(design.grid == picture.darker);
  CHECK(yarn_of(design, *design.bands.front().contrast).colour == picture.dark);
  CHECK(yarn_of(design, design.bands.front().main).colour == picture.light);
  const Document other = design_of(picture, ContrastIs::lighter, "Gull");
  CHECK(yarn_of(other, *other.bands.front().contrast).colour == picture.light);
  picture.dark = Colour{};
  picture.light = Colour{255, 255, 255};
  CHECK(design_of(picture, ContrastIs::darker, "").yarns == blank_document(2, 3).yarns);
}

TEST_CASE("what can't be read is refused with the file's name, the reason and what helps") {
  CHECK(refusal_of("P1\n201 1\n") == "gull.png: the picture is 201 pixels wide and 1 high; a pixel is a stitch, and a "
                                     "drawing has 200 × 2000 at most: cut or scale it, without smoothing");
  CHECK(refusal_of("P4\n1 2001\n").find("2001 high") != std::string::npos);
  CHECK(refusal_of("P1\n99999999999999999999 1\n").find("pixels wide") != std::string::npos);
  CHECK(refusal_of("P1\n0 4\n").find("0 pixels wide") != std::string::npos);
  CHECK(refusal_of("P1\n3 2\n1 0 1 0 0").find("ends after 5 of 6 pixels; save") != std::string::npos);
  CHECK(refusal_of("P1\n3 2\n1 0 7 0 0 1").find("pixel 3 of the PBM is neither 0 nor 1") != std::string::npos);
  CHECK(refusal_of("P1\n3 2\n0 0 0 0 0 0").find("one colour; a drawing needs two") != std::string::npos);
  CHECK(refusal_of("P1\nwide").find("size can't be read") != std::string::npos);
  CHECK(refusal_of("P6\n1 1\n255\nabc").find("P6 has greys or colours; save the picture as PNG") != std::string::npos);
  CHECK(refusal_of("\xff\xd8\xff\xe0 and so on").find("JPEG") != std::string::npos);
  CHECK(refusal_of("").find("the file is empty") != std::string::npos);
  CHECK(refusal_of("hello").find("no PNG, PBM or XBM") != std::string::npos);
  CHECK(refusal_of("#define g_width 3\n#define g_height 2\nchar b[] = {5};").find("line 2 of 2") != std::string::npos);
  CHECK(refusal_of("#define g_width 3\n#define g_height 2\nchar b[] = {5, 0x104};").find("line 2") !=
        std::string::npos);
  CHECK(refusal_of("#define g_width 3\n#define g_height 2\n").find("between { and }") != std::string::npos);
}

TEST_CASE("a PNG that is cut short or changed anywhere is refused or read, never more than that") {
  const std::string whole = packed_png();
  for (std::size_t length = 0; length < whole.size() - 12; ++length) { // without IEND all stitches are there
    CAPTURE(length);
    CHECK_FALSE(read_picture(std::string_view(whole).substr(0, length), "p").ok());
  }
  for (std::size_t place = 8; place < whole.size(); ++place) {
    for (const int change : {1, 0x80, 0xff}) {
      std::string changed = whole;
      changed[place] = static_cast<char>(changed[place] ^ change);
      const auto picture = read_picture(changed, "p");
      CHECK((!picture || picture->darker.width() > 0));
    }
  }
}

TEST_CASE("text forms that are cut short or changed anywhere are refused or read, never more than that") {
  for (const std::string& whole :
       {std::string("P1\n3 2\n1 0 1 0 0 1"), std::string("P4\n9 2\n\x80\x80\x00\x80", 11),
        std::string("#define g_width 3\n#define g_height 2\nstatic char g_bits[] = {0x05, 0x04};")}) {
    for (std::size_t place = 0; place < whole.size(); ++place) {
      (void)read_picture(std::string_view(whole).substr(0, place), "p");
      for (const char other : {'\0', '9', '{', '#', '/', '*', '\xff'}) {
        std::string changed = whole;
        changed[place] = other;
        const auto picture = read_picture(changed, "p");
        CHECK((!picture || picture->darker.width() > 0));
      }
    }
  }
}

TEST_CASE("pictures are told from other files by their names") {
  CHECK(has_picture_name("gull.png"));
  CHECK(has_picture_name("/a.b/GULL.XBM"));
  CHECK_FALSE(has_picture_name("gull.repeat"));
  CHECK_FALSE(has_picture_name("png"));
}
