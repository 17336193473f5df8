// The row of decreases (or increases) between two tiers, as needles: which are brought forward, which neighbour takes
// each loop, and how the trade says it.
#pragma once

#include "design/units.hpp"
#include "pieces/even_steps.hpp"

#include <optional>
#include <string>
#include <vector>

namespace punchwright {

struct Transfer {
  Needle from;
  Needle to;
  bool operator==(const Transfer&) const = default;
};

struct Shaping {
  int before = 0; // stitches, seam stitches included
  int after = 0;
  Steps every; // counted from the leftmost needle to each needle brought forward; for increases to the stitch behind
               // which one is made
  std::vector<Needle> forward;     // those needles, left to right
  std::vector<Transfer> transfers; // for decreases; each empties a needle, which goes out of work before the next row
  YokeDecreases wished;
  int clear_of_seam = 0;       // by so many stitches they are
  bool kept_off_seams = true;  // by as many stitches as were wished
  bool kept_off_edge = true;   // without seam stitches: decreases leave the outermost stitches alone
  bool kept_off_centre = true; // true also where it wasn't wished
  int astray = 0;              // transfers that go the other way than wished, since they find no room

  [[nodiscard]] bool as_wished() const { return kept_off_seams && kept_off_edge && kept_off_centre && astray == 0; }

  [[nodiscard]] int decreases() const { return before > after ? before - after : 0; }
  [[nodiscard]] int increases() const { return after > before ? after - before : 0; }
};

struct ShapingWishes {
  Needle first; // leftmost in work
  int before = 0;
  int after = 0;
  int edge = 1;
  YokeDecreases how;
  std::vector<bool> centre; // by stitch from the left: on the motif's centre line; empty: none is
};

// The most even row that keeps the rules: no two transfers on a needle, none on a seam stitch or where it should keep
// clear. Clearances come first (as many stitches beside the seams as there is room for, then the centre line), then the
// fewest transfers that go the other way (towards the centre none ever has to; towards the edges one, where it falls
// between the two middle stitches), then as many one way as the other (the middle one of an odd number goes either).
//
// Most even: the steps are those from the left end to the first place, from place to place, and from the last one to
// the right end (the stitches behind it); of half steps those from place to place, on from the last one to the first
// one of the next piece. Of all rows that keep the rules it is one with
// 1. the least difference between its longest and its shortest step, of these
// 2. the least sum of squared steps, of these
// 3. the least sum of squared distances from where even_places() has them: gathered or mixed, as is wished.
// So where even_places() keeps the rules, it is that.
//
// No loop goes onto an edge stitch. Without seam stitches these are the outermost ones: decreases leave them alone
// where there is room; where there is none, they may be emptied, and that is said.
//
// At most one visible stitch in two is decreased; one is made at most between any two visible stitches, and it keeps
// clear where both of them would.
[[nodiscard]] Shaping shaping_between(const ShapingWishes& wishes);

// "every 6th needle twice, every 5th 11 times, every needle 3 times"; "none".
[[nodiscard]] std::string words_of(const Steps& every);

// "1 stitch clear of the seams and off the motif's centre line", "1 stitch clear of the seams, no room for 3; no room
// for 1 to go towards the edges"; nothing where nothing was wished.
[[nodiscard]] std::string clearance_words(const Shaping& shaping);

// Needles to fill after increases, when the work hangs from `first` on: each stands empty between its neighbours, and
// the loop below its left neighbour is lifted onto it (an empty needle in work would cast on an eyelet).
[[nodiscard]] std::vector<Needle> needles_to_fill(const Shaping& shaping, Needle first);

} // namespace punchwright
