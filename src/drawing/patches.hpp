// A drawing by its patches: stitches of one yarn that hang together, left, right, above and below, round the edges of
// the repeat. Found once for all stitches, in a time that doesn't depend on how a patch winds, so that a fill can
// follow the pointer.
#pragma once

#include "design/edits.hpp"
#include "design/grid.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace punchwright {

class Patches {
public:
  // Of a drawing with a stitch at least.
  explicit Patches(const Grid& repeat);

  // The same number for all stitches of a patch, and for no others. A plane cell is taken round the edges.
  [[nodiscard]] int patch_at(Cell cell) const;
  // The patch's stitches, as contrast: those that `flood_cells` reaches from any of them.
  [[nodiscard]] Grid stitches_of(int patch) const;

private:
  struct Run { // of one yarn, in a row as it is drawn, from its left edge
    std::int16_t first = 0;
    std::int16_t end = 0; // behind it
    int patch = 0;        // another run of the same patch, that is lower or itself; in the end the lowest of all
  };

  void find_runs(const Grid& repeat, int row);
  void join_neighbours(const Grid& repeat, int row, int above);
  int lowest_of(int run);
  void join(std::size_t run, std::size_t other);

  int width_;
  int height_;
  std::vector<Run> runs_;         // row by row
  std::vector<std::size_t> from_; // the first run of each row; one more at the end
};

} // namespace punchwright
