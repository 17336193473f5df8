// Where the pieces of a tier lie on the bed, so that the motif goes on across the seams all the way round.
// A card's repeat is fixed to the needles, so the work is moved; by hand the first column is chosen.
//
//     knit side, left to right          | front ..... | sleeve ..... |
//     bed, as the knitter sees it       R45 ...... L45  R38 ..... L30     (the purl side: each piece from right to
//     left) column after the last of front  = first column of sleeve
#pragma once

#include "machine/placement.hpp"
#include "pieces/yoke.hpp"

#include <optional>
#include <string>
#include <vector>

namespace punchwright {

struct PieceOnBed {
  Needle first; // leftmost and rightmost in work
  Needle last;
  int left_column = 0; // first and last visible drawn column on the knit side, from 0
  int right_column = 0;
  std::optional<int> first_column; // by hand: what Piece::first_column says, from 1
};

struct SeamMeeting {
  std::size_t left = 0; // index of the piece on the left of it, on the knit side
  std::size_t right = 0;
  bool meets = true; // the next column follows
  int mismatch = 0;  // columns that are left out (above 0) or stand twice (below 0); 0: meets
  bool alike = true; // its two sides show the columns of the first seam, or their mirror image
};

struct RingOnBed {
  std::vector<PieceOnBed> pieces;
  std::vector<SeamMeeting> seams; // of each piece with the next one, and of the last with the first
  // Where not all is as wished: what is wrong. Of seams that don't meet ring_mend.hpp tells what would mend them.
  std::string mend;
};

// Stitches with the seam stitches, at least one of each piece visible, and no more than the bed has. For `continuous`
// and `free` as few seams as can be do not meet, and then the pieces lie as near to the middle of the bed as can be.
[[nodiscard]] RingOnBed ring_on_bed(const Document& tier, const Profile& profile, const std::vector<int>& stitches,
                                    int edge, YokeSeams seams);

// Counts, by stitches up to the bed's needles, with which no place on the bed has the middle of the repeat at the
// middle of the piece: half a stitch beside it, or too near the bed's ends.
[[nodiscard]] std::vector<bool> counts_not_centred(const Document& tier, const Profile& profile, int edge);

// The tier's drawing as it is knitted in that piece: stitches, needles and, by hand, the first column.
[[nodiscard]] Document document_of_piece(const Document& tier, const PieceOnBed& piece);

} // namespace punchwright
