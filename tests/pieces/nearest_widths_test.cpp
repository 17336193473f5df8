// The nearest widths with which a size fits, against trying every width: nothing nearer fits, and where anything fits
// within the bound, it is named.
#include "pieces/nearest_widths.hpp"
#include "pieces/yokes.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <functional>
#include <random>

using namespace punchwright;
using namespace punchwright::test;

namespace {

// Changes the widths of the yoke's only size to those of `from` and so many millimetres: bottom and top of each piece
// that has widths.
void set_widths(Yoke& yoke, const Yoke& from, const std::vector<int>& millimetres) {
  std::size_t at = 0;
  for (std::size_t piece = 0; piece < from.pieces.size(); ++piece) {
    if (from.pieces[piece].like.empty()) {
      const auto changed = [&](double cm) { return std::round(cm * 10 + millimetres[at++]) / 10; };
      yoke.pieces[piece].bottom_cm.values.front() = changed(from.pieces[piece].bottom_cm.at(0));
      yoke.pieces[piece].top_cm.values.front() = changed(from.pieces[piece].top_cm.at(0));
    }
  }
}

bool fits(const OpenedYoke& opened) {
  for (const YokePiece& piece : opened.yoke.pieces) {
    for (const PerSize<double>* const widths : {&piece.bottom_cm, &piece.top_cm}) {
      if (piece.like.empty() && (widths->at(0) < narrowest_yoke_piece_cm || widths->at(0) > widest_yoke_piece_cm)) {
        return false;
      }
    }
  }
  return !bed_failure(opened) && nearest_counts(counts_problem(opened, 0)).counts;
}

struct Tried {
  int millimetres = -1; // the smallest sum of changes with which the size fits; -1: none
  int widths = 0;       // the fewest that are then changed
};

// Every change of the widths, by the sum of the changes; none of them by more than `farthest`.
Tried by_trying_all(const OpenedYoke& opened, std::size_t widths, int most_in_all, int farthest) {
  Tried tried;
  std::vector<int> change(widths);
  OpenedYoke changed_yoke = opened;
  for (int sum = 0; sum <= most_in_all && tried.millimetres < 0; ++sum) {
    const std::function<void(std::size_t, int)> choose = [&](std::size_t at, int left) {
      if (at == widths) {
        const auto changed = static_cast<int>(std::ranges::count_if(change, [](int one) { return one != 0; }));
        if (left == 0 && (tried.millimetres < 0 || changed < tried.widths)) {
          set_widths(changed_yoke.yoke, opened.yoke, change);
          tried = fits(changed_yoke) ? Tried{sum, changed} : tried;
        }
        return;
      }
      for (int far = at + 1 == widths ? std::min(left, farthest + 1) : 0; far <= std::min(left, farthest); ++far) {
        for (const int sign : {1, -1}) {
          if (far != 0 || sign > 0) {
            change[at] = sign * far;
            choose(at + 1, left - far);
          }
        }
      }
    };
    choose(0, sum);
  }
  return tried;
}

int sum_of(const WidthsFound& found) {
  double sum = 0;
  for (const WidthChange& change : found.changes) {
    sum += std::fabs(change.to_cm - change.from_cm) * 10;
  }
  return static_cast<int>(std::lround(sum));
}

// The yoke with the widths that were named.
OpenedYoke with_named(OpenedYoke opened, const WidthsFound& found) {
  for (const WidthChange& change : found.changes) {
    YokePiece& piece = opened.yoke.pieces[change.piece];
    double& width = (change.top ? piece.top_cm : piece.bottom_cm).values.front();
    CHECK(width == doctest::Approx(change.from_cm));
    width = change.to_cm;
  }
  return opened;
}

class Dice {
public:
  explicit Dice(unsigned seed) : random_(seed) {}
  int from(int least, int most) { return std::uniform_int_distribution<int>(least, most)(random_); }
  double millimetres(int least, int most) { return from(least, most) / 10.0; }

private:
  std::mt19937 random_;
};

// Narrow pieces on a bulky bed, so that rings, decrease rows and the tolerance all bind.
Yoke random_yoke(Dice& dice, int own_pieces) {
  Yoke yoke = pullover();
  yoke.sizes = {"one"};
  yoke.depth_cm = {{22.0}};
  yoke.tiers.resize(static_cast<std::size_t>(dice.from(1, 3)));
  yoke.pieces.clear();
  const auto add = [&](const std::string& name, double bottom) {
    const int percent = dice.from(0, 2) == 0 ? dice.from(10, 30) : dice.from(35, 70);
    yoke.pieces.push_back({name, {{bottom}}, {{std::round(bottom * percent / 10) / 10}}, ""});
  };
  add("front", dice.millimetres(120, 400));
  yoke.pieces.push_back({"back", {}, {}, "front"});
  if (own_pieces == 2) {
    add("sleeve", dice.millimetres(100, 250));
  }
  yoke.fit.seams = static_cast<YokeSeams>(dice.from(0, 2));
  yoke.fit.tolerance = dice.from(0, 5) == 0 ? 0.002 : dice.from(5, 60) / 1000.0;
  return yoke;
}

void check_against_all_widths(int own_pieces, int rounds, int most_in_all, int least_named, unsigned seed) {
  const Files files = pullover_files();
  Dice dice(seed);
  int named = 0;
  int none = 0;
  for (int round = 0; round < rounds;) {
    const OpenedYoke yoke = opened(random_yoke(dice, own_pieces), files);
    if (fits(yoke)) {
      continue;
    }
    CAPTURE(round);
    CAPTURE(write_yoke(yoke.yoke));
    ++round;
    const WidthsFound found = nearest_widths(yoke, 0);
    REQUIRE_FALSE(found.gave_up);
    const int sum = sum_of(found);
    const WidthsFound by_remainders = nearest_widths(yoke, 0, {0});
    CHECK_FALSE(by_remainders.gave_up);
    CHECK(sum_of(by_remainders) == sum);
    CHECK(by_remainders.changes.size() == found.changes.size());
    CHECK((found.changes.empty() || fits(with_named(yoke, by_remainders))));
    const int tried_to = found.changes.empty() ? most_in_all : std::min(most_in_all, sum);
    const Tried tried = by_trying_all(yoke, 2 * static_cast<std::size_t>(own_pieces), tried_to, most_width_steps);
    if (found.changes.empty()) {
      ++none;
      CHECK(tried.millimetres == -1);
      continue;
    }
    CHECK(fits(with_named(yoke, found)));
    if (sum <= most_in_all) {
      ++named;
      CHECK(tried.millimetres == sum);
      CHECK(tried.widths == std::ssize(found.changes));
    } else {
      CHECK(tried.millimetres == -1);
    }
  }
  CHECK(named >= least_named);
  CHECK((own_pieces > 1 || none > 0));
}

// A ring of pieces with widths of their own over tiers of so many stitches and rows, on a bulky bed.
struct Ring {
  std::vector<std::pair<double, double>> widths; // bottom and top
  std::vector<std::pair<int, int>> tiers;        // stitches and rows
  double tolerance = 0;
  int edge = 1;
  std::vector<int> plain_above{};
};

OpenedYoke opened_ring(const Ring& ring) {
  Yoke yoke = pullover();
  yoke.sizes = {"one"};
  yoke.edge = ring.edge;
  yoke.depth_cm = {{25.0}};
  yoke.fit.tolerance = ring.tolerance;
  yoke.pieces.clear();
  for (const auto& [bottom, top] : ring.widths) {
    yoke.pieces.push_back({fmt::format("piece {}", yoke.pieces.size() + 1), {{bottom}}, {{top}}, ""});
  }
  yoke.tiers.clear();
  Files files;
  for (std::size_t tier = 0; tier < ring.tiers.size(); ++tier) {
    const auto [stitches, rows] = ring.tiers[tier];
    const std::string name = fmt::format("{}-{}.repeat", stitches, rows);
    files.texts[name] = tier_text(stitches, rows);
    yoke.tiers.push_back({name, {{ring.plain_above.empty() ? 5 : ring.plain_above[tier]}}});
  }
  return opened(yoke, files);
}

void check_ring(const Ring& ring, int millimetres, int widths) {
  const OpenedYoke yoke = opened_ring(ring);
  const WidthsFound found = nearest_widths(yoke, 0);
  CHECK_FALSE(found.gave_up);
  CHECK(sum_of(found) == millimetres);
  CHECK(std::ssize(found.changes) == widths);
  CHECK(fits(with_named(yoke, found)) == (widths > 0));
}

} // namespace

TEST_CASE("one piece's widths: none nearer fit, and some are named wherever any fit") {
  check_against_all_widths(1, 60, 2 * most_width_steps, 40, 7);
}

TEST_CASE("two pieces' widths: none nearer fit") {
  check_against_all_widths(2, 60, 16, 8, 9);
}

// The yoke of a pullover whose front is to be 5 cm at the top: between the last tier and the neck more than one stitch
// in two would have to go.
TEST_CASE("one width is changed rather than all of them") {
  const Files files = pullover_files();
  Yoke yoke = pullover();
  yoke.pieces[0].top_cm = {{5.0, 23.0, 24.0}};
  const OpenedYoke narrow = opened(yoke, files);
  const WidthsFound found = nearest_widths(narrow, 0);
  REQUIRE(found.changes.size() == 1);
  CHECK(found.changes[0].piece == 0);
  CHECK(found.changes[0].top);
  CHECK(found.changes[0].from_cm == 5);
  CHECK_FALSE(fits(narrow));
  CHECK(fits(with_named(narrow, found)));
  const auto refused = plan_yoke(narrow);
  REQUIRE_FALSE(refused);
  CHECK(refused.error().text().ends_with(
      fmt::format("or with the nearest widths: front {:g} cm at the top instead of 5 cm", found.changes[0].to_cm)));
}

TEST_CASE("widths of another size stay as they are, and a width for all sizes may be the one") {
  const Files files = pullover_files();
  Yoke yoke = pullover();
  yoke.pieces[0].top_cm = {{5.0}};
  const OpenedYoke narrow = opened(yoke, files);
  for (std::size_t size = 0; size < 3; ++size) {
    for (const WidthChange& change : nearest_widths(narrow, size).changes) {
      const YokePiece& piece = yoke.pieces[change.piece];
      CHECK(change.from_cm == (change.top ? piece.top_cm : piece.bottom_cm).at(size));
    }
  }
}

TEST_CASE("where no widths fit within the bound, that is said; and where the search gives up, what it knows") {
  const Files files = pullover_files();
  Yoke yoke = pullover();
  yoke.sizes = {"one"};
  yoke.depth_cm = {{22.0}};
  yoke.pieces = {{"front", {{40.0}}, {{0.5}}, ""}};
  yoke.tiers.resize(1);
  yoke.fit.tolerance = 0;
  const auto none = plan_yoke(opened(yoke, files));
  REQUIRE_FALSE(none);
  CHECK(none.error().text().find("no widths fit of which none changes by more than 10 cm") != std::string::npos);

  yoke.pieces = {{"front", {{33.0}}, {{16.0}}, ""}, {"back", {}, {}, "front"}};
  yoke.fit.tolerance = 0.02;
  const OpenedYoke one = opened(yoke, files);
  const WidthsFound whole = nearest_widths(one, 0);
  REQUIRE_FALSE(whole.gave_up);
  REQUIRE(sum_of(whole) > 0);
  const WidthsFound cut_short = nearest_widths(one, 0, {0, {0, 0}, 1});
  CHECK(cut_short.gave_up);
  CHECK(cut_short.nearer_than_cm * 10 <= sum_of(whole));
}

TEST_CASE("a search that is cut short names widths that fit, and how near nothing does") {
  const Files files = pullover_files();
  Dice dice(13);
  int guessed = 0;
  for (int round = 0; round < 60; ++round) {
    const OpenedYoke yoke = opened(random_yoke(dice, 2), files);
    const WidthsFound whole = nearest_widths(yoke, 0);
    for (const int parts : {5, 20, 80}) {
      const WidthsFound found = nearest_widths(yoke, 0, {0, {0, 0}, parts});
      if (!found.gave_up) {
        CHECK(sum_of(found) == sum_of(whole));
        continue;
      }
      CHECK((whole.changes.empty() || found.nearer_than_cm * 10 <= sum_of(whole) + 1e-6));
      if (!found.changes.empty()) {
        ++guessed;
        CHECK(fits(with_named(yoke, found)));
        CHECK(sum_of(found) >= sum_of(whole));
      }
    }
  }
  CHECK(guessed > 10);
}

// What another program found by trying every width of each piece and adding up the remainders.
TEST_CASE("rings of many pieces with widths of their own and little tolerance: the nearest widths are proved") {
  check_ring({{{35.0, 24.2}, {10.9, 35.3}, {18.4, 22.2}, {26.6, 16.5}}, {{6, 4}, {8, 6}, {8, 6}}, 0.004}, 160, 6);
  check_ring(
      {{{20.2, 29.4}, {34.5, 15.2}, {34.4, 15.1}, {18.7, 28.2}, {50.3, 16.3}}, {{8, 6}, {24, 15}, {24, 15}}, 0.01}, 107,
      8);
  check_ring(
      {{{36.6, 5.9}, {17.1, 11.7}, {36.4, 13.0}, {35.6, 21.0}, {13.4, 17.4}}, {{6, 4}, {12, 10}, {24, 15}}, 0.004, 2},
      453, 10);
}

TEST_CASE("a pullover of front, back and two sleeves, each with widths of its own, in ever smaller tolerances") {
  Ring small{{{39.4, 11.8}, {23.5, 7.0}, {40.1, 10.9}, {23.9, 6.6}}, {{12, 10}, {6, 4}, {8, 6}}, 0.015, 1, {6, 6, 3}};
  check_ring(small, 41, 6);
  small.tolerance = 0.005;
  check_ring(small, 242, 8);
  small.tolerance = 0.003;
  check_ring(small, 458, 8);
}

TEST_CASE("where no widths of a ring of many pieces fit, that is proved") {
  check_ring({{{55.3, 19.8}, {33.4, 11.6}, {35.8, 36.7}, {22.4, 17.6}}, {{24, 15}, {6, 4}, {6, 4}}, 0.001, 0}, 0, 0);
}

TEST_CASE("told by the remainders or searched part by part: the same nearness") {
  const Files files = pullover_files();
  Dice dice(31);
  int compared = 0;
  for (int round = 0; round < 60; ++round) {
    const OpenedYoke yoke = opened(random_yoke(dice, 2), files);
    CAPTURE(write_yoke(yoke.yoke));
    const WidthsFound told = nearest_widths(yoke, 0, {0});
    const WidthsFound searched = nearest_widths(yoke, 0, {0, {0, 0}});
    CHECK_FALSE(told.gave_up);
    if (!searched.gave_up) {
      ++compared;
      CHECK(sum_of(told) == sum_of(searched));
      CHECK(told.changes.size() == searched.changes.size());
    }
  }
  CHECK(compared > 50);
}
