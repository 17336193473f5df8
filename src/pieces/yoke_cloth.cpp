// Pattern rows as the cells and the end needles say, and the single-colour rows above each tier.
#include "pieces/yoke_cloth.hpp"

#include "design/wrap.hpp"
#include "machine/placement.hpp"

#include <algorithm>

namespace punchwright {

namespace {

constexpr Colour no_stitch{0xe6, 0xe6, 0xe6}; // beside the narrower tiers

// The yarn of a stitch of a tier: of a drawn row that of its cell, of others the row's own.
char yarn_at(const Document& document, const RowToKnit& row, int column) {
  const bool drawn_contrast = row.drawn >= 0 && row.contrast != 0 && document.grid.at(column, row.drawn);
  return row.all_contrast || drawn_contrast ? row.contrast : row.main;
}

class Knitter {
public:
  Knitter(const OpenedYoke& opened, const SizePlan& plan, std::size_t size)
      : opened_(opened), plan_(plan), size_(size) {}

  YokeCloth run() {
    cloth_.height = plan_.heights.back();
    for (std::size_t tier = 0; tier < opened_.tiers.size(); ++tier) {
      int wide = 0;
      cloth_.left.emplace_back();
      for (const PieceOfSize& piece : plan_.pieces) {
        cloth_.left.back().push_back(wide);
        wide += std::max(piece.tiers[tier].stitches, piece.tiers[tier].shaping.after);
      }
      cloth_.width = std::max(cloth_.width, wide);
    }
    cloth_.stitches.assign(static_cast<std::size_t>(cloth_.width) * static_cast<std::size_t>(cloth_.height), no_stitch);
    for (std::size_t tier = 0; tier < opened_.tiers.size(); ++tier) {
      pattern(tier);
      plain(tier);
    }
    return std::move(cloth_);
  }

private:
  void pattern(std::size_t tier) {
    const OpenedTier& there = opened_.tiers[tier];
    const bool ends = end_needles_knit_contrast(there.document, opened_.profile);
    int row = plan_.heights[tier];
    for (const RowToKnit& knitted : there.rows.rows) {
      for (std::size_t piece = 0; piece < plan_.pieces.size(); ++piece) {
        const TierOfPiece& part = plan_.pieces[piece].tiers[tier];
        for (int stitch = 0; stitch < part.stitches; ++stitch) {
          const int column = round_edge(part.bed.left_column + stitch - opened_.yoke.edge, there.document.grid.width());
          const bool end = (stitch == 0 || stitch == part.stitches - 1) && knitted.two_coloured() && ends;
          const char yarn = end ? knitted.contrast : yarn_at(there.document, knitted, column);
          put(tier, piece, stitch, row, yarn_of(there.document, yarn).colour);
        }
      }
      ++row;
    }
  }

  void plain(std::size_t tier) {
    const OpenedTier& there = opened_.tiers[tier];
    const bool last = tier + 1 == opened_.tiers.size();
    const int rows = opened_.yoke.tiers[tier].plain_above.at(size_);
    const int setting_up = plain_rows_needed(opened_, tier).setting_up;
    const Document& next = opened_.tiers[last ? tier : tier + 1].document;
    for (int above = 0; above < rows; ++above) {
      const bool sets_up = !last && above >= rows - setting_up;
      const Document& of = sets_up ? next : there.document;
      const char yarn = sets_up ? next.bands.front().main : there.document.bands.back().main;
      for (std::size_t piece = 0; piece < plan_.pieces.size(); ++piece) {
        const int row = plan_.heights[tier + 1] - rows + above;
        const int stitches = stitches_in_row(opened_, plan_, piece, tier, row);
        for (int stitch = 0; stitch < stitches; ++stitch) {
          put(tier, piece, stitch, row, yarn_of(of, yarn).colour);
        }
      }
    }
  }

  void put(std::size_t tier, std::size_t piece, int stitch, int row, Colour colour) {
    const auto line = static_cast<std::size_t>(cloth_.height - 1 - row);
    const auto place = static_cast<std::size_t>(cloth_.left[tier][piece] + stitch);
    cloth_.stitches[line * static_cast<std::size_t>(cloth_.width) + place] = colour;
  }

  const OpenedYoke& opened_;
  const SizePlan& plan_;
  std::size_t size_;
  YokeCloth cloth_;
};

} // namespace

YokeCloth yoke_cloth(const OpenedYoke& opened, const SizePlan& plan, std::size_t size) {
  return Knitter(opened, plan, size).run();
}

} // namespace punchwright
