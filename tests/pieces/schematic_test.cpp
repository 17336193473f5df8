// The outlines measure what rows and stitches measure, and pieces that are alike share one.
#include "pieces/schematic.hpp"
#include "pieces/yokes.hpp"

#include <algorithm>

using namespace punchwright;
using namespace punchwright::test;

namespace {

// Of the outline at that height, which is in no corner of it; -1: it isn't upright there.
double width_at(const SchematicPiece& piece, double height) {
  double left = 0;
  double right = 0;
  for (std::size_t index = 0; index + 1 < piece.outline.size(); ++index) {
    const SchematicPoint& one = piece.outline[index];
    const SchematicPoint& next = piece.outline[index + 1];
    if (std::min(one.y, next.y) < height && std::max(one.y, next.y) > height) {
      if (one.x != next.x) {
        return -1;
      }
      (one.y < next.y ? left : right) = one.x;
    }
  }
  return right - left;
}

} // namespace

TEST_CASE("outlines measure what stitches and rows measure") {
  const Files files = pullover_files();
  const OpenedYoke yoke = opened(pullover(), files);
  for (std::size_t size = 0; size < yoke.yoke.sizes.size(); ++size) {
    CAPTURE(size);
    const auto plan = plan_size(yoke, size);
    REQUIRE(plan);
    const Schematic schematic = schematic_of(yoke, *plan, size);
    REQUIRE(schematic.pieces.size() == 2); // front and back, and the sleeves
    CHECK(schematic.pieces[0].pieces == std::vector<std::size_t>{0, 2});
    CHECK(schematic.pieces[1].pieces == std::vector<std::size_t>{1, 3});
    CHECK(outline_of(schematic, 3) == 1);
    CHECK(schematic.height == doctest::Approx(plan->rows.mm));
    const SchematicPiece& front = schematic.pieces[0];
    // Width in mm is visible stitches over stitches to 100 mm.
    const double stitches = yoke.tiers[0].document.gauge.stitches;
    CHECK(front.bottom == doctest::Approx((plan->pieces[0].tiers[0].stitches - 2) * 100 / stitches));
    CHECK(front.top == doctest::Approx((plan->pieces[0].tiers[2].shaping.after - 2) * 100 / stitches));
    CHECK(front.wished_bottom == yoke.yoke.pieces[0].bottom_cm.at(size) * 10);
    CHECK(schematic.around_bottom == doctest::Approx(2 * (schematic.pieces[0].bottom + schematic.pieces[1].bottom)));
    for (std::size_t tier = 0; tier < 3; ++tier) {
      CHECK(front.tiers[tier].pattern_top < front.tiers[tier].shaped);
      CHECK(front.tiers[tier].shaped < front.tiers[tier].top);
    }
    CHECK(front.outline.front() == SchematicPoint{-front.bottom / 2, 0});
    CHECK(front.outline.back() == SchematicPoint{front.bottom / 2, 0});
  }
}

TEST_CASE(
    "every row of an outline is as wide as its stitches: straight, and narrower from the row after decreases on") {
  const Files files = pullover_files();
  Yoke wished = pullover();
  wished.gauge.plain_rows = 21.0;                 // plain rows have heights of their own
  wished.pieces[1].top_cm = {{36.0, 38.0, 40.0}}; // and sleeves widen
  wished.fit.seams = YokeSeams::free;
  const OpenedYoke yoke = opened(wished, files);
  const auto plan = plan_size(yoke, 0);
  REQUIRE(plan);
  const Schematic schematic = schematic_of(yoke, *plan, 0);
  const std::vector<double> heights = row_heights(yoke, 0);
  int narrowed = 0;
  int widened = 0;
  for (std::size_t piece = 0; piece < 2; ++piece) {
    const SchematicPiece& drawn = schematic.pieces[outline_of(schematic, piece)];
    double widest = drawn.top; // stitches that are made above the last row, too
    for (std::size_t tier = 0; tier < 3; ++tier) {
      for (int row = plan->heights[tier]; row < plan->heights[tier + 1]; ++row) {
        const auto at = static_cast<std::size_t>(row);
        const double wide = (stitches_in_row(yoke, *plan, piece, tier, row) - 2) * 100 / 14.0;
        CAPTURE(piece);
        CAPTURE(row);
        CHECK(width_at(drawn, (heights[at] + heights[at + 1]) / 2) == doctest::Approx(wide));
        widest = std::max(widest, wide);
      }
      narrowed += plan->pieces[piece].tiers[tier].shaping.decreases() > 0 ? 1 : 0;
      widened += plan->pieces[piece].tiers[tier].shaping.increases() > 0 ? 1 : 0;
    }
    CHECK(drawn.widest == doctest::Approx(widest));
  }
  CHECK(narrowed > 0);
  CHECK(widened > 0);
}
