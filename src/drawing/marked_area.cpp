// Edits of the marked area: the repeat as it is afterwards, under the name of what was done.
#include "drawing/marked_area.hpp"

#include "design/row_ring.hpp"
#include "design/wrap.hpp"
#include "drawing/turns.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cstdlib>
#include <span>

namespace punchwright {
namespace {

// The first columns of a row, 1 or more, at most those of the widest repeat: a patch that was turned may be far wider.
RowWords first_of(std::span<const Grid::Word> row, int columns) {
  const auto last = static_cast<std::size_t>((columns - 1) / Grid::bits_in_word);
  RowWords words{};
  std::copy_n(row.begin(), last + 1, words.begin());
  words[last] &= last_word_mask(columns);
  return words;
}

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
    const RowWords from = words_of(repeat.row(round_edge(there.corner.row + row, repeat.height())));
    const RowWords words = first_of(turned_ring(from, repeat.width(), there.corner.column), there.columns);
    std::copy_n(words.begin(), patch.words_in_row(), patch.row(row).begin());
  }
  return patch;
}

Grid set_down(const Grid& repeat, Cell corner, const Grid& patch) {
  Grid after = repeat;
  const int width = repeat.width();
  const int columns = std::min(patch.width(), width);
  const Cell there = round_edges(corner, repeat);
  RowWords all{};
  all.fill(~Grid::Word{0});
  const RowWords covered = turned_ring(first_of(all, columns), width, width - there.column);
  for (int row = 0; row < std::min(patch.height(), repeat.height()); ++row) {
    const RowWords words = turned_ring(first_of(patch.row(row), columns), width, width - there.column);
    const auto into = after.row(round_edge(there.row + row, repeat.height()));
    for (std::size_t index = 0; index < into.size(); ++index) {
      into[index] = (into[index] & ~covered[index]) | words[index];
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
