// The search: from row to row with the cheapest way to every state, a state being the order of those rows whose yarns
// are still waited for. Yarns are waited for over a few passes only, so there are never more than 64 states.
#include "rows/pass_order.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <limits>

namespace punchwright {
namespace {

constexpr std::size_t yarn_keys = 128;

std::size_t key_of(char yarn) {
  return static_cast<unsigned char>(yarn) % yarn_keys;
}

// Passes from one use of a yarn to the next: from the same side after an odd number, since each pass changes sides.
bool goes_empty(long long from, long long to) {
  const long long passes = to - from;
  return passes % 2 == 0 && passes <= most_passes_hanging + 1;
}

// The present row, and those before it in which a waiting yarn was last used: these began at most
// most_passes_hanging + 2 passes ago, and take two passes each.
constexpr int slots = 1 + (most_passes_hanging + 2) / 2;
static_assert(slots <= 6, "a bit for each state, in 64");

// Before any number of turns missed; there are fewer rows.
constexpr std::uint64_t one_empty_pass = std::uint64_t{1} << 32;

class Search {
public:
  explicit Search(std::vector<RowToKnit>& rows) : rows_(rows) {
    if (!rows.empty()) {
      remember(rows.front().main, {-1, no_slot, false});
    }
  }

  void choose() {
    for (std::size_t row = 0; row < rows_.size(); ++row) {
      forget_rows_not_waited_for();
      rows_[row].passes == 2 ? knit_two_colours(row) : knit_one_colour(rows_[row]);
    }
    for (int slot = 0; slot < slots; ++slot) {
      if (row_in_[static_cast<std::size_t>(slot)]) {
        forget(slot);
      }
    }
    walk_back();
  }

private:
  static constexpr int no_slot = -1;
  static constexpr std::size_t states = std::size_t{1} << slots;

  struct LastUse {
    long long pass = std::numeric_limits<long long>::min() / 2; // of the row's first pass
    int slot = no_slot;                                         // of a row whose order isn't decided yet
    bool second_if_main_first = false;                          // main goes second where contrast goes first
  };
  // A row that no yarn waits in any more: which order is the better one, for every order of the others.
  struct Forgotten {
    std::size_t row = 0;
    std::uint64_t contrast_first = 0; // a bit for each state
    std::uint8_t slot = 0;
    std::uint8_t others = 0; // slots that hold rows still
  };

  static bool has(std::size_t state, int slot) { return (state >> slot & 1U) != 0; }

  [[nodiscard]] long long pass_of(const LastUse& use, std::size_t state) const {
    const bool contrast_first = use.slot != no_slot && has(state, use.slot);
    return use.pass + (use.slot != no_slot && use.second_if_main_first != contrast_first ? 1 : 0);
  }

  // Neighbouring rows of the same pair in which the yarn that went last doesn't go first.
  void add_turn_missed(std::size_t index, int slot, std::size_t state) {
    if (index == 0 || rows_[index - 1].passes != 2 || rows_[index - 1].main != rows_[index].main ||
        rows_[index - 1].contrast != rows_[index].contrast) {
      return;
    }
    cost_[state] += has(state, slot_before_) == has(state, slot) ? 1 : 0;
  }

  void add_cost(char yarn, long long pass, std::size_t state) {
    cost_[state] += goes_empty(pass_of(last_[key_of(yarn)], state), pass) ? one_empty_pass : 0;
  }

  void remember(char yarn, LastUse use) {
    const std::size_t key = key_of(yarn);
    if (std::ranges::find(yarns_, key) == yarns_.end()) {
      yarns_.push_back(key);
    }
    last_[key] = use;
  }

  void knit_one_colour(const RowToKnit& row) {
    const char yarn = row.all_contrast ? row.contrast : row.main;
    for_each_state([&](std::size_t state) { add_cost(yarn, pass_, state); });
    remember(yarn, {pass_, no_slot, false});
    ++pass_;
  }

  void knit_two_colours(std::size_t index) {
    const RowToKnit& row = rows_[index];
    const int slot = free_slot();
    const std::size_t bit = std::size_t{1} << slot;
    for_each_state([&](std::size_t state) { cost_[state | bit] = cost_[state]; });
    used_ |= bit;
    row_in_[static_cast<std::size_t>(slot)] = index;
    for_each_state([&](std::size_t state) {
      const int contrast_second = has(state, slot) ? 0 : 1;
      add_cost(row.main, pass_ + 1 - contrast_second, state);
      add_cost(row.contrast, pass_ + contrast_second, state);
      add_turn_missed(index, slot, state);
    });
    slot_before_ = slot;
    remember(row.main, {pass_, slot, false});
    remember(row.contrast, {pass_, slot, true});
    pass_ += 2;
  }

  void forget_rows_not_waited_for() {
    std::array<bool, slots> waited_for{};
    for (const std::size_t yarn : yarns_) {
      const LastUse& use = last_[yarn];
      if (use.slot != no_slot && pass_ - use.pass <= most_passes_hanging + 2) {
        waited_for[static_cast<std::size_t>(use.slot)] = true;
      }
    }
    for (int slot = 0; slot < slots; ++slot) {
      if (row_in_[static_cast<std::size_t>(slot)] && !waited_for[static_cast<std::size_t>(slot)]) {
        forget(slot);
      }
    }
  }

  void forget(int slot) {
    const std::size_t bit = std::size_t{1} << slot;
    used_ &= ~bit;
    Forgotten forgotten{*row_in_[static_cast<std::size_t>(slot)], 0, static_cast<std::uint8_t>(slot),
                        static_cast<std::uint8_t>(used_)};
    for_each_state([&](std::size_t state) {
      if (cost_[state | bit] < cost_[state]) {
        cost_[state] = cost_[state | bit];
        forgotten.contrast_first |= std::uint64_t{1} << state;
      }
    });
    forgotten_.push_back(forgotten);
    row_in_[static_cast<std::size_t>(slot)].reset();
    for (const std::size_t yarn : yarns_) {
      if (LastUse& use = last_[yarn]; use.slot == slot) {
        use = {}; // cut by now, or used again
      }
    }
  }

  void walk_back() {
    std::size_t state = 0;
    for (auto forgotten = forgotten_.rbegin(); forgotten != forgotten_.rend(); ++forgotten) {
      const bool contrast_first = (forgotten->contrast_first >> (state & forgotten->others) & 1U) != 0;
      rows_[forgotten->row].contrast_first = contrast_first;
      const std::size_t bit = std::size_t{1} << forgotten->slot;
      state = contrast_first ? state | bit : state & ~bit;
    }
  }

  [[nodiscard]] int free_slot() const {
    int slot = 0;
    while (row_in_[static_cast<std::size_t>(slot)]) {
      ++slot;
    }
    return slot;
  }

  template <typename Visit> void for_each_state(Visit visit) {
    for (std::size_t state = 0; state < states; ++state) {
      if ((state & ~used_) == 0) {
        visit(state);
      }
    }
  }

  std::vector<RowToKnit>& rows_;
  long long pass_ = 0;
  std::array<LastUse, yarn_keys> last_{};
  std::vector<std::size_t> yarns_;                         // that were used so far
  std::size_t used_ = 0;                                   // slots that hold a row
  std::array<std::optional<std::size_t>, slots> row_in_{}; // index of the row
  int slot_before_ = no_slot;                              // of the latest row of two passes
  std::array<std::uint64_t, states> cost_{};               // of the cheapest way there
  std::vector<Forgotten> forgotten_;
};

} // namespace

void order_passes(std::vector<RowToKnit>& rows) {
  Search(rows).choose();
}

int empty_passes(const std::vector<RowToKnit>& rows) {
  std::array<long long, yarn_keys> last{};
  last.fill(std::numeric_limits<long long>::min() / 2);
  if (!rows.empty()) {
    last[key_of(rows.front().main)] = -1;
  }
  long long number = 0;
  int empty = 0;
  for (const RowToKnit& row : rows) {
    for (const Pass& pass : passes_of(row)) {
      long long& used = last[key_of(pass.main != 0 ? pass.main : pass.contrast)];
      empty += goes_empty(used, number) ? 1 : 0;
      used = number++;
    }
  }
  return empty;
}

} // namespace punchwright
