// The rows to knit, derived from the drawn ones: times over, with single-colour rows where the contrast yarn changes.
// Card, needle chart, counts, checks and steps all come from this one list, so that they can't disagree.
#pragma once

#include "design/document.hpp"
#include "design/result.hpp"
#include "machine/profile.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace punchwright {

enum class Why : std::uint8_t {
  drawn,       // a drawn row
  yarn_change, // single-colour row at a change of contrast
  change_side, // one more, so that the carriage stands on the side where yarns are changed
  plain_below, // as many as the band above asks for
  even_circuit // one more, so that every circuit of a loop starts from the same side
};

// One row to knit. Small, since there can be two million.
struct RowToKnit {
  std::int16_t drawn = -1; // drawn row from 0; -1: an inserted row
  Why why = Why::drawn;
  Travel travel = Travel::leftwards; // of the first pass
  char main = 'A';                   // also where main doesn't knit
  char contrast = 0;                 // 0: a row without contrast stitches
  bool all_contrast = false;         // main doesn't knit in this row
  std::uint8_t passes = 1;           // 2: one feeder, one pass a yarn
  bool contrast_first = false;       // with two passes: contrast goes first
  int card_row = 0;                  // from 1; 0: no card

  [[nodiscard]] bool two_coloured() const { return contrast != 0 && !all_contrast; }
  bool operator==(const RowToKnit&) const = default;
};

// More are not worked out. Above what 2,000 drawn rows knitted 1,000 times come to with their plain rows; small enough
// for 64 MB.
constexpr int most_rows_to_knit = 4'000'000;

// A yarn that isn't used is carried up the edge over so many passes at most, and cut before more (common practice; the
// number from memory).
constexpr int most_passes_hanging = 8;

struct RowsToKnit {
  std::vector<RowToKnit> rows; // in the order of knitting; number n is rows[n - 1]
  int circuit = 0;             // loop: rows on one circuit of the card; else all rows
  bool cut_off = false;        // there are more than most_rows_to_knit: the rest is left out
};

// With one feeder the passes of the two-colour rows are ordered so that as few as can be are empty: see
// rows/pass_order.hpp.
[[nodiscard]] RowsToKnit rows_to_knit(const Document& document, const Profile& profile);

// An error where the design comes to more than most_rows_to_knit; told without working them out wherever a glance is
// enough.
[[nodiscard]] Failure too_many_rows(const Document& document, const Profile& profile);

// A pass of the carriage, with the yarns that are in its feeders.
struct Pass {
  Travel travel = Travel::leftwards;
  char main = 0;     // 0: none
  char contrast = 0; // 0: none
  bool operator==(const Pass&) const = default;
};
[[nodiscard]] std::vector<Pass> passes_of(const RowToKnit& row);

// A row of the setting-up, before row 1.
struct SetupRow {
  Travel travel = Travel::leftwards;
  std::optional<char> main; // absent: a free pass, nothing is knitted
  bool selects = false;     // selects (or stores) card row 1
  bool operator==(const SetupRow&) const = default;
};
// Selecting for the next pass: a plain row, then one that knits plain and selects. Selecting in the same pass: a plain
// row, then a free pass that stores row 1. By hand: a plain row. The carriage ends where the document says.
[[nodiscard]] std::vector<SetupRow> setup_rows(const Document& document, const Profile& profile);

} // namespace punchwright
