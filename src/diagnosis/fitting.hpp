// Does a fabric look like what the knitter has marked? Asked row by row while it is knitted, so that most departures
// are given up after a few rows.
#pragma once

#include "diagnosis/diagnosis.hpp"

#include <array>

namespace punchwright {

class Fitting {
public:
  Fitting(const Setting& setting, const SeenFabric& seen);

  // Rows of the marked picture, from the bottom, that a fabric under way shows as marked: from `from` on. The two
  // newest rows wait, since a stitch of theirs may still be dropped or added. A row that doesn't fit ends the count.
  // `along`: needles by which the piece stands further right on the bed than planned.
  [[nodiscard]] int rows_that_fit(const Fabric& fabric, int from, bool complete, int along = 0) const;
  [[nodiscard]] int rows() const { return static_cast<int>(seen_.rows.size()); }
  [[nodiscard]] bool row_fits(const Fabric& fabric, int row, int along = 0) const;
  // Rows of the fabric below row 1.
  [[nodiscard]] int below() const { return below_; }

  // Needles of a row at which the marks and this fabric differ.
  [[nodiscard]] std::vector<Needle> differing(const Fabric& fabric, int row) const;

  [[nodiscard]] Mark mark_at(int row, Needle needle) const {
    return seen_.rows[static_cast<std::size_t>(row)][static_cast<std::size_t>(needle.position - first_.position)];
  }

private:
  [[nodiscard]] bool fits(Mark mark, const Made& cell, int row) const;

  const SeenFabric& seen_;
  int below_;
  Needle first_;
  std::array<bool, 256> main_{};     // yarns that are a main, and no contrast
  std::array<bool, 256> contrast_{}; // a contrast, and no main
  std::vector<char> main_of_row_;
};

} // namespace punchwright
