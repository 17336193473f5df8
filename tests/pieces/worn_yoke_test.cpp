// The yoke from above against its stitches: each of them is looked for where it lies on a cone, worked out here from
// counts and gauge alone.
#include "pieces/worn_yoke.hpp"
#include "yokes.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <numbers>

using namespace punchwright;
using namespace punchwright::test;

namespace {

constexpr double turn = 2 * std::numbers::pi;

SizePlan planned(const OpenedYoke& opened, std::size_t size) {
  auto plan = plan_size(opened, size);
  REQUIRE(plan);
  return std::move(plan).value();
}

// Visible stitches of the ring at the foot of that tier, or above the last one, up to that piece.
int stitches_before(const OpenedYoke& yoke, const SizePlan& plan, std::size_t tier, std::size_t piece) {
  int stitches = 0;
  for (std::size_t before = 0; before < piece; ++before) {
    const auto& tiers = plan.pieces[before].tiers;
    stitches += (tier == tiers.size() ? tiers.back().shaping.after : tiers[tier].stitches) - 2 * yoke.yoke.edge;
  }
  return stitches;
}

struct Point {
  double x;
  double y;
};

// Where the middle of that stitch lies, mm. The front's middle is below, and along the front one goes to the right.
Point place_of(const OpenedYoke& yoke, const SizePlan& plan, std::size_t tier, std::size_t piece, int stitch,
               double up) {
  const std::size_t pieces = plan.pieces.size();
  const auto at = [&](std::size_t ring) {
    const int all = stitches_before(yoke, plan, ring, pieces);
    const int begin = stitches_before(yoke, plan, ring, piece);
    const int end = stitches_before(yoke, plan, ring, piece + 1);
    const int visible = plan.pieces[piece].tiers[tier].stitches - 2 * yoke.yoke.edge;
    return (begin + (end - begin) * (stitch + 0.5) / visible) / all;
  };
  const double mm = 100 / yoke.tiers[tier].document.gauge.stitches;
  const double radius = std::lerp(stitches_before(yoke, plan, tier, pieces) * mm / turn,
                                  stitches_before(yoke, plan, tier + 1, pieces) * mm / turn, up);
  // All of the front is the first piece here, and its middle that of the lowest tier.
  const double front = stitches_before(yoke, plan, 0, 1) / 2.0 / stitches_before(yoke, plan, 0, pieces);
  const double angle = turn * (std::lerp(at(tier), at(tier + 1), up) - front) - turn / 4;
  return {radius * std::cos(angle), radius * std::sin(angle)};
}

struct Looked {
  OpenedYoke yoke;
  SizePlan plan;
  YokeCloth cloth;
  std::vector<Colour> picture;
  static constexpr int cells = 1500;
  double radius = 0; // mm, of the lowest ring

  Looked(const OpenedYoke& opened, std::size_t size)
      : yoke(opened), plan(planned(opened, size)), cloth(yoke_cloth(opened, plan, size)),
        picture(worn_picture(opened, plan, size, cells)) {
    radius = stitches_before(yoke, plan, 0, plan.pieces.size()) * 100 / yoke.tiers[0].document.gauge.stitches / turn;
  }

  [[nodiscard]] Colour at(Point point) const {
    const auto cell = [&](double mm) { return static_cast<std::size_t>(mm / (2 * radius) * cells); };
    return picture[cell(radius - point.y) * static_cast<std::size_t>(cells) + cell(point.x + radius)];
  }
};

} // namespace

TEST_CASE("every stitch that can be seen lies in the picture where the cone has it, in its colour") {
  const Files files = pullover_files();
  const OpenedYoke yoke = opened(pullover(), files);
  for (std::size_t size = 0; size < yoke.yoke.sizes.size(); ++size) {
    const Looked looked(yoke, size);
    int seen = 0;
    int other = 0;
    for (std::size_t tier = 0; tier < yoke.tiers.size(); ++tier) {
      const auto pattern = static_cast<int>(yoke.tiers[tier].rows.rows.size());
      const double row_mm = yoke.tiers[tier].document.gauge.row_mm();
      const double plain_mm = plain_row_mm(yoke, tier);
      const int plain = yoke.yoke.tiers[tier].plain_above.at(size);
      for (std::size_t piece = 0; piece < looked.plan.pieces.size(); ++piece) {
        for (int row = 0; row < pattern; ++row) {
          const double up = (row + 0.5) * row_mm / (pattern * row_mm + plain * plain_mm);
          for (int stitch = 0; stitch < looked.plan.pieces[piece].tiers[tier].stitches - 2 * yoke.yoke.edge; ++stitch) {
            const Colour there = looked.cloth.at(looked.cloth.left[tier][piece] + yoke.yoke.edge + stitch,
                                                 looked.plan.heights[tier] + row);
            ++seen;
            other += looked.at(place_of(yoke, looked.plan, tier, piece, stitch, up)) == there ? 0 : 1;
          }
        }
      }
    }
    CHECK(seen > 1000);
    CHECK(other == 0);
  }
}

TEST_CASE("the piece at a point is told between rings, too: its ends run straight from one to the other") {
  const Files files = pullover_files();
  const OpenedYoke yoke = opened(pullover(), files);
  const SizePlan plan = planned(yoke, 0);
  const std::vector<WornRing> rings = worn_rings(yoke, plan);
  double turned = 0; // the most that an end is turned from one ring to the next
  for (std::size_t tier = 0; tier < yoke.tiers.size(); ++tier) {
    for (std::size_t piece = 0; piece < plan.pieces.size(); ++piece) {
      turned = std::max(turned, std::fabs(rings[tier].turns[piece] - rings[tier + 1].turns[piece]));
      for (const double up : {0.02, 0.5, 0.98}) {
        for (const double along : {0.0001, 0.5, 0.9999}) {
          const double radius = std::lerp(rings[tier].radius, rings[tier + 1].radius, up);
          const auto end = [&](std::size_t which) {
            return std::lerp(rings[tier].turns[which], rings[tier + 1].turns[which], up);
          };
          const double angle = turn * std::lerp(end(piece), end(piece + 1), along) - turn / 4;
          const auto place = place_on_rings(rings, radius * std::cos(angle), radius * std::sin(angle));
          REQUIRE(place);
          CAPTURE(up);
          CAPTURE(along);
          CHECK(place->tier == tier);
          CHECK(place->piece == piece);
          CHECK(place->up == doctest::Approx(up));
          CHECK(place->along == doctest::Approx(along).epsilon(0.001));
        }
      }
    }
  }
  CHECK(turned > 0.001); // so that the lower ring alone would tell the wrong piece near an end
  CHECK_FALSE(place_on_rings(rings, 0, 0));
  CHECK_FALSE(place_on_rings(rings, rings.front().radius + 1, 0));
}

TEST_CASE("the front is told in any language: the first piece, and those beside it of the same first word") {
  const Files files = pullover_files();
  Yoke yoke = pullover();
  const auto turned_by = [&](const std::vector<std::string>& names) {
    for (std::size_t piece = 0; piece < names.size(); ++piece) {
      yoke.pieces[piece] = {names[piece], {{30.0}}, {{13.0}}, ""};
    }
    const OpenedYoke named = opened(yoke, files);
    return -worn_rings(named, planned(named, 0)).front().turns.front(); // from the first piece to the front's middle
  };
  for (const auto& names : {std::vector<std::string>{"front right", "front left", "back left", "back right"},
                            {"Vorderteil rechts", "Vorderteil links", "Rückenteil links", "Rückenteil rechts"}}) {
    CHECK(turned_by(names) == doctest::Approx(1 / 4.0));
  }
  for (const auto& names : {std::vector<std::string>{"front", "left sleeve", "back", "right sleeve"},
                            {"Vorderteil", "linker Ärmel", "Rückenteil", "rechter Ärmel"},
                            {"gore 1", "gore 2", "gore 3", "gore 4"}}) {
    CHECK(turned_by(names) == doctest::Approx(1 / 8.0));
  }
  CHECK(turned_by({"right sleeve", "front", "left sleeve", "back"}) == doctest::Approx(3 / 8.0));
}

TEST_CASE("wished rings have the wished widths in their round, each piece its share, the front below") {
  Yoke yoke = pullover();
  const auto rings = wished_rings(yoke, 0);
  double bottom = 0; // mm
  double top = 0;
  for (std::size_t piece = 0; piece < yoke.pieces.size(); ++piece) {
    bottom += yoke.pieces[widths_of(yoke, piece)].bottom_cm.at(0) * 10;
    top += yoke.pieces[widths_of(yoke, piece)].top_cm.at(0) * 10;
  }
  CHECK(rings[0].radius == doctest::Approx(bottom / turn));
  CHECK(rings[1].radius == doctest::Approx(top / turn));
  REQUIRE(rings[0].turns.size() == yoke.pieces.size() + 1);
  for (const WornRing& ring : rings) {
    CHECK(ring.turns.back() - ring.turns.front() == doctest::Approx(1));
  }
  const double front = yoke.pieces[0].bottom_cm.at(0) * 10 / bottom; // its share of the ring; its middle is at 0
  CHECK(rings[0].turns[0] == doctest::Approx(-front / 2));
  CHECK(rings[0].turns[1] == doctest::Approx(front / 2));
}

TEST_CASE("beside the yoke and in the neck there is nothing: white") {
  const Files files = pullover_files();
  const Looked looked(opened(pullover(), files), 0);
  const Colour white{255, 255, 255};
  CHECK(looked.at({0, 0}) == white);
  CHECK(looked.picture.front() == white);
  CHECK(looked.picture.back() == white);
  CHECK(looked.at({0, 0.99 * looked.radius}) != white);
  CHECK(looked.at({0, -0.99 * looked.radius}) != white);
  const double neck = stitches_before(looked.yoke, looked.plan, 3, 4) * 100 / 14.0 / turn;
  CHECK(looked.at({0, 0.98 * neck}) == white);
  CHECK(looked.at({0, 1.02 * neck}) != white);
}

TEST_CASE("a cell has the mean colour of what lies in it") {
  const Files files = pullover_files();
  const OpenedYoke yoke = opened(pullover(), files);
  const std::vector<Colour> one = worn_picture(yoke, planned(yoke, 0), 0, 1);
  REQUIRE(one.size() == 1);
  // Four by four points over the square: the corners lie beside the ring, and no yarn is white.
  CHECK(one.front().red < 255);
  const Yarn& contrast = yarn_of(yoke.tiers[0].document, 'B');
  CHECK(one.front().red > contrast.colour.red);
}

TEST_CASE("the front is below in whatever language its yoke was begun") {
  const Files files = pullover_files();
  // The front as the second piece: where no piece is called so, the first one takes its place.
  const auto seen = [&](const std::string& front) {
    Yoke yoke = pullover();
    std::ranges::rotate(yoke.pieces, yoke.pieces.end() - 1);
    yoke.pieces[0] = {"sleeve", yoke.pieces[2].bottom_cm, yoke.pieces[2].top_cm, ""};
    yoke.pieces[1].name = yoke.pieces[3].like = front;
    yoke.pieces[2] = {"other sleeve", {}, {}, "sleeve"};
    const OpenedYoke ring = opened(yoke, files);
    return worn_picture(ring, planned(ring, 0), 0, 60);
  };
  const std::vector<Colour> english = seen("front");
  CHECK(seen("Vorderteil") == english);
  CHECK(seen("vorn links") == english);
  CHECK(seen("scarf") != english);
}

TEST_CASE("a yoke whose tiers can't be seen is as wide as its pieces are wished, with a ring for each tier") {
  Yoke yoke = pullover();
  yoke.pieces = {{"front", {{40.0, 50.0}}, {{10.0, 12.0}}, ""}, {"back", {}, {}, "front"}};
  constexpr int cells = 401;
  const std::vector<Colour> picture = worn_outline(yoke, cells);
  REQUIRE(picture.size() == static_cast<std::size_t>(cells) * cells);
  constexpr int middle = cells / 2;
  const Colour white{255, 255, 255};
  // From the outer edge inwards: 20 cm around at the top of 80 at the bottom, a quarter of the way is the neck.
  std::vector<Colour> seen;
  int cloth = 0;
  for (int x = 0; x <= middle; ++x) {
    const Colour here = picture[static_cast<std::size_t>(middle * cells + x)];
    cloth += here != white ? 1 : 0;
    if (seen.empty() || seen.back() != here) {
      seen.push_back(here);
    }
  }
  CHECK(cloth == doctest::Approx(0.75 * middle).epsilon(0.02));
  std::erase_if(seen, [](const Colour& colour) { return colour != Colour{112, 120, 130}; });
  CHECK(seen.size() == yoke.tiers.size());
}
