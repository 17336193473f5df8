// What a knitting machine is, to this program: bed, card and reader, feeders, how needles are selected.
// Machines are described by pitch, needle count and repeat width, never by a maker's name.
#pragma once

#include "design/extras.hpp"
#include "design/result.hpp"
#include "design/units.hpp"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

// Where a round hole lies on the blank: mm from the left edge of the sheet, and mm above the bottom edge
// or below the top edge.
struct ClipHole {
  double from_side = 0; // mm from the nearer side edge
  double from_end = 0;  // mm from the nearer end of the sheet

  bool operator==(const ClipHole&) const = default;
};

// The blank card, in millimetres. Punched holes and all others are circles.
//
//        from_side                      the card's face, row 1 lowest
//     <->|o       o|      clip holes
//     |  .  o o o  .  |   overlap rows (fully punched)
//     |  .  o   o  .  |   row 2        ^ row_pitch
//     |  .  o o    .  |   row 1        v
//     |  .  o o o  .  |   overlap rows
//     <---->|             column_1: from the nearer side edge to the centre of the outermost column
struct CardGeometry {
  double sheet_width = 142.0; // 20 to 400
  double stitch_pitch = 4.5;  // between neighbouring columns, 1 to 20
  double row_pitch = 5.0;     // between neighbouring rows, 1 to 20
  double hole_diameter = 3.5; // 0.5 to 15, smaller than both pitches
  double column_1 = 19.25;    // from the side edge to the nearest column's centre
  double first_row = 12.5; // from the bottom edge of the sheet to the centre of the lowest overlap row; the same on top
  double feed_diameter = 3.0;
  double feed_pitch = 5.0;
  double feed_from_side = 6.0; // to the centre
  double clip_diameter = 3.5;
  std::vector<ClipHole> clips{{6.0, 5.0}, {13.0, 5.0}}; // one corner's; the other three mirror it

  bool operator==(const CardGeometry&) const = default;
};

enum class CardFace { as_knitter_sees, as_knit_side }; // what the face of the card shows: purl side, or knit side
enum class HoleMeans { contrast, main };
enum class Selects { next_pass, same_pass, by_hand };

struct CardReader {
  int repeat = 24;          // stitches, 1 to 200
  Needle first_needle{-12}; // card column 1 selects it: L12 on 24-stitch beds, L6 on 12-stitch ones
  CardFace face = CardFace::as_knitter_sees;
  HoleMeans hole = HoleMeans::contrast;
  bool turned = false;   // the card is fed by its other end: row 1 uppermost, everything turned by half a turn
  int reader_offset = 7; // rows: visible line minus reading line, 0 to 30
  int blank_rows = 60;   // rows on one blank, overlap rows not counted
  int loop_rows = 36;    // punched rows that a joined loop needs
  CardGeometry geometry;

  bool operator==(const CardReader&) const = default;
};

struct Profile {
  std::string name;  // "bulky-card-24"
  std::string title; // "bulky bed, 9 mm, 112 needles, 24-stitch card"
  int needles = 200; // an even number: half on each side of the middle, 2 to 1000
  double pitch_mm = 4.5;
  int feeders = 2; // 1 or 2
  Selects selects = Selects::next_pass;
  bool end_needles = true; // knit contrast in every pattern row
  int longest_float = 5;   // stitches
  std::optional<CardReader> card;
  // Where values come from, by key as in a .machine file ("card.geometry.sheet_width_mm": "from memory").
  std::map<std::string, std::string> sources;
  Extras extras; // comments of a .machine file

  // Leftmost and rightmost needle of the bed.
  [[nodiscard]] Needle leftmost() const { return Needle{-(needles / 2)}; }
  [[nodiscard]] Needle rightmost() const { return Needle{needles - needles / 2 - 1}; }

  bool operator==(const Profile&) const = default;
};

// fine-card-24, standard-card-24, bulky-card-24, bulky-card-12, plastic-by-hand.
[[nodiscard]] const std::vector<Profile>& built_in_profiles();
[[nodiscard]] const Profile* built_in_profile(std::string_view name);

// Values whose source is memory or unknown, as sentences for the screen and the sheets: "sheet width 142 mm: from
// memory".
[[nodiscard]] std::vector<std::string> unsure_values(const Profile& profile);

// Whether a value's source is memory, or there is none.
[[nodiscard]] bool is_unsure(std::string_view source);

// The ruler readings of 'measure your blank', all in mm.
struct BlankReadings {
  double over_23_holes = 0;      // from the first column's centre to the 24th's (23 gaps); on a 12-stitch card 11 gaps
  double over_50_rows = 0;       // from a row's centre to that of the 50th row after it
  double edge_to_first_hole = 0; // side edge to the nearest column's centre
  double sheet_width = 0;
  double hole_diameter = 0;
};

// Over how many gaps between holes the first reading goes: 23, or all of a narrower card.
[[nodiscard]] int gaps_measured(int repeat);

// What a ruler reads on a blank of that geometry: the way back from geometry_from_readings().
[[nodiscard]] BlankReadings readings_of(const CardGeometry& geometry, int repeat);

// The geometry that those readings mean; what they don't tell is kept from `before`. Refused where a reading is
// impossible (holes that overlap, columns beyond the sheet), with the reading named.
[[nodiscard]] Result<CardGeometry> geometry_from_readings(const BlankReadings& readings, int repeat,
                                                          const CardGeometry& before);

} // namespace punchwright
