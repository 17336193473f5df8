// Dynamic programming over the places where runs end. A ring is cut open at each place where a run may begin; a chain
// between mirrors begins at the first of them, and its first and last runs go on beyond.
#include "mending/run_chain.hpp"

#include <algorithm>
#include <set>

namespace punchwright {
namespace {

RowCost operator+(const RowCost& one, const RowCost& other) {
  return {one.price + other.price, one.pairs + other.pairs, one.squares + other.squares};
}

// The chain from a place on, beginning with a run of a colour.
class Runs {
public:
  Runs(const Chain& chain, int cut, int first_colour, bool look)
      : chain_(chain), count_(static_cast<int>(chain.places.size())), cut_(cut), first_colour_(first_colour),
        look_(look), sums_(chain.places.size() + 1), least_(chain.places.size() + 1) {
    for (int place = 0; place < count_; ++place) {
      const ChainPlace& here = chain_.places[index((cut_ + place) % count_)];
      for (std::size_t colour = 0; colour < 2; ++colour) {
        sums_[index(place + 1)][colour] =
            sums_[index(place)][colour] + RowCost{here.price[colour], look_ ? here.pairs[colour] : 0, 0};
      }
    }
    work_out();
  }

  [[nodiscard]] RowCost cost() const { return least_[0][index(first_colour_)]; }
  [[nodiscard]] bool possible() const { return cost().price < ChainPlace::impossible; }

  [[nodiscard]] std::vector<char> cheapest() const {
    std::vector<char> contrast(chain_.places.size());
    int colour = first_colour_;
    for (int place = 0; place < count_; colour = 1 - colour) {
      int to = place + 1;
      while (through(place, to, colour) != least_[index(place)][index(colour)]) {
        ++to;
      }
      paint(contrast, place, to, colour);
      place = to;
    }
    return contrast;
  }

  // False: more than `most`.
  bool list(std::set<std::vector<char>>& found, std::size_t most) const {
    std::vector<char> contrast(chain_.places.size());
    return list(found, most, contrast, 0, first_colour_);
  }

private:
  static constexpr RowCost none{2 * ChainPlace::impossible, 0, 0};
  static std::size_t index(int number) { return static_cast<std::size_t>(number); }
  [[nodiscard]] bool ring() const { return chain_.begin == ChainEnd::ring; }

  // Of a run of the row, whose stitches from `from` to `to` lie in the chain.
  [[nodiscard]] int length(int from, int to) const {
    const auto doubled = [&](ChainEnd end) { return 2 * (to - from) - (end == ChainEnd::mirror_through ? 1 : 0); };
    return ring() ? to - from : from == 0 ? doubled(chain_.begin) : to == count_ ? doubled(chain_.end) : to - from;
  }
  [[nodiscard]] std::int64_t squares(int from, int to) const {
    const std::int64_t stitches = length(from, to);
    const bool twice = !ring() && from != 0 && to != count_; // here and beyond the mirror
    return look_ ? (twice ? 2 : 1) * stitches * stitches : 0;
  }
  // One colour alone is no row of two; a ring comes round to the other colour.
  [[nodiscard]] bool allowed(int from, int to, int colour) const {
    return length(from, to) <= chain_.limit && !(from == 0 && to == count_) &&
           !(ring() && to == count_ && colour == first_colour_);
  }
  // Of the best chain from `from` on whose first run ends at `to`.
  [[nodiscard]] RowCost through(int from, int to, int colour) const {
    if (!allowed(from, to, colour)) {
      return none;
    }
    const RowCost& before = sums_[index(from)][index(colour)];
    const RowCost& after = sums_[index(to)][index(colour)];
    return RowCost{after.price - before.price, after.pairs - before.pairs, squares(from, to)} +
           least_[index(to)][index(1 - colour)];
  }
  void work_out() {
    for (int from = count_ - 1; from >= 0; --from) {
      for (int colour = 0; colour < 2; ++colour) {
        RowCost& least = least_[index(from)][index(colour)];
        least = none;
        for (int to = from + 1; to <= std::min(count_, from + chain_.limit); ++to) {
          least = std::min(least, through(from, to, colour));
        }
      }
    }
  }
  void paint(std::vector<char>& contrast, int from, int to, int colour) const {
    for (int place = from; place < to; ++place) {
      contrast[index((cut_ + place) % count_)] = static_cast<char>(colour);
    }
  }
  bool list(std::set<std::vector<char>>& found, std::size_t most, std::vector<char>& contrast, int from,
            int colour) const {
    if (from == count_) {
      found.insert(contrast);
      return found.size() <= most;
    }
    for (int to = from + 1; to <= std::min(count_, from + chain_.limit); ++to) {
      if (through(from, to, colour) == least_[index(from)][index(colour)]) {
        paint(contrast, from, to, colour);
        if (!list(found, most, contrast, to, 1 - colour)) {
          return false;
        }
      }
    }
    return true;
  }

  const Chain& chain_;
  int count_;
  int cut_;
  int first_colour_;
  bool look_;
  std::vector<std::array<RowCost, 2>> sums_;  // of the places before, in each colour
  std::vector<std::array<RowCost, 2>> least_; // from a place to the end, where a run of that colour begins
};

// In a ring some run begins at one of the first places.
template <class Take> void each_opening(const Chain& chain, bool look, Take&& take) {
  const int cuts = chain.begin == ChainEnd::ring ? std::min(chain.limit, static_cast<int>(chain.places.size())) : 1;
  for (int cut = 0; cut < cuts; ++cut) {
    for (const int colour : {0, 1}) {
      const Runs runs(chain, cut, colour, look);
      if (runs.possible()) {
        take(runs);
      }
    }
  }
}

} // namespace

std::optional<ColouredChain> cheapest_chain(const Chain& chain, bool look) {
  std::optional<ColouredChain> best;
  each_opening(chain, look, [&](const Runs& runs) {
    if (!best || runs.cost() < best->cost) {
      best = ColouredChain{runs.cost(), runs.cheapest()};
    }
  });
  return best;
}

std::vector<std::vector<char>> all_cheapest_chains(const Chain& chain, std::size_t most) {
  const auto least = cheapest_chain(chain, false);
  if (!least) {
    return {};
  }
  std::set<std::vector<char>> found;
  bool few = true;
  each_opening(chain, false,
               [&](const Runs& runs) { few = few && (runs.cost() != least->cost || runs.list(found, most)); });
  return few ? std::vector<std::vector<char>>(found.begin(), found.end()) : std::vector<std::vector<char>>();
}

} // namespace punchwright
