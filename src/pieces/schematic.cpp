// Stitches and rows by their gauges; pieces that are alike share an outline.
#include "pieces/schematic.hpp"

#include <algorithm>

namespace punchwright {
namespace {

double visible(const OpenedYoke& opened, int stitches) {
  return stitches - 2.0 * opened.yoke.edge;
}

SchematicPiece outline(const OpenedYoke& opened, const SizePlan& size, std::size_t index, std::size_t piece,
                       const std::vector<double>& heights) {
  SchematicPiece drawn;
  drawn.pieces.push_back(piece);
  const PieceOfSize& of_size = size.pieces[piece];
  for (std::size_t tier = 0; tier < of_size.tiers.size(); ++tier) {
    const OpenedTier& opened_tier = opened.tiers[tier];
    SchematicTier next;
    next.bottom = heights[tier];
    next.top = heights[tier + 1];
    next.pattern_top =
        next.bottom + static_cast<double>(opened_tier.rows.rows.size()) * opened_tier.document.gauge.row_mm();
    next.stitches = of_size.tiers[tier].stitches;
    next.width = visible(opened, next.stitches) * opened_tier.document.gauge.stitch_mm();
    drawn.tiers.push_back(next);
  }
  const double last_stitch = opened.tiers.back().document.gauge.stitch_mm();
  drawn.bottom = drawn.tiers.front().width;
  drawn.top = visible(opened, of_size.tiers.back().shaping.after) * last_stitch;
  drawn.height = heights.back();
  const YokePiece& wished = opened.yoke.pieces[widths_of(opened.yoke, piece)];
  drawn.wished_bottom = wished.bottom_cm.at(index) * 10;
  drawn.wished_top = wished.top_cm.at(index) * 10;
  for (const SchematicTier& tier : drawn.tiers) {
    drawn.outline.push_back({-tier.width / 2, tier.bottom});
  }
  drawn.outline.push_back({-drawn.top / 2, drawn.height});
  for (std::size_t left = drawn.outline.size(); left > 0; --left) {
    drawn.outline.push_back({-drawn.outline[left - 1].x, drawn.outline[left - 1].y});
  }
  return drawn;
}

bool alike(const SchematicPiece& one, const SchematicPiece& other) {
  return one.outline == other.outline && one.wished_bottom == other.wished_bottom && one.wished_top == other.wished_top;
}

} // namespace

Schematic schematic_of(const OpenedYoke& opened, const SizePlan& size, std::size_t index) {
  Schematic schematic;
  std::vector<double> heights{0};
  for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
    const Gauge& gauge = opened.tiers[tier].document.gauge;
    heights.push_back(heights.back() + static_cast<double>(opened.tiers[tier].rows.rows.size()) * gauge.row_mm() +
                      opened.yoke.tiers[tier].plain_above.at(index) * plain_row_mm(opened, tier));
  }
  for (std::size_t piece = 0; piece < size.pieces.size(); ++piece) {
    SchematicPiece next = outline(opened, size, index, piece, heights);
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
    for (const SchematicPoint& point : piece.outline) {
      schematic.widest = std::max(schematic.widest, 2 * point.x);
    }
  }
  schematic.height = heights.back();
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
