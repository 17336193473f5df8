// Which of equally cheap drawings looks best: changed stitches in neighbouring rows kept apart, floats caught in their
// middle.
#pragma once

#include "mending/row_mender.hpp"

#include <cstdint>
#include <span>
#include <vector>

namespace punchwright {

// A row that is mended, in its cheapest form so far.
struct MendedRow {
  int row = 0;
  std::vector<char> drawn; // true: contrast
  std::span<const std::int32_t> prices;
  std::vector<char> stitches;
  std::int64_t squares = 0;
  std::int64_t least_squares = 0; // of its cheapest forms, whatever lies beside it
};

// The forms of a row: how it may be mended, or where its floats may be caught.
class RowForms {
public:
  RowForms() = default;
  RowForms(const RowForms&) = delete;
  RowForms& operator=(const RowForms&) = delete;
  virtual ~RowForms() = default;
  // The cheapest form, then by its pairs with what lies beside it (counts by stitch), then by its squares.
  [[nodiscard]] virtual bool solve(const MendedRow& row, std::span<const std::int16_t> pairs) = 0;
  [[nodiscard]] virtual RowCost cost() const = 0;
  [[nodiscard]] virtual std::span<const char> stitches() const = 0;
  // All forms of the least price, form after form; empty where there are more than `most`.
  [[nodiscard]] virtual std::vector<char> all_cheapest(const MendedRow& row, std::size_t most) = 0;
  [[nodiscard]] virtual std::int64_t squares(const MendedRow& row, std::span<const char> stitches) const = 0;
};

// `rows` are those of a drawing of that height which are mended, ascending; they come in the form of least squares, and
// are changed to forms of the same price that look best together, as far as can be found. True where no drawing of that
// price has fewer pairs, nor as many pairs and smaller squares.
bool improve_look(std::span<MendedRow> rows, int height, bool stacked, RowForms& forms);

// Of the lengths of the runs of a row, as it tiles, squared.
[[nodiscard]] std::int64_t squares_of(std::span<const char> stitches);

} // namespace punchwright
