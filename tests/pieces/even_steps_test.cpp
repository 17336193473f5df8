// Even spacing against examples that were published elsewhere, each with its source.
#include "pieces/even_steps.hpp"
#include "pieces/shaping.hpp"

#include <cmath>
#include <doctest/doctest.h>
#include <numeric>
#include <set>

using namespace punchwright;

namespace {

Steps steps(int stitches, int count, DecreaseWay way = DecreaseWay::gathered) {
  return steps_between(even_places(stitches, count, way));
}

int last_place(const Steps& every) {
  return std::accumulate(every.begin(), every.end(), 0,
                         [](int sum, const auto& step) { return sum + step.first * step.second; });
}

// A row of the round, laid flat with half a step at each end: it balances, its steps differ by one at most, across the
// seam too, and on the needles no more and no fewer stitches are left. `every`: the steps, where they are told.
void check_row(int before, int after, const Steps& every) {
  CAPTURE(before);
  const std::vector<int> places = even_places(before, before - after, DecreaseWay::half_steps);
  REQUIRE(static_cast<int>(places.size()) == before - after);
  const int step = before / (before - after);
  for (std::size_t number = 0; number < places.size(); ++number) {
    const int next = number + 1 < places.size() ? places[number + 1] : places.front() + before;
    CHECK(next - places[number] >= step);
    CHECK(next - places[number] <= step + 1);
  }
  if (!every.empty()) {
    CHECK(steps_between(places) == every);
  }
  for (const DecreaseWay way : {DecreaseWay::gathered, DecreaseWay::spread, DecreaseWay::half_steps}) {
    const Shaping row = shaping_between({Needle{-before / 2}, before, after, 0, {way, {}, 0, false}, {}});
    CHECK(row.before - row.decreases() == row.after);
    CHECK(row.after == after);
    CHECK(static_cast<int>(row.transfers.size()) == before - after);
    std::set<int> emptied;
    for (const Transfer& transfer : row.transfers) {
      emptied.insert(transfer.from.position);
    }
    CHECK(before - static_cast<int>(emptied.size()) == after); // never twice on a needle
  }
}

} // namespace

TEST_CASE("parts of whole stitches") {
  // twistedyarns.com, even decreases: 110 stitches, 14 decreases: 15 groups, 5 of 8 and 10 of 7.
  CHECK(even_parts(110, 15) == EvenParts{7, 10, 5});
  // papermoonknits.com, even decreases: 55 to 38: every 4th 4 times and every 3rd 13 times.
  CHECK(even_parts(55, 55 - 38) == EvenParts{3, 13, 4});
  // A. Budd, even increases, after J. Brunette: 124 stitches, 14 increases: every 8th twice and every 9th 12 times.
  CHECK(even_parts(124, 14) == EvenParts{8, 2, 12});
  // getknitting.com, sleeve increases: 140 rows, 36 increases: every 3rd row 4 times, every 4th 32 times.
  CHECK(even_parts(140, 36) == EvenParts{3, 4, 32});
  // 10rowsaday.com, decreases: 80 stitches, 10 decreases: 80/11 = 7.27; computed: 3 steps of 8 and 8 of 7.
  CHECK(even_parts(80, 11) == EvenParts{7, 8, 3});
}

// jenjoycedesign.com, 2012-08-16, percentage systems: 240 stitches go to 180, 120, 72 by decrease rows of 25 % (knit 2,
// knit 2 together), 33 1/3 % (knit 1, 2 together) and 40 % (knit 1, 2 together, knit 2 together by turns).
TEST_CASE("the percentage rows of a round yoke, as published") {
  const std::vector<int> chain = {240, 180, 120, 72};
  const double shares[] = {0.25, 1.0 / 3, 0.40};
  for (std::size_t row = 0; row < 3; ++row) {
    CHECK(std::lround(chain[row] * (1 - shares[row])) == chain[row + 1]);
  }
  CHECK(even_parts(240, 240 - 180) == EvenParts{4, 60, 0}); // every 4th, all the way round
  CHECK(even_parts(180, 180 - 120) == EvenParts{3, 60, 0});
  CHECK(even_parts(120, 120 - 72) == EvenParts{2, 24, 24}); // 3 and 2 by turns
  check_row(240, 180, {{2, 1}, {4, 59}});
  check_row(180, 120, {{1, 1}, {3, 59}});
  Steps by_turns;
  for (int turn = 0; turn < 24; ++turn) {
    by_turns.insert(by_turns.end(), {{3, 1}, {2, 1}});
  }
  by_turns.insert(by_turns.begin(), {1, 1});
  by_turns.pop_back();
  check_row(120, 72, by_turns);
}

// handmadestitchbystitch.wordpress.com, summary of Knitting Without Tears and Knitting Around, and
// schoolhousepress.com, blog 38: 268 go to 179, 120, 80, a third in every row. Sources round to what the repeat needs,
// so that a stitch more or less is theirs.
TEST_CASE("a third in every row, as published") {
  const std::vector<int> chain = {268, 179, 120, 80};
  for (std::size_t row = 0; row < 3; ++row) {
    CHECK(std::fabs(chain[row] * 2 / 3.0 - chain[row + 1]) <= 1);
  }
  CHECK(even_parts(268, 268 - 179) == EvenParts{3, 88, 1});
  CHECK(even_parts(179, 179 - 120) == EvenParts{3, 57, 2});
  CHECK(even_parts(120, 120 - 80) == EvenParts{3, 40, 0});
  check_row(268, 179, {});
  check_row(179, 120, {});
  check_row(120, 80, {{1, 1}, {3, 39}});
}

TEST_CASE("gathered: the long steps at both ends") {
  // Common practice: 81 stitches, 18 decreases: every 5th needle twice, every 4th 13 times, every 5th three times.
  CHECK(steps(81, 18) == Steps{{5, 2}, {4, 13}, {5, 3}});
  CHECK(last_place(steps(81, 18)) == 77); // four remain at the end
  CHECK(words_of(steps(81, 18)) == "every 5th needle twice, every 4th 13 times, every 5th 3 times");
  CHECK(steps(90, 16) == Steps{{6, 2}, {5, 11}, {6, 3}});
  CHECK(words_of(steps(90, 16)) == "every 6th needle twice, every 5th 11 times, every 6th 3 times");
  // issuhub.com/view/index/4587: 30 stitches, 10 decreases: 20 left.
  CHECK(even_places(30, 10, DecreaseWay::gathered).size() == 10);
}

TEST_CASE("half steps at both ends: flat, as it is published") {
  // woolpackyarn.com, even increases: 51 stitches and 4 increases, flat: after 6, 19, 32, 45.
  CHECK(even_places(51, 4, DecreaseWay::half_steps) == std::vector<int>{6, 19, 32, 45});
  // The same: 112 and 16: every 7; flat begins at half a step.
  CHECK(steps(112, 16, DecreaseWay::half_steps) == Steps{{3, 1}, {7, 15}});
  // Lesson 'How to increase and decrease evenly': 48 and 12, flat: 2, then 4 eleven times, then 2.
  CHECK(steps(48, 12, DecreaseWay::half_steps) == Steps{{2, 1}, {4, 11}});
}

TEST_CASE("spread: no two steps differ by more than one, and the long ones are mixed in") {
  for (int stitches = 4; stitches <= 120; ++stitches) {
    for (int count = 1; 2 * count <= stitches - 2; ++count) {
      CAPTURE(stitches);
      CAPTURE(count);
      const EvenParts parts = even_parts(stitches, count + 1);
      for (const DecreaseWay way : {DecreaseWay::gathered, DecreaseWay::spread}) {
        std::vector<int> places = even_places(stitches, count, way);
        places.push_back(stitches); // the part behind the last place
        int before = 0;
        int long_steps = 0;
        for (std::size_t number = 0; number < places.size(); ++number) {
          const int step = places[number] - before;
          before = places[number];
          long_steps += step == parts.short_step + 1 ? 1 : 0;
          REQUIRE((step == parts.short_step || step == parts.short_step + 1));
          if (way == DecreaseWay::spread) { // nowhere more than half a stitch and a bit from its share
            const double share = static_cast<double>(stitches) * static_cast<double>(number + 1) / (count + 1);
            REQUIRE(std::abs(places[number] - share) <= 0.5);
          }
        }
        REQUIRE(long_steps == parts.long_parts);
      }
    }
  }
}

TEST_CASE("words") {
  CHECK(words_of({}) == "none");
  CHECK(words_of({{45, 1}}) == "every 45th needle once");
  CHECK(words_of({{3, 1}, {2, 2}, {21, 3}, {11, 1}, {12, 1}}) ==
        "every 3rd needle once, every 2nd twice, every 21st 3 times, every 11th once, every 12th once");
}
