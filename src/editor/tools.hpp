// What the pointer does on the drawing: the tools, and what hangs over the drawing before it is set down.
// Apart from the rest of the view, since both the view and the session hold some of it.
#pragma once

#include "design/edits.hpp"
#include "design/grid.hpp"
#include "drawing/axes.hpp"
#include "drawing/patches.hpp"
#include "drawing/shapes.hpp"
#include "mending/mend.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace punchwright::editor {

enum class Tool { pen, line, rectangle, ellipse, flood, mark };

// What a fill would take while its button is held. What hangs together is found once for the drawing, and a patch is
// made whole under the symmetry once, however the pointer moves about in it.
struct HeldFill {
  std::uint64_t revision = 0; // of the drawing
  Patches patches;
  std::optional<Frieze> symmetry;
  int patch = -1;
  Grid stitches; // of that patch and what belongs to it, as contrast
};

// What is being drawn or dragged, from the button's press to its release. The pen draws as it goes; a shape shows what
// it would draw, and draws it at the end.
struct Stroke {
  Tool tool = Tool::pen;
  Cell from; // unwrapped: it may run on into the neighbours
  Cell last;
  bool contrast = true;
  bool moves_floating = false; // what hangs over the drawing is dragged
  Grid preview;                // the stitches, as contrast, of a shape that isn't drawn yet
  std::optional<HeldFill> fill;
};

// Stitches drawn one after the other with the keys: as long as it goes on, they are one step.
struct KeyRun {
  Cell last; // where it has come to
  bool contrast = true;
  double at = 0; // s, when the last of them was drawn

  static constexpr double longest_pause = 2; // s; after it another run begins
};

// Stitches that hang over the drawing: pasted, lifted, lettered, or a motif. Set down, they are one step.
struct Floating {
  Grid drawing;
  Cell corner;                     // lowest left stitch; may lie in a neighbour
  std::string name;                // of the step: "paste", "move"
  std::optional<Area> lifted_from; // becomes main when it is set down
  bool see_through = false;        // main stitches leave what lies below them
  bool motif = false;              // that is as is wished of motifs
  bool operator==(const Floating&) const = default;
};

// Rows or columns that are dragged by their numbers.
struct LineDrag {
  bool rows = true;
  int first = 0;
  int count = 1;
  int grabbed = 0; // the line that the button was pressed on
  int to = 0;      // the index of the first of them, were they let go now
  bool operator==(const LineDrag&) const = default;
};

struct GridSize { // stitches and rows
  int width = 1;
  int height = 1;
};

// A step that moved rows or columns, and the chosen symmetry with them, so that both come back together.
struct MovedAxes {
  std::size_t step = 0; // its number in the history, from 1
  std::vector<LineChange> changes;
  GridSize size_before;
  GridSize size_after;
  std::optional<Frieze> symmetry_before;
  std::optional<Frieze> symmetry_after; // none, though there was one: the drawing has its group no longer
};

// A step with which the marked area became another one, or came or went.
struct MovedMark {
  std::size_t step = 0; // its number in the history, from 1
  std::optional<Area> before;
  std::optional<Area> after;
};

// A mend that is shown before it is taken. Any other change of the drawing takes it away.
struct ShownMend {
  Mended mended;
  std::uint64_t revision = 0; // of the drawing that it was made for
  bool symmetric = false;     // more stitches than the fewest, so that the symmetry is whole
};

} // namespace punchwright::editor
