// From rows to knit to what hands do: the needles of each row, what is changed before it, and which card holds which
// row. The sheets, the command line and the editor print this; none of them works anything out again.
#pragma once

#include "design/document.hpp"
#include "machine/placement.hpp"
#include "machine/profile.hpp"
#include "rows/cards.hpp"
#include "rows/rows.hpp"

#include <string>
#include <utility>
#include <vector>

namespace punchwright {

// The colour of every stitch of a row to knit, from the leftmost needle of the piece: true is contrast. End needles
// included.
[[nodiscard]] std::vector<bool> stitches_in_row(const Document& document, const Profile& profile, const RowToKnit& row);
// The same into bytes, 1: contrast. For whoever looks at every stitch of many rows.
void lay_stitches(const Document& document, const Profile& profile, const RowToKnit& row, std::vector<char>& stitches);

// The needles that knit contrast, left to right; L1 is next to R1.
[[nodiscard]] std::vector<Needle> needles_in_row(const Document& document, const Profile& profile,
                                                 const RowToKnit& row);

// The needles onto which the floats of the row are lifted by hand once it is knitted, left to right: those whose stitch
// is marked so, and behind which a yarn passes from stitch to stitch of its own.
[[nodiscard]] std::vector<Needle> caught_needles(const Document& document, const Profile& profile,
                                                 const RowToKnit& row);

// Neighbouring needles as runs: first and last, left to right.
struct NeedleRun {
  Needle first;
  Needle last;
  [[nodiscard]] int count() const { return last.position - first.position + 1; }
  bool operator==(const NeedleRun&) const = default;
};
[[nodiscard]] std::vector<NeedleRun> runs_of(const std::vector<Needle>& needles);
// "L12–L9 L3 R1–R4"; a run of one needle by its name alone, "none" for no needle.
[[nodiscard]] std::string text_of(const std::vector<NeedleRun>& runs);

// What is done with the hands before a pass.
enum class Doing { lift_floats, contrast_out, contrast_in, main_out, main_in, end_needles_back, all_needles_back };
struct Action {
  Doing doing = Doing::contrast_in;
  char yarn = 0;                    // 0 for needles
  int feeder = 0;                   // 1 or 2; 0 for needles
  bool hangs = false;               // out: left hanging at the edge, where it is wanted again; in: it hung there
  bool far_side = false;            // out, and cut: wanted again soon, but on the other side
  std::vector<Needle> needles = {}; // onto which floats of the row before are lifted
  bool operator==(const Action&) const = default;
};
struct RowActions {
  int row = 1;                 // row to knit, from 1; beyond the last row: what is done at the end
  int pass = 1;                // 2: between the two passes of a row, on a machine with one feeder
  std::vector<Action> actions; // in the order of doing them
};
// Only passes before which something is done, ascending. Behind the last row come two more: one row beyond it what is
// done before the plain row at the end, two rows beyond it what is done behind that row. Card margins, needle chart and
// steps all take what hands do from here. Before row 1 its main is in the first feeder, by the setting-up.
[[nodiscard]] std::vector<RowActions> actions_of(const Document& document, const Profile& profile,
                                                 const RowsToKnit& rows);
// "Ink out", "Oat in", "end needles back", "all needles back", "lift floats onto L3 R4".
[[nodiscard]] std::string text_of(const Action& action, const Document& document);
// "Ink out, end needles back".
[[nodiscard]] std::string text_of(const std::vector<Action>& actions, const Document& document);
// All that is done behind the last row: "Ink out, all needles back; plain row; all needles back".
[[nodiscard]] std::string text_at_end(const std::vector<RowActions>& actions, const RowsToKnit& rows,
                                      const Document& document);

// The columns to punch, from 1, ascending, in row `row` (from 1, counted through all cards, see rows/cards.hpp): where
// the profile's holes mean main, the columns that knit main. Empty for a profile without a card.
[[nodiscard]] std::vector<int> punched_columns(const Document& document, const Profile& profile, const RowsToKnit& rows,
                                               int row);

} // namespace punchwright
