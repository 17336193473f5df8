// Rows are gone through outwards from the level axis, so that a row and its mirror image are chosen one after the
// other. What is carried on are the best choices for each way in which the rows may lie that still touch a row to come.
#include "mending/symmetry.hpp"

#include "mending/changes.hpp"
#include "mending/orbits.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <numeric>
#include <optional>
#include <tuple>

namespace punchwright {
namespace {

constexpr std::size_t most_forms = 2000;            // of a row
constexpr std::size_t most_comparisons = 1'000'000; // of the whole drawing: some tenths of a second
constexpr int no_row = -1;

// The orbits of a row, and with it of its mirror image: all of the one lie in the other too.
struct RowOrbits {
  std::vector<std::size_t> numbers; // ascending
  [[nodiscard]] std::size_t place_of(std::size_t number) const {
    return static_cast<std::size_t>(std::ranges::lower_bound(numbers, number) - numbers.begin());
  }
};

struct Choices {
  std::vector<char> stitches; // form after form
  std::vector<std::int64_t> squares;
  Changes changes;
  std::vector<std::int64_t> contrasts; // form after form: contrast stitches in each orbit of the row
  RowOrbits orbits;
  std::vector<std::int64_t> beside; // contrast stitches in each orbit of a mirror image that isn't mended
  std::size_t present = 0;
  [[nodiscard]] std::size_t count() const { return squares.size(); }
  [[nodiscard]] std::span<const std::int64_t> of_form(std::size_t form) const {
    return std::span(contrasts).subspan(form * orbits.numbers.size(), orbits.numbers.size());
  }
};

struct Rank {
  std::int64_t pairs = 0;
  std::int64_t squares = 0;
  std::int64_t unlike = 0;
  auto operator<=>(const Rank&) const = default;
  Rank operator+(const Rank& other) const {
    return {pairs + other.pairs, squares + other.squares, unlike + other.unlike};
  }
};

class Symmetries {
public:
  Symmetries(std::span<MendedRow> rows, const Grid& drawing, bool stacked, const Frieze& frieze, RowForms& forms)
      : rows_(rows), drawing_(drawing), stacked_(stacked && drawing.height() > 1), frieze_(frieze),
        orbits_(drawing, frieze), place_of_row_(static_cast<std::size_t>(drawing.height()), none) {
    for (std::size_t place = 0; place < rows_.size(); ++place) {
      place_of_row_[static_cast<std::size_t>(rows_[place].row)] = place;
    }
    for (const MendedRow& row : rows_) {
      choices_.push_back(choices_of(row, forms));
    }
    set_order();
  }

  bool improve(bool look_proved) {
    std::vector<std::size_t> chosen;
    for (const Choices& row : choices_) {
      chosen.push_back(row.present);
    }
    best_ = rank_of(chosen);
    if (look_proved && best_.unlike == 0) {
      return true;
    }
    const Rank found = search(chosen);
    for (std::size_t place = 0; place < rows_.size(); ++place) {
      const std::size_t width = rows_[place].drawn.size();
      const auto stitches = std::span(choices_[place].stitches).subspan(chosen[place] * width, width);
      rows_[place].stitches.assign(stitches.begin(), stitches.end());
      rows_[place].squares = choices_[place].squares[chosen[place]];
    }
    return exact_ || (look_proved && found.unlike == 0);
  }

private:
  static constexpr std::size_t none = std::numeric_limits<std::size_t>::max();

  // The row that the frieze mirrors, turns or glides onto this one; no_row where it lies above or below the drawing.
  [[nodiscard]] int partner_row(int row) const {
    const int partner = uses_level_axis(frieze_.group) ? frieze_.level - row : row;
    return partner >= 0 && partner < drawing_.height() ? partner : no_row;
  }
  [[nodiscard]] std::size_t partner(std::size_t place) const {
    const int row = partner_row(rows_[place].row);
    return row == no_row || row == rows_[place].row ? none : place_of_row_[static_cast<std::size_t>(row)];
  }
  // How often two mended rows lie on one another: in a stacked drawing of two rows twice.
  [[nodiscard]] int touches(std::size_t one, std::size_t other) const {
    const auto lies_on = [&](std::size_t below, std::size_t above) {
      const int next = rows_[below].row + 1;
      return rows_[above].row == (stacked_ && next == drawing_.height() ? 0 : next);
    };
    return (lies_on(one, other) ? 1 : 0) + (lies_on(other, one) ? 1 : 0);
  }

  Choices choices_of(const MendedRow& row, RowForms& forms) {
    const std::size_t width = row.drawn.size();
    std::vector<char> stitches = forms.all_cheapest(row, most_forms);
    if (stitches.empty()) {
      exact_ = false;
      stitches = row.stitches;
    }
    const std::size_t count = stitches.size() / width;
    Choices found{std::move(stitches), {}, Changes(drawing_.width(), static_cast<int>(count)), {}, {}, {}};
    for (int column = 0; column < drawing_.width(); ++column) {
      found.orbits.numbers.push_back(orbits_.of(column, row.row));
    }
    std::ranges::sort(found.orbits.numbers);
    const auto repeated = std::ranges::unique(found.orbits.numbers);
    found.orbits.numbers.erase(repeated.begin(), repeated.end());
    for (std::size_t form = 0; form < count; ++form) {
      const auto here = std::span(found.stitches).subspan(form * width, width);
      found.present = std::ranges::equal(here, row.stitches) ? form : found.present;
      found.squares.push_back(forms.squares(row, here));
      found.changes.set(static_cast<int>(form), row.drawn, here);
      const auto contrasts = contrasts_in(found.orbits, row.row, here);
      found.contrasts.insert(found.contrasts.end(), contrasts.begin(), contrasts.end());
    }
    found.beside = beside(row.row, found.orbits);
    return found;
  }

  [[nodiscard]] std::vector<std::int64_t> contrasts_in(const RowOrbits& orbits, int row,
                                                       std::span<const char> stitches) const {
    std::vector<std::int64_t> counts(orbits.numbers.size(), 0);
    for (std::size_t column = 0; column < stitches.size(); ++column) {
      counts[orbits.place_of(orbits_.of(static_cast<int>(column), row))] += stitches[column];
    }
    return counts;
  }
  [[nodiscard]] std::vector<std::int64_t> beside(int row, const RowOrbits& orbits) const {
    const int other = partner_row(row);
    if (other == no_row || other == row || place_of_row_[static_cast<std::size_t>(other)] != none) {
      return std::vector<std::int64_t>(orbits.numbers.size(), 0);
    }
    std::vector<char> stitches;
    for (int column = 0; column < drawing_.width(); ++column) {
      stitches.push_back(drawing_.at(column, other) ? 1 : 0);
    }
    return contrasts_in(orbits, other, stitches);
  }

  // Outwards from the level axis, or upwards where there is none.
  void set_order() {
    order_.resize(rows_.size());
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    if (uses_level_axis(frieze_.group)) {
      std::ranges::stable_sort(order_, {},
                               [&](std::size_t place) { return std::abs(2 * rows_[place].row - frieze_.level); });
    }
    turn_.resize(rows_.size());
    for (std::size_t turn = 0; turn < order_.size(); ++turn) {
      turn_[order_[turn]] = turn;
    }
  }
  // The mended rows that a row touches or is the image of.
  [[nodiscard]] std::vector<std::size_t> related(std::size_t place) const {
    std::vector<std::size_t> found;
    for (const std::size_t other :
         {place == 0 ? rows_.size() - 1 : place - 1, (place + 1) % rows_.size(), partner(place)}) {
      if (other != none && other != place && (other == partner(place) || touches(place, other) > 0) &&
          std::ranges::find(found, other) == found.end()) {
        found.push_back(other);
      }
    }
    return found;
  }

  // What a form adds, beside the forms of the related rows that had their turn before.
  template <class FormOf> Rank added(std::size_t place, std::size_t form, const FormOf& form_of) const {
    const Choices& own = choices_[place];
    Rank rank{0, own.squares[form], 0};
    for (const std::size_t other : related_[place]) {
      const int often = touches(place, other);
      if (often > 0 && turn_[other] < turn_[place]) {
        rank.pairs += often * own.changes.pairs(static_cast<int>(form), choices_[other].changes,
                                                static_cast<int>(form_of(other)));
      }
    }
    const std::size_t image = partner(place);
    if (image == none) {
      rank.unlike = unlike(own, own.of_form(form), own.beside);
    } else if (turn_[image] < turn_[place]) {
      rank.unlike = unlike(own, own.of_form(form), choices_[image].of_form(form_of(image)));
    }
    return rank;
  }
  [[nodiscard]] std::int64_t unlike(const Choices& row, std::span<const std::int64_t> one,
                                    std::span<const std::int64_t> other) const {
    std::int64_t sum = 0;
    for (std::size_t place = 0; place < one.size(); ++place) {
      const std::int64_t contrast = one[place] + other[place];
      sum += contrast * (orbits_.size(row.orbits.numbers[place]) - contrast);
    }
    return sum;
  }

  Rank rank_of(const std::vector<std::size_t>& chosen) {
    related_.clear();
    for (std::size_t place = 0; place < rows_.size(); ++place) {
      related_.push_back(related(place));
    }
    Rank sum;
    for (const std::size_t place : order_) {
      sum = sum + added(place, chosen[place], [&](std::size_t other) { return chosen[other]; });
    }
    return sum;
  }

  // A way to choose the rows so far.
  struct Way {
    Rank rank;
    std::vector<std::size_t> open; // the forms of the rows that are related to one to come
    std::size_t before = 0;        // among the ways of the turn before
    std::size_t form = 0;
  };

  // The rows that had their turn and are related to one to come.
  [[nodiscard]] std::vector<std::size_t> open_after(std::size_t turn) const {
    std::vector<std::size_t> open;
    for (std::size_t earlier = 0; earlier <= turn; ++earlier) {
      const auto& others = related_[order_[earlier]];
      if (std::ranges::any_of(others, [&](std::size_t other) { return turn_[other] > turn; })) {
        open.push_back(order_[earlier]);
      }
    }
    return open;
  }

  // Better choices than those given, if there are any; the rank of what is chosen then.
  Rank search(std::vector<std::size_t>& chosen) {
    std::int64_t squares_to_come = 0;
    for (const Choices& row : choices_) {
      squares_to_come += std::ranges::min(row.squares);
    }
    std::vector<std::vector<Way>> turns(1, {Way{}});
    std::vector<std::size_t> open;
    std::size_t left = most_comparisons;
    for (std::size_t turn = 0; turn < order_.size(); ++turn) {
      const std::size_t place = order_[turn];
      const std::size_t forms = choices_[place].count();
      squares_to_come -= std::ranges::min(choices_[place].squares);
      keep_best(turns.back(), std::max<std::size_t>(1, left / (order_.size() - turn) / forms));
      left -= std::min(left, turns.back().size() * forms);
      const std::vector<std::size_t> next_open = open_after(turn);
      turns.push_back(go_on(turns.back(), place, open, next_open, squares_to_come));
      open = next_open;
    }
    if (turns.back().empty() || turns.back().front().rank >= best_) {
      return best_;
    }
    std::size_t way = 0;
    for (std::size_t turn = order_.size(); turn > 0; --turn) {
      chosen[order_[turn - 1]] = turns[turn][way].form;
      way = turns[turn][way].before;
    }
    return turns.back().front().rank;
  }

  void keep_best(std::vector<Way>& ways, std::size_t most) {
    if (ways.size() > most) {
      exact_ = false;
      std::ranges::stable_sort(ways, {}, &Way::rank);
      ways.resize(most);
    }
  }

  [[nodiscard]] std::vector<Way> go_on(const std::vector<Way>& ways, std::size_t place,
                                       const std::vector<std::size_t>& open, const std::vector<std::size_t>& next_open,
                                       std::int64_t squares_to_come) const {
    std::vector<Way> next;
    std::map<std::vector<std::size_t>, std::size_t> seen;
    for (std::size_t before = 0; before < ways.size(); ++before) {
      for (std::size_t form = 0; form < choices_[place].count(); ++form) {
        const auto form_of = [&](std::size_t other) {
          return other == place
                     ? form
                     : ways[before].open[static_cast<std::size_t>(std::ranges::find(open, other) - open.begin())];
        };
        const Rank rank = ways[before].rank + added(place, form, form_of);
        if (rank + Rank{0, squares_to_come, 0} > best_) {
          continue;
        }
        std::vector<std::size_t> key;
        std::ranges::transform(next_open, std::back_inserter(key), form_of);
        const auto [known, is_new] = seen.try_emplace(key, next.size());
        if (is_new) {
          next.push_back({rank, std::move(key), before, form});
        } else if (rank < next[known->second].rank) {
          next[known->second] = {rank, std::move(key), before, form};
        }
      }
    }
    return next;
  }

  std::span<MendedRow> rows_;
  const Grid& drawing_;
  bool stacked_;
  const Frieze& frieze_;
  Orbits orbits_;
  std::vector<std::size_t> place_of_row_; // among the mended rows, by drawn row
  std::vector<Choices> choices_;
  std::vector<std::size_t> order_; // places of the rows
  std::vector<std::size_t> turn_;  // by place
  std::vector<std::vector<std::size_t>> related_;
  Rank best_;
  bool exact_ = true;
};

} // namespace

bool improve_symmetry(std::span<MendedRow> rows, const Grid& drawing, bool stacked, const Frieze& frieze,
                      RowForms& forms, bool look_proved) {
  if (rows.empty() || !makes_alike(frieze, drawing.width())) {
    return look_proved;
  }
  return Symmetries(rows, drawing, stacked, frieze, forms).improve(look_proved);
}

} // namespace punchwright
