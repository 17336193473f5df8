// The cloth as pixels: one cell a stitch, in the gauge's proportion and the yarns' colours.
// Apart from the file, since the editor shows the same picture.
#pragma once

#include "design/document.hpp"
#include "design/result.hpp"
#include "machine/profile.hpp"

#include <vector>

namespace punchwright {

struct FabricPicture {
  int width = 0; // pixels
  int height = 0;
  int pixels_per_metre_x = 0; // at the gauge
  int pixels_per_metre_y = 0;
  std::vector<unsigned char> rgb; // from the top left, 3 bytes a pixel
};

// The size of a picture of so many stitches and rows. Cells are some 16 pixels wide, smaller where the picture would be
// too large, and the whole has the gauge's proportion.
struct FabricSize {
  int columns = 0; // stitches
  int rows = 0;
  int width = 0; // pixels
  int height = 0;

  // Cell boundaries at rounded multiples: column c takes the pixels from left_of(c) up to left_of(c + 1).
  [[nodiscard]] int left_of(int column) const;
  [[nodiscard]] int top_of(int line) const; // line 0 is the uppermost row
};
[[nodiscard]] Result<FabricSize> fabric_size(int stitches, int rows, const Gauge& gauge);

// Without pixels yet, with room for them.
[[nodiscard]] FabricPicture empty_picture(const FabricSize& size, const Gauge& gauge);

// The whole piece over all rows to knit, row 1 lowest. On the purl side the piece's leftmost needle is at the left, as
// the knitter sees it, and floats lie over the stitches that they pass; on the knit side that needle is at the right.
[[nodiscard]] Result<FabricPicture> fabric_picture(const Document& document, const Profile& profile, Face side);

} // namespace punchwright
