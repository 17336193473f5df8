// Notes beside a column of lines: near their own, in order, none over another.
#include "sheets/note_places.hpp"

#include <algorithm>
#include <doctest/doctest.h>
#include <random>

using namespace punchwright;

namespace {

double distance(const std::vector<WishedPlace>& wishes, const std::vector<double>& middles) {
  double sum = 0;
  for (std::size_t index = 0; index < wishes.size(); ++index) {
    sum += (middles[index] - wishes[index].middle) * (middles[index] - wishes[index].middle);
  }
  return sum;
}

bool stand_clear(const std::vector<WishedPlace>& wishes, const std::vector<double>& middles, double top,
                 double bottom) {
  double end = top - 1e-9;
  for (std::size_t index = 0; index < wishes.size(); ++index) {
    if (middles[index] - wishes[index].height / 2 < end - 1e-9) {
      return false;
    }
    end = middles[index] + wishes[index].height / 2;
  }
  return end <= bottom + 1e-9;
}

} // namespace

TEST_CASE("notes with room enough stand where they wish") {
  CHECK(places_of({{5, 2}, {10, 4}, {30, 2}}, 0, 40) == std::vector<double>{5, 10, 30});
  CHECK(places_of({}, 0, 40) == std::vector<double>{});
}

TEST_CASE("two that wish the same place share the way") {
  CHECK(places_of({{10, 2}, {10, 2}}, 0, 40) == std::vector<double>{9, 11});
}

TEST_CASE("at the room's ends they move inwards, and push the next ones") {
  CHECK(places_of({{-20, 2}, {-10, 2}, {2, 2}}, 0, 40) == std::vector<double>{1, 3, 5});
  CHECK(places_of({{39, 2}, {90, 4}}, 0, 40) == std::vector<double>{35, 38});
}

TEST_CASE("higher together than the room, they have no places") {
  CHECK(places_of({{10, 20}, {20, 20}}, 0, 40));
  CHECK_FALSE(places_of({{10, 20}, {20, 20.1}}, 0, 40));
}

TEST_CASE("no other places are nearer to the wishes") {
  std::mt19937 dice(7);
  std::uniform_real_distribution<double> anywhere(-10, 110);
  std::uniform_real_distribution<double> height(1, 9);
  std::uniform_real_distribution<double> nudge(-3, 3);
  for (int time = 0; time < 300; ++time) {
    std::vector<WishedPlace> wishes(10);
    for (WishedPlace& wish : wishes) {
      wish = {anywhere(dice), height(dice)};
    }
    std::ranges::sort(wishes, {}, &WishedPlace::middle);
    const auto middles = places_of(wishes, 0, 100);
    REQUIRE(middles);
    REQUIRE(stand_clear(wishes, *middles, 0, 100));
    for (int other = 0; other < 200; ++other) {
      std::vector<double> moved = *middles;
      const double by = nudge(dice);
      const std::size_t from = dice() % moved.size();
      for (std::size_t index = from; index < std::min(moved.size(), from + 1 + dice() % 4); ++index) {
        moved[index] += by;
      }
      if (stand_clear(wishes, moved, 0, 100)) {
        CHECK(distance(wishes, moved) >= distance(wishes, *middles) - 1e-6);
      }
    }
  }
}
