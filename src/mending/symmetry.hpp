// Which of equally good mends keeps the symmetry of the drawing best: the last criterion, where it is asked for.
#pragma once

#include "design/grid.hpp"
#include "drawing/frieze.hpp"
#include "mending/look.hpp"

#include <cstdint>
#include <span>
#include <vector>

namespace punchwright {

// Whether the frieze makes any two stitches of that width alike; where it does not, there is nothing to keep.
[[nodiscard]] bool makes_alike(const Frieze& frieze, int width);

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

// The rows of a drawing which are mended, ascending, in forms that look best as far as is known (`look_proved`: no
// others of the same price have fewer pairs, nor as many and smaller squares). They are changed to forms of the same
// price that look no worse and leave fewer unlike pairs. True where no other choice comes before this one.
[[nodiscard]] bool improve_symmetry(std::span<MendedRow> rows, const Grid& drawing, bool stacked, const Frieze& frieze,
                                    RowForms& forms, bool look_proved);

} // namespace punchwright
