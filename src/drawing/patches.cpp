// Runs of the rows, joined where they touch (union-find over runs).
#include "drawing/patches.hpp"

#include "design/wrap.hpp"

#include <algorithm>
#include <bit>

namespace punchwright {

namespace {

// Of a row: the columns from `first` until `end`.
void set_columns(std::span<Grid::Word> row, int first, int end) {
  for (int column = first; column < end;) {
    const int bit = column % Grid::bits_in_word;
    const int count = std::min(Grid::bits_in_word - bit, end - column);
    const Grid::Word all = count == Grid::bits_in_word ? ~Grid::Word{0} : (Grid::Word{1} << count) - 1;
    row[static_cast<std::size_t>(column / Grid::bits_in_word)] |= all << bit;
    column += count;
  }
}

} // namespace

Patches::Patches(const Grid& repeat) : width_(repeat.width()), height_(repeat.height()) {
  from_.reserve(static_cast<std::size_t>(height_) + 1);
  for (int row = 0; row < height_; ++row) {
    from_.push_back(runs_.size());
    find_runs(repeat, row);
  }
  from_.push_back(runs_.size());
  for (int row = 0; row < height_; ++row) {
    join_neighbours(repeat, row, round_edge(row + 1, height_));
  }
  for (std::size_t run = 0; run < runs_.size(); ++run) {
    runs_[run].patch = lowest_of(static_cast<int>(run));
  }
}

// A run begins at the left edge, and wherever a stitch differs from the one on its left.
void Patches::find_runs(const Grid& repeat, int row) {
  const auto begin = [&](int column) {
    if (column > 0) {
      runs_.back().end = static_cast<std::int16_t>(column);
    }
    runs_.push_back(
        {static_cast<std::int16_t>(column), static_cast<std::int16_t>(width_), static_cast<int>(runs_.size())});
  };
  begin(0);
  Grid::Word left = repeat.at(0, row) ? 1 : 0; // the stitch before the word
  int column = 0;
  for (const Grid::Word word : repeat.row(row)) {
    for (Grid::Word changes = word ^ (word << 1U | left); changes != 0; changes &= changes - 1) {
      if (const int there = column + std::countr_zero(changes); there < width_) {
        begin(there);
      }
    }
    left = word >> (Grid::bits_in_word - 1U);
    column += Grid::bits_in_word;
  }
}

// The row's runs with one another round its edge, and with those above that touch them.
void Patches::join_neighbours(const Grid& repeat, int row, int above) {
  std::size_t run = from_[static_cast<std::size_t>(row)];
  const std::size_t end = from_[static_cast<std::size_t>(row) + 1];
  if (repeat.at(0, row) == repeat.at(width_ - 1, row)) {
    join(run, end - 1);
  }
  std::size_t other = from_[static_cast<std::size_t>(above)];
  bool alike = repeat.at(0, row) == repeat.at(0, above);
  while (run < end) { // along both rows; each begins a run of the other yarn where one ends
    if (alike) {
      join(run, other);
    }
    const int here = runs_[run].end;
    const int there = runs_[other].end;
    alike = here == there ? alike : !alike;
    run += here <= there ? 1 : 0;
    other += there <= here ? 1 : 0;
  }
}

int Patches::lowest_of(int run) {
  const auto at = [&](int number) -> int& { return runs_[static_cast<std::size_t>(number)].patch; };
  while (at(run) != run) {
    at(run) = at(at(run)); // half the way for the next one
    run = at(run);
  }
  return run;
}

void Patches::join(std::size_t run, std::size_t other) {
  const int one = lowest_of(static_cast<int>(run));
  const int another = lowest_of(static_cast<int>(other));
  runs_[static_cast<std::size_t>(std::max(one, another))].patch = std::min(one, another);
}

int Patches::patch_at(Cell cell) const {
  const auto row = static_cast<std::size_t>(round_edge(cell.row, height_));
  const int column = round_edge(cell.column, width_);
  const auto from = runs_.begin() + static_cast<std::ptrdiff_t>(from_[row]);
  const auto end = runs_.begin() + static_cast<std::ptrdiff_t>(from_[row + 1]);
  return std::ranges::upper_bound(from, end, column, {}, &Run::end)->patch;
}

Grid Patches::stitches_of(int patch) const {
  Grid stitches(width_, height_);
  for (int row = 0; row < height_; ++row) {
    for (std::size_t run = from_[static_cast<std::size_t>(row)]; run < from_[static_cast<std::size_t>(row) + 1];
         ++run) {
      if (runs_[run].patch == patch) {
        set_columns(stitches.row(row), runs_[run].first, runs_[run].end);
      }
    }
  }
  return stitches;
}

} // namespace punchwright
