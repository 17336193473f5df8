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

// The first row that hangs where the next tier goes on: those that set it up.
int hung_row(const OpenedYoke& opened, const SizePlan& plan, std::size_t tier) {
  return plan.heights[tier + 1] - plain_rows_needed(opened, tier).setting_up;
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

// Pixels of a row, from the left of the view to its right.
struct Pixels {
  int from = 0;
  int to = 0;
};

// The block's parts: pattern rows, plain rows on the same stitches, those on what the decreases leave, and those that
// hang where the next tier goes on. Plain rows may be of another height.
void add_block(YokeShape& shape, const YokeBlock& block, const YokePicture& picture, const OpenedYoke& opened,
               const SizePlan& plan, Pixels own, Pixels then) {
  shape.blocks.push_back(block);
  const int first = plan.heights[block.tier];
  const int middle = first + pattern_rows(opened, block.tier);
  const int shaped = first_shaped_row(opened, plan, block.piece, block.tier);
  const int hung = hung_row(opened, plan, block.tier);
  const int last = plan.heights[block.tier + 1];
  const auto quad = [&](float left, float right, float low, float high, int from, int to, Pixels pixels) {
    const float v0 = v_of(picture, from);
    const float v1 = v_of(picture, to);
    const float u0 = u_of(picture, pixels.from);
    const float u1 = u_of(picture, pixels.to);
    shape.quads.push_back({{{{left, low, u0, v0}, {right, low, u1, v0}, {right, high, u1, v1}, {left, high, u0, v1}}}});
  };
  quad(block.left, block.right, block.bottom, block.pattern_top, first, middle, own);
  quad(block.left, block.right, block.pattern_top, block.shaped, middle, shaped, own);
  quad(block.shaped_left(), block.shaped_right(), block.shaped, block.hung, shaped, hung, then);
  quad(block.then_left, block.then_right, block.hung, block.top, hung, last, then);
}

YokeBlock heights_of(const OpenedYoke& opened, const SizePlan& plan, const std::vector<double>& row_mm,
                     std::size_t piece, std::size_t tier) {
  YokeBlock block;
  block.piece = piece;
  block.tier = tier;
  block.bottom = mm_at(row_mm, plan.heights[tier]);
  block.pattern_top = mm_at(row_mm, plan.heights[tier] + pattern_rows(opened, tier));
  block.shaped = mm_at(row_mm, first_shaped_row(opened, plan, piece, tier));
  block.hung = mm_at(row_mm, hung_row(opened, plan, tier));
  block.hung_again = block.hung;
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
      const TierOfPiece& there = plan.pieces[piece].tiers[tier];
      widest = std::max(widest, visible(opened, std::max(there.stitches, there.shaping.after)) *
                                    opened.tiers[tier].document.gauge.stitch_mm());
    }
    for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
      const int stitches = plan.pieces[piece].tiers[tier].stitches;
      const double wide = visible(opened, stitches) * opened.tiers[tier].document.gauge.stitch_mm();
      YokeBlock block = heights_of(opened, plan, row_mm, piece, tier);
      block.left = static_cast<float>(left + (widest - wide) / 2);
      block.right = block.left + static_cast<float>(wide);
      const int after = plan.pieces[piece].tiers[tier].shaping.after;
      const double then = visible(opened, after) * opened.tiers[tier].document.gauge.stitch_mm();
      block.then_left = static_cast<float>(left + (widest - then) / 2);
      block.then_right = block.then_left + static_cast<float>(then);
      block.narrows_at_once = true;
      const int from = picture.left[tier][piece] + opened.yoke.edge;
      add_block(shape, block, picture, opened, plan, {from, from + visible(opened, stitches)},
                {from, from + visible(opened, after)});
      shape.seams.push_back({tier, piece, block.right, block.bottom, block.right, block.shaped});
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
  const WornRing& outermost = *std::ranges::max_element(rings, {}, &WornRing::radius);
  for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
    const WornRing& low = rings[tier];
    const WornRing& high = rings[tier + 1];
    const int first = plan.heights[tier];
    const int last = plan.heights[tier + 1];
    const int middle = first + pattern_rows(opened, tier);
    const double foot = row_mm[static_cast<std::size_t>(first)];
    const double high_mm = std::max(1e-6, row_mm[static_cast<std::size_t>(last)] - foot);
    const auto share = [&](int row) { return (row_mm[static_cast<std::size_t>(row)] - foot) / high_mm; };
    for (std::size_t piece = 0; piece < plan.pieces.size(); ++piece) {
      const TierOfPiece& there = plan.pieces[piece].tiers[tier];
      const int own = visible(opened, there.stitches);
      const int from = picture.left[tier][piece] + opened.yoke.edge;
      const int parts = std::clamp(own, 1, 90);
      const auto corner = [&](double up, int part, int row, int stitches) {
        const double along = static_cast<double>(part) / parts;
        const auto turns_of = [&](const WornRing& ring) {
          return std::lerp(ring.turns[piece], ring.turns[piece + 1], along);
        };
        const RingPoint at =
            point_on(std::lerp(low.radius, high.radius, up), std::lerp(turns_of(low), turns_of(high), up));
        return YokeCorner{at.x, at.y, u_of(picture, from + along * stitches), v_of(picture, row)};
      };
      const auto ring = [&](int low_row, int high_row, int stitches) {
        const double down = share(low_row);
        const double up = share(high_row);
        for (int part = 0; part < parts; ++part) {
          shape.quads.push_back({{corner(down, part, low_row, stitches), corner(down, part + 1, low_row, stitches),
                                  corner(up, part + 1, high_row, stitches), corner(up, part, high_row, stitches)}});
        }
      };
      const int shaped = first_shaped_row(opened, plan, piece, tier);
      ring(first, middle, own);
      ring(middle, shaped, own);
      ring(shaped, last, visible(opened, there.shaping.after));
      const YokeCorner below = corner(0, parts, first, own);
      const YokeCorner above = corner(1, parts, last, own);
      shape.seams.push_back({tier, piece, below.x, below.y, above.x, above.y});
      YokeBlock block = heights_of(opened, plan, row_mm, piece, tier);
      const RingPoint outside = point_on(outermost.radius, (outermost.turns[piece] + outermost.turns[piece + 1]) / 2);
      block.left = outside.x; // for the words beside the piece, clear of all tiers
      block.right = outside.y;
      shape.blocks.push_back(block);
    }
  }
  shape.width = static_cast<float>(2 * outermost.radius);
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
    block.then_left = static_cast<float>(there.first_after.position - leftmost);
    block.then_right = block.then_left + static_cast<float>(there.shaping.after);
    block.stays = stays_on_needles(opened, there, tier);
    const int from = picture.left[tier][piece];
    // The knitter sees the purl side: the knit side's last stitch hangs on the leftmost needle.
    add_block(shape, block, picture, opened, plan, {from + there.stitches, from}, {from + there.shaping.after, from});
  }
  shape.width = static_cast<float>(opened.profile.needles);
  shape.height = mm_at(row_mm, plan.heights.back());
  return shape;
}

YokeShape parted(YokeShape shape, float gap) {
  float up = 0;
  for (std::size_t tier = 0; tier < shape.blocks.size(); ++tier) {
    YokeBlock& block = shape.blocks[tier];
    const float then = up + (block.stays || tier + 1 == shape.blocks.size() ? 0 : gap);
    for (float* height : {&block.bottom, &block.pattern_top, &block.shaped, &block.hung}) {
      *height += up;
    }
    block.hung_again += then;
    block.top += then;
    for (std::size_t part = 0; part < quads_of_block; ++part) {
      for (YokeCorner& corner : shape.quads[quads_of_block * tier + part].corners) {
        corner.y += part + 1 < quads_of_block ? up : then;
      }
    }
    up = then;
  }
  shape.height += up;
  return shape;
}

} // namespace punchwright::editor
