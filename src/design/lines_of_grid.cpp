// Rows and columns from a list of sources.
#include "design/lines_of_grid.hpp"

#include <algorithm>

namespace punchwright {

std::vector<int> counted(int size) {
  std::vector<int> places(static_cast<std::size_t>(size));
  for (int place = 0; place < size; ++place) {
    places[static_cast<std::size_t>(place)] = place;
  }
  return places;
}

Grid with_rows(const Grid& before, const std::vector<int>& sources) {
  Grid after(before.width(), static_cast<int>(sources.size()));
  for (int row = 0; row < after.height(); ++row) {
    if (const int source = sources[static_cast<std::size_t>(row)]; source >= 0) {
      std::ranges::copy(before.row(source), after.row(row).begin());
    }
  }
  return after;
}

Grid with_columns(const Grid& before, const std::vector<int>& sources) {
  Grid after(static_cast<int>(sources.size()), before.height());
  for (int row = 0; row < before.height(); ++row) {
    for (int column = 0; column < after.width(); ++column) {
      const int source = sources[static_cast<std::size_t>(column)];
      after.set(column, row, source >= 0 && before.at(source, row));
    }
  }
  return after;
}

std::vector<int> with_moved(std::vector<int> sources, int first, int count, int to) {
  const auto begin = sources.begin();
  if (to < first) {
    std::rotate(begin + to, begin + first, begin + first + count);
  } else {
    std::rotate(begin + first, begin + first + count, begin + to + count);
  }
  return sources;
}

} // namespace punchwright
