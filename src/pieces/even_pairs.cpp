// First how many transfers must go astray at least, then the narrowest range of step lengths in which no more do, and
// in it the chain of pairs with the least sum of squares.
#include "pieces/even_pairs.hpp"

#include "pieces/even_steps.hpp"

#include <algorithm>
#include <compare>
#include <limits>
#include <optional>

namespace punchwright {
namespace {

constexpr int astray_weight = 10'000; // against all pairs of a row that have their way only as they stand in the middle
constexpr int impossible = std::numeric_limits<int>::max() / 4;

// What each pair may be, and how far that is from what is wished.
class PairRules {
public:
  explicit PairRules(const PairWishes& wishes) : wishes_(wishes) {}

  // Of pair number `number`, from 1.
  [[nodiscard]] int unwished(int number, const StitchPair& pair) const {
    if (!may_be(pair.left) || !may_be(pair.left + 1) || (wishes_.increases && !pair.left_goes) || fills_edge(pair)) {
      return impossible;
    }
    const bool astray = !wishes_.increases && !goes_as_wished(wishes_.before, wishes_.towards, pair);
    const bool unmirrored = !wishes_.increases && !is_mirrored(number, pair.left_goes);
    return (astray ? astray_weight : 0) + (unmirrored ? 1 : 0);
  }

  // How many stitches further on the next pair may begin.
  [[nodiscard]] int taken() const { return wishes_.increases ? 1 : 2; }

  // Of all pairs together, in any row; impossible where not all of them find room.
  [[nodiscard]] int least_unwished() const {
    // Of the first pairs, by the stitch with which they end at the latest.
    std::vector<int> least(static_cast<std::size_t>(wishes_.before) + 1, 0);
    for (int number = 1; number <= wishes_.count; ++number) {
      std::vector<int> next(least.size(), impossible);
      for (int end = 2; end <= wishes_.before; ++end) {
        const int pair = std::min(unwished(number, {end - 1, true}), unwished(number, {end - 1, false}));
        const auto at = static_cast<std::size_t>(end);
        next[at] = std::min({impossible, next[at - 1], least[static_cast<std::size_t>(end - taken())] + pair});
      }
      least = std::move(next);
    }
    return least.back();
  }

private:
  [[nodiscard]] bool may_be(int stitch) const {
    return stitch > wishes_.clear && stitch <= wishes_.before - wishes_.clear &&
           (wishes_.left_alone.empty() || !wishes_.left_alone[static_cast<std::size_t>(stitch - 1)]);
  }

  // Of two stitches both are edges.
  [[nodiscard]] bool fills_edge(const StitchPair& pair) const {
    return !wishes_.increases && wishes_.before > 2 && (pair.to() == 1 || pair.to() == wishes_.before);
  }

  // As many go one way as the other; the middle one of an odd number goes either.
  [[nodiscard]] bool is_mirrored(int number, bool left_goes) const {
    const bool first_half = 2 * number <= wishes_.count;
    return 2 * number == wishes_.count + 1 || (first_half == left_goes) == (wishes_.towards == DecreaseTowards::centre);
  }

  const PairWishes& wishes_;
};

struct Cost {
  int unwished = impossible;
  long long squares = 0; // of the steps
  long long moved = 0;   // squared stitches from where even_places() has them
  auto operator<=>(const Cost&) const = default;
};

struct EvenRow {
  Cost cost;
  std::vector<StitchPair> pairs;
};

StitchPair pair_of(int place, bool left_goes) {
  return {left_goes ? place : place - 1, left_goes};
}

// All rows whose steps have lengths from `least` to `most`. Where the steps go round, the first place is given, and the
// last step ends there again.
class EvenRows {
public:
  EvenRows(const PairWishes& wishes, const PairRules& rules, const std::vector<int>& ideal, int least, int most,
           std::optional<int> first = std::nullopt)
      : wishes_(wishes), rules_(rules), ideal_(ideal), least_(least), most_(most), first_(first),
        end_(wishes.before + first.value_or(0)) {}

  [[nodiscard]] EvenRow best() {
    for (int number = 1; number <= wishes_.count; ++number) {
      const int steps = first_ ? number - 1 : number;
      const int left_over = wishes_.count + 1 - number;
      Stage stage;
      stage.low = std::max(first_.value_or(0) + steps * least_, end_ - left_over * most_);
      stage.high = std::min(first_.value_or(0) + steps * most_, end_ - left_over * least_);
      if (stage.low > stage.high) {
        return {};
      }
      stage.rows.resize(2 * static_cast<std::size_t>(stage.high - stage.low + 1));
      for (int place = stage.low; place <= stage.high; ++place) {
        stage.at(place, true) = cheapest_to(number, {place, true});
        stage.at(place, false) = cheapest_to(number, {place - 1, false});
      }
      stages_.push_back(std::move(stage));
    }
    return walked_back();
  }

private:
  struct Reached {
    Cost cost;
    StitchPair before; // the pair from which it is reached
  };
  // The cheapest rows that end with a certain pair, by its place and its way.
  struct Stage {
    int low = 0;
    int high = 0;
    std::vector<Reached> rows;
    [[nodiscard]] Reached& at(int place, bool left_goes) {
      return rows[2 * static_cast<std::size_t>(place - low) + (left_goes ? 1 : 0)];
    }
  };

  [[nodiscard]] Reached cheapest_to(int number, const StitchPair& pair) {
    const int there = rules_.unwished(number, pair);
    if (there >= impossible) {
      return {};
    }
    Reached best;
    if (number == 1) { // from the edge by a step, or else that step is counted at the end
      const long long step = first_ ? 0 : pair.from();
      best.cost = {0, step * step, 0};
    } else {
      Stage& before = stages_.back();
      const int nearest = std::min(before.high, pair.from() - std::max(1, least_));
      for (int place = std::max(before.low, pair.from() - most_); place <= nearest; ++place) {
        for (const bool left_goes : {true, false}) {
          const long long step = pair.from() - place;
          Cost cost = before.at(place, left_goes).cost;
          cost.squares += step * step;
          if (pair_of(place, left_goes).left + rules_.taken() <= pair.left && cost < best.cost) {
            best = {cost, pair_of(place, left_goes)};
          }
        }
      }
    }
    const long long moved = pair.from() - ideal_[static_cast<std::size_t>(number - 1)];
    best.cost.unwished += there;
    best.cost.moved += moved * moved;
    return best;
  }

  // From the cheapest last pair, its step to the end counted.
  [[nodiscard]] EvenRow walked_back() {
    EvenRow row;
    StitchPair pair;
    for (int place = stages_.back().low; place <= stages_.back().high; ++place) {
      for (const bool left_goes : {true, false}) {
        Cost cost = stages_.back().at(place, left_goes).cost;
        const long long step = end_ - place;
        cost.squares += step * step;
        if (cost < row.cost) {
          row.cost = cost;
          pair = pair_of(place, left_goes);
        }
      }
    }
    for (std::size_t number = stages_.size(); number > 0 && row.cost.unwished < impossible; --number) {
      row.pairs.push_back(pair);
      pair = stages_[number - 1].at(pair.from(), pair.left_goes).before;
    }
    std::ranges::reverse(row.pairs);
    return row;
  }

  const PairWishes& wishes_;
  const PairRules& rules_;
  const std::vector<int>& ideal_;
  int least_;
  int most_;
  std::optional<int> first_;
  int end_;
  std::vector<Stage> stages_; // by pair
};

} // namespace

bool goes_as_wished(int before, DecreaseTowards towards, const StitchPair& pair) {
  const int stitch = pair.from();
  const bool on_left_half = 2 * stitch <= before;
  const bool in_middle = 2 * stitch == before + 1;
  const bool to_centre = on_left_half == pair.left_goes;
  return in_middle || to_centre == (towards == DecreaseTowards::centre);
}

std::vector<StitchPair> even_pairs(const PairWishes& wishes) {
  const PairRules rules(wishes);
  const int unwished = rules.least_unwished();
  if (unwished >= impossible) {
    return {};
  }
  const bool go_round = wishes.way == DecreaseWay::half_steps;
  const std::vector<int> ideal = even_places(wishes.before, wishes.count, wishes.way);
  const int parts = wishes.count + (go_round ? 0 : 1);
  const int shortest =
      wishes.before / parts; // no row's shortest step is longer, nor its longest one shorter than this:
  const int longest = std::max((wishes.before + parts - 1) / parts, go_round ? 2 * wishes.clear + 1 : wishes.clear + 1);
  for (int range = longest - shortest; range <= wishes.before; ++range) {
    EvenRow best;
    const auto keep = [&best](EvenRow row) {
      if (row.cost < best.cost) {
        best = std::move(row);
      }
    };
    for (int least = std::max(0, longest - range); least <= shortest; ++least) {
      const int most = least + range;
      if (!go_round) {
        keep(EvenRows(wishes, rules, ideal, least, most).best());
      }
      for (int first = wishes.clear + 1; go_round && first <= most - wishes.clear; ++first) {
        keep(EvenRows(wishes, rules, ideal, least, most, first).best());
      }
    }
    if (best.cost.unwished == unwished) {
      return best.pairs;
    }
  }
  return {}; // never: some row is possible, and in the last range all of them are
}

} // namespace punchwright
