// Edits of the marked area: the repeat as it is afterwards, under the name of what was done.
#include "drawing/marked_area.hpp"

#include "design/wrap.hpp"
#include "drawing/turns.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cstdlib>

namespace punchwright {
namespace {

AreaEdit patched(const Grid& repeat, const Area& area, const Grid& patch, std::string name) {
  const Area after = marked({area.corner, patch.width(), patch.height()}, repeat);
  return {Redraw{set_down(repeat, after.corner, patch), std::move(name)}, after};
}

Grid with_main(const Grid& repeat, const Area& area) {
  return set_down(repeat, area.corner, Grid(area.columns, area.rows));
}

} // namespace

Area marked(const Area& area, const Grid& repeat) {
  return {round_edges(area.corner, repeat), std::clamp(area.columns, 1, repeat.width()),
          std::clamp(area.rows, 1, repeat.height())};
}

Area area_between(Cell corner, Cell opposite, const Grid& repeat) {
  return marked({{std::min(corner.column, opposite.column), std::min(corner.row, opposite.row)},
                 std::abs(corner.column - opposite.column) + 1,
                 std::abs(corner.row - opposite.row) + 1},
                repeat);
}

bool lies_in(Cell cell, const Area& area, const Grid& repeat) {
  const Area there = marked(area, repeat);
  return round_edge(cell.column - there.corner.column, repeat.width()) < there.columns &&
         round_edge(cell.row - there.corner.row, repeat.height()) < there.rows;
}

Grid lifted(const Grid& repeat, const Area& area) {
  const Area there = marked(area, repeat);
  Grid patch(there.columns, there.rows);
  for (int row = 0; row < there.rows; ++row) {
    for (int column = 0; column < there.columns; ++column) {
      patch.set(column, row, at_round_edges(repeat, {there.corner.column + column, there.corner.row + row}));
    }
  }
  return patch;
}

Grid set_down(const Grid& repeat, Cell corner, const Grid& patch) {
  Grid after = repeat;
  for (int row = 0; row < std::min(patch.height(), repeat.height()); ++row) {
    for (int column = 0; column < std::min(patch.width(), repeat.width()); ++column) {
      const Cell there = round_edges({corner.column + column, corner.row + row}, repeat);
      after.set(there.column, there.row, patch.at(column, row));
    }
  }
  return after;
}

AreaEdit paste_at(const Grid& repeat, Cell corner, const Grid& patch) {
  return {Paste{round_edges(corner, repeat), patch}, marked({corner, patch.width(), patch.height()}, repeat)};
}

AreaEdit cut_area(const Grid& repeat, const Area& area) {
  const Area there = marked(area, repeat);
  return patched(repeat, there, Grid(there.columns, there.rows), noted("cut"));
}

AreaEdit move_area(const Grid& repeat, const Area& area, int columns, int rows) {
  const Area there = marked(area, repeat);
  const Area target{{there.corner.column + columns % repeat.width(), there.corner.row + rows % repeat.height()},
                    there.columns,
                    there.rows};
  return patched(with_main(repeat, there), target, lifted(repeat, there), noted("move"));
}

Result<AreaEdit> turn_area(const Grid& repeat, const Area& area, int quarters) {
  const Area there = marked(area, repeat);
  const Grid patch = turned(lifted(repeat, there), quarters);
  if (patch.width() > repeat.width() || patch.height() > repeat.height()) {
    return Error{{},
                 0,
                 0,
                 said("turned, the marked area is {} stitches wide and {} rows high, more than the repeat's {} "
                      "stitches and {} rows",
                      patch.width(), patch.height(), repeat.width(), repeat.height()),
                 tr("mark less, or make the repeat larger")};
  }
  return patched(with_main(repeat, there), there, patch, noted("turn"));
}

AreaEdit mirror_area_left_right(const Grid& repeat, const Area& area) {
  return patched(repeat, area, mirrored_left_right(lifted(repeat, area)), noted("mirror left and right"));
}

AreaEdit mirror_area_upside_down(const Grid& repeat, const Area& area) {
  return patched(repeat, area, mirrored_upside_down(lifted(repeat, area)), noted("turn upside down"));
}

AreaEdit invert_area(const Grid& repeat, const Area& area) {
  return {Invert{marked(area, repeat)}, marked(area, repeat)};
}

AreaEdit shift_in_area(const Grid& repeat, const Area& area, int columns, int rows) {
  return patched(repeat, area, shifted(lifted(repeat, area), columns, rows), noted("shift"));
}

AreaEdit fill_area_with(const Grid& repeat, const Area& area, const Grid& patch) {
  const Area there = marked(area, repeat);
  return patched(repeat, there, repeated(patch, there.columns, there.rows), noted("repeat to fill"));
}

} // namespace punchwright
