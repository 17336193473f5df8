// The knitted fabric against the drawing: every stitch, every drop, every float.
// Which needle shows which drawn column is said here once more, by walking and not by the formula of machine/placement,
// so that a mistake there cannot hide.
#pragma once

#include "design/document.hpp"
#include "knitting/fabric.hpp"
#include "machine/profile.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

// What a row of the fabric should be.
struct WantedRow {
  int drawn = -1; // drawn row from 0; -1: plain in main
  char main = 'A';
  char contrast = 0; // 0: no stitch of it
};

enum class DifferenceKind {
  missing_row,
  surplus_row,
  wrong_yarn,
  missing_stitch,
  dropped,
  cast_on,
  loose_yarn,
  long_float,
  not_caught // a float that should be lifted onto that needle
};

// "wrong-yarn": stable, for scripts.
[[nodiscard]] std::string_view word_for(DifferenceKind kind);

struct Difference {
  DifferenceKind kind = DifferenceKind::wrong_yarn;
  int row = 0; // of the fabric from 1, those of the setting-up included
  Needle first;
  Needle last;
  char wanted = 0;
  char found = 0;
  int stitches = 0; // of a float
};
[[nodiscard]] std::string words_of(const Difference& difference, int rows_before);

struct Comparison {
  int rows = 0;
  long long stitches = 0;  // compared with the drawing
  long long selvedges = 0; // end stitches that knit contrast by rule, and are not compared
  long long floats = 0;
  int longest_float = 0; // stitches
  std::vector<Difference> differences;
};

struct ComparisonWishes {
  int rows_before = 0;      // rows of the setting-up, plain in the first band's main
  int longest_float = 5;    // stitches
  bool end_needles = false; // the end stitches of rows with contrast are contrast
};

[[nodiscard]] Comparison compare_with_drawing(const Fabric& fabric, const Document& document, const Profile& profile,
                                              const std::vector<WantedRow>& rows, const ComparisonWishes& wishes);

// Drawn column, from 0, that each needle of the piece shows on the knit side; from the piece's leftmost needle.
[[nodiscard]] std::vector<int> columns_on_the_bed(const Document& document, const Profile& profile);

} // namespace punchwright
