// The search for stitch counts against trying every choice: fewest squares, then fewest stitches; with rings that bind,
// centred pieces with seams alike, equal pieces, and decrease rows that would take too much.
#include "pieces/counts_by_pieces.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <functional>
#include <map>
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

// Whether the counts of a tier are as its seams ask.
bool seams_allow(const CountsProblem& problem, std::size_t tier, const int* counts) {
  if (tier >= problem.seams.size()) {
    return true;
  }
  const SeamRule& rule = problem.seams[tier];
  int visible = 0;
  for (std::size_t group = 0; group < problem.pieces.size(); ++group) {
    visible += problem.pieces[group] * (counts[group] - 2 * problem.edge);
    const auto count = static_cast<std::size_t>(counts[group]);
    const std::size_t partner = problem.classes.empty() ? group : problem.classes[group];
    if ((count < rule.barred.size() && rule.barred[count]) || (counts[group] - counts[partner]) % rule.alike != 0) {
      return false;
    }
  }
  return visible % rule.multiple == 0;
}

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
        for (std::size_t group = 0; group < groups; ++group) {
          const int count = counts[tier * groups + group];
          squares += problem.pieces[group] * std::pow(count - ideal_of(problem, tier, group), 2);
          in_all += problem.pieces[group] * count;
          if (tier > 0) {
            const int below = counts[(tier - 1) * groups + group];
            const int before = below - 2 * problem.edge;
            if ((problem.halves && 2 * (below - count) > before) ||
                (problem.doubles && count - below > std::max(0, before - 1))) {
              return;
            }
          }
        }
        if (!seams_allow(problem, tier, &counts[tier * groups])) {
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

double squares_of(const CountsProblem& problem, const std::vector<std::vector<int>>& stitches) {
  double squares = 0;
  for (std::size_t tier = 0; tier < stitches.size(); ++tier) {
    for (std::size_t group = 0; group < problem.pieces.size(); ++group) {
      squares += problem.pieces[group] * std::pow(stitches[tier][group] - ideal_of(problem, tier, group), 2);
    }
  }
  return squares;
}

// One tier of pieces of those widths in tenths of a centimetre, at 2.8 stitches a centimetre; tops as steep as rows of
// decreases hardly allow.
CountsProblem steep_problem(const std::vector<std::pair<int, int>>& widths, double tolerance, int multiple) {
  CountsProblem problem;
  problem.denominator = 100;
  problem.seams.push_back({multiple});
  problem.choices.resize(2);
  for (const auto& [bottom, top] : widths) {
    problem.pieces.push_back(1);
    for (std::size_t tier = 0; tier < 2; ++tier) {
      const int hundredths = (tier == 0 ? bottom : top) * 28 + 200;
      problem.choices[tier].push_back({{hundredths / 100, hundredths % 100},
                                       static_cast<int>(std::ceil(hundredths * (1 - tolerance) / 100)),
                                       static_cast<int>(std::floor(hundredths * (1 + tolerance) / 100))});
    }
  }
  return problem;
}

// Both counts of each piece by itself, the best for each remainder; then piece by piece round the ring.
Best round_a_ring_of_one_tier(const CountsProblem& problem) {
  using Sum = std::pair<double, std::int64_t>;
  const int multiple = problem.seams[0].multiple;
  std::map<int, Sum> ring{{0, {0, 0}}};
  for (std::size_t group = 0; group < problem.pieces.size(); ++group) {
    std::map<int, Sum> longer;
    const auto keep = [](std::map<int, Sum>& sums, int remainder, const Sum& sum) {
      const auto [there, fresh] = sums.emplace(remainder, sum);
      const bool same = std::fabs(there->second.first - sum.first) < 1e-9;
      if (!fresh && (same ? sum.second < there->second.second : sum.first < there->second.first)) {
        there->second = sum;
      }
    };
    for (int below = problem.choices[0][group].least; below <= problem.choices[0][group].most; ++below) {
      for (int above = problem.choices[1][group].least; above <= problem.choices[1][group].most; ++above) {
        if (2 * (below - above) > below - 2 || above - below > below - 3) {
          continue;
        }
        const double squares =
            std::pow(below - ideal_of(problem, 0, group), 2) + std::pow(above - ideal_of(problem, 1, group), 2);
        for (const auto& [remainder, sum] : ring) {
          keep(longer, (remainder + below - 2) % multiple, {sum.first + squares, sum.second + below + above});
        }
      }
    }
    ring = std::move(longer);
  }
  return ring.contains(0) ? Best{true, ring[0].first, ring[0].second} : Best{};
}

CountsProblem random_problem(std::mt19937& dice, bool centred) {
  const auto from = [&dice](int least, int most) { return std::uniform_int_distribution<int>(least, most)(dice); };
  CountsProblem problem;
  problem.edge = from(0, 2);
  problem.denominator = from(1, 3) == 1 ? 2 : from(1, 40); // halves make ties
  const int groups = from(1, 3);
  const int tiers = groups == 3 ? 1 : from(1, 2);
  for (int group = 0; group < groups; ++group) {
    problem.pieces.push_back(from(1, 2));
    problem.classes.push_back(group == 2 || from(0, 1) == 0 ? 0 : static_cast<std::size_t>(group));
  }
  for (int tier = 0; tier <= tiers; ++tier) {
    if (tier < tiers) {
      problem.seams.push_back({centred ? 1 : from(1, 9)});
      if (centred) {
        problem.seams.back().alike = from(2, 6);
        for (int count = 0; count < 20; ++count) {
          problem.seams.back().barred.push_back(from(0, 2) == 0);
        }
      }
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

void check_against_all_choices(bool centred) {
  std::mt19937 dice(4);
  int found = 0;
  int none = 0;
  int cut = 0;
  for (int round = 0; round < 1500; ++round) {
    CAPTURE(round);
    const CountsProblem problem = random_problem(dice, centred);
    const Best best = by_trying_all(problem);
    const CountsFound answer = nearest_counts(problem);
    const auto& counts = answer.counts;
    CHECK_FALSE(answer.gave_up);
    REQUIRE(counts.has_value() == best.found);
    const CountsByPieces by_pieces = counts_by_pieces(problem, INT64_MIN / 2, INT64_MAX / 2);
    CHECK_FALSE(by_pieces.gave_up);
    REQUIRE(by_pieces.stitches.empty() == !best.found);
    if (!counts) {
      ++none;
      continue;
    }
    ++found;
    cut += counts->looked_at > 1 ? 1 : 0;
    CHECK(counts->squares == doctest::Approx(best.squares).epsilon(1e-9));
    CHECK(counts->bound == doctest::Approx(counts->squares).epsilon(1e-9));
    CHECK(counts->bound <= counts->squares); // not even by rounding
    CHECK(counts->in_all == best.in_all);
    CHECK(squares_of(problem, by_pieces.stitches) == doctest::Approx(best.squares).epsilon(1e-9));
    CHECK(by_pieces.cost.stitches == best.in_all);
    for (std::size_t tier = 0; tier < counts->stitches.size(); ++tier) {
      CHECK(seams_allow(problem, tier, counts->stitches[tier].data()));
      CHECK(seams_allow(problem, tier, by_pieces.stitches[tier].data()));
    }
  }
  CHECK(found > 300);
  CHECK(none > 50);
  CHECK(cut > 100); // the rule about halves did bind
}

} // namespace

TEST_CASE("the counts are the best of all choices") {
  check_against_all_choices(false);
}

TEST_CASE("so are those of centred pieces with seams alike") {
  check_against_all_choices(true);
}

TEST_CASE("a search that uses up its parts says that it gave up, and nothing of what fits") {
  // The middles of the ideals are allowed one by one; together a row would take more than one stitch in two.
  const CountsProblem problem{{1}, {{1}}, 0, true, true, 1, {{{{20, 0}, 15, 25}}, {{{5, 0}, 3, 12}}}};
  const CountsFound whole = nearest_counts(problem);
  REQUIRE(whole.counts);
  CHECK_FALSE(whole.gave_up);
  REQUIRE(whole.counts->looked_at > 1);
  const CountsFound cut_short = nearest_counts(problem, 1);
  CHECK_FALSE(cut_short.counts);
  CHECK(cut_short.gave_up);
  const CountsProblem impossible{{1}, {{1}}, 0, true, true, 1, {{{{20, 0}, 18, 25}}, {{{5, 0}, 3, 6}}}};
  CHECK_FALSE(nearest_counts(impossible).counts);
  CHECK_FALSE(nearest_counts(impossible).gave_up);
}

TEST_CASE("steep pieces don't multiply each other's choices, free or round a ring") {
  const std::vector<std::vector<std::pair<int, int>>> yokes{
      {{634, 266}, {626, 263}, {495, 208}, {642, 270}, {636, 267}},
      {{590, 251}, {601, 259}, {478, 205}, {552, 230}, {633, 262}, {645, 280}}};
  for (const auto& widths : yokes) {
    for (const int multiple : {1, 12, 24}) {
      for (const double tolerance : {0.1, 0.2}) {
        CAPTURE(multiple);
        CAPTURE(tolerance);
        const CountsProblem problem = steep_problem(widths, tolerance, multiple);
        const Best best = round_a_ring_of_one_tier(problem);
        const CountsFound found = nearest_counts(problem);
        CHECK_FALSE(found.gave_up);
        REQUIRE(found.counts.has_value() == best.found);
        if (found.counts) {
          CHECK(found.counts->squares == doctest::Approx(best.squares).epsilon(1e-9));
          CHECK(found.counts->in_all == best.in_all);
        }
      }
    }
  }
}

TEST_CASE("a tie goes to fewer stitches") {
  CountsProblem problem{{1}, {{1}}, 0, true, true, 2, {{{{9, 1}, 1, 20}}, {{{9, 1}, 1, 20}}}};
  const auto counts = nearest_counts(problem).counts;
  REQUIRE(counts);
  CHECK(counts->stitches == std::vector<std::vector<int>>{{9}, {9}});
  CHECK(counts->squares == doctest::Approx(0.5));
}

TEST_CASE("a ring that binds shares what is missing among the pieces") {
  // Four pieces alike of 23 visible stitches: 92, and 96 is the multiple of 24 that is nearest.
  CountsProblem problem{{4}, {{24}}, 1, true, true, 1, {{{{25, 0}, 3, 50}}, {{{15, 0}, 3, 50}}}};
  const auto counts = nearest_counts(problem).counts;
  REQUIRE(counts);
  CHECK(counts->stitches[0][0] == 26);
  CHECK(counts->squares == doctest::Approx(4));
}

TEST_CASE("published chains of a round yoke are kept as they are: no row of them takes more than one stitch in two") {
  // jenjoycedesign.com, 2012-08-16, percentage systems; handmadestitchbystitch.wordpress.com, summary of Knitting
  // Without Tears and Knitting Around; schoolhousepress.com, blog 38. The first closes on repeats of 12.
  for (const auto& [chain, repeat] :
       {std::pair(std::vector<int>{240, 180, 120, 72}, 12), std::pair(std::vector<int>{268, 179, 120, 80}, 1)}) {
    CountsProblem problem{{1}, {{repeat}, {repeat}, {repeat}}, 0, true, true, 1, {}};
    for (const int stitches : chain) {
      problem.choices.push_back({{{stitches, 0}, stitches - 12, stitches + 12}});
    }
    const auto counts = nearest_counts(problem).counts;
    REQUIRE(counts);
    CHECK(counts->squares == 0);
    CHECK(counts->bound == 0);
    for (std::size_t tier = 0; tier < chain.size(); ++tier) {
      CHECK(counts->stitches[tier][0] == chain[tier]);
    }
  }
}
