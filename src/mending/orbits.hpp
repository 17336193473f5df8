// Which stitches of a drawing a frieze makes alike, and how far the drawing is from having them alike: what mends are
// compared by, and changed by.
#pragma once

#include "design/grid.hpp"
#include "drawing/frieze.hpp"

#include <cstddef>
#include <cstdint>
#include <limits>
#include <span>
#include <vector>

namespace punchwright {

// Whether the frieze makes any two stitches of that width alike; where it does not, there is nothing to keep.
[[nodiscard]] bool makes_alike(const Frieze& frieze, int width);

// The stitches, numbered by what is alike.
class Orbits {
public:
  Orbits(const Grid& drawing, const Frieze& frieze);
  [[nodiscard]] std::size_t of(int column, int row) const { return of_stitch_[place(column, row)]; }
  [[nodiscard]] std::size_t count() const { return sizes_.size(); }
  // So many stitches, those above and below the drawing among them.
  [[nodiscard]] std::int64_t size(std::size_t orbit) const { return sizes_[orbit]; }

private:
  static constexpr std::size_t none = std::numeric_limits<std::size_t>::max();
  [[nodiscard]] std::size_t place(int column, int row) const {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(width_) + static_cast<std::size_t>(column);
  }
  void number(const Grid& drawing, const std::vector<Cell>& cells);

  int width_;
  std::vector<std::size_t> of_stitch_;
  std::vector<std::int64_t> sizes_;
};

// Pairs of stitches that the frieze makes alike and that are not: 0 where the drawing has its symmetry. A partner above
// or below the drawing is main.
[[nodiscard]] std::int64_t unlike_pairs(const Grid& drawing, const Frieze& frieze);

// The same for other forms of one row, all other rows as they are; without the pairs that don't touch the row.
class UnlikeInRow {
public:
  UnlikeInRow(const Grid& drawing, const Frieze& frieze, int row);
  // true: contrast
  [[nodiscard]] std::int64_t of(std::span<const char> stitches) const;

private:
  struct Orbit {
    std::int64_t size = 0;     // stitches
    std::int64_t contrast = 0; // of them in other rows
  };
  std::vector<Orbit> orbits_;
  std::vector<std::size_t> of_column_; // places in `orbits_`
};

} // namespace punchwright
