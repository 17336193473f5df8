// The stitch counts of one size of a yoke: the problem that stitch_counts.hpp solves, made from the file's measures;
// first whether the pieces fit the bed, and at last why nothing fits.
#pragma once

#include "pieces/open_yoke.hpp"
#include "pieces/stitch_counts.hpp"

#include <string>
#include <vector>

namespace punchwright {

// Which pieces have the same counts.
struct PieceGroups {
  std::vector<std::size_t> of_piece; // group of each piece
  std::vector<std::size_t> first;    // of each group, the piece that has the widths
};
[[nodiscard]] PieceGroups groups_of(const Yoke& yoke);

// The straight cone: stitches of a piece, seam stitches included, at the height of each tier's first row, and at last
// at the top.
[[nodiscard]] std::vector<double> ideal_counts(const OpenedYoke& opened, std::size_t size, std::size_t piece);

// What the search may leave out, to tell which rule costs most.
struct LeftOut {
  bool tolerance = false;
  bool halves = false;
  bool doubles = false;
  bool bed = false;   // counts may be wider than it
  bool alike = false; // pieces that are like another one may have counts of their own
  int seams = -1;     // of that tier: the ring that closes, or the middles and the seams that are alike
};

// Measures are taken to 0.001 cm and gauges to 0.001, so that all of it is whole numbers.
[[nodiscard]] CountsProblem counts_problem(const OpenedYoke& opened, std::size_t size, const LeftOut& left_out = {});

// Pieces that are wider than the bed somewhere: no count within the tolerance fits it there.
struct TooWide {
  std::size_t piece = 0;
  int stitches = 0; // the widest of all sizes, as its ideal is rounded
  int fewest = 0;   // that the tolerance allows there
  std::size_t size = 0;
  int parts = 2; // the fewest pieces it would take; 0: no number would do, since seam stitches alone fill the bed
};
[[nodiscard]] std::vector<TooWide> too_wide(const OpenedYoke& opened);
// In that size: its own stitches; parts as many as all sizes need, since all are split alike.
[[nodiscard]] std::vector<TooWide> too_wide(const OpenedYoke& opened, std::size_t size);
// How many pieces in its place, two or more, would lie on the bed in that size with their ideals, rounded.
[[nodiscard]] int parts_on_bed(const OpenedYoke& opened, std::size_t size, std::size_t piece);
// "front" in so many equal pieces, "front 1" from the left (or "front part 1", where a piece has such a name already),
// and what is like it likewise. The pieces are like the first one of them, so that seams fall alike.
[[nodiscard]] Yoke with_piece_split(const Yoke& yoke, std::size_t piece, int parts);
// All pieces that are too wide, split. Refused where that would be more pieces, or narrower ones, than a file holds.
[[nodiscard]] Result<Yoke> split_to_fit(const OpenedYoke& opened);

struct CountsOfSize {
  std::vector<std::vector<int>> stitches; // [piece][tier], at last the stitches after the last decreases
  Counts proof;
};
// Without why nothing fits, which takes longer than the search itself.
struct CountsTried {
  std::optional<CountsOfSize> counts;
  bool gave_up = false; // whether any fit is not known
};
[[nodiscard]] CountsTried try_counts(const OpenedYoke& opened, std::size_t size, int most_parts = most_count_parts,
                                     const std::stop_token& stop = {});
// An error where nothing fits: the rule that costs most, the tolerance that would do, and the nearest measures; and one
// where the search gave up, which says so.
[[nodiscard]] Result<CountsOfSize> counts_of_size(const OpenedYoke& opened, std::size_t size);

} // namespace punchwright
