// Contrast of every text on its ground, in both themes, by the formula of WCAG 2.x (W3C), written here anew.
#include "editor/theme.hpp"

#include <cmath>
#include <doctest/doctest.h>
#include <string>

using namespace punchwright;
using namespace punchwright::editor;

namespace {

// Relative luminance, WCAG 2.1, definitions.
double luminance(Colour colour) {
  const auto linear = [](int value) {
    const double share = value / 255.0;
    return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) + 0.0722 * linear(colour.blue);
}

double contrast(Colour one, Colour another) {
  const double a = luminance(one) + 0.05;
  const double b = luminance(another) + 0.05;
  return a > b ? a / b : b / a;
}

void check_palette(const Palette& palette) {
  for (const TextPair& pair : text_pairs(palette)) {
    CAPTURE(std::string(pair.place));
    CHECK(contrast(pair.text, pair.ground) >= 4.5); // success criterion 1.4.3
  }
  for (const TextPair& pair : sign_pairs(palette)) {
    CAPTURE(std::string(pair.place));
    CHECK(contrast(pair.text, pair.ground) >= 3.0); // success criterion 1.4.11
  }
}

} // namespace

TEST_CASE("the formula gives the values that are published: white on black 21, grey #767676 on white 4.54") {
  CHECK(contrast({0, 0, 0}, {255, 255, 255}) == doctest::Approx(21));
  CHECK(contrast({0x76, 0x76, 0x76}, {255, 255, 255}) == doctest::Approx(4.54).epsilon(0.002));
}

TEST_CASE("text in the light theme has 4.5:1, signs have 3:1") {
  check_palette(Palette{});
}

TEST_CASE("text in the dark theme has 4.5:1, signs have 3:1") {
  check_palette(dark_palette());
}

TEST_CASE("a word on a yarn's own colour can be read, whichever colour it is") {
  const Palette light;
  CHECK(light.dark_word == dark_palette().dark_word);
  CHECK(light.light_word == dark_palette().light_word);
  for (int grey = 0; grey < 256; ++grey) {
    const auto value = static_cast<std::uint8_t>(grey);
    const Colour yarn{value, value, value};
    CHECK(std::max(contrast(yarn, light.dark_word), contrast(yarn, light.light_word)) >= 4.5);
  }
}
