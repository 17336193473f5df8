// How much light of a picture falls into each stitch: the mean over the stitch's exact area, parts of pixels included.
#pragma once

#include "tracing/photo.hpp"

#include <optional>
#include <vector>

namespace punchwright {

// Where the stitches lie on the picture, in pixels from its top left corner; it may reach beyond the picture, where all
// is white paper.
struct Lattice {
  double left = 0;
  double top = 0;
  double stitch_width = 1; // px, above 0
  double row_height = 1;
  int columns = 1;
  int rows = 1;
  bool operator==(const Lattice&) const = default;
};

// Stitches of the gauge's proportion; the left edge, the top and the width are chosen, the height follows.
[[nodiscard]] Lattice lattice_at(double left, double top, double width, int columns, int rows, const Gauge& gauge);
// The largest in the picture's middle that lies in it whole.
[[nodiscard]] Lattice largest_lattice(int photo_width, int photo_height, int columns, int rows, const Gauge& gauge);

// Pixels near that colour count as white paper.
struct IgnoredColour {
  Colour colour;
  int within = 40; // distance in sRGB, 0 (that colour alone) to 441
  bool operator==(const IgnoredColour&) const = default;
};

// Per stitch, row by row from the lowest, each from its left: 0 black to 1 white.
[[nodiscard]] std::vector<double> light_in(const Photo& photo, const Lattice& lattice,
                                           const std::optional<IgnoredColour>& ignored);

} // namespace punchwright
