// Designs and machines that the card tests share. Numbers are written out here, so that a change of a default shows.
#pragma once

#include "design/document.hpp"
#include "machine/profile.hpp"

namespace punchwright {

// A machine whose sizes are all round numbers: sheet 142 mm, columns 4.5 mm and rows 5 mm apart, column 1 at 19.25 mm.
inline Profile card_machine(int offset = 7) {
  Profile profile;
  profile.name = "test-card-24";
  profile.title = "a machine for tests";
  CardReader card;
  card.repeat = 24;
  card.first_needle = left_needle(12);
  card.face = CardFace::as_knitter_sees;
  card.reader_offset = offset;
  card.blank_rows = 60;
  card.loop_rows = 36;
  card.geometry.sheet_width = 142.0;
  card.geometry.stitch_pitch = 4.5;
  card.geometry.row_pitch = 5.0;
  card.geometry.hole_diameter = 3.5;
  card.geometry.column_1 = 19.25;
  card.geometry.first_row = 12.5;
  card.geometry.feed_diameter = 3.0;
  card.geometry.feed_pitch = 5.0;
  card.geometry.feed_from_side = 6.0;
  card.geometry.clip_diameter = 3.5;
  card.geometry.clips = {{6.0, 5.0}, {13.0, 5.0}};
  profile.card = card;
  return profile;
}

// One band; in every row the drawn columns (from 0) with (column + row) % 3 == 0 are contrast: no symmetry left to
// right.
inline Document slanting_design(int rows) {
  Document document = blank_document(24, rows);
  document.title = "Slanting";
  document.yarns = {{'A', "Oat", {232, 220, 194}}, {'B', "Ink", {32, 48, 74}}};
  document.bands = {{rows, 'A', 'B', {}}};
  for (int row = 0; row < rows; ++row) {
    for (int column = 0; column < 24; ++column) {
      document.grid.set(column, row, (column + row) % 3 == 0);
    }
  }
  return document;
}

} // namespace punchwright
