// Where things stand on the needle chart's pages: columns, type sizes and heights in millimetres.
// One place, so that heads, rows and the page breaks agree.
#pragma once

#include "sheets/chart_rows.hpp"
#include "sheets/drawing.hpp"

#include <map>
#include <string>
#include <vector>

namespace punchwright {

// Type sizes. Read from an arm's length, 600 to 700 mm, a capital should be at least 16 minutes of arc high (ISO
// 9241-303, from memory): 700 mm × tan(16′) = 3.3 mm. DejaVu Sans has capitals and figures of 0.729 em: 4.5 mm of type.
constexpr double needles_type = 4.5;
constexpr double number_type = 5.5;
constexpr double names_type = 4.0;
constexpr double head_type = 3.4; // read with the sheet in the hand
constexpr double title_type = 6.0;

//     left                                                                  right
//     | [ ] | 12      | ← ■ Oat      |   36 | strip of the bed                  |
//     |     | card 12 |   ■ Ink      |      | L36–L34  L30  …                   |
//       tick  row       yarns          count  needles
class ChartPage {
public:
  explicit ChartPage(const ChartRows& chart);

  double width = 210; // mm
  double height = 297;
  double left = 10; // printers keep up to 7 mm free at the sides, by their manuals
  double right = 200;
  double top = 10;
  double bottom = 285;
  double row_end = 0; // right edge of the row numbers
  double yarns = 0;
  double names_end = 0; // right edge of the yarn names
  double count_end = 0; // right edge of the counts
  double needles = 0;
  double needle_width = 1; // of one cell of the strip

  // Where a needle's cell begins; `stitch` counts from the piece's leftmost needle.
  [[nodiscard]] double needle_x(int stitch) const { return needles + needle_width * stitch; }
};

constexpr double strip_height = 4.2;
constexpr double tick_height = 1.6; // above the strip, for every tenth needle; half of it for every fifth
constexpr double strip_gap = 1.4;   // below the strip
constexpr double row_padding = 1.6; // above and below
constexpr double needles_line = 6.0;
constexpr double names_line = 5.4;
constexpr double done_padding = 1.0; // above and below

// The shapes of one row, of a line between rows, and of a page's head and foot; `y` is their upper edge.
class ChartPainter {
public:
  ChartPainter(const ChartRows& chart, const ChartPage& page);

  [[nodiscard]] double setup_height() const;
  [[nodiscard]] double row_height(const RowToKnit& row);
  [[nodiscard]] double head_height() const;
  // Of what is done between two rows, in as many lines as it takes; 0 for no words.
  [[nodiscard]] double done_height(const std::string& words) const;

  void head(std::vector<Shape>& shapes, int page_number, int pages) const;
  void setup(std::vector<Shape>& shapes, double y, int number) const;
  void row(std::vector<Shape>& shapes, double y, int number);
  void done(std::vector<Shape>& shapes, double y, const std::string& words) const;

private:
  // What stands below the strip, in lines of the column's width.
  [[nodiscard]] const std::vector<std::string>& needle_lines(const RowToKnit& row);
  [[nodiscard]] std::vector<std::string> broken_runs(const ChartNeedles& needles) const;
  [[nodiscard]] std::vector<std::string> remark_lines(const RowToKnit& row) const;
  [[nodiscard]] std::vector<std::string> done_lines(const std::string& words) const;
  [[nodiscard]] std::vector<std::string> broken(const std::string& text, double type) const;
  void tick_box(std::vector<Shape>& shapes, double y) const;
  void number(std::vector<Shape>& shapes, double y, const std::string& words, int card_row) const;
  void passes(std::vector<Shape>& shapes, double y, const std::vector<Pass>& passes) const;
  void strip(std::vector<Shape>& shapes, double y, const ChartNeedles& needles) const;
  void ruler(std::vector<Shape>& shapes, double y) const;
  void legend(std::vector<Shape>& shapes, double y) const;
  void frame(std::vector<Shape>& shapes, double y, double height, bool inserted) const;
  [[nodiscard]] double passes_height(const std::vector<Pass>& passes) const;

  const ChartRows& chart_;
  const ChartPage& page_;
  std::vector<std::string> mirror_lines_;
  std::map<const ChartNeedles*, std::vector<std::string>> lines_;
};

} // namespace punchwright
