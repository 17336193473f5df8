// The outlines measure what rows and stitches measure, and pieces that are alike share one.
#include "pieces/schematic.hpp"
#include "pieces/yokes.hpp"

using namespace punchwright;
using namespace punchwright::test;

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
    REQUIRE(front.outline.size() == 8); // three tiers and the top, at both sides
    CHECK(front.outline[0].x == doctest::Approx(-front.outline[7].x));
    CHECK(front.outline[3].y == doctest::Approx(front.height));
    for (std::size_t tier = 0; tier < 3; ++tier) {
      CHECK(front.tiers[tier].pattern_top < front.tiers[tier].top);
      CHECK(front.outline[tier].y == front.tiers[tier].bottom);
    }
  }
}
