// Marks against stitches.
#include "diagnosis/fitting.hpp"

#include <algorithm>

namespace punchwright {
namespace {

constexpr int rows_waiting = 2;

} // namespace

Fitting::Fitting(const Setting& setting, const SeenFabric& seen)
    : seen_(seen), below_(setting.steps.rows_before), first_(first_needle_of(setting.document)) {
  for (const Band& band : setting.document.bands) {
    main_[static_cast<unsigned char>(band.main)] = true;
    if (band.contrast) {
      contrast_[static_cast<unsigned char>(*band.contrast)] = true;
    }
  }
  for (std::size_t yarn = 0; yarn < main_.size(); ++yarn) {
    if (main_[yarn] && contrast_[yarn]) {
      main_[yarn] = contrast_[yarn] = false; // the row decides
    }
  }
  for (const RowToKnit& row : setting.rows.rows) {
    main_of_row_.push_back(row.main);
  }
}

bool Fitting::fits(Mark mark, const Made& cell, int row) const {
  switch (mark) {
  case Mark::not_looked_at: return true;
  case Mark::dropped: return cell.missing || cell.dropped;
  case Mark::main:
  case Mark::contrast: break;
  }
  if (cell.yarn == 0) {
    return false;
  }
  const auto yarn = static_cast<unsigned char>(cell.yarn);
  const char planned =
      main_of_row_.empty() ? '\0' : main_of_row_[std::min(static_cast<std::size_t>(row), main_of_row_.size() - 1)];
  const bool main = main_[yarn] || (!contrast_[yarn] && cell.yarn == planned);
  return main == (mark == Mark::main);
}

bool Fitting::row_fits(const Fabric& fabric, int row, int along) const {
  const auto cells =
      fabric.row(row + below_).subspan(static_cast<std::size_t>(first_.position + along - fabric.leftmost().position));
  const auto& marks = seen_.rows[static_cast<std::size_t>(row)];
  for (std::size_t stitch = 0; stitch < marks.size(); ++stitch) {
    if (!fits(marks[stitch], cells[stitch], row)) {
      return false;
    }
  }
  return true;
}

int Fitting::rows_that_fit(const Fabric& fabric, int from, bool complete, int along) const {
  const int ready = fabric.rows() - below_ - (complete ? 0 : rows_waiting);
  int row = from;
  while (row < std::min(ready, rows()) && row_fits(fabric, row, along)) {
    ++row;
  }
  return row;
}

std::vector<Needle> Fitting::differing(const Fabric& fabric, int row) const {
  std::vector<Needle> found;
  const auto& marks = seen_.rows[static_cast<std::size_t>(row)];
  for (std::size_t stitch = 0; stitch < marks.size(); ++stitch) {
    const Needle needle{first_.position + static_cast<int>(stitch)};
    if (!fits(marks[stitch], fabric.at(row + below_, needle), row)) {
      found.push_back(needle);
    }
  }
  return found;
}

} // namespace punchwright
