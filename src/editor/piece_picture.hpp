// The piece as it will look, as pixels at the size at which it is shown: stitches in the yarns' colours and the
// gauge's proportion, from flat cells when small to a stitch with its two legs when large.
#pragma once

#include "design/document.hpp"
#include "machine/profile.hpp"
#include "rows/rows.hpp"

#include <vector>

namespace punchwright::editor {

struct PiecePixels {
  int width = 0;
  int height = 0;
  std::vector<unsigned char> rgb; // 3 bytes a pixel, the top row first
};

// As large as fits into `widest` × `tallest` px.
[[nodiscard]] PiecePixels picture_of_piece(const Document& design, const Profile& profile, const RowsToKnit& rows,
                                           Face face, int widest, int tallest);

} // namespace punchwright::editor
