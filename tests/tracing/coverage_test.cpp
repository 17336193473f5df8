// Light in a stitch is the mean over its exact area: by hand, and against ImageMagick's box scaling.
#include "support/builders.hpp"
#include "tracing/coverage.hpp"

#include <array>
#include <cstdio>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <unistd.h>

using namespace punchwright;

namespace {

Photo grey_photo(int width, int height, const std::vector<int>& greys) {
  std::vector<std::uint8_t> colours;
  for (const int grey : greys) {
    colours.insert(colours.end(), 3, static_cast<std::uint8_t>(grey));
  }
  return photo_of(width, height, colours);
}

// Between two bounds, in 10,000 steps.
double between(double low, double high, test::Dice& dice) {
  return low + (high - low) * dice.throw_one(10000) / 10000;
}

Photo random_photo(int width, int height, test::Dice& dice) {
  std::vector<std::uint8_t> colours(static_cast<std::size_t>(width) * static_cast<std::size_t>(height) * 3);
  for (auto& part : colours) {
    part = static_cast<std::uint8_t>(dice.throw_one(256));
  }
  return photo_of(width, height, colours);
}

// Mean light of a rectangle the plain way: every pixel by the area that it shares with the rectangle; beyond is white.
double mean_by_pixels(const Photo& photo, double left, double top, double right, double bottom) {
  double sum = (right - left) * (bottom - top);
  for (int y = 0; y < photo.height; ++y) {
    for (int x = 0; x < photo.width; ++x) {
      const double across = std::min(right, x + 1.0) - std::max(left, static_cast<double>(x));
      const double down = std::min(bottom, y + 1.0) - std::max(top, static_cast<double>(y));
      if (across > 0 && down > 0) {
        const double light =
            photo.light[static_cast<std::size_t>(y * photo.width + x)] / static_cast<double>(whole_light);
        sum -= across * down * (1 - light);
      }
    }
  }
  return sum / ((right - left) * (bottom - top));
}

} // namespace

TEST_CASE("black and white at one pixel a stitch are 0 and 1, the lowest row first") {
  const Photo photo = grey_photo(2, 2, {0, 255, 255, 255});
  CHECK(light_in(photo, {0, 0, 1, 1, 2, 2}, {}) == std::vector<double>{1, 1, 0, 1});
}

TEST_CASE("half black and half white is half the light, whatever the screen makes of it") {
  const Photo photo = grey_photo(4, 1, {0, 255, 0, 255});
  CHECK(light_in(photo, {0, 0, 2, 1, 2, 1}, {}) == std::vector<double>{0.5, 0.5});
  // sRGB 188 is the grey of half the light (IEC 61966-2-1: 0.5029).
  CHECK(light_in(grey_photo(1, 1, {188}), {0, 0, 1, 1, 1, 1}, {})[0] == doctest::Approx(0.5029).epsilon(0.001));
}

TEST_CASE("a pixel that an edge cuts counts by its part: three stitches on two pixels, by hand") {
  // Black and white, each 1 px; stitches of 2/3 px: all black, half and half, all white.
  const std::vector<double> light = light_in(grey_photo(2, 1, {0, 255}), {0, 0, 2.0 / 3, 1, 3, 1}, {});
  CHECK(light[0] == doctest::Approx(0.0));
  CHECK(light[1] == doctest::Approx(0.5));
  CHECK(light[2] == doctest::Approx(1.0));
}

TEST_CASE("a stitch smaller than a pixel has the pixel's light") {
  for (const double light : light_in(grey_photo(1, 1, {0}), {0.2, 0.3, 0.1, 0.1, 2, 2}, {})) {
    CHECK(light == doctest::Approx(0.0));
  }
}

TEST_CASE("beyond the picture is white paper") {
  const std::vector<double> light = light_in(grey_photo(2, 2, {0, 0, 0, 0}), {-1, -1, 2, 2, 2, 2}, {});
  CHECK(light == std::vector<double>(4, 0.75));
}

TEST_CASE("any lattice agrees with going through all pixels") {
  test::Dice dice(7);
  for (int round = 0; round < 200; ++round) {
    const int width = 1 + dice.throw_one(23);
    const Photo photo = random_photo(width, 1 + dice.throw_one(19), dice);
    const Lattice lattice{
        between(-5, 20, dice), between(-5, 20, dice), between(0.05, 9, dice), between(0.05, 9, dice), 5, 4};
    const std::vector<double> light = light_in(photo, lattice, {});
    for (int row = 0; row < lattice.rows; ++row) {
      for (int column = 0; column < lattice.columns; ++column) {
        const double left = lattice.left + column * lattice.stitch_width;
        const double top = lattice.top + (lattice.rows - 1 - row) * lattice.row_height;
        const double wanted = mean_by_pixels(photo, left, top, left + lattice.stitch_width, top + lattice.row_height);
        CHECK(light[static_cast<std::size_t>(row * lattice.columns + column)] == doctest::Approx(wanted).epsilon(1e-6));
      }
    }
  }
}

TEST_CASE("ignored colours are white paper, others stay") {
  std::vector<std::uint8_t> colours = {0, 0, 200, 10, 0, 200, 200, 0, 0};
  const Photo photo = photo_of(3, 1, colours);
  const auto light = light_in(photo, {0, 0, 1, 1, 3, 1}, IgnoredColour{{0, 0, 200}, 10});
  CHECK(light[0] == 1);
  CHECK(light[1] == 1);
  CHECK(light[2] < 0.5);
  CHECK(light_in(photo, {0, 0, 1, 1, 3, 1}, IgnoredColour{{0, 0, 200}, 9})[1] < 0.5);
}

TEST_CASE("at whole pixels it is ImageMagick's box scaling in linear light") { // Debian's package imagemagick
  test::Dice dice(3);
  const Photo photo = random_photo(96, 60, dice);
  const std::filesystem::path folder = std::filesystem::temp_directory_path();
  const std::string ppm = (folder / ("punchwright-light-" + std::to_string(getpid()) + ".ppm")).string();
  {
    std::ofstream out(ppm, std::ios::binary);
    out << "P6\n96 60\n255\n";
    out.write(reinterpret_cast<const char*>(photo.colours.data()), static_cast<std::streamsize>(photo.colours.size()));
  }
  // Linear red, green and blue, each the mean of 4 × 5 pixels, in 16 bits; their luminance is ours to add up.
  const std::string command =
      "convert " + ppm + " -colorspace RGB -scale '24x12!' -set colorspace sRGB -depth 16 -endian MSB rgb:-";
  std::FILE* const pipe = popen(command.c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::vector<unsigned char> bytes(24 * 12 * 6);
  CHECK(std::fread(bytes.data(), 1, bytes.size(), pipe) == bytes.size());
  CHECK(pclose(pipe) == 0);
  std::filesystem::remove(ppm);
  const std::vector<double> light = light_in(photo, {0, 0, 4, 5, 24, 12}, {});
  for (int row = 0; row < 12; ++row) {
    for (int column = 0; column < 24; ++column) {
      const std::size_t at = static_cast<std::size_t>((11 - row) * 24 + column) * 6;
      const auto part = [&](std::size_t channel) {
        return (bytes[at + channel * 2] * 256 + bytes[at + channel * 2 + 1]) / 65535.0;
      };
      const double wanted = 0.2126 * part(0) + 0.7152 * part(1) + 0.0722 * part(2);
      CHECK(light[static_cast<std::size_t>(row * 24 + column)] == doctest::Approx(wanted).epsilon(0.0005));
    }
  }
}

TEST_CASE("the lattice has the gauge's proportion and is the largest in the picture") {
  const Gauge gauge{16, 20}; // a stitch 6.25 mm wide, 5 mm high
  const Lattice wide = largest_lattice(1000, 100, 24, 10, gauge);
  CHECK(wide.row_height / wide.stitch_width == doctest::Approx(0.8));
  CHECK(wide.row_height * 10 == doctest::Approx(100));
  CHECK(wide.left + wide.stitch_width * 24 / 2 == doctest::Approx(500));
  const Lattice high = largest_lattice(100, 1000, 24, 10, gauge);
  CHECK(high.stitch_width * 24 == doctest::Approx(100));
  CHECK(high.top + high.row_height * 10 / 2 == doctest::Approx(500));
}
