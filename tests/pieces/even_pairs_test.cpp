// No more even row of decreases or increases exists: against trying every row, and for all small counts against a
// search that goes on as long as something better could still come of it.
#include "pieces/shaping.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <doctest/doctest.h>
#include <functional>
#include <ostream>
#include <random>
#include <tuple>

using namespace punchwright;

namespace {

struct Wanted {
  int before = 0;
  int count = 0;
  int edge = 0;
  YokeDecreases how;
  bool increases = false;
  std::vector<bool> centre;

  [[nodiscard]] bool goes_round() const { return how.way == DecreaseWay::half_steps; }
};

// What is weighed, in this order; the steps of a row of half steps go on from its last place to its first one.
struct Weighed {
  int astray = 0;     // that go the other way than wished
  int unmirrored = 0; // more of them one way than the other
  int range = 0;      // longest step less the shortest
  int squares = 0;    // of the steps
  int moved = 0;      // squared stitches from where they would stand if they might
  auto operator<=>(const Weighed&) const = default;
};

std::ostream& operator<<(std::ostream& out, const Weighed& row) {
  return out << row.astray << " astray, " << row.unmirrored << " unmirrored, range " << row.range << ", squares "
             << row.squares << ", moved " << row.moved;
}

struct Going {
  int from = 0; // stitches, counted from 1
  int to = 0;
};

// Signs: left of the middle the doubled distance is below 0; towards the centre is to the right there.
bool is_right(int doubled, const Going& going, DecreaseTowards towards) {
  const int way = towards == DecreaseTowards::centre ? going.from - going.to : going.to - going.from;
  return doubled == 0 || (doubled < 0) == (way < 0);
}

Weighed weigh(const Wanted& wanted, const std::vector<Going>& row) {
  const std::vector<int> ideal = even_places(wanted.before, wanted.count, wanted.how.way);
  Weighed weighed;
  std::vector<int> steps;
  int last = wanted.goes_round() ? row.back().from - wanted.before : 0;
  for (std::size_t number = 0; number < row.size(); ++number) {
    const Going& going = row[number];
    if (!wanted.increases) {
      const int of_count = 2 * static_cast<int>(number) - (wanted.count - 1);
      weighed.astray += is_right(2 * going.from - (wanted.before + 1), going, wanted.how.towards) ? 0 : 1;
      weighed.unmirrored += is_right(of_count, going, wanted.how.towards) ? 0 : 1;
    }
    steps.push_back(going.from - last);
    last = going.from;
    const int off = going.from - ideal[number];
    weighed.moved += off * off;
  }
  if (!wanted.goes_round()) {
    steps.push_back(wanted.before - last);
  }
  const auto [shortest, longest] = std::ranges::minmax(steps);
  weighed.range = longest - shortest;
  for (const int step : steps) {
    weighed.squares += step * step;
  }
  return weighed;
}

Shaping shaped(const Wanted& wanted) {
  const int after = wanted.before + (wanted.increases ? wanted.count : -wanted.count);
  return shaping_between({Needle{0}, wanted.before, after, wanted.edge, wanted.how, wanted.centre});
}

std::vector<Going> row_of(const Shaping& shaping) {
  std::vector<Going> row;
  for (const Transfer& transfer : shaping.transfers) {
    row.push_back({transfer.from.position + 1, transfer.to.position + 1});
  }
  if (shaping.increases() > 0) {
    for (const Needle needle : shaping.forward) {
      row.push_back({needle.position + 1, needle.position + 2});
    }
  }
  return row;
}

// Both stitches of the pair, as far from the edges as was kept to.
bool may_stand(const Wanted& wanted, const Shaping& kept, int left) {
  const int outermost = wanted.edge == 0 && !wanted.increases && kept.kept_off_edge ? 1 : 0;
  const int clear = wanted.edge + std::max(outermost, kept.clear_of_seam);
  const bool off_centre = wanted.how.clear_of_centre && kept.kept_off_centre && !wanted.centre.empty();
  const auto at = static_cast<std::size_t>(left - 1);
  return left > clear && left + 1 <= wanted.before - clear &&
         !(off_centre && (wanted.centre[at] || wanted.centre[at + 1]));
}

// Nothing goes onto an edge stitch, unless there is none beside them.
bool may_go(const Wanted& wanted, const Going& going, int left) {
  return wanted.increases ? going.from == left : wanted.before <= 2 || (going.to != 1 && going.to != wanted.before);
}

// Every row of all, weighed at its end.
Weighed best_of_all(const Wanted& wanted, const Shaping& kept) {
  Weighed best{1'000'000};
  std::vector<Going> row;
  const std::function<void(int)> choose = [&](int free) {
    if (static_cast<int>(row.size()) == wanted.count) {
      best = std::min(best, weigh(wanted, row));
      return;
    }
    for (int left = free; left < wanted.before; ++left) {
      if (!may_stand(wanted, kept, left)) {
        continue;
      }
      for (const Going& going : {Going{left, left + 1}, Going{left + 1, left}}) {
        if (may_go(wanted, going, left)) {
          row.push_back(going);
          choose(left + (wanted.increases ? 1 : 2));
          row.pop_back();
        }
      }
    }
  };
  choose(1);
  return best;
}

// Whether any row has a smaller range of steps, or as small a one and less squares, with no more astray: a row is left
// as soon as what it has so far is worse, or the stitches that are left can't be cut into steps that are near enough.
class MoreEven {
public:
  MoreEven(const Wanted& wanted, const Shaping& kept, const Weighed& claimed)
      : wanted_(wanted), kept_(kept), claimed_(claimed) {}

  bool exists() {
    row_.clear();
    return choose(1, 1'000'000, 0, 0);
  }

private:
  bool choose(int free, int shortest, int longest, int squares) {
    if (static_cast<int>(row_.size()) == wanted_.count) {
      return weigh(wanted_, row_) < claimed_;
    }
    for (int left = free; left < wanted_.before; ++left) {
      for (const Going& going : {Going{left, left + 1}, Going{left + 1, left}}) {
        if (may_stand(wanted_, kept_, left) && may_go(wanted_, going, left) &&
            goes_on(going, left, shortest, longest, squares)) {
          return true;
        }
      }
    }
    return false;
  }

  bool goes_on(const Going& going, int left, int shortest, int longest, int squares) {
    const bool counted = !wanted_.goes_round() || !row_.empty(); // the first step round is known at the end
    const int step = going.from - (row_.empty() ? 0 : row_.back().from);
    if (counted) {
      shortest = std::min(shortest, step);
      longest = std::max(longest, step);
      squares += step * step;
    }
    row_.push_back(going);
    const bool found = longest - shortest <= claimed_.range && may_still(shortest, longest, squares) &&
                       choose(left + (wanted_.increases ? 1 : 2), shortest, longest, squares);
    row_.pop_back();
    return found;
  }

  [[nodiscard]] bool may_still(int shortest, int longest, int squares) const {
    if (weigh_ways() > std::pair(claimed_.astray, claimed_.unmirrored)) {
      return false;
    }
    const int steps = wanted_.count + 1 - static_cast<int>(row_.size());
    const int end = wanted_.before + (wanted_.goes_round() ? row_.front().from : 0);
    const int rest = end - row_.back().from;
    const bool near_enough = longest == 0 || (rest >= steps * std::max(0, longest - claimed_.range) &&
                                              rest <= steps * (shortest + claimed_.range));
    return near_enough && squares + (rest * rest + steps - 1) / steps <= most_squares();
  }

  // With a smaller range there may be more squares than claimed.
  [[nodiscard]] int most_squares() const { return claimed_.range <= 1 ? claimed_.squares : 1'000'000; }

  // Astray, and unmirrored, of those that stand already.
  [[nodiscard]] std::pair<int, int> weigh_ways() const {
    std::pair<int, int> ways;
    for (std::size_t number = 0; number < row_.size() && !wanted_.increases; ++number) {
      const int of_count = 2 * static_cast<int>(number) - (wanted_.count - 1);
      ways.first += is_right(2 * row_[number].from - (wanted_.before + 1), row_[number], wanted_.how.towards) ? 0 : 1;
      ways.second += is_right(of_count, row_[number], wanted_.how.towards) ? 0 : 1;
    }
    return ways;
  }

  const Wanted& wanted_;
  const Shaping& kept_;
  Weighed claimed_;
  std::vector<Going> row_;
};

std::vector<int> steps_of(const Wanted& wanted) {
  std::vector<int> steps;
  int last = 0;
  for (const Going& going : row_of(shaped(wanted))) {
    steps.push_back(going.from - last);
    last = going.from;
  }
  steps.push_back(wanted.before - last);
  return steps;
}

constexpr std::array all_ways = {DecreaseWay::gathered, DecreaseWay::spread, DecreaseWay::half_steps};

} // namespace

TEST_CASE("as few astray as can be, then as even as can be, then as near as can be: against trying every row") {
  std::mt19937 dice(3);
  const auto from = [&dice](int least, int most) { return std::uniform_int_distribution<int>(least, most)(dice); };
  int astray = 0;
  int uneven = 0;
  int off_centre = 0;
  for (int round = 0; round < 800; ++round) {
    Wanted wanted;
    wanted.edge = from(0, 2);
    wanted.before = from(2 * wanted.edge + 4, 13);
    wanted.count = from(1, std::min(4, (wanted.before - 2 * wanted.edge) / 2));
    wanted.how = {all_ways[static_cast<std::size_t>(from(0, 2))], static_cast<DecreaseTowards>(from(0, 1)), from(0, 1),
                  from(0, 2) == 0};
    for (int stitch = 0; stitch < wanted.before; ++stitch) {
      wanted.centre.push_back(stitch % 6 == 1);
    }
    CAPTURE(wanted.before);
    CAPTURE(wanted.count);
    CAPTURE(wanted.edge);
    const Shaping row = shaped(wanted);
    const Weighed found = weigh(wanted, row_of(row));
    CHECK(found == best_of_all(wanted, row));
    CHECK(row.astray == found.astray);
    astray += found.astray;
    uneven += found.range > 1 ? 1 : 0;
    off_centre += wanted.how.clear_of_centre && row.kept_off_centre ? 1 : 0;
  }
  CHECK(astray > 5);
  CHECK(uneven > 50);
  CHECK(off_centre > 50);
}

TEST_CASE("increases keep clear, and are as even as can be: against trying every row") {
  std::mt19937 dice(5);
  const auto from = [&dice](int least, int most) { return std::uniform_int_distribution<int>(least, most)(dice); };
  int no_room = 0;
  int off_centre = 0;
  for (int round = 0; round < 800; ++round) {
    Wanted wanted;
    wanted.increases = true;
    wanted.edge = from(0, 2);
    wanted.before = from(2 * wanted.edge + 2, 14);
    wanted.count = from(1, std::min(4, wanted.before - 2 * wanted.edge - 1));
    wanted.how = {all_ways[static_cast<std::size_t>(from(0, 2))], DecreaseTowards::centre, from(0, 3), from(0, 1) == 1};
    for (int stitch = 0; stitch < wanted.before; ++stitch) {
      wanted.centre.push_back(stitch % 6 < 2);
    }
    CAPTURE(wanted.before);
    CAPTURE(wanted.count);
    CAPTURE(wanted.edge);
    const Shaping row = shaped(wanted);
    REQUIRE(static_cast<int>(row.forward.size()) == wanted.count);
    CHECK(weigh(wanted, row_of(row)) == best_of_all(wanted, row));
    if (!row.kept_off_seams || !row.kept_off_centre) { // there is no room indeed
      Shaping as_wished;
      as_wished.clear_of_seam = wanted.how.clear_of_seam;
      CHECK(best_of_all(wanted, as_wished) == Weighed{1'000'000});
      ++no_room;
    }
    if (!row.kept_off_seams) { // nor for one stitch more beside the seams
      Shaping one_more;
      one_more.clear_of_seam = row.clear_of_seam + 1;
      one_more.kept_off_centre = false;
      CHECK(best_of_all(wanted, one_more) == Weighed{1'000'000});
    }
    off_centre += row.kept_off_centre && wanted.how.clear_of_centre ? 1 : 0;
  }
  CHECK(no_room > 50);
  CHECK(off_centre > 50);
}

TEST_CASE("no more even row exists: all rows of up to 26 stitches") {
  int rows = 0;
  int even = 0;
  Wanted wanted;
  for (wanted.edge = 0; wanted.edge <= 3; ++wanted.edge) {
    for (wanted.before = 2 * wanted.edge + 2; wanted.before <= 26; ++wanted.before) {
      for (int kind = 0; kind < 18; ++kind) {
        wanted.increases = kind >= 12;
        wanted.how = {all_ways[static_cast<std::size_t>(kind % 3)], static_cast<DecreaseTowards>(kind / 6 % 2),
                      kind / 3 % 2, false};
        const int visible = wanted.before - 2 * wanted.edge;
        const int most = wanted.increases ? visible - 1 : visible / 2;
        for (wanted.count = 1; wanted.count <= most; ++wanted.count) {
          CAPTURE(wanted.before);
          CAPTURE(wanted.count);
          CAPTURE(wanted.edge);
          CAPTURE(kind);
          const Shaping row = shaped(wanted);
          const Weighed claimed = weigh(wanted, row_of(row));
          CAPTURE(claimed);
          REQUIRE(row.astray == claimed.astray);
          REQUIRE_FALSE(MoreEven(wanted, row, claimed).exists());
          ++rows;
          even += claimed.range <= 1 ? 1 : 0;
        }
      }
    }
  }
  CHECK(rows > 12'000);
  CHECK(even > 5'000);
}

TEST_CASE("steps that are equal within one, where the edges leave that") {
  const auto wanted = [](int before, int count, int edge, DecreaseWay way, DecreaseTowards towards) {
    return Wanted{before, count, edge, {way, towards, 1, false}, false, {}};
  };
  using enum DecreaseTowards;
  // Two seam stitches and one clear of them: the first step is four needles at least.
  CHECK(steps_of(wanted(38, 11, 2, DecreaseWay::spread, centre)) ==
        std::vector<int>{4, 3, 3, 3, 3, 3, 3, 3, 3, 4, 3, 3});
  for (const DecreaseWay way : {DecreaseWay::gathered, DecreaseWay::spread}) {
    for (const auto& [before, count] : {std::pair(38, 11), std::pair(77, 18), std::pair(60, 15), std::pair(81, 18)}) {
      for (const int edge : {1, 2}) {
        CAPTURE(before);
        CAPTURE(edge);
        const std::vector<int> steps = steps_of(wanted(before, count, edge, way, centre));
        const auto [shortest, longest] = std::ranges::minmax(steps);
        CHECK(longest - shortest == 1);
      }
    }
  }
  // Towards the edges the first one needs four needles, and three stay behind the last: 10 are left for five steps.
  CHECK(steps_of(wanted(17, 6, 1, DecreaseWay::gathered, edges)) == std::vector<int>{4, 2, 2, 2, 2, 2, 3});
  CHECK(steps_of(wanted(77, 18, 2, DecreaseWay::gathered, edges)) ==
        std::vector<int>{5, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4});
}
