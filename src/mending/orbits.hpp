// The stitches of a drawing that a frieze makes alike, numbered: what mends are compared by, and changed by.
#pragma once

#include "design/grid.hpp"
#include "drawing/frieze.hpp"

#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

namespace punchwright {

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

} // namespace punchwright
