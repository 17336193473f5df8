// Runs of one colour, found by folding the row onto itself.
#include "rules/float_runs.hpp"

#include "design/row_ring.hpp"

#include <algorithm>
#include <bit>

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
  const auto words = grid.row(row);
  const int count = static_cast<int>(words.size());
  const RowWords line = words_of(words);
  const RowWords before = turned_ring(line, width, width - 1); // bit c: the stitch to the left of c
  const auto note = [&](int first, int next) {
    if (next - first > limit) {
      found.push_back({first, next - first, grid.at(first, row)});
    }
  };
  int first_of_all = -1;
  int begin = -1;
  for (int index = 0; index < count; ++index) {
    const auto place = static_cast<std::size_t>(index);
    Word begins = (line[place] ^ before[place]) & (index + 1 == count ? last_word_mask(width) : ~Word{0});
    for (; begins != 0; begins &= begins - 1) {
      const int here = index * Grid::bits_in_word + std::countr_zero(begins);
      if (begin < 0) {
        first_of_all = here;
      } else {
        note(begin, here);
      }
      begin = here;
    }
  }
  note(begin, first_of_all + width); // round the edge; a row of both colours has a run at least
  return found;
}

} // namespace punchwright
