// The counts of one group of pieces from tier to tier, by themselves: the best chain that the rule of halves allows,
// and for all that chains can leave of the tiers' repeats the best that leaves it.
#pragma once

#include "pieces/count_costs.hpp"

#include <optional>
#include <vector>

namespace punchwright {

class CountChain {
public:
  // `multiples`: of each tier that tells one chain from another; 1 where nothing is asked of it.
  CountChain(const CountsProblem& problem, std::size_t group, const std::vector<int>& multiples);

  // Comparisons that were made until now.
  [[nodiscard]] std::int64_t compared() const { return compared_; }
  // Of the best chain, whatever it leaves. Nothing: no chain is allowed.
  [[nodiscard]] const std::optional<CountCost>& best() const { return best_; }

  // Tiers' remainders as one number, those of the last tier next to each other; and how much more than the best chain
  // the best one costs that leaves them.
  struct Entry {
    std::size_t remainder = 0;
    CountCost more;
  };
  // All that cost no more than `room` above the best (its squares), the cheapest first. Less than all are found where
  // it takes more comparisons than `most`: then `compared()` is more. `cut_off` is set where the room leaves something
  // out.
  [[nodiscard]] std::vector<Entry> within(std::int64_t room, std::size_t remainders, std::int64_t most, bool& cut_off);

  // The counts of such an entry; of several that cost as much the narrower at the bottom.
  [[nodiscard]] std::vector<int> counts_of(const Entry& entry);

private:
  struct Walk {
    std::size_t tier = 0;
    int below = 0;
    std::size_t remainder = 0;
    CountCost so_far;
  };
  struct Limits {
    int least = 0;
    int most = 0;
  };
  [[nodiscard]] const SeamRule& rule_of(std::size_t tier) const;
  [[nodiscard]] Limits limits_above(std::size_t tier, int below) const;
  [[nodiscard]] const std::optional<CountCost>& onwards(std::size_t tier, int stitches) const;
  [[nodiscard]] std::size_t remainder_with(std::size_t tier, std::size_t before, int stitches) const;
  void find_onwards(std::size_t tier);
  void walk(const Walk& at, std::int64_t room, std::int64_t most, bool& cut_off);
  bool trace(const Walk& at, const Entry& wanted, std::vector<int>& counts) const;

  const CountsProblem& problem_;
  std::size_t group_;
  std::vector<int> multiples_;
  SeamRule no_rule_;
  // [tier][count - least]: the least cost of that tier and all above it; nothing where none is allowed.
  std::vector<std::vector<std::optional<CountCost>>> onwards_;
  std::optional<CountCost> best_;
  std::vector<int> entry_of_; // by remainder; -1: none
  std::vector<Entry> entries_;
  std::int64_t compared_ = 0;
};

} // namespace punchwright
