// Whether a strip has the symmetries of a frieze, and the nearest strip that has a group.
#include "design/wrap.hpp"
#include "drawing/frieze_costs.hpp"
#include "drawing/frieze_parts.hpp"

#include <algorithm>
#include <climits>
#include <cstdint>

namespace punchwright {
namespace {

// The strip's stitches one a byte, each row four times over, so that columns needn't be taken round the edge; main
// above and below.
class Stitches {
public:
  explicit Stitches(const Grid& strip) : width_(strip.width()), height_(strip.height()) {
    bytes_.resize(4 * static_cast<std::size_t>(width_) * static_cast<std::size_t>(height_));
    auto out = bytes_.begin();
    for (int row = 0; row < height_; ++row) {
      const auto first = out;
      for (int column = 0; column < width_; ++column) {
        *out++ = strip.at(column, row) ? 1 : 0;
      }
      for (int again = 1; again < 4; ++again) {
        out = std::copy_n(first, width_, out);
      }
    }
  }
  [[nodiscard]] int width() const { return width_; }
  [[nodiscard]] int height() const { return height_; }
  // `column` from -width to 3 widths - 1.
  [[nodiscard]] int at(int column, int row) const {
    return row < 0 || row >= height_ ? 0 : bytes_[static_cast<std::size_t>((4 * row + 1) * width_ + column)];
  }

private:
  int width_;
  int height_;
  std::vector<std::uint8_t> bytes_;
};

bool has_movement(const Stitches& strip, const Movement& movement) {
  for (int row = 0; row < strip.height(); ++row) {
    for (int column = 0; column < strip.width(); ++column) {
      const Cell there = movement.of({column, row});
      if (strip.at(column, row) != strip.at(there.column, there.row)) {
        return false;
      }
    }
  }
  return true;
}

// The strip folded to one repeat: how many contrast stitches lie at each of its columns. Each row twice over, forwards
// and backwards, so that a movement is a place to start reading at: the search looks at every place of the axes, and
// these loops over plain numbers are what a compiler makes fast.
class Folded {
public:
  using Count = std::uint16_t;

  Folded(const Grid& strip, int repeat)
      : repeat_(repeat), height_(strip.height()), times_(strip.width() / repeat),
        counts_(static_cast<std::size_t>(4 * repeat * height_), 0), in_row_(static_cast<std::size_t>(height_), 0) {
    for (int row = 0; row < height_; ++row) {
      for (int column = 0; column < strip.width(); ++column) {
        if (strip.at(column, row)) {
          ++in_row_[static_cast<std::size_t>(row)];
          for (const int again : {0, repeat}) {
            ++counts_[place(row, 0) + static_cast<std::size_t>(column % repeat + again)];
            ++counts_[place(row, 1) + static_cast<std::size_t>((repeat - column % repeat) % repeat + again)];
          }
        }
      }
    }
  }
  [[nodiscard]] int repeat() const { return repeat_; }
  [[nodiscard]] int height() const { return height_; }
  [[nodiscard]] int times() const { return times_; }
  [[nodiscard]] int contrast_in(int row) const { return in_row_[static_cast<std::size_t>(row)]; }
  // The counts that the columns of `row` meet under the movement, column 0 first.
  [[nodiscard]] const Count* met_by(int row, const Movement& movement) const {
    const bool back = movement.left_right == Turned::yes;
    const int start = round_edge(back ? -movement.across : movement.across, repeat_);
    return counts_.data() + place(movement.of({0, row}).row, back ? 1 : 0) + start;
  }

private:
  [[nodiscard]] std::size_t place(int row, int backwards) const {
    return static_cast<std::size_t>((2 * row + backwards) * 2 * repeat_);
  }

  int repeat_;
  int height_;
  int times_;
  std::vector<Count> counts_;
  std::vector<int> in_row_;
};

// Each column's smaller number of one yarn among the `places` places of its orbit, all columns together.
int smaller_parts(const Folded& strip, int row, const Movements& movements, int places) {
  using Count = Folded::Count;
  int sum = 0;
  const auto add = [&](auto&& contrast_at) {
    for (int column = 0; column < strip.repeat(); ++column) {
      const auto contrast = static_cast<Count>(contrast_at(column));
      sum += std::min<Count>(contrast, static_cast<Count>(places - contrast));
    }
  };
  const Count* const first = strip.met_by(row, movements[0]);
  if (movements.size() == 1) {
    add([=](int column) { return first[column]; });
    return sum;
  }
  const Count* const second = strip.met_by(row, movements[1]);
  if (movements.size() == 2) {
    add([=](int column) { return first[column] + second[column]; });
    return sum;
  }
  const Count* const third = strip.met_by(row, movements[2]);
  const Count* const fourth = strip.met_by(row, movements[3]);
  add([=](int column) { return first[column] + second[column] + third[column] + fourth[column]; });
  return sum;
}

// Stitches to change for the frieze, or a number above `limit` as soon as it is.
int changes_for(const Folded& strip, const Frieze& frieze, int limit) {
  const Movements movements = movements_of(frieze);
  const int places = static_cast<int>(movements.size()) * strip.times();
  // Counted once for each place, so that an orbit counts as often as it has places: divided by them at the end.
  std::int64_t counted = 0;
  for (int row = 0; row < strip.height(); ++row) {
    const int partner = uses_level_axis(frieze.group) ? frieze.level - row : row;
    if (partner < 0 || partner >= strip.height()) {
      counted += std::int64_t{strip.contrast_in(row)} * places;
    } else if (partner >= row) {
      const int both = partner > row ? 2 : 1;
      counted += std::int64_t{smaller_parts(strip, row, movements, places)} * strip.times() * both;
    }
    if (counted > std::int64_t{limit} * places) {
      return limit + 1;
    }
  }
  return static_cast<int>(counted / places);
}

Grid by_majority(const Grid& strip, const Frieze& frieze) {
  Grid after(strip.width(), strip.height());
  for (int row = 0; row < strip.height(); ++row) {
    for (int column = 0; column < strip.width(); ++column) {
      const auto orbit = orbit_of({column, row}, frieze, strip.width());
      std::size_t contrast = 0;
      bool leaves = false;
      for (const Cell place : orbit) {
        const bool inside = place.row >= 0 && place.row < strip.height();
        leaves = leaves || !inside;
        contrast += inside && strip.at(place.column, place.row) ? 1U : 0U;
      }
      after.set(column, row, !leaves && 2 * contrast > orbit.size());
    }
  }
  return after;
}

int differing(const Grid& one, const Grid& other) {
  int count = 0;
  for (int row = 0; row < one.height(); ++row) {
    for (int column = 0; column < one.width(); ++column) {
      count += one.at(column, row) != other.at(column, row) ? 1 : 0;
    }
  }
  return count;
}

// The repeats to try. A glide by half of a shorter repeat is one by half the width only where that repeat fits an odd
// number of times; all other symmetries of a shorter repeat are symmetries of the whole width too.
std::vector<int> repeats_to_try(FriezeGroup group, int width) {
  std::vector<int> repeats{width};
  while (needs_even_repeat(group) && repeats.back() % 4 == 0) {
    repeats.push_back(repeats.back() / 2);
  }
  return repeats;
}

// The place of the axes that needs the fewest changes until now, the first of several.
struct Cheapest {
  Frieze frieze;
  int changes = INT_MAX - 1;
};

// One axis alone, or the repeat shorter than the width.
void look_at_each(const Folded& folded, Cheapest& best) {
  const FriezeGroup group = best.frieze.group;
  const int levels = uses_level_axis(group) ? 2 * folded.height() - 1 : 1;
  std::vector<int> uprights;
  for (int upright = 0; upright < (uses_upright_axis(group) ? folded.repeat() : 1); ++upright) {
    // With a level axis as well there is no less to change than for the mirrors alone.
    if (group != FriezeGroup::p2mg ||
        changes_for(folded, {FriezeGroup::p1m1, folded.repeat(), upright, 0}, best.changes - 1) < best.changes) {
      uprights.push_back(upright);
    }
  }
  for (int level = 0; level < levels; ++level) {
    for (const int upright : uprights) {
      const Frieze frieze{group, folded.repeat(), upright, level};
      if (const int changes = changes_for(folded, frieze, best.changes - 1); changes < best.changes) {
        best = {frieze, changes};
      }
    }
  }
}

void look_in_table(const Grid& strip, Cheapest& best) {
  const std::vector<int> costs = costs_of_axes(strip, best.frieze.group);
  if (costs.empty()) {
    return;
  }
  const auto cheapest = std::ranges::min_element(costs); // the first, so the lowest level axis, then upright axis
  const auto place = static_cast<int>(cheapest - costs.begin());
  best = {{best.frieze.group, strip.width(), place % strip.width(), place / strip.width()}, *cheapest};
}

} // namespace

bool has_symmetry(const Grid& strip, const Frieze& frieze) {
  if (unusable_frieze(frieze, strip.width(), strip.height())) {
    return false;
  }
  const Stitches stitches(strip);
  return has_movement(stitches, {Turned::no, frieze.repeat, Turned::no, 0}) &&
         std::ranges::all_of(movements_of(frieze),
                             [&](const Movement& movement) { return has_movement(stitches, movement); });
}

Result<NearestFrieze> nearest_with(const Grid& strip, const Frieze& frieze) {
  if (auto failure = unusable_frieze(frieze, strip.width(), strip.height())) {
    return *failure;
  }
  Grid after = by_majority(strip, frieze);
  const int changed = differing(strip, after);
  return NearestFrieze{std::move(after), frieze, changed};
}

Result<NearestFrieze> nearest_with(const Grid& strip, FriezeGroup group) {
  if (needs_even_repeat(group) && strip.width() % 2 != 0) {
    return odd_repeat(group, strip.width());
  }
  Cheapest best;
  best.frieze = {group, strip.width(), 0, 0};
  for (const int repeat : repeats_to_try(group, strip.width())) {
    if (repeat == strip.width() && uses_upright_axis(group) && uses_level_axis(group)) {
      look_in_table(strip, best);
    } else {
      look_at_each(Folded(strip, repeat), best);
    }
  }
  return nearest_with(strip, best.frieze);
}

} // namespace punchwright
