// First row by row with its neighbours held still, until nothing gets better; then, where that isn't the best that
// could be, all cheapest forms of the rows of a chain against one another.
#include "mending/look.hpp"

#include "mending/changes.hpp"

#include <algorithm>
#include <limits>
#include <optional>

namespace punchwright {
namespace {

constexpr std::size_t most_forms = 2000;            // of a row
constexpr std::size_t most_comparisons = 6'000'000; // of a chain of rows: some tens of milliseconds

// Pairs before squares, in one number.
using Rank = std::int64_t;
constexpr int pairs_shift = 32;
constexpr Rank rank_of(std::int64_t pairs, std::int64_t squares) {
  return (pairs << pairs_shift) + squares;
}

// Mended rows that lie on one another, by their places among all mended rows.
struct Chain {
  std::size_t first = 0;
  std::size_t count = 0;
  bool ring = false; // the last lies against the first
};

class Looks {
public:
  Looks(std::span<MendedRow> rows, int height, bool stacked, RowForms& forms)
      : rows_(rows), height_(height), stacked_(stacked && height > 1), forms_(forms),
        changes_(rows.empty() ? 1 : static_cast<int>(rows.front().drawn.size()), static_cast<int>(rows.size())) {
    for (std::size_t place = 0; place < rows_.size(); ++place) {
      note(place);
    }
  }

  bool improve() {
    for (int round = 0; round < 30 && improve_each(); ++round) {
    }
    bool proved = true;
    for (const Chain& chain : chains()) {
      if (rank(chain) > least_rank(chain) && !improve_together(chain)) {
        proved = false;
      }
    }
    return proved;
  }

private:
  [[nodiscard]] std::size_t after(std::size_t place) const { return place + 1 == rows_.size() ? 0 : place + 1; }
  // Whether the next mended row lies on this one.
  [[nodiscard]] bool touches_next(std::size_t place) const {
    const int above = rows_[place].row + 1;
    return after(place) == 0 ? stacked_ && above == height_ && rows_.front().row == 0
                             : rows_[after(place)].row == above;
  }

  void note(std::size_t place) {
    const MendedRow& row = rows_[place];
    changes_.set(static_cast<int>(place), row.drawn, row.stitches);
  }

  // Each row in its best form beside what lies there now. True where one got better.
  bool improve_each() {
    bool better = false;
    for (std::size_t place = 0; place < rows_.size(); ++place) {
      MendedRow& row = rows_[place];
      counts_.assign(row.drawn.size(), 0);
      const std::size_t before = place == 0 ? rows_.size() - 1 : place - 1;
      std::int64_t pairs = 0;
      for (const auto& [touches, other] :
           {std::pair(touches_next(before), before), std::pair(touches_next(place), after(place))}) {
        if (touches) {
          changes_.add_pairs(static_cast<int>(other), counts_);
          pairs += changes_.pairs(static_cast<int>(place), changes_, static_cast<int>(other));
        }
      }
      if (pairs == 0 && row.squares == row.least_squares) {
        continue;
      }
      if (!forms_.solve(row, counts_)) {
        continue;
      }
      const RowCost cost = forms_.cost();
      if (rank_of(cost.pairs, cost.squares) < rank_of(pairs, row.squares)) {
        row.stitches.assign(forms_.stitches().begin(), forms_.stitches().end());
        row.squares = cost.squares;
        note(place);
        better = true;
      }
    }
    return better;
  }

  [[nodiscard]] std::vector<Chain> chains() const {
    const std::size_t count = rows_.size();
    std::size_t start = 0; // behind a gap, so that no chain is cut where the drawing is stacked
    while (start < count && touches_next((start + count - 1) % count)) {
      ++start;
    }
    if (count > 0 && start == count) {
      return {Chain{0, count, true}};
    }
    std::vector<Chain> found;
    for (std::size_t seen = 0; seen < count;) {
      Chain chain{(start + seen) % count, 1, false};
      while (touches_next((chain.first + chain.count - 1) % count)) {
        ++chain.count;
      }
      seen += chain.count;
      found.push_back(chain);
    }
    return found;
  }
  [[nodiscard]] std::size_t place_in(const Chain& chain, std::size_t number) const {
    return (chain.first + number) % rows_.size();
  }
  [[nodiscard]] std::size_t joins(const Chain& chain) const { return chain.ring ? chain.count : chain.count - 1; }

  [[nodiscard]] Rank rank(const Chain& chain) const {
    Rank sum = 0;
    for (std::size_t number = 0; number < chain.count; ++number) {
      const std::size_t place = place_in(chain, number);
      sum += rows_[place].squares;
      if (number < joins(chain)) {
        sum += rank_of(changes_.pairs(static_cast<int>(place), changes_, static_cast<int>(place_in(chain, number + 1))),
                       0);
      }
    }
    return sum;
  }
  [[nodiscard]] Rank least_rank(const Chain& chain) const {
    Rank sum = 0;
    for (std::size_t number = 0; number < chain.count; ++number) {
      sum += rows_[place_in(chain, number)].least_squares;
    }
    return sum;
  }

  // All cheapest forms of a row.
  struct Forms {
    std::vector<char> stitches; // form after form
    std::vector<Rank> squares;
    Changes changes;
    [[nodiscard]] std::size_t count() const { return squares.size(); }
  };

  std::optional<std::vector<Forms>> forms_of(const Chain& chain) {
    std::vector<Forms> forms;
    std::size_t comparisons = 0;
    for (std::size_t number = 0; number < chain.count; ++number) {
      const MendedRow& row = rows_[place_in(chain, number)];
      const std::size_t width = row.drawn.size();
      std::vector<char> all = forms_.all_cheapest(row, most_forms);
      if (all.empty()) {
        return std::nullopt;
      }
      const std::size_t count = all.size() / width;
      Forms of_row{std::move(all), std::vector<Rank>(count), Changes(static_cast<int>(width), static_cast<int>(count))};
      for (std::size_t form = 0; form < count; ++form) {
        const std::span<const char> stitches = std::span(of_row.stitches).subspan(form * width, width);
        of_row.squares[form] = forms_.squares(row, stitches);
        of_row.changes.set(static_cast<int>(form), row.drawn, stitches);
      }
      comparisons += forms.empty() ? 0 : forms.back().count() * count;
      forms.push_back(std::move(of_row));
    }
    if (chain.ring) {
      comparisons = (comparisons + forms.back().count() * forms.front().count()) * forms.front().count();
    }
    if (comparisons > most_comparisons) {
      return std::nullopt;
    }
    return forms;
  }

  static Rank join(const Forms& below, std::size_t form, const Forms& above, std::size_t other) {
    return rank_of(below.changes.pairs(static_cast<int>(form), above.changes, static_cast<int>(other)), 0);
  }

  // The best choice of a form for each row. In a ring the first row's form is held still, each in turn.
  struct Choice {
    Rank rank = std::numeric_limits<Rank>::max();
    std::vector<std::size_t> forms;
  };
  static void choose(const std::vector<Forms>& forms, std::optional<std::size_t> held, Choice& best) {
    constexpr Rank dear = std::numeric_limits<Rank>::max() / 4;
    std::vector<std::vector<std::size_t>> came_from(forms.size());
    std::vector<Rank> so_far = forms.front().squares;
    for (std::size_t form = 0; held && form < so_far.size(); ++form) {
      so_far[form] = form == *held ? so_far[form] : dear;
    }
    for (std::size_t row = 1; row < forms.size(); ++row) {
      std::vector<Rank> next(forms[row].count(), dear);
      came_from[row].resize(forms[row].count());
      for (std::size_t below = 0; below < so_far.size(); ++below) {
        for (std::size_t form = 0; so_far[below] < dear && form < next.size(); ++form) {
          const Rank rank = so_far[below] + forms[row].squares[form] + join(forms[row - 1], below, forms[row], form);
          if (rank < next[form]) {
            next[form] = rank;
            came_from[row][form] = below;
          }
        }
      }
      so_far = std::move(next);
    }
    for (std::size_t form = 0; held && form < so_far.size(); ++form) {
      so_far[form] += join(forms.back(), form, forms.front(), *held);
    }
    const auto least = std::ranges::min_element(so_far);
    if (*least >= best.rank) {
      return;
    }
    best.rank = *least;
    best.forms.assign(forms.size(), static_cast<std::size_t>(least - so_far.begin()));
    for (std::size_t row = forms.size() - 1; row > 0; --row) {
      best.forms[row - 1] = came_from[row][best.forms[row]];
    }
  }

  bool improve_together(const Chain& chain) {
    const auto forms = forms_of(chain);
    if (!forms) {
      return false;
    }
    Choice best;
    if (chain.ring) {
      for (std::size_t held = 0; held < forms->front().count(); ++held) {
        choose(*forms, held, best);
      }
    } else {
      choose(*forms, std::nullopt, best);
    }
    for (std::size_t number = 0; number < chain.count; ++number) {
      const Forms& of_row = (*forms)[number];
      MendedRow& row = rows_[place_in(chain, number)];
      const std::size_t width = row.drawn.size();
      const auto stitches = std::span(of_row.stitches).subspan(best.forms[number] * width, width);
      row.stitches.assign(stitches.begin(), stitches.end());
      row.squares = of_row.squares[best.forms[number]];
      note(place_in(chain, number));
    }
    return true;
  }

  std::span<MendedRow> rows_;
  int height_;
  bool stacked_;
  RowForms& forms_;
  Changes changes_; // row by row as in `rows_`
  std::vector<std::int16_t> counts_;
};

} // namespace

std::int64_t squares_of(std::span<const char> stitches) {
  const std::size_t width = stitches.size();
  std::size_t start = 0; // where a run begins
  while (start < width && stitches[start] == stitches[(start + width - 1) % width]) {
    ++start;
  }
  std::int64_t sum = 0;
  std::int64_t run = 0;
  for (std::size_t place = 0; place < width; ++place) {
    ++run;
    const std::size_t column = (start + place) % width;
    if (place + 1 == width || stitches[column] != stitches[(column + 1) % width]) {
      sum += run * run;
      run = 0;
    }
  }
  return sum;
}

bool improve_look(std::span<MendedRow> rows, int height, bool stacked, RowForms& forms) {
  return Looks(rows, height, stacked, forms).improve();
}

} // namespace punchwright
