// What follows from the design and is dear to work out: rows, findings, the picture of the piece. Kept until the
// design's revision changes, and made anew between two frames, never during one.
#pragma once

#include "design/document.hpp"
#include "editor/canvas_layout.hpp"
#include "editor/piece_picture.hpp"
#include "machine/profile.hpp"
#include "rows/rows.hpp"
#include "rules/findings.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace punchwright::editor {

struct App;

// Single-colour rows between one drawn row and the one below it.
struct InsertedRows {
  int count = 0;
  char yarn = 'A';
  Why why = Why::yarn_change;
};

// Stitches to be marked in the drawing: a run in a row, or the same columns of several rows.
struct Mark {
  int row = 0;
  int last_row = 0;
  int first_column = 0; // first > last: round the edge
  int last_column = 0;
  int finding = 0;              // its place among the findings
  std::optional<Needle> needle; // the end of the piece on the bed that this column knits on
};

// An entry of the list: a float that the piece shows as well stands there once.
struct Listed {
  int finding = 0;
  int on_piece = -1; // the same float on the piece; -1: none
};

// The picture of the cloth, and what the window made of it.
struct PiecePicture {
  ClothPainter painter;
  std::optional<ClothView> made_for;
  std::uint64_t serial = 0;   // grows with every new picture
  unsigned texture = 0;       // OpenGL's name for it, set by the window
  std::uint64_t uploaded = 0; // serial of the picture that the texture holds
};

struct Caches {
  std::uint64_t opening = 0;
  std::uint64_t revision = 0;
  bool valid = false;
  RowsToKnit rows;
  std::vector<Finding> findings;
  int faults = 0;
  int warnings = 0;
  int notes = 0;
  std::vector<InsertedRows> inserted_below; // by drawn row
  std::vector<int> strips_up_to;            // by drawn row: strips below it and in it
  int strips = 0;                           // in all
  std::vector<Listed> listed;               // what the list of findings shows
  std::vector<Mark> marks;                  // ascending by row
  std::vector<char> row_yarns;              // by drawn row: its band's main and contrast (0: none), two a row
  PiecePicture piece;
};

// Brings the caches up to date. Returns true where something was worked out.
bool refresh(App& app);

} // namespace punchwright::editor
