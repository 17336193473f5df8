// Decreases as needles: stitches balance, no loop goes onto a seam stitch or onto a needle that is emptied or taken,
// and each goes the way it should.
#include "pieces/shaping.hpp"

#include <algorithm>
#include <doctest/doctest.h>
#include <map>
#include <random>
#include <set>

using namespace punchwright;

namespace {

Shaping shaped(int before, int after, YokeDecreases how = {}, int edge = 1) {
  return shaping_between({centred_first_needle(before), before, after, edge, how, {}});
}

// What no row of decreases may break, whatever was wished.
void check_row(const Shaping& shaping, Needle first, int edge) {
  REQUIRE(static_cast<int>(shaping.transfers.size()) == shaping.decreases());
  REQUIRE(shaping.forward.size() == shaping.transfers.size());
  const int left_edge = first.position + edge;
  const int right_edge = first.position + shaping.before - 1 - edge;
  const int on_edge = edge == 0 && shaping.kept_off_edge ? 1 : 0; // the outermost stitches are the piece's edge
  REQUIRE((shaping.kept_off_edge || (edge == 0 && 2 * shaping.decreases() > shaping.before - 2)));
  std::set<int> touched;
  for (std::size_t number = 0; number < shaping.transfers.size(); ++number) {
    const Transfer& transfer = shaping.transfers[number];
    REQUIRE(transfer.from == shaping.forward[number]);
    REQUIRE(std::abs(transfer.from.position - transfer.to.position) == 1);
    if (shaping.before > 2) { // never onto an edge stitch
      REQUIRE(transfer.to.position > first.position);
      REQUIRE(transfer.to.position < first.position + shaping.before - 1);
    }
    for (const Needle needle : {transfer.from, transfer.to}) {
      REQUIRE(needle.position >= left_edge + on_edge);
      REQUIRE(needle.position <= right_edge - on_edge);
      REQUIRE(touched.insert(needle.position).second);
    }
  }
}

// Stitches are counted from 1; the middle one of an odd number may go to either side.
bool goes_right_way(int from, int to, int before, DecreaseTowards towards) {
  const int doubled = 2 * from - (before + 1); // below 0 on the left half
  const int way = towards == DecreaseTowards::centre ? from - to : to - from;
  return doubled == 0 || (doubled < 0) == (way < 0);
}

} // namespace

TEST_CASE("a worked row of decreases") {
  // Common practice: 81 stitches on L40 to R41, 18 decreases, 63 left on L31 to R32.
  const Shaping row = shaped(81, 63);
  CHECK(row.every == Steps{{5, 2}, {4, 13}, {5, 3}});
  CHECK(name_of(row.forward.front()) == "L36");
  CHECK(name_of(row.forward.back()) == "R37"); // four remain: R38 to R41
  CHECK(row.transfers.front() == Transfer{left_needle(36), left_needle(35)});
  CHECK(row.transfers.back() == Transfer{right_needle(37), right_needle(36)});
  CHECK(name_of(centred_first_needle(63)) == "L31");
  CHECK(centred_first_needle(63).position + 62 == right_needle(32).position);
  check_row(row, centred_first_needle(81), 1);
}

TEST_CASE("towards the edges, where it is wished") {
  YokeDecreases how;
  how.towards = DecreaseTowards::edges;
  const Shaping row = shaped(81, 63, how);
  CHECK(row.transfers.front() == Transfer{left_needle(36), left_needle(37)});
  CHECK(row.transfers.back() == Transfer{right_needle(37), right_needle(38)});
}

TEST_CASE("any row of decreases is sound") {
  std::mt19937 dice(11);
  const auto from = [&dice](int least, int most) { return std::uniform_int_distribution<int>(least, most)(dice); };
  for (int round = 0; round < 3000; ++round) {
    const int edge = from(0, 3);
    const int before = from(2 * edge + 2, 120);
    const int count = from(0, (before - 2 * edge) / 2);
    const Needle first{from(-70, -10)};
    YokeDecreases how{static_cast<DecreaseWay>(from(0, 2)), static_cast<DecreaseTowards>(from(0, 1)), from(0, 2),
                      from(0, 1) == 1};
    std::vector<bool> centre;
    for (int stitch = 0; stitch < before; ++stitch) {
      centre.push_back(how.clear_of_centre && stitch % 12 < 2);
    }
    CAPTURE(before);
    CAPTURE(count);
    CAPTURE(edge);
    const Shaping row = shaping_between({first, before, before - count, edge, how, centre});
    check_row(row, first, edge);
    for (const Transfer& transfer : row.transfers) {
      for (const Needle needle : {transfer.from, transfer.to}) {
        const int stitch = needle.position - first.position;
        if (row.kept_off_centre && how.clear_of_centre) {
          REQUIRE_FALSE(centre[static_cast<std::size_t>(stitch)]);
        }
        if (row.kept_off_seams) {
          REQUIRE(std::min(stitch, before - 1 - stitch) >= edge + how.clear_of_seam);
        }
        REQUIRE(std::min(stitch, before - 1 - stitch) >= edge + row.clear_of_seam);
      }
    }
  }
}

// Whether so many pairs, each with a way that is right, find room from that stitch on: tried one after the other.
bool right_ways_from(int stitch, int count, int last, int before, DecreaseTowards towards,
                     std::map<std::pair<int, int>, bool>& known) {
  if (count == 0) {
    return true;
  }
  if (stitch + 1 > last) {
    return false;
  }
  const auto [found, fresh] = known.try_emplace({stitch, count}, false);
  if (fresh) {
    const auto may_go = [&](int from, int to) {
      const bool onto_edge = before > 2 && (to == 1 || to == before);
      return !onto_edge && goes_right_way(from, to, before, towards);
    };
    const bool right = may_go(stitch, stitch + 1) || may_go(stitch + 1, stitch);
    const bool room = right_ways_from(stitch + 1, count, last, before, towards, known) ||
                      (right && right_ways_from(stitch + 2, count - 1, last, before, towards, known));
    known[{stitch, count}] = room;
  }
  return known[{stitch, count}];
}

TEST_CASE("none goes the other way where any row has all of them right: all counts up to 44 stitches") {
  int rows = 0;
  int unavoidable = 0;
  for (int edge = 0; edge <= 2; ++edge) {
    for (int before = 2 * edge + 2; before <= 44; ++before) {
      for (int count = 1; count <= (before - 2 * edge) / 2; ++count) {
        for (int kind = 0; kind < 18; ++kind) {
          const YokeDecreases how{static_cast<DecreaseWay>(kind % 3), static_cast<DecreaseTowards>(kind / 3 % 2),
                                  kind / 6, false};
          CAPTURE(before);
          CAPTURE(count);
          CAPTURE(kind);
          const Shaping row = shaped(before, before - count, how, edge);
          check_row(row, centred_first_needle(before), edge);
          int wrong = 0;
          int to_right = 0;
          const int first = centred_first_needle(before).position - 1;
          for (const Transfer& transfer : row.transfers) {
            wrong += goes_right_way(transfer.from.position - first, transfer.to.position - first, before, how.towards)
                         ? 0
                         : 1;
            to_right += transfer.to.position > transfer.from.position ? 1 : 0;
          }
          REQUIRE(row.astray == wrong);
          const int clear = edge + std::max(row.clear_of_seam, edge == 0 && row.kept_off_edge ? 1 : 0);
          REQUIRE(row.kept_off_seams == (row.clear_of_seam == how.clear_of_seam));
          if (!row.kept_off_seams) { // not even one stitch more has room, whatever way they go
            REQUIRE(2 * count > before - 2 * (clear + 1));
          }
          std::map<std::pair<int, int>, bool> known;
          const bool any = right_ways_from(clear + 1, count, before - clear, before, how.towards, known);
          REQUIRE((wrong == 0) == any);
          if (how.towards == DecreaseTowards::centre) {
            REQUIRE(any);                                 // every pair has a right way
            REQUIRE(std::abs(2 * to_right - count) <= 1); // the halves mirror each other
          }
          ++rows;
          unavoidable += wrong;
        }
      }
    }
  }
  CHECK(rows > 15'000);
  CHECK(unavoidable > 50);
}

TEST_CASE("without seam stitches the outermost ones are left alone where there is room, and else it is said") {
  YokeDecreases how;
  how.towards = DecreaseTowards::edges;
  for (const int clear : {0, 1}) {
    how.clear_of_seam = clear;
    const Shaping room = shaped(32, 17, how, 0); // 15 pairs of 30 stitches
    CHECK(room.kept_off_edge);
    CHECK(room.transfers.front().to == Needle{centred_first_needle(32).position + 1});
    const Shaping none = shaped(26, 13, how, 0); // 13 pairs of 26 stitches
    CHECK_FALSE(none.kept_off_edge);
    CHECK_FALSE(none.as_wished());
    // The pairs at both ends go inwards, never onto an edge stitch.
    CHECK(none.transfers.front() == Transfer{centred_first_needle(26), Needle{centred_first_needle(26).position + 1}});
    CHECK(clearance_words(none).find("off the outermost stitches") != std::string::npos);
  }
}

TEST_CASE("decreases that are close to each other still go towards the centre") {
  // 34 pairs fill all of the 68 stitches that are clear of the seams: 17 on either half.
  const Shaping row = shaped(72, 38);
  CHECK(row.every == Steps{{3, 1}, {2, 16}, {3, 1}, {2, 16}});
  CHECK(row.transfers.front() == Transfer{left_needle(34), left_needle(33)});
  CHECK(row.transfers[16] == Transfer{left_needle(2), left_needle(1)});
  CHECK(row.transfers[17] == Transfer{right_needle(2), right_needle(1)});
  CHECK(row.transfers.back() == Transfer{right_needle(34), right_needle(33)});
  CHECK(row.astray == 0);
  CHECK(clearance_words(row) == "1 stitch clear of the seams");
}

TEST_CASE("towards the edges, the two middle stitches can't both go: it is said") {
  YokeDecreases how;
  how.towards = DecreaseTowards::edges;
  how.clear_of_seam = 0;
  const Shaping row = shaped(12, 7, how); // five pairs fill ten stitches, and the third is in the middle
  CHECK(row.astray == 1);
  CHECK_FALSE(row.as_wished());
  CHECK(clearance_words(row) == "no room for 1 decrease to go towards the edges");
  how.clear_of_seam = 1;
  CHECK(clearance_words(shaped(14, 9, how)) ==
        "1 stitch clear of the seams; no room for 1 decrease to go towards the edges");
  CHECK(shaped(14, 10, how).astray == 0);
}

TEST_CASE("clearances in words, and what found no room") {
  YokeDecreases how;
  CHECK(clearance_words(shaped(81, 63, how)) == "1 stitch clear of the seams");
  how.clear_of_seam = 0;
  CHECK(clearance_words(shaped(81, 63, how)) == "");
  how.clear_of_seam = 30;
  // 18 pairs take 36 of the 79 visible stitches: 21 stay clear on either side.
  CHECK(clearance_words(shaped(81, 63, how)) == "21 stitches clear of the seams, no room for 30");
  CHECK(clearance_words(shaped(81, 42, how)) == "no room to stay 30 stitches clear of the seams");
  CHECK(clearance_words(shaped(81, 99, how)) == "30 stitches clear of the seams"); // 18 between 19 visible ones
  how.clear_of_seam = 2;
  how.clear_of_centre = true;
  std::vector<bool> all(81, true);
  CHECK(clearance_words(shaping_between({Needle{-40}, 81, 63, 1, how, all})) ==
        "2 stitches clear of the seams; no room to stay off the motif's centre line");
  CHECK(clearance_words(shaping_between({Needle{-40}, 81, 99, 1, how, {}})) ==
        "2 stitches clear of the seams and off the motif's centre line");
}

TEST_CASE("increases: one behind each place, filled from the loop below") {
  YokeDecreases how;
  how.way = DecreaseWay::half_steps;
  // woolpackyarn.com, even increases: 51 stitches and 4 increases, flat: after 6, 19, 32, 45.
  const Shaping row = shaped(51, 55, how);
  CHECK(row.increases() == 4);
  CHECK(row.transfers.empty());
  CHECK(row.every == Steps{{6, 1}, {13, 3}});
  const std::vector<Needle> fill = needles_to_fill(row, Needle{-27});
  REQUIRE(fill.size() == 4);
  CHECK(fill[0].position == -27 + 6);
  CHECK(fill[1].position == -27 + 19 + 1);
  CHECK(fill[3].position == -27 + 45 + 3);
}

TEST_CASE("needles beside each other are every needle, never every 1st") {
  CHECK(words_of(Steps{{1, 1}}) == "every needle once");
  CHECK(words_of(Steps{{1, 2}, {2, 1}}) == "every needle twice, every 2nd once");
  CHECK(words_of(Steps{{2, 3}, {1, 11}, {2, 1}}) == "every 2nd needle 3 times, every needle 11 times, every 2nd once");
  CHECK(words_of(Steps{{11, 1}, {21, 2}}) == "every 11th needle once, every 21st twice");
}
