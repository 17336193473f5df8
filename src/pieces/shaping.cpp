// Places the transfers: each is a pair of neighbouring needles, no two pairs overlap, and seam stitches are in none.
#include "pieces/shaping.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <limits>

namespace punchwright {
namespace {

// A transfer between stitches `left` and `left` + 1, counted from 1; which of them is emptied.
struct Pair {
  int left = 0;
  bool left_goes = true;
  [[nodiscard]] int from() const { return left_goes ? left : left + 1; }
  [[nodiscard]] int to() const { return left_goes ? left + 1 : left; }
};

constexpr long long moved_weight = 1000; // a squared stitch of distance, against one transfer the other way
constexpr long long impossible = std::numeric_limits<long long>::max() / 4;

class PairSearch {
public:
  PairSearch(const ShapingWishes& wishes, int clear, bool off_centre)
      : wishes_(wishes), clear_(wishes.edge + clear), off_centre_(off_centre && !wishes.centre.empty()),
        ideal_(even_places(wishes.before, wishes.before - wishes.after, wishes.how.way)) {}

  // Nothing where they don't all find room.
  [[nodiscard]] std::vector<Pair> run() const {
    const std::size_t count = ideal_.size();
    const auto needles = static_cast<std::size_t>(wishes_.before);
    // best[k][a]: the first k pairs end at needle a or before it.
    std::vector<std::vector<long long>> best(count + 1, std::vector<long long>(needles + 1, impossible));
    std::ranges::fill(best[0], 0);
    for (std::size_t pair = 1; pair <= count; ++pair) {
      for (std::size_t end = 2; end <= needles; ++end) {
        best[pair][end] = std::min(best[pair][end - 1], best[pair - 1][end - 2] + cost(pair, end).first);
        best[pair][end] = std::min(best[pair][end], impossible);
      }
    }
    std::vector<Pair> pairs;
    if (best[count][needles] >= impossible) {
      return pairs;
    }
    std::size_t end = needles;
    for (std::size_t pair = count; pair > 0; --pair) {
      while (best[pair][end - 1] == best[pair][end]) {
        --end;
      }
      pairs.push_back(cost(pair, end).second);
      end -= 2;
    }
    std::ranges::reverse(pairs);
    return pairs;
  }

private:
  [[nodiscard]] bool may_be(int stitch) const {
    return stitch > clear_ && stitch <= wishes_.before - clear_ &&
           !(off_centre_ && wishes_.centre[static_cast<std::size_t>(stitch - 1)]);
  }

  // Whether that stitch goes to its right neighbour, as wished.
  [[nodiscard]] bool goes_right(int stitch) const {
    const bool on_left_half = 2 * stitch <= wishes_.before;
    return on_left_half == (wishes_.how.towards == DecreaseTowards::centre);
  }

  // Of pair number `pair` on the needles `end` - 1 and `end`, the cheaper of its two ways.
  [[nodiscard]] std::pair<long long, Pair> cost(std::size_t pair, std::size_t end) const {
    std::pair<long long, Pair> best{impossible, {}};
    const int left = static_cast<int>(end) - 1;
    if (!may_be(left) || !may_be(left + 1)) {
      return best;
    }
    for (const bool left_goes : {true, false}) {
      const Pair way{left, left_goes};
      const long long moved = way.from() - ideal_[pair - 1];
      const long long total = moved_weight * moved * moved + (goes_right(way.from()) == left_goes ? 0 : 1);
      if (total < best.first) {
        best = {total, way};
      }
    }
    return best;
  }

  const ShapingWishes& wishes_;
  int clear_;
  bool off_centre_;
  std::vector<int> ideal_;
};

Needle needle_of(const ShapingWishes& wishes, int stitch) {
  return Needle{wishes.first.position + stitch - 1};
}

void decrease(const ShapingWishes& wishes, Shaping& shaping) {
  std::vector<Pair> pairs;
  // Clearances that leave no room go one after the other, the centre line first.
  const std::pair<int, bool> tries[] = {
      {wishes.how.clear_of_seam, wishes.how.clear_of_centre}, {wishes.how.clear_of_seam, false}, {0, false}};
  for (const auto& [clear, off_centre] : tries) {
    pairs = PairSearch(wishes, clear, off_centre).run();
    if (!pairs.empty()) {
      shaping.kept_off_seams = clear == wishes.how.clear_of_seam;
      shaping.kept_off_centre = off_centre == wishes.how.clear_of_centre;
      break;
    }
  }
  std::vector<int> places;
  for (const Pair& pair : pairs) {
    places.push_back(pair.from());
    shaping.transfers.push_back({needle_of(wishes, pair.from()), needle_of(wishes, pair.to())});
  }
  shaping.every = steps_between(places);
}

// At most one between any two neighbours, none beside the edges of the piece.
void increase(const ShapingWishes& wishes, Shaping& shaping) {
  std::vector<int> places = even_places(wishes.before, wishes.after - wishes.before, wishes.how.way);
  const int count = static_cast<int>(places.size());
  const int first = wishes.edge + 1;
  const int last = wishes.before - wishes.edge - 1;
  for (int number = 0; number < count; ++number) {
    int& place = places[static_cast<std::size_t>(number)];
    place = std::clamp(place, first + number, last - (count - 1 - number));
  }
  shaping.every = steps_between(places);
}

std::string ordinal(int number) {
  const int tens = number % 100;
  const bool teens = tens >= 11 && tens <= 13;
  switch (teens ? 0 : number % 10) {
  case 1: return std::to_string(number) + "st";
  case 2: return std::to_string(number) + "nd";
  case 3: return std::to_string(number) + "rd";
  default: return std::to_string(number) + "th";
  }
}

} // namespace

Shaping shaping_between(const ShapingWishes& wishes) {
  Shaping shaping;
  shaping.before = wishes.before;
  shaping.after = wishes.after;
  if (wishes.after < wishes.before) {
    decrease(wishes, shaping);
  } else if (wishes.after > wishes.before) {
    increase(wishes, shaping);
  }
  int place = 0;
  for (const auto& [step, times] : shaping.every) {
    for (int time = 0; time < times; ++time) {
      place += step;
      shaping.forward.push_back(needle_of(wishes, place));
    }
  }
  return shaping;
}

std::string words_of(const Steps& every) {
  std::string words;
  for (const auto& [step, times] : every) {
    const std::string often = times == 1 ? "once" : times == 2 ? "twice" : fmt::format("{} times", times);
    words += words.empty() ? fmt::format("every {} needle {}", ordinal(step), often)
                           : fmt::format(", every {} {}", ordinal(step), often);
  }
  return words.empty() ? "none" : words;
}

std::vector<Needle> needles_to_fill(const Shaping& shaping, Needle first) {
  std::vector<Needle> needles;
  int place = 0;
  for (const auto& [step, times] : shaping.every) {
    for (int time = 0; time < times && shaping.increases() > 0; ++time) {
      place += step;
      needles.push_back(Needle{first.position + place + static_cast<int>(needles.size())});
    }
  }
  return needles;
}

} // namespace punchwright
