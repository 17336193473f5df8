// Rows and columns put elsewhere: moved, and a new size with the old drawing at one of nine places in it.
#include "design/edit_parts.hpp"

#include "design/band_rows.hpp"
#include "design/lines_of_grid.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright {
namespace {

// How many of the lines of a band, from row `start` on, lie in rows `first` to `first` + `count` - 1.
int shared_rows(int start, const Band& band, int first, int count) {
  return std::max(0, std::min(start + band.rows, first + count) - std::max(start, first));
}

// The band, of those left when the moved rows were taken out, that they join at `to`.
std::size_t landing_band(const std::vector<Band>& left, int to, std::optional<std::size_t> own) {
  int start = 0;
  std::size_t below = left.size();
  for (std::size_t index = 0; index < left.size(); ++index) {
    const int end = start + left[index].rows;
    if (own == index && left[index].rows > 0 && to >= start && to <= end) {
      return index;
    }
    if (left[index].rows > 0 && (below == left.size() || start < to)) {
      below = index;
    }
    start = end;
  }
  return below;
}

Result<std::vector<Band>> bands_of_the_place(const Document& document, const MoveRows& edit) {
  std::vector<Band> left = document.bands;
  std::optional<std::size_t> own;
  int start = 0;
  for (std::size_t index = 0; index < left.size(); ++index) {
    const int rows = left[index].rows;
    const int taken = shared_rows(start, left[index], edit.first, edit.count);
    if (taken == edit.count) {
      own = index;
    }
    left[index].rows -= taken;
    start += rows;
  }
  if (edit.count == document.grid.height()) {
    return document.bands;
  }
  const std::size_t landing = landing_band(left, edit.to, own);
  for (int row = edit.first; row < edit.first + edit.count; ++row) {
    if (!left[landing].contrast && document.grid.has_contrast(row)) {
      return refusal(said("row {} has contrast stitches, and the band where it lands has one yarn", row + 1),
                     tr("give that band a contrast yarn first, or move the row with its own yarns"));
    }
  }
  left[landing].rows += edit.count;
  std::erase_if(left, [](const Band& band) { return band.rows == 0; });
  return left;
}

int size_in(const Grid& grid, Lines lines) {
  return lines == Lines::rows ? grid.height() : grid.width();
}

Failure no_such_move(const Grid& grid, int first, int count, int to, Lines lines) {
  if (auto failure = outside(grid, first, count, lines)) {
    return failure;
  }
  const int size = size_in(grid, lines);
  if (to >= 0 && to + count <= size) {
    return std::nullopt;
  }
  return refusal(lines == Lines::rows ? said("rows {} to {} can't be moved to {}", first + 1, first + count, to + 1)
                                      : said("columns {} to {} can't be moved to {}", first + 1, first + count, to + 1),
                 said("the first of them can stand at 1 to {}", size - count + 1));
}

// Old lines in a new size, `before` of the new lines standing before the first of the old ones (fewer than 0: cut off).
std::vector<int> resized_lines(int old_size, int new_size, int before) {
  std::vector<int> sources;
  for (int line = 0; line < new_size; ++line) {
    const int source = line - before;
    sources.push_back(source >= 0 && source < old_size ? source : new_line);
  }
  return sources;
}

// Rounded down, so that the odd line of a middle goes after the drawing, and is cut off there.
int lines_before(int added, int anchor) {
  const int half = added >= 0 ? added / 2 : -(-added / 2);
  return anchor == 0 ? 0 : anchor == 1 ? half : added;
}

} // namespace

Error refusal(std::string message, std::string remedy) {
  return Error{{}, 0, 0, std::move(message), std::move(remedy)};
}

Failure outside(const Grid& grid, int first, int count, Lines lines) {
  const int size = size_in(grid, lines);
  if (count >= 1 && first >= 0 && first + count <= size) {
    return std::nullopt;
  }
  return lines == Lines::rows ? refusal(said("rows {} to {} don't exist in a drawing of {} stitches and {} rows",
                                             first + 1, first + count, grid.width(), grid.height()),
                                        said("choose rows 1 to {}", size))
                              : refusal(said("columns {} to {} don't exist in a drawing of {} stitches and {} rows",
                                             first + 1, first + count, grid.width(), grid.height()),
                                        said("choose columns 1 to {}", size));
}

Failure wrong_size(int width, int height) {
  if (width >= 1 && width <= widest_repeat && height >= 1 && height <= tallest_repeat) {
    return std::nullopt;
  }
  return refusal(said("a drawing can't have {} stitches and {} rows", width, height),
                 said("1 to {} stitches and 1 to {} rows", widest_repeat, tallest_repeat));
}

Result<Change::Drawing> rebuilt(const Document& document, const MoveRows& edit) {
  const Grid& grid = document.grid;
  if (auto failure = no_such_move(grid, edit.first, edit.count, edit.to, Lines::rows)) {
    return *failure;
  }
  const auto sources = with_moved(counted(grid.height()), edit.first, edit.count, edit.to);
  auto bands = edit.yarns == MovedYarns::their_own ? Result(bands_for_rows(document.bands, sources))
                                                   : bands_of_the_place(document, edit);
  if (!bands) {
    return bands.error();
  }
  return Change::Drawing{with_rows(grid, sources), std::move(bands).value(), extras_for_rows(document.extras, sources)};
}

Result<Change::Drawing> rebuilt(const Document& document, const MoveColumns& edit) {
  const Grid& grid = document.grid;
  if (auto failure = no_such_move(grid, edit.first, edit.count, edit.to, Lines::columns)) {
    return *failure;
  }
  const auto sources = with_moved(counted(grid.width()), edit.first, edit.count, edit.to);
  return Change::Drawing{with_columns(grid, sources), document.bands, document.extras};
}

Result<Change::Drawing> rebuilt(const Document& document, const Resize& edit) {
  if (auto failure = wrong_size(edit.width, edit.height)) {
    return *failure;
  }
  const Grid& grid = document.grid;
  const auto columns =
      resized_lines(grid.width(), edit.width, lines_before(edit.width - grid.width(), static_cast<int>(edit.across)));
  const auto rows =
      resized_lines(grid.height(), edit.height, lines_before(edit.height - grid.height(), static_cast<int>(edit.up)));
  std::vector<int> kept;
  std::ranges::copy_if(rows, std::back_inserter(kept), [](int source) { return source != new_line; });
  auto bands = bands_for_rows(document.bands, kept);
  const auto first_kept = std::ranges::find_if(rows, [](int source) { return source != new_line; });
  const auto below = static_cast<int>(first_kept - rows.begin());
  bands.front().rows += below;
  bands.back().rows += edit.height - below - static_cast<int>(kept.size());
  return Change::Drawing{with_rows(with_columns(grid, columns), rows), std::move(bands),
                         extras_for_rows(document.extras, rows)};
}

} // namespace punchwright
