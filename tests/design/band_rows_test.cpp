// Rows in another pair of yarns: which bands cover the drawing then.
#include "design/band_rows.hpp"
#include "support/builders.hpp"

#include <algorithm>
#include <doctest/doctest.h>

using namespace punchwright;
using test::Dice;

namespace {

const std::vector<Band> two_bands = {Band{4, 'A', 'B', 3}, Band{3, 'A', 'C', 2}};

std::vector<std::pair<char, char>> pairs_by_row(const std::vector<Band>& bands) {
  std::vector<std::pair<char, char>> pairs;
  for (const Band& band : bands) {
    pairs.insert(pairs.end(), static_cast<std::size_t>(band.rows), {band.main, band.contrast.value_or('-')});
  }
  return pairs;
}

} // namespace

TEST_SUITE("rows in another pair of yarns") {
  TEST_CASE("a whole band keeps its place and its own plain rows") {
    CHECK(with_pair_in_rows(two_bands, 4, 3, 'D', 'E') ==
          std::vector<Band>{Band{4, 'A', 'B', 3}, Band{3, 'D', 'E', 2}});
    CHECK(with_pair_in_rows(two_bands, 0, 4, 'A', std::nullopt) ==
          std::vector<Band>{Band{4, 'A', std::nullopt, 3}, Band{3, 'A', 'C', 2}});
  }

  TEST_CASE("a row in a band cuts it in three; only the lowest part keeps the plain rows below") {
    CHECK(with_pair_in_rows(two_bands, 1, 1, 'D', 'E') ==
          std::vector<Band>{Band{1, 'A', 'B', 3}, Band{1, 'D', 'E', std::nullopt}, Band{2, 'A', 'B', std::nullopt},
                            Band{3, 'A', 'C', 2}});
  }

  TEST_CASE("a band's lowest row cuts it in two") {
    CHECK(with_pair_in_rows(two_bands, 4, 1, 'D', 'E') ==
          std::vector<Band>{Band{4, 'A', 'B', 3}, Band{1, 'D', 'E', 2}, Band{2, 'A', 'C', std::nullopt}});
  }

  TEST_CASE("the same pair once more changes nothing") {
    CHECK(with_pair_in_rows(two_bands, 1, 2, 'A', 'B') == two_bands);
  }

  TEST_CASE("whatever the rows, these have the pair and all others keep theirs") {
    for (std::uint64_t seed = 1; seed <= 300; ++seed) {
      Dice dice(seed);
      std::vector<Band> bands;
      for (int count = 1 + dice.throw_one(4); count > 0; --count) {
        bands.push_back(Band{1 + dice.throw_one(4), static_cast<char>('A' + dice.throw_one(2)),
                             dice.heads() ? std::optional('C') : std::nullopt,
                             dice.heads() ? std::optional(dice.throw_one(3)) : std::nullopt});
      }
      auto wanted = pairs_by_row(bands);
      const int height = static_cast<int>(wanted.size());
      const int first = dice.throw_one(height);
      const int count = 1 + dice.throw_one(height - first);
      const auto contrast = dice.heads() ? std::optional('C') : std::nullopt;
      const auto after = with_pair_in_rows(bands, first, count, 'B', contrast);
      for (int row = first; row < first + count; ++row) {
        wanted[static_cast<std::size_t>(row)] = {'B', contrast.value_or('-')};
      }
      CAPTURE(seed);
      CHECK(pairs_by_row(after) == wanted);
      CHECK(std::ranges::all_of(after, [](const Band& band) { return band.rows > 0; }));
    }
  }
}
