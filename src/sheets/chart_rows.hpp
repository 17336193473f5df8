// What the needle chart says of every row to knit, whatever it is printed on: needles, yarns, what is done before.
// Made once a drawn row, since the same drawn row may be knitted a thousand times.
#pragma once

#include "design/document.hpp"
#include "machine/profile.hpp"
#include "plan/plan.hpp"
#include "rows/rows.hpp"
#include "sheets/exports.hpp"

#include <map>
#include <string>
#include <vector>

namespace punchwright {

// The number in the needle's name, which ticks and rulers go by: 36 for L36, 1 for R1.
[[nodiscard]] constexpr int needle_number(Needle needle) {
  return needle.position < 0 ? -needle.position : needle.position + 1;
}

// The needles of a drawn row on the piece.
struct ChartNeedles {
  std::vector<bool> forward;     // from the piece's leftmost needle, as the knitter sees it
  std::vector<NeedleRun> runs;   // those that come forward
  std::vector<NeedleRun> listed; // those that the chart lists: the same, or those that stay back
  bool lists_those_that_stay = false;
  std::vector<Needle> caught; // onto which floats of this row are lifted once it is knitted
  int count = 0;              // that come forward
};

class ChartRows {
public:
  // Both are looked at as long as the chart lives.
  ChartRows(const Document& document, const Profile& profile, const ChartWishes& wishes);

  [[nodiscard]] const Document& document() const { return document_; }
  [[nodiscard]] const Profile& profile() const { return profile_; }
  [[nodiscard]] const std::vector<RowToKnit>& rows() const { return rows_.rows; }
  [[nodiscard]] const std::vector<SetupRow>& setup() const { return setup_; }
  [[nodiscard]] int stitches() const { return stitches_of(document_); }

  // The name on one line; by the key where there is no name.
  [[nodiscard]] const std::string& yarn_name(char key) const;

  [[nodiscard]] const ChartNeedles& needles_of(const RowToKnit& row) const;
  // "L12–L9 R1", "all but L3–L1", "all", "none".
  [[nodiscard]] std::string list_of(const RowToKnit& row) const;
  // "Ink out, end needles back"; empty where nothing is done.
  [[nodiscard]] std::string done_before(int row) const;
  // "Ink out, all needles back; plain row; all needles back".
  [[nodiscard]] std::string done_at_end() const;

private:
  const Document& document_;
  const Profile& profile_;
  RowsToKnit rows_;
  std::vector<SetupRow> setup_;
  std::vector<RowActions> actions_;
  std::map<char, std::string> yarn_names_;
  std::vector<ChartNeedles> needles_; // of drawn row n at n + 1; at 0 those of a row without contrast
};

} // namespace punchwright
