// Running text and tables in columns over pages, as a typesetter would break them: a heading stays with what follows
// it, no single line of a paragraph stands alone, a table's row isn't split, and the last page's columns are of one
// height.
#pragma once

#include "sheets/drawing.hpp"

#include <functional>
#include <string>
#include <vector>

namespace punchwright {

struct FlowLine {
  std::vector<Shape> shapes; // from the column's left edge and the line's upper edge
  double height = 0;         // mm
};

struct FlowBlock {
  std::vector<FlowLine> lines;
  double before = 0;             // mm above it, but not at the head of a column
  bool with_next = false;        // a heading
  bool whole = false;            // never split, unless it is higher than a column
  std::vector<FlowLine> again{}; // above it, where it comes first on a later page: "Knitting, continued"
};

// Where the columns stand; sizes in mm.
struct FlowFrame {
  double left = 0;
  double top = 0; // of the first page; later ones begin at `page_top`
  double page_top = 0;
  double bottom = 0;
  double width = 0; // of all columns together
  double gap = 0;   // between columns
  int columns = 1;
  [[nodiscard]] double column_width() const { return (width - gap * (columns - 1)) / columns; }
};

// Sets the blocks; `shapes_of_next_page` begins a new page and gives its shapes. `head` stands on top of every column.
// Returns where the next thing may begin on the last page.
double set_blocks(const std::vector<FlowBlock>& blocks, const FlowBlock& head, const FlowFrame& frame,
                  std::vector<Shape>* first_page, const std::function<std::vector<Shape>*()>& next_page);

// Of the blocks in one column, as if there were room for all.
[[nodiscard]] double height_of(const std::vector<FlowBlock>& blocks);

// A paragraph of that width: lines at `indent`, with what stands before the first one (a number, a dot).
struct Paragraph {
  double type = 3.35; // mm
  bool bold = false;
  double indent = 0;
  double before = 0;
  double leading = 4.6; // from line to line
  double base = 2.9;    // from a line's upper edge to its base line, whatever the type: so that columns align
};
[[nodiscard]] FlowBlock paragraph(const std::string& text, double width, const Paragraph& how,
                                  std::vector<Shape> before_first_line = {});

// The shape, moved.
[[nodiscard]] Shape moved(Shape shape, double x, double y);

} // namespace punchwright
