// The stitches of a yoke as a picture, and where its parts lie in each view. Pure functions from the plan.
#include "design/wrap.hpp"
#include "editor/yoke_cache.hpp"
#include "machine/placement.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace punchwright::editor {

namespace {

constexpr double gap_mm = 12; // between pieces that are laid flat

// The yarn of a stitch of a tier: of a drawn row that of its cell, of others the row's own.
char yarn_at(const Document& document, const RowToKnit& row, int column) {
  const bool drawn_contrast = row.drawn >= 0 && row.contrast != 0 && document.grid.at(column, row.drawn);
  return row.all_contrast || drawn_contrast ? row.contrast : row.main;
}

class Painter {
public:
  Painter(const OpenedYoke& opened, const SizePlan& plan, std::size_t size, ColourSight sight)
      : opened_(opened), plan_(plan), size_(size), sight_(sight) {}

  YokePicture run() {
    picture_.height = plan_.heights.back();
    for (std::size_t tier = 0; tier < opened_.tiers.size(); ++tier) {
      int wide = 0;
      picture_.left.emplace_back();
      for (const PieceOfSize& piece : plan_.pieces) {
        picture_.left.back().push_back(wide);
        wide += piece.tiers[tier].stitches;
      }
      picture_.width = std::max(picture_.width, wide);
    }
    picture_.rgb.assign(static_cast<std::size_t>(picture_.width) * static_cast<std::size_t>(picture_.height) * 3, 0xe6);
    for (std::size_t tier = 0; tier < opened_.tiers.size(); ++tier) {
      paint(tier);
    }
    return std::move(picture_);
  }

private:
  void paint(std::size_t tier) {
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
    const bool last = tier + 1 == opened_.tiers.size();
    const int plain = opened_.yoke.tiers[tier].plain_above.at(size_);
    const int setting_up = plain_rows_needed(opened_, tier).setting_up;
    const Document& next = opened_.tiers[last ? tier : tier + 1].document;
    for (int above = 0; above < plain; ++above, ++row) {
      const bool sets_up = !last && above >= plain - setting_up;
      const Document& of = sets_up ? next : there.document;
      const char yarn = sets_up ? next.bands.front().main : there.document.bands.back().main;
      for (std::size_t piece = 0; piece < plan_.pieces.size(); ++piece) {
        for (int stitch = 0; stitch < plan_.pieces[piece].tiers[tier].stitches; ++stitch) {
          put(tier, piece, stitch, row, yarn_of(of, yarn).colour);
        }
      }
    }
  }

  void put(std::size_t tier, std::size_t piece, int stitch, int row, Colour colour) {
    const Colour seen = seen_as(colour, sight_);
    const auto line = static_cast<std::size_t>(picture_.height - 1 - row);
    const auto place = static_cast<std::size_t>(picture_.left[tier][piece] + stitch);
    unsigned char* const pixel = &picture_.rgb[(line * static_cast<std::size_t>(picture_.width) + place) * 3];
    pixel[0] = seen.red;
    pixel[1] = seen.green;
    pixel[2] = seen.blue;
  }

  const OpenedYoke& opened_;
  const SizePlan& plan_;
  std::size_t size_;
  ColourSight sight_;
  YokePicture picture_;
};

int pattern_rows(const OpenedYoke& opened, std::size_t tier) {
  return static_cast<int>(opened.tiers[tier].rows.rows.size());
}

float u_of(const YokePicture& picture, double pixel) {
  return static_cast<float>(pixel / picture.width);
}
float v_of(const YokePicture& picture, int row) { // its lower edge
  return static_cast<float>(picture.height - row) / static_cast<float>(picture.height);
}
float mm_at(const std::vector<double>& row_mm, int row) {
  return static_cast<float>(row_mm[static_cast<std::size_t>(row)]);
}

// The block's pattern rows and its plain rows, which may be of another height.
void add_block(YokeShape& shape, const YokeBlock& block, const YokePicture& picture, const OpenedYoke& opened,
               const SizePlan& plan, int from_pixel, int to_pixel) {
  shape.blocks.push_back(block);
  const int first = plan.heights[block.tier];
  const int middle = first + pattern_rows(opened, block.tier);
  const int last = plan.heights[block.tier + 1];
  const float u0 = u_of(picture, from_pixel);
  const float u1 = u_of(picture, to_pixel);
  const auto quad = [&](float low, float high, int from, int to) {
    const float v0 = v_of(picture, from);
    const float v1 = v_of(picture, to);
    shape.quads.push_back({{{block.left, low, u0, v0},
                            {block.right, low, u1, v0},
                            {block.right, high, u1, v1},
                            {block.left, high, u0, v1}}});
  };
  quad(block.bottom, block.pattern_top, first, middle);
  quad(block.pattern_top, block.top, middle, last);
}

YokeBlock heights_of(const OpenedYoke& opened, const SizePlan& plan, const std::vector<double>& row_mm,
                     std::size_t piece, std::size_t tier) {
  YokeBlock block;
  block.piece = piece;
  block.tier = tier;
  block.bottom = mm_at(row_mm, plan.heights[tier]);
  block.pattern_top = mm_at(row_mm, plan.heights[tier] + pattern_rows(opened, tier));
  block.top = mm_at(row_mm, plan.heights[tier + 1]);
  return block;
}

int visible(const OpenedYoke& opened, int stitches) {
  return stitches - 2 * opened.yoke.edge;
}

// The middle of what is worn at the front: of all pieces called so, or of the first one. In stitches of the lowest
// tier, from the left end of the first piece.
double middle_of_front(const OpenedYoke& opened, const SizePlan& plan) {
  double before = 0;
  double low = -1;
  double high = 0;
  for (const PieceOfSize& piece : plan.pieces) {
    const int wide = visible(opened, piece.tiers.front().stitches);
    if (piece.name.starts_with("front")) {
      low = low < 0 ? before : low;
      high = before + wide;
    }
    before += wide;
  }
  return low < 0 ? visible(opened, plan.pieces.front().tiers.front().stitches) / 2.0 : (low + high) / 2;
}

// The ring as it is at the first row of a tier, or at the top.
struct Ring {
  double radius = 0;         // mm
  std::vector<double> turns; // where each piece begins and, at last, where the ring closes; 0: the front's middle
};

Ring ring_at(const OpenedYoke& opened, const SizePlan& plan, std::size_t tier, double front_share) {
  const bool top = tier == opened.tiers.size();
  std::vector<int> wide;
  double all = 0;
  for (const PieceOfSize& piece : plan.pieces) {
    wide.push_back(visible(opened, top ? piece.tiers.back().shaping.after : piece.tiers[tier].stitches));
    all += wide.back();
  }
  Ring ring;
  const double stitch = opened.tiers[top ? tier - 1 : tier].document.gauge.stitch_mm();
  ring.radius = all * stitch / (2 * std::numbers::pi);
  double before = 0;
  for (const int one : wide) {
    ring.turns.push_back(before / all - front_share);
    before += one;
  }
  ring.turns.push_back(1 - front_share);
  return ring;
}

struct RingPoint {
  float x;
  float y;
};

// Seen from above with the front below: left to right along the front goes against the clock.
RingPoint point_on(double radius, double turns) {
  const double angle = 2 * std::numbers::pi * turns - std::numbers::pi / 2;
  return {static_cast<float>(radius * std::cos(angle)), static_cast<float>(radius * std::sin(angle))};
}

} // namespace

YokePicture picture_of(const OpenedYoke& opened, const SizePlan& plan, std::size_t size, ColourSight sight) {
  return Painter(opened, plan, size, sight).run();
}

std::vector<double> row_heights(const OpenedYoke& opened, std::size_t size) {
  std::vector<double> heights{0};
  for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
    const Gauge& gauge = opened.tiers[tier].document.gauge;
    const double plain = opened.yoke.gauge.plain_rows ? 100 / *opened.yoke.gauge.plain_rows : gauge.row_mm();
    const int pattern = pattern_rows(opened, tier);
    const int all = pattern + opened.yoke.tiers[tier].plain_above.at(size);
    for (int row = 0; row < all; ++row) {
      heights.push_back(heights.back() + (row < pattern ? gauge.row_mm() : plain));
    }
  }
  return heights;
}

YokeShape flat_shape(const OpenedYoke& opened, const SizePlan& plan, const YokePicture& picture,
                     const std::vector<double>& row_mm) {
  YokeShape shape;
  double left = 0;
  for (std::size_t piece = 0; piece < plan.pieces.size(); ++piece) {
    double widest = 0;
    for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
      widest = std::max(widest, visible(opened, plan.pieces[piece].tiers[tier].stitches) *
                                    opened.tiers[tier].document.gauge.stitch_mm());
    }
    for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
      const int stitches = plan.pieces[piece].tiers[tier].stitches;
      const double wide = visible(opened, stitches) * opened.tiers[tier].document.gauge.stitch_mm();
      YokeBlock block = heights_of(opened, plan, row_mm, piece, tier);
      block.left = static_cast<float>(left + (widest - wide) / 2);
      block.right = block.left + static_cast<float>(wide);
      const int from = picture.left[tier][piece];
      add_block(shape, block, picture, opened, plan, from + opened.yoke.edge, from + stitches - opened.yoke.edge);
      shape.seams.push_back({tier, piece, block.right, block.bottom, block.right, block.top});
    }
    left += widest + gap_mm;
  }
  shape.width = static_cast<float>(left - gap_mm);
  shape.height = mm_at(row_mm, plan.heights.back());
  return shape;
}

YokeShape worn_shape(const OpenedYoke& opened, const SizePlan& plan, const YokePicture& picture,
                     const std::vector<double>& row_mm) {
  YokeShape shape;
  double all = 0;
  for (const PieceOfSize& piece : plan.pieces) {
    all += visible(opened, piece.tiers.front().stitches);
  }
  const double front = middle_of_front(opened, plan) / all;
  double widest = 0;
  for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
    const Ring low = ring_at(opened, plan, tier, front);
    const Ring high = ring_at(opened, plan, tier + 1, front);
    widest = std::max({widest, low.radius, high.radius});
    const int first = plan.heights[tier];
    const int last = plan.heights[tier + 1];
    const int middle = first + pattern_rows(opened, tier);
    const double share =
        (row_mm[static_cast<std::size_t>(middle)] - row_mm[static_cast<std::size_t>(first)]) /
        std::max(1e-6, row_mm[static_cast<std::size_t>(last)] - row_mm[static_cast<std::size_t>(first)]);
    for (std::size_t piece = 0; piece < plan.pieces.size(); ++piece) {
      const int stitches = visible(opened, plan.pieces[piece].tiers[tier].stitches);
      const int from = picture.left[tier][piece] + opened.yoke.edge;
      const int parts = std::clamp(stitches, 1, 90);
      const auto corner = [&](double up, int part, int row) {
        const double along = static_cast<double>(part) / parts;
        const auto turns_of = [&](const Ring& ring) {
          return std::lerp(ring.turns[piece], ring.turns[piece + 1], along);
        };
        const RingPoint at =
            point_on(std::lerp(low.radius, high.radius, up), std::lerp(turns_of(low), turns_of(high), up));
        return YokeCorner{at.x, at.y, u_of(picture, from + along * stitches), v_of(picture, row)};
      };
      for (int part = 0; part < parts; ++part) {
        shape.quads.push_back({{corner(0, part, first), corner(0, part + 1, first), corner(share, part + 1, middle),
                                corner(share, part, middle)}});
        shape.quads.push_back({{corner(share, part, middle), corner(share, part + 1, middle), corner(1, part + 1, last),
                                corner(1, part, last)}});
      }
      const YokeCorner below = corner(0, parts, first);
      const YokeCorner above = corner(1, parts, last);
      shape.seams.push_back({tier, piece, below.x, below.y, above.x, above.y});
      YokeBlock block = heights_of(opened, plan, row_mm, piece, tier);
      const RingPoint middle_point = point_on(low.radius, (low.turns[piece] + low.turns[piece + 1]) / 2);
      block.left = middle_point.x; // for the words beside it: the middle of its lower edge
      block.right = middle_point.y;
      shape.blocks.push_back(block);
    }
  }
  shape.width = static_cast<float>(2 * widest);
  shape.height = shape.width;
  return shape;
}

YokeShape bed_shape(const OpenedYoke& opened, const SizePlan& plan, const YokePicture& picture,
                    const std::vector<double>& row_mm, std::size_t piece) {
  YokeShape shape;
  const int leftmost = opened.profile.leftmost().position;
  for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
    const TierOfPiece& there = plan.pieces[piece].tiers[tier];
    YokeBlock block = heights_of(opened, plan, row_mm, piece, tier);
    block.left = static_cast<float>(there.bed.first.position - leftmost);
    block.right = block.left + static_cast<float>(there.stitches);
    const int from = picture.left[tier][piece];
    // The knitter sees the purl side: the knit side's last stitch hangs on the leftmost needle.
    add_block(shape, block, picture, opened, plan, from + there.stitches, from);
  }
  shape.width = static_cast<float>(opened.profile.needles);
  shape.height = mm_at(row_mm, plan.heights.back());
  return shape;
}

} // namespace punchwright::editor
