// The pieces of a size as outlines with measures: what is drawn to scale on the sheets and in the window.
// Pure numbers in millimetres of the finished cloth, without the seam stitches.
#pragma once

#include "pieces/yoke_plan.hpp"

#include <string>
#include <vector>

namespace punchwright {

// mm; x from the piece's middle to the right, y from the lower edge of the first tier's first row upwards.
struct SchematicPoint {
  double x = 0;
  double y = 0;
  bool operator==(const SchematicPoint&) const = default;
};

struct SchematicTier {
  double bottom = 0;      // height of its first row
  double pattern_top = 0; // above its last pattern row, with those that yarn changes put in
  double shaped = 0;      // above it the rows are as wide as the decreases leave them
  double top = 0;         // above the plain rows, where the next tier begins
  double width = 0;       // of the visible stitches, by the tier's gauge
  double width_after = 0; // of those after the decreases
  int stitches = 0;       // seam stitches included
};

struct SchematicPiece {
  std::vector<std::size_t> pieces; // those that have this outline, in the ring's order: those that are alike
  std::vector<SchematicTier> tiers;
  double bottom = 0;        // width of the first tier's visible stitches
  double top = 0;           // width of those after the last decreases
  double wished_bottom = 0; // as the file has it
  double wished_top = 0;
  double widest = 0;
  double height = 0; // of all rows
  // As knitted, from the lower left corner clockwise: upright but for the rows after decreases, where it steps in.
  std::vector<SchematicPoint> outline;
};

struct Schematic {
  std::vector<SchematicPiece> pieces; // one for each outline
  double widest = 0;
  double height = 0;        // of the yoke
  double around_bottom = 0; // of all pieces together
  double around_top = 0;
};

// `index` of the size in the file.
[[nodiscard]] Schematic schematic_of(const OpenedYoke& opened, const SizePlan& size, std::size_t index);

// Index of the piece in Schematic::pieces.
[[nodiscard]] std::size_t outline_of(const Schematic& schematic, std::size_t piece);

} // namespace punchwright
