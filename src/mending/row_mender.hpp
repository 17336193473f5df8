// The cheapest change of one row, as it tiles, in which no float is too long. Exact: a row is a ring of runs, and the
// cheapest ring of runs of at most `limit` stitches is found by dynamic programming over where runs end.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace punchwright {

// What it costs to change a stitch. Larger ones are taken for this.
constexpr std::int32_t dearest_change = 10'000;
// Of a stitch that must stay as it is.
constexpr std::int32_t never_changed = -1;

// Costs of a row, the first before the second before the third: the price of its changed stitches, how many pairs they
// make with changed stitches of the rows below and above, and the sum of the squares of its runs, which is least where
// a float is caught in its middle.
struct RowCost {
  std::int64_t price = 0;
  std::int64_t pairs = 0;
  std::int64_t squares = 0;
  auto operator<=>(const RowCost&) const = default;
};

class RowMender {
public:
  // Width 1 to 200, limit 1 to 200; only rows wider than the limit have anything to mend.
  RowMender(int width, int limit);

  // The row to mend, which has both colours: its stitches (true: contrast), the price of changing each, and how many
  // pairs a change there would make; `pairs` may be empty. All of them `width` long.
  void set_row(std::span<const char> contrast, std::span<const std::int32_t> prices,
               std::span<const std::int16_t> pairs);

  // Finds the cheapest row; false where there is none. With `look`, pairs and squares count too.
  [[nodiscard]] bool solve(bool look);
  // What was found, and its stitches. `squares` is 0 without `look`.
  [[nodiscard]] RowCost cost() const;
  [[nodiscard]] std::span<const char> stitches() const { return found_; }

  // All rows of the least price, each once: their stitches, row after row. Empty where there are more than `most`, or
  // none at all.
  [[nodiscard]] std::vector<char> all_cheapest(std::size_t most);

private:
  // Price, pairs and squares in one number, so that one comparison orders them.
  using Packed = std::int64_t;
  static constexpr int price_shift = 32;
  static constexpr int pairs_shift = 20;
  static constexpr Packed impossible = Packed{1} << 54;

  // A ring is cut open where a run begins: at `cut` (0 to limit - 1), the first such place, with a run of that colour.
  struct Opening {
    int cut = 0;
    int colour = 0; // 1: contrast
    bool operator==(const Opening&) const = default;
  };
  [[nodiscard]] Packed sum(int colour, int place) const { return sums_[index(colour)][index(place)]; }
  [[nodiscard]] Packed& rest(int colour, int place) { return rest_[index(colour)][index(place)]; }
  [[nodiscard]] Packed& ahead(int colour, int place) { return ahead_[index(colour)][index(place)]; }
  [[nodiscard]] Packed run_cost(int colour, int from, int to) const {
    return sum(colour, to) - sum(colour, from) + squares_[index(to - from)];
  }
  static std::size_t index(int number) { return static_cast<std::size_t>(number); }
  void add_up(bool look, bool price_only);
  [[nodiscard]] Packed lower_bound() const;
  Packed open(const Opening& opening, Packed no_dearer_than);
  Opening find_least();
  void walk_cheapest(const Opening& opening);
  struct Listing;
  bool list(Listing& listing, int colour, int place, Packed left);

  int width_;
  int limit_;
  std::vector<char> contrast_;
  std::vector<std::int32_t> prices_;
  std::vector<std::int16_t> pairs_;
  std::array<std::vector<Packed>, 2> sums_;  // of the stitches' costs in each colour, from the first to twice round
  std::vector<Packed> squares_;              // by length of a run
  std::array<std::vector<Packed>, 2> rest_;  // least cost from a place to the end, where a run of that colour begins
  std::array<std::vector<Packed>, 2> ahead_; // the same where one of that colour ends, with the sum up to there
  std::vector<char> found_;
  Packed least_ = 0;
  Opening opened_; // what rest_ was last worked out for
};

} // namespace punchwright
