// Places the transfers: each is a pair of neighbouring needles, no two pairs overlap, and seam stitches are in none.
// Increases are pairs as well, between whose stitches one is made; there a stitch may belong to two pairs.
#include "pieces/shaping.hpp"

#include "words/words.hpp"

#include <algorithm>
#include <cstdlib>
#include <limits>

namespace punchwright {
namespace {

// A transfer between stitches `left` and `left` + 1, counted from 1; which of them is emptied. Of an increase the left
// one "goes": it is the stitch behind which one is made.
struct Pair {
  int left = 0;
  bool left_goes = true;
  [[nodiscard]] int from() const { return left_goes ? left : left + 1; }
  [[nodiscard]] int to() const { return left_goes ? left + 1 : left; }
};

// Each against all that is weighed below it: the squared stitches of distance of a row are fewer than 10^9 on a bed of
// 1,000 needles.
constexpr long long astray_weight = 1'000'000'000'000; // a transfer the other way
constexpr long long unmirrored_weight = 1'000'000'000; // one that has its way only as it stands in the middle
constexpr long long impossible = std::numeric_limits<long long>::max() / 4;

// The halves mirror each other, and the middle stitch of an odd number may go to either side.
bool goes_as_wished(const ShapingWishes& wishes, const Pair& pair) {
  const int stitch = pair.from();
  const bool on_left_half = 2 * stitch <= wishes.before;
  const bool in_middle = 2 * stitch == wishes.before + 1;
  const bool to_centre = on_left_half == pair.left_goes;
  return in_middle || to_centre == (wishes.how.towards == DecreaseTowards::centre);
}

class PairSearch {
public:
  PairSearch(const ShapingWishes& wishes, int clear, bool off_centre)
      : wishes_(wishes), clear_(wishes.edge + clear), off_centre_(off_centre && !wishes.centre.empty()),
        increases_(wishes.after > wishes.before), taken_(increases_ ? 1 : 2),
        ideal_(even_places(wishes.before, std::abs(wishes.before - wishes.after), wishes.how.way)) {}

  // Nothing where they don't all find room.
  [[nodiscard]] std::vector<Pair> run() const {
    const std::size_t count = ideal_.size();
    const auto needles = static_cast<std::size_t>(wishes_.before);
    // best[k][a]: the first k pairs end at needle a or before it.
    std::vector<std::vector<long long>> best(count + 1, std::vector<long long>(needles + 1, impossible));
    std::ranges::fill(best[0], 0);
    for (std::size_t pair = 1; pair <= count; ++pair) {
      for (std::size_t end = 2; end <= needles; ++end) {
        best[pair][end] = std::min(best[pair][end - 1], best[pair - 1][end - taken_] + cost(pair, end).first);
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
      end -= taken_;
    }
    std::ranges::reverse(pairs);
    return pairs;
  }

private:
  [[nodiscard]] bool may_be(int stitch) const {
    return stitch > clear_ && stitch <= wishes_.before - clear_ &&
           !(off_centre_ && wishes_.centre[static_cast<std::size_t>(stitch - 1)]);
  }

  // As many go one way as the other; the middle one of an odd number goes either.
  [[nodiscard]] bool is_mirrored(std::size_t pair, bool left_goes) const {
    const std::size_t count = ideal_.size();
    const bool first_half = 2 * pair <= count;
    return 2 * pair == count + 1 || (first_half == left_goes) == (wishes_.how.towards == DecreaseTowards::centre);
  }

  // Of pair number `pair` on the needles `end` - 1 and `end`, the cheaper of its two ways.
  [[nodiscard]] std::pair<long long, Pair> cost(std::size_t pair, std::size_t end) const {
    std::pair<long long, Pair> best{impossible, {}};
    const int left = static_cast<int>(end) - 1;
    if (!may_be(left) || !may_be(left + 1)) {
      return best;
    }
    for (const bool left_goes : {true, false}) {
      if (increases_ && !left_goes) {
        continue;
      }
      const Pair way{left, left_goes};
      const long long moved = way.from() - ideal_[pair - 1];
      const bool astray = !increases_ && !goes_as_wished(wishes_, way);
      const bool unmirrored = !increases_ && !is_mirrored(pair, left_goes);
      const long long total = moved * moved + (astray ? astray_weight : 0) + (unmirrored ? unmirrored_weight : 0);
      if (total < best.first) {
        best = {total, way};
      }
    }
    return best;
  }

  const ShapingWishes& wishes_;
  int clear_;
  bool off_centre_;
  bool increases_;
  std::size_t taken_; // needles that the next pair can't have
  std::vector<int> ideal_;
};

Needle needle_of(const ShapingWishes& wishes, int stitch) {
  return Needle{wishes.first.position + stitch - 1};
}

// Clearances that leave no room: the centre line goes first, then one stitch after the other beside the seams.
std::vector<Pair> placed(const ShapingWishes& wishes, Shaping& shaping) {
  const int most = std::max(0, wishes.before / 2 - wishes.edge); // beyond that no stitch is left
  const int wished = wishes.how.clear_of_seam;
  for (int clear = std::min(wished, most); clear >= 0; --clear) {
    for (const bool off_centre : {true, false}) {
      if (off_centre && !wishes.how.clear_of_centre) {
        continue;
      }
      std::vector<Pair> pairs = PairSearch(wishes, clear, off_centre).run();
      if (!pairs.empty()) {
        shaping.clear_of_seam = clear;
        shaping.kept_off_seams = clear == wished;
        shaping.kept_off_centre = off_centre == wishes.how.clear_of_centre;
        return pairs;
      }
    }
  }
  return {};
}

std::string ordinal(int number) {
  const int tens = number % 100;
  const bool teens = tens >= 11 && tens <= 13;
  switch (teens ? 0 : number % 10) {
  case 1: return said("{}st", number);
  case 2: return said("{}nd", number);
  case 3: return said("{}rd", number);
  default: return said("{}th", number);
  }
}

std::string first_words(int step, int times) {
  const std::string which = ordinal(step);
  return times == 1   ? said("every {} needle once", which)
         : times == 2 ? said("every {} needle twice", which)
                      : said("every {} needle {} times", which, times);
}

// Behind others, where "needle" is understood.
std::string next_words(int step, int times) {
  const std::string which = ordinal(step);
  return times == 1   ? said("every {} once", which)
         : times == 2 ? said("every {} twice", which)
                      : said("every {} {} times", which, times);
}

} // namespace

Shaping shaping_between(const ShapingWishes& wishes) {
  Shaping shaping;
  shaping.before = wishes.before;
  shaping.after = wishes.after;
  shaping.wished = wishes.how;
  if (wishes.after == wishes.before) {
    return shaping;
  }
  std::vector<int> places;
  for (const Pair& pair : placed(wishes, shaping)) {
    places.push_back(pair.from());
    shaping.forward.push_back(needle_of(wishes, pair.from()));
    if (wishes.after < wishes.before) {
      shaping.astray += goes_as_wished(wishes, pair) ? 0 : 1;
      shaping.transfers.push_back({needle_of(wishes, pair.from()), needle_of(wishes, pair.to())});
    }
  }
  shaping.every = steps_between(places);
  return shaping;
}

std::string words_of(const Steps& every) {
  std::string words;
  for (const auto& [step, times] : every) {
    words += words.empty() ? first_words(step, times) : ", " + next_words(step, times);
  }
  return words.empty() ? tr("none") : words;
}

std::string clearance_words(const Shaping& shaping) {
  std::string clear;
  std::string no_room;
  const auto add = [](std::string& words, const std::string& more) {
    words = words.empty() ? more : said("{} and {}", words, more);
  };
  const auto of_seams = [](int stitches) {
    return said_count(stitches, "{} stitch clear of the seams", "{} stitches clear of the seams");
  };
  if (shaping.kept_off_seams && shaping.wished.clear_of_seam > 0) {
    add(clear, of_seams(shaping.wished.clear_of_seam));
  } else if (shaping.clear_of_seam > 0) {
    add(clear, said("{}, no room for {}", of_seams(shaping.clear_of_seam), shaping.wished.clear_of_seam));
  } else if (shaping.wished.clear_of_seam > 0) {
    add(no_room, of_seams(shaping.wished.clear_of_seam));
  }
  if (shaping.wished.clear_of_centre) {
    add(shaping.kept_off_centre ? clear : no_room, tr("off the motif's centre line"));
  }
  std::string words = clear;
  const auto append = [&words](const std::string& more) { words += (words.empty() ? "" : "; ") + more; };
  if (!no_room.empty()) {
    append(said("no room to stay {}", no_room));
  }
  if (shaping.astray > 0) { // towards the centre is never without room
    append(said_count(shaping.astray, "no room for {} decrease to go towards the edges",
                      "no room for {} decreases to go towards the edges"));
  }
  return words;
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
