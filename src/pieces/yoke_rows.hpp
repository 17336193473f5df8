// The rows of a whole yoke: how high each tier begins, and how they come out against the depth.
// Heights are counted in rows, from the first row of the first tier.
#pragma once

#include "design/lengths.hpp"
#include "pieces/open_yoke.hpp"

#include <string>
#include <vector>

namespace punchwright {

// Of each tier's first row, from 0; one more at the end: the rows of the whole yoke. The rows that set up the first
// tier belong to what lies below the yoke.
[[nodiscard]] std::vector<int> tier_heights(const OpenedYoke& opened, std::size_t size);

// Of a plain row above that tier, mm: by [gauge.plain], or else by the tier's gauge.
[[nodiscard]] double plain_row_mm(const OpenedYoke& opened, std::size_t tier);

// How high each row begins, mm, from 0; one more at the end. Pattern rows by the gauge of their tier.
[[nodiscard]] std::vector<double> row_heights(const OpenedYoke& opened, std::size_t size);

// Against the depth.
struct RowsOfYoke {
  int pattern_rows = 0; // of all tiers, with the rows that yarn changes put in
  int plain_rows = 0;   // between and above the tiers
  double mm = 0;        // what they measure
  double depth_mm = 0;
  double missing_mm = 0; // below 0: too much
  int missing_rows = 0;  // plain rows, rounded; below 0: too many
  // Plain rows above each tier with which the depth comes out as near as it can, changed as little and as evenly as can
  // be; never below what the procedure needs, nor above what a file holds.
  std::vector<int> proposal;
  double proposal_missing_mm = 0; // what is then still missing
  bool proposal_full = false;     // more rows would be wanted than a file holds: most_plain_rows, most_yoke_rows
};
// Pattern rows measure by the gauge of their tier, plain rows by [gauge.plain] or else by the tier's below.
[[nodiscard]] RowsOfYoke rows_of_yoke(const OpenedYoke& opened, std::size_t size);

// "2 rows (11 mm) too many; with 3, 3 and 2 plain rows the depth comes out"
[[nodiscard]] std::string text_of(const RowsOfYoke& rows, LengthUnit unit = LengthUnit::centimetres);

} // namespace punchwright
