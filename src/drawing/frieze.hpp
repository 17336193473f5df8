// Symmetry of a strip that repeats sideways: the seven frieze groups, drawn under, recognised, and brought about.
// A strip is a drawing, or a marked area lifted from one, that repeats left and right without end; above and below it
// lies main.
#pragma once

#include "design/edits.hpp"
#include "design/result.hpp"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace punchwright {

// International notation: the second sign is m for an upright axis (left mirrors right); the third m for a level axis
// (below mirrors above), g for a glide along it by half the repeat, 2 for half turns.
enum class FriezeGroup { p1, p11g, p1m1, p11m, p2, p2mg, p2mm };

[[nodiscard]] std::span<const FriezeGroup> frieze_groups();       // the seven, in the order above
[[nodiscard]] std::string_view notation_of(FriezeGroup group);    // "p2mg"
[[nodiscard]] std::string_view description_of(FriezeGroup group); // "upright mirrors, glides and half turns by turns"
[[nodiscard]] std::string_view short_name_of(FriezeGroup group);  // "mirrors and half turns"; "no symmetry" for p1
[[nodiscard]] bool uses_upright_axis(FriezeGroup group);          // p1m1, p2mg, p2mm; p2: half turns on that axis
[[nodiscard]] bool uses_level_axis(FriezeGroup group);            // all but p1 and p1m1
[[nodiscard]] bool needs_even_repeat(FriezeGroup group);          // p11g and p2mg: half the repeat is whole stitches

// A group with the place of its axes. Axes are given by the sum of two columns (rows) that they exchange, so that even
// ones lie through stitches and odd ones between two:
//
//     column    0   1   2   3
//     upright   0 1 2 3 4 5 6
//
// The upright axis recurs every half repeat. For p2 it is the column of the half turns; for p2mg the mirror, with the
// half turns a quarter of the repeat beside it.
struct Frieze {
  FriezeGroup group = FriezeGroup::p1;
  int repeat = 1;  // stitches after which it recurs; divides the strip's width
  int upright = 0; // 0 to repeat - 1; 0 where the group has none
  int level = 0;   // 0 to 2 (height - 1); 0 where the group has none

  bool operator==(const Frieze&) const = default;
};

// The frieze with the strip's whole width as its repeat and its axes in the middle.
[[nodiscard]] Frieze centred_frieze(FriezeGroup group, int width, int height);

// Refused: a repeat that doesn't divide the width, an axis outside the range above, an odd repeat where the group needs
// an even one.
[[nodiscard]] Failure unusable_frieze(const Frieze& frieze, int width, int height);

// The places that a stitch goes to under the frieze, itself among them; each once, sorted. Some may lie above or below
// the strip: rows below 0 or from `height` on. The column is taken round the edge.
[[nodiscard]] std::vector<Cell> orbit_of(Cell cell, const Frieze& frieze, int width);

struct CompletedStroke {
  std::vector<Cell> cells; // of the stroke and all that belongs to it, in the strip; sorted, each once
  std::vector<Cell>
      without_partner; // of the stroke: their partner would lie above or below the strip, so they aren't in `cells`
};

// A stroke made whole under the frieze. Stitches of the stroke above or below the strip are without partner.
[[nodiscard]] CompletedStroke complete_stroke(std::span<const Cell> stroke, const Frieze& frieze, int width,
                                              int height);

// The same for a stroke that is given as a drawing, in whole words: what belongs to it in the strip.
[[nodiscard]] Grid completed(const Grid& stroke, const Frieze& frieze);

// Whether the strip, as it tiles, has all symmetries of the frieze (it may have more).
[[nodiscard]] bool has_symmetry(const Grid& strip, const Frieze& frieze);

// The group that the strip has, exactly: the largest, with its smallest repeat and its lowest axes. A strip of one yarn
// has p2mm with repeat 1; its level axis is the middle.
[[nodiscard]] Frieze classify(const Grid& strip);

struct NearestFrieze {
  Grid strip;
  Frieze frieze; // axes as they were found; where several need as few changes, the lowest level axis, then upright axis
  int changed_stitches = 0;
};

// The nearest drawing that has the group: fewest stitches changed over all places of the axes; in each orbit the yarn
// of most of its stitches, main where they are even, main where it leaves the strip. Refused for p11g and p2mg where
// the width is odd.
[[nodiscard]] Result<NearestFrieze> nearest_with(const Grid& strip, FriezeGroup group);

// The same for axes that are given.
[[nodiscard]] Result<NearestFrieze> nearest_with(const Grid& strip, const Frieze& frieze);

} // namespace punchwright
