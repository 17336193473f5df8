// Stitches and rows by their gauges; pieces that are alike share an outline.
#include "pieces/schematic.hpp"

#include <algorithm>

namespace punchwright {
namespace {

double visible(const OpenedYoke& opened, int stitches) {
  return stitches - 2.0 * opened.yoke.edge;
}

void add_point(std::vector<SchematicPoint>& points, SchematicPoint point) {
  if (points.empty() || points.back() != point) {
    points.push_back(point);
  }
}

// The left side upwards, then the right one downwards.
std::vector<SchematicPoint> outline_of_tiers(const std::vector<SchematicTier>& tiers) {
  std::vector<SchematicPoint> points;
  for (const SchematicTier& tier : tiers) {
    add_point(points, {-tier.width / 2, tier.bottom});
    add_point(points, {-tier.width / 2, tier.shaped});
    add_point(points, {-tier.width_after / 2, tier.shaped});
    add_point(points, {-tier.width_after / 2, tier.top});
  }
  for (std::size_t left = points.size(); left > 0; --left) {
    points.push_back({-points[left - 1].x, points[left - 1].y});
  }
  return points;
}

SchematicPiece outlined(const OpenedYoke& opened, const SizePlan& size, std::size_t index, std::size_t piece,
                        const std::vector<double>& row_mm) {
  SchematicPiece drawn;
  drawn.pieces.push_back(piece);
  const auto height_of = [&row_mm](int row) { return row_mm[static_cast<std::size_t>(row)]; };
  for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
    const TierOfPiece& there = size.pieces[piece].tiers[tier];
    const double stitch = opened.tiers[tier].document.gauge.stitch_mm();
    SchematicTier next;
    next.bottom = height_of(size.heights[tier]);
    next.pattern_top = height_of(size.heights[tier] + static_cast<int>(opened.tiers[tier].rows.rows.size()));
    next.shaped = height_of(first_shaped_row(opened, size, piece, tier));
    next.top = height_of(size.heights[tier + 1]);
    next.stitches = there.stitches;
    next.width = visible(opened, there.stitches) * stitch;
    next.width_after = visible(opened, there.shaping.after) * stitch;
    drawn.widest = std::max({drawn.widest, next.width, next.width_after});
    drawn.tiers.push_back(next);
  }
  drawn.bottom = drawn.tiers.front().width;
  drawn.top = drawn.tiers.back().width_after;
  drawn.height = row_mm.back();
  const YokePiece& wished = opened.yoke.pieces[widths_of(opened.yoke, piece)];
  drawn.wished_bottom = wished.bottom_cm.at(index) * 10;
  drawn.wished_top = wished.top_cm.at(index) * 10;
  drawn.outline = outline_of_tiers(drawn.tiers);
  return drawn;
}

bool alike(const SchematicPiece& one, const SchematicPiece& other) {
  return one.outline == other.outline && one.wished_bottom == other.wished_bottom && one.wished_top == other.wished_top;
}

} // namespace

Schematic schematic_of(const OpenedYoke& opened, const SizePlan& size, std::size_t index) {
  Schematic schematic;
  const std::vector<double> row_mm = row_heights(opened, index);
  for (std::size_t piece = 0; piece < size.pieces.size(); ++piece) {
    SchematicPiece next = outlined(opened, size, index, piece, row_mm);
    schematic.around_bottom += next.bottom;
    schematic.around_top += next.top;
    const auto found = std::ranges::find_if(schematic.pieces, [&](const auto& there) { return alike(there, next); });
    if (found != schematic.pieces.end()) {
      found->pieces.push_back(piece);
    } else {
      schematic.pieces.push_back(std::move(next));
    }
  }
  for (const SchematicPiece& piece : schematic.pieces) {
    schematic.widest = std::max(schematic.widest, piece.widest);
  }
  schematic.height = row_mm.back();
  return schematic;
}

std::size_t outline_of(const Schematic& schematic, std::size_t piece) {
  for (std::size_t index = 0; index < schematic.pieces.size(); ++index) {
    if (std::ranges::find(schematic.pieces[index].pieces, piece) != schematic.pieces[index].pieces.end()) {
      return index;
    }
  }
  return 0;
}

} // namespace punchwright
