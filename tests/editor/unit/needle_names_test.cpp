// Names of needles below the drawing: as many as keep apart.
#include "editor/needle_names.hpp"

#include <algorithm>
#include <cstdlib>
#include <doctest/doctest.h>

using namespace punchwright;
using namespace punchwright::editor;

namespace {

// A repeat of 20 as it lies on a bed whose middle falls between its last column and its first: R1 is column 20, L1
// column 1, and L10 and R10 stand side by side in its middle.
std::vector<Needle> across_the_join() {
  std::vector<Needle> needles;
  for (int number = 1; number <= 10; ++number) {
    needles.push_back(left_needle(number));
  }
  for (int number = 10; number >= 1; --number) {
    needles.push_back(right_needle(number));
  }
  return needles;
}

NameRoom room_of(float cell, int step, int chosen) {
  return {cell, 4, step, chosen, [](const std::string& name, bool) { return 7.0F * static_cast<float>(name.size()); }};
}

} // namespace

TEST_CASE("names of needles keep apart at every size and wherever the cursor stands") {
  const std::vector<Needle> needles = across_the_join();
  for (const float cell : {2.0F, 4.0F, 8.0F, 12.0F, 15.0F, 24.0F, 40.0F}) {
    for (const int step : {1, 2, 5, 10}) {
      for (int chosen = 0; chosen < 20; ++chosen) {
        const NameRoom room = room_of(cell, step, chosen);
        const std::vector<int> named = columns_with_names(needles, room);
        REQUIRE_FALSE(named.empty());
        CHECK(named.front() == chosen);
        for (const int one : named) {
          for (const int another : named) {
            const auto wide = [&](int column) {
              return room.width(name_of(needles[static_cast<std::size_t>(column)]), false);
            };
            const float apart = static_cast<float>(std::abs(one - another)) * cell - (wide(one) + wide(another)) / 2;
            CHECK((one == another || apart >= room.gap));
          }
        }
      }
    }
  }
}

TEST_CASE("every name that has room is there: each second needle, and of L10 and R10 beside each other one") {
  const std::vector<int> named = columns_with_names(across_the_join(), room_of(24, 2, 0));
  CHECK(std::ranges::count(named, 9) == 1);  // L10
  CHECK(std::ranges::count(named, 10) == 0); // R10
  CHECK(named.size() == 10);                 // L1, where the cursor is, L4 to L10, R8 to R2
}
