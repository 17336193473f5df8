// Where the axes of a chosen symmetry lie: as the drawing has them already, along with rows and columns that are
// inserted, deleted and moved, and what stands for each of them in a picture.
#pragma once

#include "design/edits.hpp"
#include "drawing/frieze.hpp"

#include <optional>
#include <vector>

namespace punchwright {

// The group with axes under which the drawing has it already, else with axes in the middle: first those in the middle,
// then those next to it. The repeat is the whole width, but where only glides by half of a shorter one are in it.
[[nodiscard]] Frieze frieze_for(const Grid& drawing, FriezeGroup group);

// Where an edit puts rows or columns, whatever stitches are in them.
struct LineChange {
  enum class Kind { inserted, deleted, moved, shifted, mirrored };
  Kind kind = Kind::inserted;
  bool rows = true;
  int first = 0; // of those that are inserted, deleted or moved
  int count = 1; // likewise; shifted: by so many, to the right or upwards
  int to = 0;    // moved: the index of the first of them afterwards

  bool operator==(const LineChange&) const = default;
};

// Of an edit to a drawing of that size, in their order; none where every line stays at its place.
[[nodiscard]] std::vector<LineChange> line_changes(const Edit& edit, int width, int height);

// Those that lead back.
[[nodiscard]] std::vector<LineChange> taken_back(std::vector<LineChange> changes);

// The frieze with its axes where the changes put them, in a drawing that had that size before. Lines that are inserted
// exactly at an axis have it in their middle; an axis among deleted ones lies where they were; one beyond the drawing
// stops at its edge. Where upright axes can't all keep their places, the one nearest to the drawing's middle does.
// Unusable where the group can't have the new width.
[[nodiscard]] Frieze axes_after(Frieze frieze, const std::vector<LineChange>& changes, int width, int height);

// The frieze where the drawing has it, else one of its group about axes at which the drawing has that. None where it
// has the group nowhere.
[[nodiscard]] std::optional<Frieze> frieze_in(const Grid& drawing, const Frieze& wished);

// What is drawn for a frieze in a drawing of that width. Places are half columns, 0 to 2 × width - 1: an even one lies
// through a column, an odd one between two.
struct AxisSigns {
  enum class Level { none, mirror, glide };
  std::vector<int> mirrors; // upright ones
  std::vector<int> centres; // of half turns, on the level of the frieze
  Level level = Level::none;
};
[[nodiscard]] AxisSigns axis_signs(const Frieze& frieze, int width);

} // namespace punchwright
