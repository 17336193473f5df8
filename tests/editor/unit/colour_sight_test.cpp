// Colours as others see them: the published matrices' properties, pairs worked out by another program, and lightness.
#include "editor/colour_sight.hpp"
#include "editor/yarn_palette.hpp"
#include "rules/findings.hpp"

#include <algorithm>
#include <cstdlib>
#include <doctest/doctest.h>

using namespace punchwright;
using namespace punchwright::editor;

namespace {

constexpr std::array deficiencies = {ColourSight::protan, ColourSight::deutan, ColourSight::tritan};

bool near(Colour one, Colour other) {
  return std::abs(one.red - other.red) <= 1 && std::abs(one.green - other.green) <= 1 &&
         std::abs(one.blue - other.blue) <= 1;
}

} // namespace

TEST_CASE("the rows of each matrix sum to 1, so that greys stay grey") {
  for (const ColourSight sight : deficiencies) {
    for (const auto& row : matrix_of(sight)) {
      CHECK(row[0] + row[1] + row[2] == doctest::Approx(1).epsilon(2.0e-6));
    }
    for (int grey = 0; grey < 256; grey += 5) {
      const auto part = static_cast<std::uint8_t>(grey);
      CHECK(near(seen_as({part, part, part}, sight), {part, part, part}));
    }
  }
}

// From Debian's python3-colorspacious 1.1.2: cspace_convert(c, {"name": "sRGB1+CVD", "cvd_type": …, "severity": 100},
// "sRGB1"), which has the matrices of Machado, Oliveira and Fernandes (2009).
TEST_CASE("colours look as another program works them out from the same paper") {
  constexpr Colour crab{0xc4, 0x3d, 0x32};
  constexpr Colour kelp{0x5f, 0x6d, 0x33};
  constexpr Colour harbour{0x24, 0x58, 0x8c};
  CHECK(near(seen_as(crab, ColourSight::protan), {100, 90, 48}));
  CHECK(near(seen_as(kelp, ColourSight::protan), {115, 103, 46}));
  CHECK(near(seen_as(harbour, ColourSight::protan), {64, 91, 142}));
  CHECK(near(seen_as(crab, ColourSight::deutan), {133, 120, 45}));
  CHECK(near(seen_as(kelp, ColourSight::deutan), {113, 103, 54}));
  CHECK(near(seen_as(harbour, ColourSight::deutan), {49, 81, 139}));
  CHECK(near(seen_as(crab, ColourSight::tritan), {216, 15, 60}));
  CHECK(near(seen_as(kelp, ColourSight::tritan), {99, 104, 96}));
  CHECK(near(seen_as(harbour, ColourSight::tritan), {0, 100, 107}));
}

// CIE 15:2004: black 0, white 100; a light of 18.42 % is L* 50.
TEST_CASE("lightness goes from 0 to 100, and the middle is far below the middle of the light") {
  CHECK(lightness_of({0, 0, 0}) == doctest::Approx(0));
  CHECK(lightness_of({255, 255, 255}) == doctest::Approx(100));
  CHECK(lightness_of({119, 119, 119}) == doctest::Approx(50).epsilon(0.005));
}

TEST_CASE("the value check keeps lightness and nothing else") {
  for (const YarnColour& yarn : yarn_palette()) {
    const Colour grey = seen_as(yarn.colour, ColourSight::lightness);
    CHECK(grey.red == grey.green);
    CHECK(grey.green == grey.blue);
    CHECK(std::abs(lightness_of(grey) - lightness_of(yarn.colour)) < 0.5);
    CHECK(seen_as(yarn.colour, ColourSight::as_is) == yarn.colour);
  }
}

TEST_CASE("the palette has forty colours or more, none twice, and words find them") {
  const auto palette = yarn_palette();
  CHECK(palette.size() >= 40);
  for (std::size_t one = 0; one < palette.size(); ++one) {
    for (std::size_t other = one + 1; other < palette.size(); ++other) {
      CHECK(palette[one].name != palette[other].name);
      CHECK(palette[one].colour != palette[other].colour);
    }
  }
  const auto blues = yarn_colours_found("dark blue");
  CHECK(std::ranges::find(blues, "Ink", &YarnColour::name) != blues.end());
  CHECK(std::ranges::find(blues, "Spray", &YarnColour::name) == blues.end());
  CHECK(yarn_colours_found("puf").size() == 1);
  const auto reds = yarn_colours_found("red"); // a red by name before an orange that is reddish
  REQUIRE(reds.size() > 1);
  CHECK(reds.front().name == "Signal Red");
  CHECK(yarn_colours_found("tractor").empty());
}
