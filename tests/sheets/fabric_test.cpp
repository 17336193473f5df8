// The picture of the cloth, measured pixel by pixel: scripts measure it too, so this is what they may rely on.
#include "sheets/exports.hpp"
#include "sheets/fabric_picture.hpp"
#include "sheets/fabric_tile.hpp"
#include "support/builders.hpp"
#include "support/machines.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <set>

using namespace punchwright;
using test::drawn;

namespace {

Colour pixel(const std::vector<unsigned char>& rgb, int width, int x, int y) {
  const auto at = 3 * (static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x));
  return Colour{rgb[at], rgb[at + 1], rgb[at + 2]};
}

// The cells' middle pixels by the yarn's key, uppermost row first: what a script reads from the picture.
std::vector<std::string> cells_of(const FabricPicture& picture, const Document& document, int columns, int rows) {
  std::vector<std::string> cells;
  for (int row = 0; row < rows; ++row) {
    std::string line;
    for (int column = 0; column < columns; ++column) {
      const int x = (2 * column + 1) * picture.width / (2 * columns);
      const int y = (2 * row + 1) * picture.height / (2 * rows);
      const Colour colour = pixel(picture.rgb, picture.width, x, y);
      const auto yarn = std::ranges::find(document.yarns, colour, &Yarn::colour);
      line += yarn == document.yarns.end() ? '?' : yarn->key;
    }
    cells.push_back(line);
  }
  return cells;
}

FabricPicture picture_of(const Document& document, const Profile& profile, Face side) {
  Result<FabricPicture> picture = fabric_picture(document, profile, side);
  REQUIRE(picture.ok());
  return std::move(picture).value();
}

std::vector<unsigned char> tile_of(int width, int height, Colour yarn, Face side) {
  return stitch_tile(width, height, yarn, side, detail_for(std::min(width, height)));
}

std::uint32_t number_at(const std::string& bytes, std::size_t at) {
  std::uint32_t number = 0;
  for (std::size_t byte = 0; byte < 4; ++byte) {
    number = number << 8 | static_cast<unsigned char>(bytes[at + byte]);
  }
  return number;
}

} // namespace

TEST_SUITE("fabric picture") {
  TEST_CASE("knit side as drawn; purl side mirrored; row 1 lowest") {
    // By hand, centred: L3 knits column 6, L1 column 4, R1 column 3, R3 column 1.
    const Document document = drawn({
        "##....",
        "#.....",
        "####..",
    });
    const std::vector<std::string> knit{"BBAAAA", "BAAAAA", "BBBBAA"};
    const std::vector<std::string> purl{"AAAABB", "AAAAAB", "AABBBB"};
    CHECK(cells_of(picture_of(document, test::by_hand(), Face::knit), document, 6, 3) == knit);
    CHECK(cells_of(picture_of(document, test::by_hand(), Face::purl), document, 6, 3) == purl);
  }

  TEST_CASE("the whole piece over all rows to knit: repeats, end needles, inserted rows, times") {
    Document document = drawn({
        "#...", // in Brick
        "##..",
    });
    document.yarns = test::five_yarns();
    document.bands = {Band{1, 'A', 'B', std::nullopt}, Band{1, 'A', 'C', std::nullopt}};
    document.piece.stitches = 7;
    document.piece.first_needle = left_needle(3); // L3 knits column 3 on a 24-stitch card: L12 column 4, L11 column 3 …
    document.piece.times = 2;
    // On the bed L3 L2 L1 R1 R2 R3 R4 knit columns 3 2 1 4 3 2 1; end needles knit contrast besides.
    const std::vector<std::string> purl{
        "CACAAAC", // 2nd time, row 2
        "AAAAAAA", // yarn change
        "BBBAABB", // 2nd time, row 1
        "AAAAAAA", // yarn change
        "CACAAAC", "AAAAAAA", "BBBAABB",
    };
    CHECK(cells_of(picture_of(document, test::card_machine(), Face::purl), document, 7, 7) == purl);
  }

  TEST_CASE("the overall proportion is the gauge's, and the density makes it true to size") {
    Document document = blank_document(24, 60);
    document.piece.stitches = 71;
    document.gauge = Gauge{16, 20}; // cells of 6.25 × 5.00 mm
    const FabricPicture picture = picture_of(document, test::by_hand(), Face::knit);
    CHECK(picture.width == 71 * 16);
    CHECK(picture.height == 768); // 60 × 12.8
    CHECK(picture.rgb.size() == static_cast<std::size_t>(picture.width) * 768 * 3);
    CHECK(picture.pixels_per_metre_x == 2560); // 16 pixels over 6.25 mm
    CHECK(picture.pixels_per_metre_y == 2560);
  }

  TEST_CASE("cells begin at rounded multiples") {
    const FabricSize size{3, 4, 10, 10};
    CHECK(std::vector<int>{size.left_of(0), size.left_of(1), size.left_of(2), size.left_of(3)} ==
          std::vector<int>{0, 3, 7, 10});
    CHECK(std::vector<int>{size.top_of(0), size.top_of(1), size.top_of(2), size.top_of(3), size.top_of(4)} ==
          std::vector<int>{0, 3, 5, 8, 10});
  }

  TEST_CASE("any piece and gauge: bounded, in proportion, every stitch at least a pixel, or refused") {
    test::Dice dice(20);
    int drawn_pictures = 0;
    for (int round = 0; round < 2000; ++round) {
      const int stitches = 1 + dice.throw_one(1000);
      const int rows = 1 + dice.throw_one(30'000);
      const Gauge gauge{1.0 + dice.throw_one(400) / 2.0, 1.0 + dice.throw_one(400) / 2.0};
      CAPTURE(stitches);
      CAPTURE(rows);
      CAPTURE(gauge.stitches);
      CAPTURE(gauge.rows);
      const Result<FabricSize> size = fabric_size(stitches, rows, gauge);
      if (!size) {
        continue;
      }
      ++drawn_pictures;
      CHECK(size->width <= 20'000);
      CHECK(size->height <= 20'000);
      CHECK(static_cast<double>(size->width) * size->height <= 40.1e6);
      CHECK(size->width >= stitches);
      CHECK(size->height >= rows);
      // Each side is rounded to a pixel.
      const double scale = size->width / (stitches * gauge.stitch_mm());
      const double blur = 0.5 * (1.0 + size->height / static_cast<double>(size->width)) + 0.001;
      CHECK(std::abs(size->height - rows * gauge.row_mm() * scale) <= blur);
    }
    CHECK(drawn_pictures > 200);
  }

  TEST_CASE("more rows than a picture has pixels are refused, with what to do") {
    Document document = blank_document(24, 2000);
    document.piece.times = 1000;
    const auto files = fabric_files(document, test::by_hand(), "long.png", Face::knit);
    REQUIRE_FALSE(files.ok());
    CHECK(files.error().text() == "long.png: 24 stitches by 2000000 rows are too many for one picture in the gauge's "
                                  "proportion; knit fewer times, or fewer stitches, to draw it");
  }

  TEST_CASE("most of a stitch, and its middle, is exactly the yarn's colour at every size") {
    for (const Face side : {Face::knit, Face::purl}) {
      for (const Colour yarn :
           {Colour{0xe8, 0xdc, 0xc2}, Colour{0x20, 0x30, 0x4a}, Colour{0, 0, 0}, Colour{255, 255, 255}}) {
        for (int width = 1; width <= 40; ++width) {
          for (int height = 1; height <= 40; ++height) {
            CAPTURE(width);
            CAPTURE(height);
            const std::vector<unsigned char> tile = tile_of(width, height, yarn, side);
            REQUIRE(tile.size() == static_cast<std::size_t>(3 * width * height));
            CHECK(pixel(tile, width, width / 2, height / 2) == yarn);
            CHECK(pixel(tile, width, (width - 1) / 2, (height - 1) / 2) == yarn);
            int exact = 0;
            for (int y = 0; y < height; ++y) {
              for (int x = 0; x < width; ++x) {
                exact += pixel(tile, width, x, y) == yarn ? 1 : 0;
              }
            }
            CHECK(2 * exact > width * height);
          }
        }
      }
    }
  }

  TEST_CASE("a stitch shows its form, another on each side, the same from left and right") {
    const Colour yarn{0x9c, 0x3b, 0x2a};
    for (const Face side : {Face::knit, Face::purl}) {
      const std::vector<unsigned char> tile = tile_of(16, 13, yarn, side);
      bool darker = false;
      for (int y = 0; y < 13; ++y) {
        for (int x = 0; x < 16; ++x) {
          darker = darker || pixel(tile, 16, x, y).red < yarn.red;
          CHECK(pixel(tile, 16, x, y) == pixel(tile, 16, 15 - x, y));
        }
      }
      CHECK(darker);
    }
    CHECK(tile_of(16, 13, yarn, Face::knit) != tile_of(16, 13, yarn, Face::purl));
  }

  TEST_CASE("the lines of black yarn are lighter, those of white darker: both show") {
    for (const Colour yarn : {Colour{0, 0, 0}, Colour{255, 255, 255}}) {
      const std::vector<unsigned char> tile = tile_of(16, 13, yarn, Face::knit);
      CHECK(std::set<unsigned char>(tile.begin(), tile.end()).size() > 1);
    }
  }

  TEST_CASE("cells that differ by a pixel look alike") {
    const auto colours_by_row = [](int rows) {
      const FabricPicture picture = picture_of(blank_document(10, rows), test::by_hand(), Face::knit);
      const FabricSize size{10, rows, picture.width, picture.height};
      std::set<std::size_t> counts; // of different reds in a row
      for (int row = 0; row < rows; ++row) {
        std::set<int> reds;
        for (int y = size.top_of(row); y < size.top_of(row + 1); ++y) {
          for (int x = 0; x < picture.width; ++x) {
            reds.insert(pixel(picture.rgb, picture.width, x, y).red);
          }
        }
        counts.insert(reds.size());
      }
      return counts;
    };
    // A picture is at most 20,000 pixels high: rows of 11 and 12 pixels show stitches, rows of 10 and 11 none.
    CHECK(*colours_by_row(1750).begin() > 1);
    CHECK(colours_by_row(1900) == std::set<std::size_t>{1});
  }

  TEST_CASE("the PNG carries its size and density (W3C PNG, 11.2.2 and 11.3.5.3)") {
    Document document = blank_document(10, 8);
    document.gauge = Gauge{16, 20};
    const auto files = fabric_files(document, test::by_hand(), "out.png", Face::knit);
    REQUIRE(files.ok());
    const std::string& png = files->front().bytes;
    CHECK(files->front().path == "out.png");
    CHECK(png.substr(1, 3) == "PNG");
    CHECK(number_at(png, 16) == 160);
    CHECK(number_at(png, 20) == 102); // 8 × 12.8 = 102.4
    const std::size_t density = png.find("pHYs");
    REQUIRE(density != std::string::npos);
    CHECK(number_at(png, density + 4) == 2560);
    CHECK(number_at(png, density + 8) == 2550); // 102 pixels over 40 mm
    CHECK(png[density + 12] == 1);              // the unit is the metre
  }

  TEST_CASE("another form than PNG is refused") {
    const auto files = fabric_files(blank_document(4, 4), test::by_hand(), "out.jpg", Face::knit);
    REQUIRE_FALSE(files.ok());
    CHECK(files.error().text() == "out.jpg: '.jpg' is no form of the fabric picture; allowed: .png");
  }
}
