// The matrices, and lightness.
#include "editor/colour_sight.hpp"

#include "design/light.hpp"
#include "editor/stitch_form.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright::editor {

namespace {

// Machado, Oliveira and Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency", IEEE
// Transactions on Visualization and Computer Graphics 15 (6), 2009: the table's matrices of full severity (1.0),
// compared with the copy in Debian's package python3-colorspacious 1.1.2. They work on linear light.
constexpr SightMatrix nothing_changed = {{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}};
constexpr SightMatrix protanopia = {
    {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}};
constexpr SightMatrix deuteranopia = {
    {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}};
constexpr SightMatrix tritanopia = {
    {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}};

std::uint8_t part_of(double light) {
  return static_cast<std::uint8_t>(std::lround(value_of_light(static_cast<float>(std::clamp(light, 0.0, 1.0)))));
}

} // namespace

const SightInfo& info_of(ColourSight sight) {
  return *std::ranges::find(colour_sights, sight, &SightInfo::sight);
}

const SightMatrix& matrix_of(ColourSight sight) {
  switch (sight) {
  case ColourSight::protan: return protanopia;
  case ColourSight::deutan: return deuteranopia;
  case ColourSight::tritan: return tritanopia;
  default: return nothing_changed;
  }
}

Colour seen_as(Colour colour, ColourSight sight) {
  if (sight == ColourSight::as_is) {
    return colour;
  }
  if (sight == ColourSight::lightness) {
    const std::uint8_t grey = part_of(relative_luminance(colour));
    return {grey, grey, grey};
  }
  const SightMatrix& matrix = matrix_of(sight);
  const std::array light = {linear_light(colour.red), linear_light(colour.green), linear_light(colour.blue)};
  const auto seen = [&](std::size_t row) {
    return part_of(matrix[row][0] * light[0] + matrix[row][1] * light[1] + matrix[row][2] * light[2]);
  };
  return {seen(0), seen(1), seen(2)};
}

double lightness_of(Colour colour) {
  const double light = relative_luminance(colour);
  constexpr double knee = 216.0 / 24389.0; // (6/29)³
  return light > knee ? 116 * std::cbrt(light) - 16 : light * 24389.0 / 27.0;
}

} // namespace punchwright::editor
