// Edits as values: each can be applied to a document and taken back. Applying one gives a Change,
// and exchanging the change with the document undoes it; exchanging again does it anew.
#pragma once

#include "design/boxed.hpp"
#include "design/document.hpp"
#include "design/result.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace punchwright {

struct Cell {
  int column = 0; // from 0, knit side, from the left
  int row = 0;    // from 0, row 1 of the drawing first

  auto operator<=>(const Cell&) const = default;
};

// A rectangle that may go round the edges of the repeat: columns and rows are taken modulo its size.
struct Area {
  Cell corner; // lowest row, leftmost column
  int columns = 1;
  int rows = 1;

  bool operator==(const Area&) const = default;
};

struct SetCells {
  std::vector<Cell> cells;
  bool contrast = true;
};
struct Fill {
  Area area;
  bool contrast = true;
};
// Stitches that leave at one edge come in at the other. Bands stay where they are.
struct Shift {
  int columns = 0; // to the right on the knit side
  int rows = 0;    // upwards
};
struct MirrorLeftRight {};
// Turns the bands over together with their rows.
struct MirrorUpsideDown {};
struct Invert {
  Area area;
};
// New rows are all main and join the band below them; below row 1, the lowest band.
struct InsertRows {
  int before = 0; // the first new row has this index, 0 to height
  int count = 1;
};
// A band without rows goes.
struct DeleteRows {
  int first = 0;
  int count = 1;
};
// Copies of the rows, put above them, with the yarns of the rows that they copy.
struct DuplicateRows {
  int first = 0;
  int count = 1;
};
struct InsertColumns {
  int before = 0;
  int count = 1;
};
struct DeleteColumns {
  int first = 0;
  int count = 1;
};
struct DuplicateColumns {
  int first = 0;
  int count = 1;
};
// Which yarns moved rows are knitted with.
enum class MovedYarns {
  of_the_place, // those of the band where they land: at the edge of their own band they stay in it, else they join the
                // band below (below row 1, the lowest); a band without rows goes
  their_own,    // each row keeps its band's yarns, so bands are split and joined
};
// Rows to another place in the drawing.
struct MoveRows {
  int first = 0;
  int count = 1;
  int to = 0; // the index of the first of them afterwards, 0 to height - count
  MovedYarns yarns = MovedYarns::of_the_place;
};
struct MoveColumns {
  int first = 0;
  int count = 1;
  int to = 0; // the index of the first of them afterwards, 0 to width - count
};
// Where the old drawing lies in the new size. An odd rest of `middle` goes to the right, or to the top.
enum class AcrossAnchor { left, middle, right };
enum class UpAnchor { bottom, middle, top };
// New stitches are main; new rows join the nearest band, the lowest or the top one.
struct Resize {
  int width = 1;
  int height = 1;
  AcrossAnchor across = AcrossAnchor::left;
  UpAnchor up = UpAnchor::bottom;
};
// Sets `drawing` down with its lowest left stitch at `corner`, going round the edges. Marks of the stitches below it
// go.
struct Paste {
  Cell corner;
  Grid drawing;
};
// The stitches anew, size and bands as they are; `name` is what was done, for the list.
struct Redraw {
  Grid drawing;
  std::string name;
};
// The marks of the stitches anew, of the drawing's size; `name` is what was done, for the list.
struct ChangeMarks {
  StitchMarks marks;
  std::string name;
};
// Everything but the drawing: title, notes, machine, gauge, yarns, piece, rules, card. The grid, marks and bands of
// `settings` are not looked at.
struct ChangeSettings {
  Document settings;
};
// The bands anew; together they cover the drawing's rows, and a band of one yarn lies on rows all main.
struct ChangeBands {
  std::vector<Band> bands;
};

using Edit = std::variant<SetCells, Fill, Shift, MirrorLeftRight, MirrorUpsideDown, Invert, InsertRows, DeleteRows,
                          DuplicateRows, InsertColumns, DeleteColumns, DuplicateColumns, MoveRows, MoveColumns, Resize,
                          Paste, Redraw, ChangeMarks, ChangeSettings, ChangeBands>;

// In the words of the list of what was done: "draw", "shift", "insert rows", …
[[nodiscard]] std::string name_of(const Edit& edit);

// What an edit exchanged. Rows that changed are kept as a difference, anything larger as the other state, in a place of
// its own: undo keeps every stroke, and a stroke of one row needs no room for settings.
struct Change {
  struct RowDifference {
    int row = 0;
    std::vector<Grid::Word> bits; // the stitches that differ
    bool operator==(const RowDifference&) const = default;
  };
  struct Drawing {
    Grid grid;
    std::vector<Band> bands;
    Extras extras; // comments stand beside the rows they were written for
    bool operator==(const Drawing&) const = default;
  };
  struct Settings {
    Document settings; // grid, marks and bands empty
    bool operator==(const Settings&) const = default;
  };
  std::variant<std::vector<RowDifference>, Boxed<Drawing>, Boxed<Settings>> content;
  std::optional<Boxed<StitchMarks>> marks; // where the edit moved or changed them

  // True where the edit changed nothing, so that there is nothing to undo.
  [[nodiscard]] bool nothing() const;
  bool operator==(const Change&) const = default;
};

// Applies the edit. Refused, with the document as it was: a place outside the drawing, a size outside 1 to 200 by 1 to
// 2000, contrast stitches in a band of one yarn, the last row or column deleted.
[[nodiscard]] Result<Change> apply_edit(Document& document, const Edit& edit);

// Undoes, and done again redoes: afterwards `change` holds what the document held before.
void exchange(Document& document, Change& change);

} // namespace punchwright
