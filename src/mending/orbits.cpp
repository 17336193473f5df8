// Orbits go round the repeat; what of them lies above or below the drawing counts as main.
#include "mending/orbits.hpp"

#include <algorithm>
#include <iterator>

namespace punchwright {

Orbits::Orbits(const Grid& drawing, const Frieze& frieze)
    : width_(drawing.width()),
      of_stitch_(static_cast<std::size_t>(drawing.width()) * static_cast<std::size_t>(drawing.height()), none) {
  for (int row = 0; row < drawing.height(); ++row) {
    for (int column = 0; column < width_; ++column) {
      if (of_stitch_[place(column, row)] == none) {
        number(drawing, orbit_of({column, row}, frieze, width_));
      }
    }
  }
}

void Orbits::number(const Grid& drawing, const std::vector<Cell>& cells) {
  for (const Cell& cell : cells) {
    if (cell.row >= 0 && cell.row < drawing.height()) {
      of_stitch_[place(cell.column, cell.row)] = sizes_.size();
    }
  }
  sizes_.push_back(std::ssize(cells));
}

bool makes_alike(const Frieze& frieze, int width) {
  return frieze.group != FriezeGroup::p1 || frieze.repeat < width;
}

std::int64_t unlike_pairs(const Grid& drawing, const Frieze& frieze) {
  const Orbits orbits(drawing, frieze);
  std::vector<std::int64_t> contrasts(orbits.count(), 0);
  for (int row = 0; row < drawing.height(); ++row) {
    for (int column = 0; column < drawing.width(); ++column) {
      contrasts[orbits.of(column, row)] += drawing.at(column, row) ? 1 : 0;
    }
  }
  std::int64_t sum = 0;
  for (std::size_t orbit = 0; orbit < contrasts.size(); ++orbit) {
    sum += contrasts[orbit] * (orbits.size(orbit) - contrasts[orbit]);
  }
  return sum;
}

UnlikeInRow::UnlikeInRow(const Grid& drawing, const Frieze& frieze, int row)
    : of_column_(static_cast<std::size_t>(drawing.width()), std::numeric_limits<std::size_t>::max()) {
  for (int column = 0; column < drawing.width(); ++column) {
    if (of_column_[static_cast<std::size_t>(column)] < orbits_.size()) {
      continue;
    }
    const std::vector<Cell> cells = orbit_of({column, row}, frieze, drawing.width());
    Orbit orbit{std::ssize(cells), 0};
    for (const Cell& cell : cells) {
      if (cell.row == row) {
        of_column_[static_cast<std::size_t>(cell.column)] = orbits_.size();
      } else if (cell.row >= 0 && cell.row < drawing.height() && drawing.at(cell.column, cell.row)) {
        ++orbit.contrast;
      }
    }
    orbits_.push_back(orbit);
  }
}

std::int64_t UnlikeInRow::of(std::span<const char> stitches) const {
  std::vector<std::int64_t> contrasts;
  std::ranges::transform(orbits_, std::back_inserter(contrasts), &Orbit::contrast);
  for (std::size_t column = 0; column < stitches.size(); ++column) {
    contrasts[of_column_[column]] += stitches[column];
  }
  std::int64_t sum = 0;
  for (std::size_t orbit = 0; orbit < orbits_.size(); ++orbit) {
    sum += contrasts[orbit] * (orbits_[orbit].size - contrasts[orbit]);
  }
  return sum;
}

} // namespace punchwright
