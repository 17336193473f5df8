// The stitches of a yoke as a picture, and where its parts lie in each view. Pure functions from the plan.
#include "editor/yoke_cache.hpp"
#include "pieces/worn_yoke.hpp"
#include "pieces/yoke_cloth.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace punchwright::editor {

namespace {

constexpr double gap_mm = 12; // between pieces that are laid flat

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
  YokeCloth cloth = yoke_cloth(opened, plan, size);
  YokePicture picture;
  picture.width = cloth.width;
  picture.height = cloth.height;
  picture.left = std::move(cloth.left);
  picture.rgb.reserve(cloth.stitches.size() * 3);
  for (const Colour colour : cloth.stitches) {
    const Colour seen = seen_as(colour, sight);
    picture.rgb.insert(picture.rgb.end(), {seen.red, seen.green, seen.blue});
  }
  return picture;
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
  const std::vector<WornRing> rings = worn_rings(opened, plan);
  double widest = 0;
  for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
    const WornRing& low = rings[tier];
    const WornRing& high = rings[tier + 1];
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
        const auto turns_of = [&](const WornRing& ring) {
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
