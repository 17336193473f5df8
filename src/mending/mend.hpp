// Mending a drawing: the fewest stitches changed so that no float is too long, and among equally small answers the one
// that looks best. Single-colour rows stay as they are: no yarn floats there.
#pragma once

#include "design/document.hpp"
#include "design/edits.hpp"
#include "drawing/frieze.hpp"
#include "machine/profile.hpp"
#include "mending/row_mender.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace punchwright {

struct MendWishes {
  int limit = 5; // stitches that a float of either yarn may pass, 1 to 200
  // Prices of changing the stitches, row by row from row 1 of the drawing, each row from its left on the knit side:
  // never_changed, or 0 to dearest_change. Empty: each costs 1.
  std::vector<std::int32_t> prices;
  bool stacked = true;    // the last row lies against the first: knitted more than once, or joined into a loop
  std::vector<char> rows; // by drawn row, whether it may be mended; empty: every row
  bool look = true;       // false: the fewest changes alone, whichever of them comes first
  // The symmetry to keep as far as the other criteria leave a choice; usable for the drawing. Only with `look`.
  std::optional<Frieze> symmetry;
};

// A row that can't be mended, and stays as it was; the columns of a run that nothing may break, the whole row where no
// single run is the reason. first_column > last_column: it goes round the edge.
struct Unmendable {
  int row = 0;
  int first_column = 0;
  int last_column = 0;
  bool operator==(const Unmendable&) const = default;
};

// For a design on a machine: its longest float; stacked where it is knitted more than once or from a loop; stitches
// that its marks protect are never changed, and rows whose floats are all caught by hand or accepted stay as they are.
[[nodiscard]] MendWishes mend_wishes(const Document& design, const Profile& profile);
// A row of both colours in which a float is too long, as it tiles.
[[nodiscard]] bool needs_mending(const Grid& drawing, int row, int limit);
// Stitches that stay as they are; the area may go round the edges.
void protect(MendWishes& wishes, const Grid& drawing, const Area& area);

// The symmetry of a drawing to keep; none where it makes no two stitches alike.
[[nodiscard]] std::optional<Frieze> symmetry_to_keep(const Grid& drawing);

// Drawings are ordered by `price`, then by `pairs`, then by `squares`, then by `unlike`; the least of all is looked
// for.
struct Mended {
  Grid drawing;
  std::vector<Cell> changed; // by row, then by column
  std::int64_t price = 0;    // of the changed stitches: their number, where each costs 1
  // Changed stitches in neighbouring rows on the same or the next needle, round the edge too: catches that stand above
  // one another show through as a line.
  std::int64_t pairs = 0;
  // Of the lengths of all runs of the mended rows, squared and added up: least where floats are caught in their middle.
  std::int64_t squares = 0;
  // Pairs of stitches that the symmetry makes alike and that are not; 0 where none is to be kept.
  std::int64_t unlike = 0;
  // No drawing comes before this one. False: none is cheaper, but among those of the same price there may be one with
  // fewer pairs, smaller squares or fewer unlike pairs; there were too many to look at.
  bool proved = true;
  std::vector<Unmendable> unmendable; // ascending by row
};

// Prices that are given must be as many as stitches.
[[nodiscard]] Mended mend(const Grid& drawing, const MendWishes& wishes);

// "stitch 9 to contrast, stitch 14 to main": what is changed in a row.
[[nodiscard]] std::string words_for_changes(const Mended& mended, int row);

// All cheapest forms of one row of the drawing, in the order above beside `mended`'s other rows; each as its stitches,
// true: contrast. Empty where the row needs no mending, can't be mended, or has more than `most` of them.
[[nodiscard]] std::vector<std::vector<char>> forms_of_row(const Grid& drawing, const Grid& mended, int row,
                                                          const MendWishes& wishes, std::size_t most);

// Pairs as above of the stitches in which two drawings of the same size differ.
[[nodiscard]] std::int64_t pairs_of_changes(const Grid& before, const Grid& after, bool stacked);

} // namespace punchwright
