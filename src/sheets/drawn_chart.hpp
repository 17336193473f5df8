// The drawing as a chart: knit side, a grid with numbers, every contrast yarn with a symbol of its own, so that it
// reads without colours.
#pragma once

#include "design/document.hpp"
#include "rows/rows.hpp"
#include "sheets/drawing.hpp"

#include <string>
#include <vector>

namespace punchwright {

// A part of the drawing; rows and columns from 0.
struct ChartWindow {
  int first_column = 0;
  int columns = 0;
  int first_row = 0;
  int rows = 0;
  double cell_width = 5; // mm; the height follows from the gauge
};

class DrawnChart {
public:
  // The document is looked at as long as the chart lives.
  explicit DrawnChart(const Document& document);

  [[nodiscard]] double cell_height(double cell_width) const;
  // With the numbers beside and below it, and the yarns of the bands at its right, where there are several.
  [[nodiscard]] double width_of(const ChartWindow& window) const;
  [[nodiscard]] double height_of(const ChartWindow& window) const;
  void draw(std::vector<Shape>& shapes, Point corner, const ChartWindow& window) const;

  // The yarns that knit contrast, in the order of their bands from the bottom.
  [[nodiscard]] const std::vector<char>& contrasts() const { return contrasts_; }
  // The symbol of a contrast yarn in a cell of its colour, with the cell's border.
  void draw_cell(std::vector<Shape>& shapes, Point corner, double width, double height, char yarn, bool contrast) const;

  static constexpr double numbers_width = 8.0; // mm, on each side
  static constexpr double numbers_height = 5.0;
  [[nodiscard]] double bands_width() const { return bands_width_; } // mm, as wide as their words; 0: one band

private:
  void draw_rows(std::vector<Shape>& shapes, Point corner, const ChartWindow& window) const;
  void draw_grid(std::vector<Shape>& shapes, Point corner, const ChartWindow& window) const;
  void draw_numbers(std::vector<Shape>& shapes, Point corner, const ChartWindow& window) const;
  void draw_bands(std::vector<Shape>& shapes, Point corner, const ChartWindow& window) const;
  void draw_symbol(std::vector<Shape>& shapes, Point centre, double size, char yarn) const;

  const Document& document_;
  std::vector<char> contrasts_;
  double bands_width_ = 0;
};

// In how large windows the drawing is cut for a page's room, the lowest rows first, columns from the left; cells as
// large as the room allows, and somewhat smaller where the drawing isn't cut then.
[[nodiscard]] std::vector<ChartWindow> chart_windows(const DrawnChart& chart, const Document& document, double width,
                                                     double height);

} // namespace punchwright
