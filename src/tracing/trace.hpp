// From light to stitches: of all drawings in which no float is too long, the one that is nearest to the picture.
#pragma once

#include "design/edits.hpp"
#include "mending/mend.hpp"
#include "tracing/coverage.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace punchwright {

// How shades between dark and light become stitches.
enum class Shading {
  split,     // darker than the split: contrast
  diffusion, // what a stitch is too dark or too light is handed on to its neighbours (Floyd and Steinberg 1976)
  dither,    // each stitch has a split of its own, by the 8 × 8 matrix of Bayer 1973
};

struct TraceWishes {
  std::optional<double> split; // darkness where contrast begins, 0.01 to 0.99; absent: by Otsu's method
  double emphasis = 0;         // -1: areas, each stitch like its neighbours; 0: as it is; 1: edges, unlike them
  Shading shading = Shading::split;
  bool light_is_contrast = false;
  bool mirrored = false;
  int limit = 5;          // stitches that a float may pass, 1 to 200
  std::vector<Area> kept; // stitches that stay as the picture has them; an area may go round the edges
};

struct Traced {
  Grid drawing;
  double split = 0.5; // that was used
  // Mean over the stitches of the squared difference between the darkness and the stitch, 0 to 1.
  double error = 0;
  int moved = 0;                      // stitches that are otherwise than without the float limit
  std::vector<Unmendable> unmendable; // rows in which what is kept leaves a float too long; they stay so
};

// `light` is that of light_in(). Exact: rows don't depend on one another once their darkness is known, and each is the
// cheapest by the price of going against the picture, a row of a single colour among them. With diffusion that holds
// for each row after the rows above it.
[[nodiscard]] Traced trace(const std::vector<double>& light, int columns, const TraceWishes& wishes);

// Where two classes of values differ most: N. Otsu, "A threshold selection method from gray-level histograms", IEEE
// Transactions on Systems, Man, and Cybernetics 9 (1979), 62-66; over 256 steps of 0 to 1. 0.5 where all are alike.
[[nodiscard]] double otsu_split(const std::vector<double>& darkness);

// Element of the 8 × 8 ordered dither matrix, 0 to 63: B. E. Bayer, "An optimum method for two-level rendition of
// continuous-tone pictures", IEEE International Conference on Communications 1973.
[[nodiscard]] int bayer_step(int column, int row);

} // namespace punchwright
