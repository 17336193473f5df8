// The widths of one piece that allow other counts than nearer widths do, the nearest first.
// What the search for the nearest widths of a whole yoke puts together.
#pragma once

#include "pieces/cone.hpp"

#include <cstdlib>
#include <optional>
#include <set>
#include <vector>

namespace punchwright {

// Widths change by whole millimetres, and none by more than 10 cm: beyond that it is another garment.
constexpr double width_step_cm = 0.1;
constexpr int most_width_steps = 100;

struct Nearness {
  int steps = 0; // the changes together
  int widths = 0;
  auto operator<=>(const Nearness&) const = default;
  Nearness operator+(const Nearness& other) const { return {steps + other.steps, widths + other.widths}; }
};

// How a piece's widths change, in steps.
struct StepsOfPiece {
  int bottom = 0;
  int top = 0;
  [[nodiscard]] Nearness nearness() const {
    return {std::abs(bottom) + std::abs(top), (bottom != 0 ? 1 : 0) + (top != 0 ? 1 : 0)};
  }
};

struct Limits {
  int least = 0;
  int most = 0;
  auto operator<=>(const Limits&) const = default;
};
using PieceLimits = std::vector<Limits>; // of the tiers, and at last of the top
[[nodiscard]] Limits both(const Limits& one, const Limits& other);

// Of a piece that has widths, and of those that are like it: all changes within the bound, worked out as far as they
// are asked for. What is passed in outlives it.
class PieceWidths {
public:
  PieceWidths(const OpenedYoke& opened, const Cone& cone, const std::vector<SeamRule>& seams, const YokePiece& piece,
              std::size_t size);

  static constexpr std::int64_t step = 100; // thousandths of a centimetre

  [[nodiscard]] std::int64_t bottom(int steps) const { return bottom_ + steps * step; }
  [[nodiscard]] std::int64_t top(int steps) const { return top_ + steps * step; }

  [[nodiscard]] const StepsOfPiece& change(std::size_t number) const { return changes_[number]; }
  // Of that change, what is within the tolerance.
  [[nodiscard]] const Limits& counts(std::size_t number, std::size_t tier) const {
    return counts_[number * cone_.of_top.size() + tier];
  }

  // The number of the nearest change with which there are counts within the limits in every tier, from that number on.
  [[nodiscard]] std::optional<std::size_t> nearest(const PieceLimits& limits, std::size_t from);

private:
  void add_changes_of(int sum);
  void add(const StepsOfPiece& change);
  [[nodiscard]] bool keeps(const PieceLimits& limits, const Limits* counts) const;

  const OpenedYoke& opened_;
  const Cone& cone_;
  const std::vector<SeamRule>& seams_;
  std::int64_t bottom_;
  std::int64_t top_;
  std::vector<StepsOfPiece> changes_;
  std::vector<Limits> counts_; // of each change and tier
  std::set<PieceLimits> known_;
  int next_sum_ = 0; // of the changes that aren't worked out yet
};

} // namespace punchwright
