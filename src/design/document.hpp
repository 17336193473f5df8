// Everything that a .repeat file says: the drawing, its yarns and bands, and how it is to be knitted.
// A plain value; the defaults here are the file form's own, where the file leaves a key out.
#pragma once

#include "design/extras.hpp"
#include "design/grid.hpp"
#include "design/marks.hpp"
#include "design/units.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace punchwright {

struct Colour { // sRGB
  std::uint8_t red = 0;
  std::uint8_t green = 0;
  std::uint8_t blue = 0;

  bool operator==(const Colour&) const = default;
};

// "#e8dcc2", small letters.
[[nodiscard]] std::string hex_of(Colour colour);
// '#' and six hexadecimal digits, or nothing.
[[nodiscard]] std::optional<Colour> colour_from_hex(std::string_view text);

// Stitches and rows over 10 cm.
struct Gauge {
  double stitches = 16.0; // 1 to 200
  double rows = 20.0;     // 1 to 200

  [[nodiscard]] double stitch_mm() const { return 100.0 / stitches; }
  [[nodiscard]] double row_mm() const { return 100.0 / rows; }
  bool operator==(const Gauge&) const = default;
};

struct Yarn {
  char key = 'A'; // one letter or digit
  std::string name;
  Colour colour;

  bool operator==(const Yarn&) const = default;
};

// Rows that share their yarns. Bands lie on one another from row 1 upwards and cover every row.
struct Band {
  int rows = 1; // 1 or more
  char main = 'A';
  std::optional<char> contrast;   // absent: a band of one yarn, every stitch main
  std::optional<int> plain_below; // 0 to 99 single-colour rows instead of the derived number

  bool operator==(const Band&) const = default;
};

enum class EndNeedles { as_profile, always, never };

struct Piece {
  std::optional<int> stitches;        // in work, 1 to 1000; absent: one repeat
  std::optional<Needle> first_needle; // leftmost in work; absent: centred
  std::optional<int> first_column;    // by hand only: drawn column (from 1) on the first needle
  int times = 1;                      // 1 to 1000
  Side carriage = Side::right;        // where the carriage stands before the first row to knit
  EndNeedles end_needles = EndNeedles::as_profile;
  int edge = 1; // selvedge stitches each side, 0 to 50

  bool operator==(const Piece&) const = default;
};

enum class ChangeSide { any, left, right };

struct KnittingRules {
  std::optional<int> longest_float;       // stitches, 1 to 200
  std::optional<double> longest_float_mm; // mm; never both
  int plain_rows = 1;                     // 0 to 9
  ChangeSide change_side = ChangeSide::any;

  bool operator==(const KnittingRules&) const = default;
};

enum class Paper { a4, letter, roll };

struct CardWishes {
  Paper paper = Paper::a4;
  bool loop = false;
  double scale_x = 1.0; // what a ruler says, divided by what it should say; 0.5 to 2
  double scale_y = 1.0;

  bool operator==(const CardWishes&) const = default;
};

struct Document {
  std::string title;
  std::string notes;
  std::string profile = "bulky-card-24"; // built-in name, or the path of a .machine file
  Gauge gauge;
  std::vector<Yarn> yarns;
  Grid grid;
  StitchMarks marks;
  std::vector<Band> bands;
  Piece piece;
  KnittingRules rules;
  CardWishes card;
  Extras extras;

  bool operator==(const Document&) const = default;
};

// The stitches of the piece, and its leftmost and rightmost needle.
[[nodiscard]] int stitches_of(const Document& document);
[[nodiscard]] Needle first_needle_of(const Document& document);
[[nodiscard]] Needle last_needle_of(const Document& document);

// Index of the band that drawn row `row` (from 0) belongs to.
[[nodiscard]] std::size_t band_index_at(const Document& document, int row);
// Whether that row's band has a contrast, so that a contrast stitch can be drawn in it.
[[nodiscard]] bool two_yarns_in(const Document& document, int row);

// The yarn of that key; a document that was read or edited here has it.
[[nodiscard]] const Yarn& yarn_of(const Document& document, char key);

// A new drawing, all main, with two yarns and one band.
[[nodiscard]] Document blank_document(int width, int rows);

} // namespace punchwright
