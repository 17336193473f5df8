// What is wrong with a design on a machine, as facts; words for them are made only when somebody reads them.
// Facts and words are apart since the checks run at every stroke, and most findings are never read.
#pragma once

#include "design/document.hpp"
#include "design/lengths.hpp"
#include "design/repeat_file.hpp"
#include "machine/profile.hpp"
#include "rows/rows.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

enum class Severity { fault, warning, note };

enum class FindingId {
  repeat_width,            // fault: the width doesn't divide the card's
  float_too_long,          // fault: a float, or a part of one between catches
  float_accepted,          // note: the same, where the user accepts it
  catch_not_needed,        // note: caught by hand where no float that is too long passes
  row_all_main,            // note
  row_all_contrast,        // note
  yarn_on_other_side,      // warning
  yarn_loose_on_piece,     // warning: drawn in two colours, and on the piece of one
  card_too_short_for_loop, // note
  card_longer_than_blank,  // note
  piece_wider_than_bed,    // fault
  piece_off_bed,           // fault
  too_many_rows,           // fault: more rows to knit than are worked out
  repeat_on_needles,       // note
  repeat_cut_at_edges,     // note
  yarns_too_alike,         // warning
  loop_change_undone,      // warning: rows for the side of the yarn change that don't bring the carriage there
  card_held,               // note: one feeder, so the card is held for the second pass of a row
  unknown_key              // note
};

struct Finding {
  FindingId id = FindingId::float_too_long;
  Severity severity = Severity::fault;
  int row = -1;          // drawn row from 0; -1: not about one row; for a pair of yarns the lowest of its rows
  char yarn = 0;         // the yarn that floats, hangs or is hard to tell from `other`
  char other = 0;        // the yarn that knits where the first floats
  bool on_piece = false; // on the piece as it lies on the bed; else on the repeat
  int first_column = -1; // drawn columns from 0, knit side; first > last: round the edge
  int last_column = -1;
  std::optional<Needle> first_needle; // on the piece: leftmost and rightmost
  std::optional<Needle> last_needle;
  int stitches = 0;  // length of a float, needless catches of a row, width of a repeat, rows of a card, stitches of a
                     // piece or of its visible part
  int limit = 0;     // what would be allowed
  int times = 1;     // how often on the piece; how often a circuit stands on the card; how many cards; rows in vain
  int gap = 0;       // rows without the yarn
  double number = 0; // the contrast ratio
  int line = 0;      // of the file, from 1
  std::string text;  // only where the words come from elsewhere (unknown keys)

  bool operator==(const Finding&) const = default;
};

// A float that is too long where the repeat lies beside itself; the piece may show the same one on its needles.
[[nodiscard]] inline bool is_long_float_of_repeat(const Finding& finding) {
  return finding.id == FindingId::float_too_long && !finding.on_piece;
}

// "float-too-long": stable, for scripts.
[[nodiscard]] std::string_view stable_id(FindingId id);
// In English, as scripts read it; people read its translation: tr(name_of(…).data()).
[[nodiscard]] std::string_view name_of(Severity severity);
// "Repeat cut at the edges": a heading, another one for every id. In English, to be translated like a severity.
[[nodiscard]] std::string_view title_of(FindingId id);

// All findings: faults first, then warnings, then notes; within these by row from the bottom.
[[nodiscard]] std::vector<Finding> check(const Document& document, const Profile& profile);
[[nodiscard]] std::vector<Finding> check(const Document& document, const Profile& profile, const RowsToKnit& rows);

// Unknown keys and the like, as findings behind the others.
[[nodiscard]] std::vector<Finding> with_notes(std::vector<Finding> findings, const std::vector<ReadingNote>& notes);

// The same in plain words.
struct Words {
  std::string text;
  std::string remedy;
};
[[nodiscard]] Words words_of(const Finding& finding, const Document& document, const Profile& profile,
                             LengthUnit lengths = LengthUnit::centimetres);

// Findings that people read as one: rows of one colour that lie on one another, in the same yarn. An empty drawing of
// 40 rows has a finding a row, which scripts rely on, and one entry for the eye.
struct FindingGroup {
  std::size_t first = 0; // place in the findings
  std::size_t count = 1; // they stand side by side there
  bool operator==(const FindingGroup&) const = default;
};
// Every finding is in one group; the groups stand in the order of the findings.
[[nodiscard]] std::vector<FindingGroup> gathered(std::span<const Finding> findings);
// "rows 1 to 40 are knitted in Oat alone"; a group of one in the words of its finding.
[[nodiscard]] Words words_of(const FindingGroup& group, std::span<const Finding> findings, const Document& document,
                             const Profile& profile, LengthUnit lengths = LengthUnit::centimetres);

// Drawn rows from 0, both included.
struct RowRange {
  int first = 0;
  int last = 0;
  bool operator==(const RowRange&) const = default;
};
// The bands in which that main and contrast are knitted together, from the bottom; neighbouring ones as one.
[[nodiscard]] std::vector<RowRange> rows_of_pair(const Document& document, char main, char contrast);

// Contrast ratio of two sRGB colours, 1 to 21. WCAG 2.x, "contrast ratio" and "relative luminance".
[[nodiscard]] double contrast_ratio(Colour one, Colour another);

} // namespace punchwright
