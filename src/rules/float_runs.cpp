// Runs of one colour, found by folding the row onto itself.
#include "rules/float_runs.hpp"

#include "design/row_ring.hpp"

#include <algorithm>

namespace punchwright {
namespace {

using Word = Grid::Word;

// One word: most repeats, and a quarter of the time.
bool narrow_row_has_run(Word row, int width, int length) {
  const Word mask = last_word_mask(width);
  for (int done = 1; done < length && row != 0;) {
    const int step = std::min(done, length - done);
    row &= ((row >> step) | (row << (width - step))) & mask;
    done += step;
  }
  return row != 0;
}

} // namespace

bool has_run_beyond(std::span<const Word> row, int width, int limit, bool contrast) {
  const int length = limit + 1;
  const int words = static_cast<int>(row.size());
  if (words == 1) {
    const Word of_colour = contrast ? row[0] : ~row[0] & last_word_mask(width);
    if (length > width) {
      return of_colour == last_word_mask(width); // an endless run
    }
    return narrow_row_has_run(of_colour, width, length);
  }
  RowWords folded{};
  for (int index = 0; index < words; ++index) {
    const auto place = static_cast<std::size_t>(index);
    folded[place] = contrast ? row[place] : ~row[place];
  }
  const auto last = static_cast<std::size_t>(words - 1);
  const Word mask = last_word_mask(width);
  folded[last] &= mask;
  // Bit c stays as long as the run that begins at c has at least `done` stitches; the length doubles each time.
  for (int done = 1; done < std::min(length, width);) {
    const int step = std::min(done, std::min(length, width) - done);
    const RowWords further = turned_ring(folded, width, step);
    Word any = 0;
    for (int index = 0; index < words; ++index) {
      folded[static_cast<std::size_t>(index)] &= further[static_cast<std::size_t>(index)];
      any |= folded[static_cast<std::size_t>(index)];
    }
    if (any == 0) {
      return false;
    }
    done += step;
  }
  return std::ranges::any_of(folded, [](Word word) { return word != 0; });
}

std::vector<StitchRun> runs_beyond(const Grid& grid, int row, int limit) {
  std::vector<StitchRun> found;
  if (!grid.mixed(row)) {
    return found;
  }
  const int width = grid.width();
  for (int first = 0; first < width; ++first) {
    const bool contrast = grid.at(first, row);
    if (grid.at((first + width - 1) % width, row) == contrast) {
      continue; // not where a run begins
    }
    int stitches = 1;
    while (grid.at((first + stitches) % width, row) == contrast) {
      ++stitches;
    }
    if (stitches > limit) {
      found.push_back({first, stitches, contrast});
    }
  }
  return found;
}

} // namespace punchwright
