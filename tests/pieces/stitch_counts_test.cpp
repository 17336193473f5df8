// The search for stitch counts against trying every choice: fewest squares, then fewest stitches; with rings that bind,
// equal pieces, and decrease rows that would take too much.
#include "pieces/stitch_counts.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <functional>
#include <random>

using namespace punchwright;

namespace {

double ideal_of(const CountsProblem& problem, std::size_t tier, std::size_t group) {
  const IdealCount ideal = problem.choices[tier][group].ideal;
  return static_cast<double>(ideal.whole) + static_cast<double>(ideal.rest) / static_cast<double>(problem.denominator);
}

struct Best {
  bool found = false;
  double squares = 0;
  std::int64_t in_all = 0;
};

// Every choice of every count, with no cleverness.
Best by_trying_all(const CountsProblem& problem) {
  const std::size_t groups = problem.pieces.size();
  const std::size_t tiers = problem.choices.size();
  std::vector<int> counts(groups * tiers);
  Best best;
  const std::function<void(std::size_t)> choose = [&](std::size_t at) {
    if (at == counts.size()) {
      double squares = 0;
      std::int64_t in_all = 0;
      for (std::size_t tier = 0; tier < tiers; ++tier) {
        int visible = 0;
        for (std::size_t group = 0; group < groups; ++group) {
          const int count = counts[tier * groups + group];
          visible += problem.pieces[group] * (count - 2 * problem.edge);
          squares += problem.pieces[group] * std::pow(count - ideal_of(problem, tier, group), 2);
          in_all += problem.pieces[group] * count;
          if (tier > 0 && problem.halves) {
            const int below = counts[(tier - 1) * groups + group];
            const int before = below - 2 * problem.edge;
            if (2 * (below - count) > before || count - below > std::max(0, before - 1)) {
              return;
            }
          }
        }
        if (tier < problem.multiples.size() && visible % problem.multiples[tier] != 0) {
          return;
        }
      }
      const bool same = std::fabs(squares - best.squares) < 1e-9;
      if (!best.found || (!same && squares < best.squares) || (same && in_all < best.in_all)) {
        best = {true, squares, in_all};
      }
      return;
    }
    const CountChoice& choice = problem.choices[at / groups][at % groups];
    for (int count = choice.least; count <= choice.most; ++count) {
      counts[at] = count;
      choose(at + 1);
    }
  };
  choose(0);
  return best;
}

CountsProblem random_problem(std::mt19937& dice) {
  const auto from = [&dice](int least, int most) { return std::uniform_int_distribution<int>(least, most)(dice); };
  CountsProblem problem;
  problem.edge = from(0, 2);
  problem.denominator = from(1, 3) == 1 ? 2 : from(1, 40); // halves make ties
  const int groups = from(1, 3);
  const int tiers = groups == 3 ? 1 : from(1, 2);
  for (int group = 0; group < groups; ++group) {
    problem.pieces.push_back(from(1, 2));
  }
  for (int tier = 0; tier <= tiers; ++tier) {
    if (tier < tiers) {
      problem.multiples.push_back(from(1, 9));
    }
    problem.choices.emplace_back();
    for (int group = 0; group < groups; ++group) {
      CountChoice choice;
      choice.ideal.whole = from(8, 12) + (tier == 0 ? 8 : tier == 1 ? 0 : -3);
      choice.ideal.rest = from(0, static_cast<int>(problem.denominator) - 1);
      choice.least = std::max(2 * problem.edge + 1, static_cast<int>(choice.ideal.whole) - from(1, 3));
      choice.most = static_cast<int>(choice.ideal.whole) + from(1, 4);
      problem.choices.back().push_back(choice);
    }
  }
  return problem;
}

} // namespace

TEST_CASE("the counts are the best of all choices") {
  std::mt19937 dice(4);
  int found = 0;
  int none = 0;
  int cut = 0;
  for (int round = 0; round < 1500; ++round) {
    CAPTURE(round);
    const CountsProblem problem = random_problem(dice);
    const Best best = by_trying_all(problem);
    const auto counts = nearest_counts(problem);
    REQUIRE(counts.has_value() == best.found);
    if (!counts) {
      ++none;
      continue;
    }
    ++found;
    cut += counts->looked_at > 1 ? 1 : 0;
    CHECK(counts->squares == doctest::Approx(best.squares).epsilon(1e-9));
    CHECK(counts->bound == doctest::Approx(counts->squares).epsilon(1e-9));
    CHECK(counts->in_all == best.in_all);
  }
  CHECK(found > 300);
  CHECK(none > 50);
  CHECK(cut > 100); // the rule about halves did bind
}

TEST_CASE("a tie goes to fewer stitches") {
  CountsProblem problem{{1}, {1}, 0, true, 2, {{{{9, 1}, 1, 20}}, {{{9, 1}, 1, 20}}}};
  const auto counts = nearest_counts(problem);
  REQUIRE(counts);
  CHECK(counts->stitches == std::vector<std::vector<int>>{{9}, {9}});
  CHECK(counts->squares == doctest::Approx(0.5));
}

TEST_CASE("a ring that binds shares what is missing among the pieces") {
  // Four pieces alike of 23 visible stitches: 92, and 96 is the multiple of 24 that is nearest.
  CountsProblem problem{{4}, {24}, 1, true, 1, {{{{25, 0}, 3, 50}}, {{{15, 0}, 3, 50}}}};
  const auto counts = nearest_counts(problem);
  REQUIRE(counts);
  CHECK(counts->stitches[0][0] == 26);
  CHECK(counts->squares == doctest::Approx(4));
}
