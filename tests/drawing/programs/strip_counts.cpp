// Prints what is counted in strips of some sizes, a line each: width, rows, strips but for shifts, of them mirrored,
// and those that recur no sooner than after their width.
#include "../strip_counts.hpp"

#include <cstdio>
#include <utility>

int main() {
  for (const auto& [height, widest] : {std::pair{1, 12}, {2, 6}, {3, 4}, {4, 3}}) {
    for (int width = 1; width <= widest; ++width) {
      const auto counts = punchwright::test::counts_of_strips(width, height);
      std::printf("%d %d %lld %lld %lld\n", width, height, static_cast<long long>(counts.strips),
                  static_cast<long long>(counts.mirrored), static_cast<long long>(counts.whole));
    }
  }
}
