// What the widths of one piece leave of its tiers' repeats: for all remainders together the nearest widths.
// A ring closes by the remainders of its pieces, whatever their counts are otherwise.
#pragma once

#include "pieces/piece_widths.hpp"

#include <cstdint>
#include <vector>

namespace punchwright {

// Steps and widths of a nearness in one number, which sorts alike and adds up: of as many pieces as a yoke has.
constexpr int cost_of_step = 2 * static_cast<int>(most_yoke_pieces) + 1;
[[nodiscard]] constexpr int cost_of(const Nearness& nearness) {
  return nearness.steps * cost_of_step + nearness.widths;
}

// The remainders of all tiers as one number: those of the last tier next to each other.
struct Remainders {
  std::vector<int> of_tier;                                  // how many there are in each tier, 1 or more
  [[nodiscard]] std::size_t count(std::size_t within) const; // of all tiers; `within` + 1: more than that
};

// What counts leave in a tier, by stitches; -1 where no piece may have them.
using RemainderOfCount = std::vector<int>;

class WidthRemainders {
public:
  // `of_count` has one entry for each tier that has seams.
  WidthRemainders(PieceWidths widths, const Remainders& remainders, std::vector<RemainderOfCount> of_count, int edge);

  struct Entry {
    std::size_t remainder = 0;
    int cost = 0;
    StepsOfPiece change;
  };

  // Works out all changes of no more than so many steps. False where it took more counts than `left`, which it lowers.
  bool grow(int steps, std::int64_t& left);
  // Whether no further change can add anything.
  [[nodiscard]] bool complete() const { return complete_; }
  // The nearest for each remainder that occurs, by their cost.
  [[nodiscard]] const std::vector<Entry>& entries() const { return entries_; }
  // The steps of the nearest of all; more than any change has where no counts keep to the rules.
  [[nodiscard]] int fewest_steps();

private:
  struct Walk {
    std::size_t change = 0;
    std::size_t tier = 0;
    int below = 0; // stitches of the tier before
    std::size_t remainder = 0;
  };
  void add_from(const Walk& walk, std::int64_t& left);

  PieceWidths widths_;
  const Remainders& remainders_;
  std::vector<RemainderOfCount> of_count_;
  int edge_;
  PieceLimits no_limits_;
  std::vector<bool> known_; // of each remainder
  std::vector<Entry> entries_;
  std::size_t next_ = 0; // change
  bool complete_ = false;
};

} // namespace punchwright
