// What a knitter sees on a fabric that isn't the planned one, in her own words: a dropped edge, a row too few.
#pragma once

#include "design/units.hpp"
#include "knitting/fabric.hpp"

#include <string>
#include <string_view>

namespace punchwright {

enum class Visible {
  nothing,          // the fabric is the planned one
  refused,          // hands can't do it, and notice
  loose_yarn,       // a yarn lies across the whole piece
  dropped_ends,     // at the edges
  dropped_stitches, // within the piece
  row_missing,      // one row or several are left out, what lies above sits lower
  row_too_many,     // one row or several stand twice, or a plain one in the wrong place
  motif_low,        // from its beginning the pattern sits lower or higher than it should
  twice_tall,       // every row of the pattern stands twice
  one_row_only,     // the same row of the pattern over and over
  no_pattern,       // all main
  all_contrast,     // the whole width in contrast
  wrong_pattern,    // none of these
};
// "dropped stitches at the edges"
[[nodiscard]] std::string_view words_of(Visible visible);

struct VisibleFault {
  Visible what = Visible::nothing;
  int row = -1; // of the fabric, from 0: the lowest that differs
  int rows = 0; // too few or too many, low (less than none) or high
};
// `first` and `last`: the needles of the piece; `refused`: the knitting stopped there.
[[nodiscard]] VisibleFault visible_fault(const Fabric& planned, const Fabric& real, Needle first, Needle last,
                                         bool refused = false);

} // namespace punchwright
