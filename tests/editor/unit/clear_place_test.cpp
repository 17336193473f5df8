// A tip leaves uncovered what it speaks about, as far as the window has room beside it.
#include "editor/clear_place.hpp"

#include <doctest/doctest.h>
#include <random>

using namespace punchwright;
using namespace punchwright::editor;

namespace {

constexpr ScreenBox window{0, 0, 800, 600};

ScreenBox box_at(const ClearPlace& place, ScreenPoint size) {
  return {place.corner.x, place.corner.y, place.corner.x + size.x, place.corner.y + size.y};
}

bool meet(const ScreenBox& one, const ScreenBox& other) {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
}

} // namespace

TEST_CASE("beside the pointer, where nothing is in the way") {
  const ClearPlace place = clear_place({200, 80}, {300, 300}, {}, window);
  CHECK(meet(box_at(place, {200, 80}), {280, 280, 320, 320}));
  CHECK_FALSE(box_at(place, {200, 80}).contains({300, 300}));
}

TEST_CASE("beside a box, where there is room; else clear of the first ones") {
  const ScreenBox tier{100, 250, 700, 350};
  const ScreenBox all{100, 100, 700, 500};
  const ClearPlace beside = clear_place({200, 80}, {300, 300}, {tier, all}, window);
  CHECK(beside.clear == 2);
  CHECK_FALSE(meet(box_at(beside, {200, 80}), all));
  const ClearPlace over_others = clear_place({200, 140}, {300, 300}, {tier, all}, window);
  CHECK(over_others.clear == 1); // 100 px above and below all
  CHECK_FALSE(meet(box_at(over_others, {200, 140}), tier));
  CHECK(clear_place({700, 500}, {300, 300}, {tier, all}, window).clear == 0);
}

TEST_CASE("a place is found wherever there is one: against trying every pixel") {
  std::mt19937 dice(8);
  const auto from = [&dice](int least, int most) {
    return static_cast<float>(std::uniform_int_distribution<int>(least, most)(dice));
  };
  int clear_of_all = 0;
  for (int round = 0; round < 200; ++round) {
    const ScreenBox small{0, 0, 60, 40};
    const ScreenPoint size{from(5, 50), from(5, 30)};
    std::vector<ScreenBox> boxes;
    for (int box = 0; box < 2; ++box) {
      const float left = from(0, 40);
      const float top = from(0, 25);
      boxes.push_back({left, top, left + from(3, 40), top + from(3, 20)});
    }
    bool possible = false;
    for (float x = 0; x + size.x <= small.right; ++x) {
      for (float y = 0; y + size.y <= small.bottom; ++y) {
        const ScreenBox here{x, y, x + size.x, y + size.y};
        possible = possible || (!meet(here, boxes[0]) && !meet(here, boxes[1]));
      }
    }
    const ClearPlace place = clear_place(size, {from(0, 60), from(0, 40)}, boxes, small);
    CHECK((place.clear == 2) == possible);
    clear_of_all += possible ? 1 : 0;
  }
  CHECK(clear_of_all > 40);
}
