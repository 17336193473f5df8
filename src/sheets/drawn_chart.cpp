// Cells by runs of one yarn, symbols one by one, and lines over all.
#include "sheets/drawn_chart.hpp"

#include "rules/findings.hpp"
#include "sheets/chart_words.hpp"
#include "sheets/shapes.hpp"
#include "sheets/text_metrics.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright {
namespace {

constexpr double number_type = 2.6;
constexpr double least_cell = 1.8;
constexpr double largest_cell = 10.0;
constexpr double uncut_cell = 4.5;   // rather so small than cut
constexpr double before_bands = 3.5; // the bracket
constexpr double widest_bands = 34.0;
constexpr Colour white{255, 255, 255};

void add_line(std::vector<Shape>& shapes, Point from, Point to, Colour colour, double width) {
  shapes.emplace_back(line_shape(from, to, line_paint(colour, width)));
}

// "Oat", "with Ink".
std::vector<std::string> words_of_band(const Document& document, const Band& band) {
  std::vector<std::string> lines{one_line(yarn_of(document, band.main).name)};
  if (band.contrast) {
    lines.push_back(said("with {}", one_line(yarn_of(document, *band.contrast).name)));
  }
  return lines;
}

std::string in_one_line(const std::vector<std::string>& lines) {
  return lines.size() > 1 ? lines[0] + " " + lines[1] : lines[0];
}

void add_polygon(std::vector<Shape>& shapes, std::vector<Point> points, Colour colour) {
  shapes.emplace_back(PolylineShape{std::move(points), true, fill_paint(colour), {}});
}

} // namespace

DrawnChart::DrawnChart(const Document& document) : document_(document) {
  for (const Band& band : document.bands) {
    if (band.contrast && std::ranges::find(contrasts_, *band.contrast) == contrasts_.end()) {
      contrasts_.push_back(*band.contrast);
    }
  }
  if (document.bands.size() < 2) {
    return; // the legend says it
  }
  constexpr int low_rows = 2; // so few have room for one line only
  for (const Band& band : document.bands) {
    std::vector<std::string> lines = words_of_band(document, band);
    if (band.rows <= low_rows) {
      lines = {in_one_line(lines)};
    }
    for (const std::string& words : lines) {
      bands_width_ = std::max(bands_width_, before_bands + punchwright::width_of(words, number_type, false));
    }
  }
  bands_width_ = std::min(bands_width_, widest_bands);
}

double DrawnChart::cell_height(double cell_width) const {
  return cell_width * document_.gauge.row_mm() / document_.gauge.stitch_mm();
}

double DrawnChart::width_of(const ChartWindow& window) const {
  return 2 * numbers_width + window.columns * window.cell_width + bands_width_;
}

double DrawnChart::height_of(const ChartWindow& window) const {
  return window.rows * cell_height(window.cell_width) + numbers_height;
}

void DrawnChart::draw(std::vector<Shape>& shapes, Point corner, const ChartWindow& window) const {
  const Point cells{corner.x + numbers_width, corner.y};
  draw_rows(shapes, cells, window);
  draw_grid(shapes, cells, window);
  draw_numbers(shapes, cells, window);
  if (bands_width_ > 0) {
    draw_bands(shapes, cells, window);
  }
}

void DrawnChart::draw_rows(std::vector<Shape>& shapes, Point corner, const ChartWindow& window) const {
  const double height = cell_height(window.cell_width);
  for (int row = window.first_row; row < window.first_row + window.rows; ++row) {
    const Band& band = document_.bands[band_index_at(document_, row)];
    const double y = corner.y + (window.first_row + window.rows - 1 - row) * height;
    const int end = window.first_column + window.columns;
    for (int first = window.first_column; first < end;) {
      const bool contrast = document_.grid.at(first, row);
      int last = first;
      while (last + 1 < end && document_.grid.at(last + 1, row) == contrast) {
        ++last;
      }
      const char yarn = contrast ? band.contrast.value_or(band.main) : band.main;
      RectangleShape cells;
      cells.corner = {corner.x + (first - window.first_column) * window.cell_width, y};
      cells.width = (last - first + 1) * window.cell_width;
      cells.height = height;
      cells.paint = fill_paint(yarn_of(document_, yarn).colour);
      shapes.emplace_back(cells);
      for (int column = first; contrast && column <= last; ++column) {
        draw_symbol(shapes, {corner.x + (column - window.first_column + 0.5) * window.cell_width, y + height / 2},
                    std::min(window.cell_width, height), yarn);
      }
      first = last + 1;
    }
  }
}

void DrawnChart::draw_cell(std::vector<Shape>& shapes, Point corner, double width, double height, char yarn,
                           bool contrast) const {
  RectangleShape cell;
  cell.corner = corner;
  cell.width = width;
  cell.height = height;
  cell.paint = Paint{ink::black, 0.2, yarn_of(document_, yarn).colour, false};
  shapes.emplace_back(cell);
  if (contrast) {
    draw_symbol(shapes, {corner.x + width / 2, corner.y + height / 2}, std::min(width, height), yarn);
  }
}

// One shape for each of the first yarns; for more than that their keys.
void DrawnChart::draw_symbol(std::vector<Shape>& shapes, Point centre, double size, char yarn) const {
  const Colour ground = yarn_of(document_, yarn).colour;
  const Colour colour = contrast_ratio(ground, white) >= contrast_ratio(ground, ink::black) ? white : ink::black;
  const double half = size * 0.24;
  const auto at = [&](double x, double y) { return Point{centre.x + x * half, centre.y + y * half}; };
  switch (std::ranges::find(contrasts_, yarn) - contrasts_.begin()) {
  case 0: shapes.emplace_back(CircleShape{centre, half, fill_paint(colour), {}}); break;
  case 1: add_polygon(shapes, {at(0, -1.3), at(1.3, 0), at(0, 1.3), at(-1.3, 0)}, colour); break;
  case 2: add_polygon(shapes, {at(0, -1.15), at(1.2, 0.95), at(-1.2, 0.95)}, colour); break;
  case 3:
    add_line(shapes, at(-1, -1), at(1, 1), colour, size * 0.13);
    add_line(shapes, at(-1, 1), at(1, -1), colour, size * 0.13);
    break;
  case 4: shapes.emplace_back(CircleShape{centre, half, line_paint(colour, size * 0.12), {}}); break;
  case 5: add_line(shapes, at(-1.4, 0), at(1.4, 0), colour, size * 0.2); break;
  case 6:
    add_line(shapes, at(-1.2, 0), at(1.2, 0), colour, size * 0.13);
    add_line(shapes, at(0, -1.2), at(0, 1.2), colour, size * 0.13);
    break;
  default:
    shapes.emplace_back(text_shape({centre.x, centre.y + size * 0.26}, std::string(1, yarn), size * 0.72,
                                   Anchor::middle, true, colour));
  }
}

// Every cell, stronger every fifth and strongest every tenth, counted from row 1 and column 1.
void DrawnChart::draw_grid(std::vector<Shape>& shapes, Point corner, const ChartWindow& window) const {
  const double height = cell_height(window.cell_width);
  const double right = corner.x + window.columns * window.cell_width;
  const double bottom = corner.y + window.rows * height;
  const auto weight = [](int line) { return line % 10 == 0 ? 0.35 : line % 5 == 0 ? 0.2 : 0.08; };
  for (int line = 0; line <= window.columns; ++line) {
    const double x = corner.x + line * window.cell_width;
    add_line(shapes, {x, corner.y}, {x, bottom}, ink::dark, weight(window.first_column + line));
  }
  for (int line = 0; line <= window.rows; ++line) {
    const double y = bottom - line * height;
    add_line(shapes, {corner.x, y}, {right, y}, ink::dark, weight(window.first_row + line));
  }
  RectangleShape frame;
  frame.corner = corner;
  frame.width = right - corner.x;
  frame.height = bottom - corner.y;
  frame.paint = line_paint(ink::black, 0.4);
  shapes.emplace_back(frame);
}

void DrawnChart::draw_numbers(std::vector<Shape>& shapes, Point corner, const ChartWindow& window) const {
  const double height = cell_height(window.cell_width);
  const double bottom = corner.y + window.rows * height;
  const int every_row = height >= number_type * 1.1 ? 1 : 5;
  const auto shown = [](int number, int every) { return number == 1 || number % every == 0; };
  for (int row = window.first_row; row < window.first_row + window.rows; ++row) {
    if (!shown(row + 1, every_row)) {
      continue;
    }
    const double y = bottom - (row - window.first_row + 0.5) * height + number_type * 0.36;
    const std::string number = std::to_string(row + 1);
    const bool bold = (row + 1) % 5 == 0;
    shapes.emplace_back(text_shape({corner.x - 1.2, y}, number, number_type, Anchor::end, bold));
    shapes.emplace_back(
        text_shape({corner.x + window.columns * window.cell_width + 1.2, y}, number, number_type, Anchor::start, bold));
  }
  const int every_column = window.cell_width >= 5.0 ? 1 : 5;
  for (int column = window.first_column; column < window.first_column + window.columns; ++column) {
    if (shown(column + 1, every_column)) {
      shapes.emplace_back(
          text_shape({corner.x + (column - window.first_column + 0.5) * window.cell_width, bottom + number_type * 1.25},
                     std::to_string(column + 1), number_type, Anchor::middle, (column + 1) % 5 == 0));
    }
  }
}

// A bracket beside each band with its yarns.
void DrawnChart::draw_bands(std::vector<Shape>& shapes, Point corner, const ChartWindow& window) const {
  const double height = cell_height(window.cell_width);
  const double bottom = corner.y + window.rows * height;
  const double x = corner.x + window.columns * window.cell_width + numbers_width;
  const double room = bands_width_ - before_bands + 0.01;
  int first = 0;
  for (const Band& band : document_.bands) {
    const int from = std::max(first, window.first_row);
    const int to = std::min(first + band.rows, window.first_row + window.rows);
    first += band.rows;
    if (from >= to) {
      continue;
    }
    const double lower = bottom - (from - window.first_row) * height - 0.4;
    const double upper = bottom - (to - window.first_row) * height + 0.4;
    shapes.emplace_back(PolylineShape{
        {{x, lower}, {x + 1.2, lower}, {x + 1.2, upper}, {x, upper}}, false, line_paint(ink::dark, 0.25), {}});
    std::vector<std::string> lines = words_of_band(document_, band);
    const double step = number_type * 1.3;
    if (lower - upper < step * static_cast<double>(lines.size())) {
      lines = {in_one_line(lines)};
    }
    if (lower - upper < number_type * 0.9) {
      continue; // too low for words: the legend and the needle list have them
    }
    double y = (lower + upper) / 2 - step * (static_cast<double>(lines.size()) - 1) / 2 + number_type * 0.36;
    for (const std::string& line : lines) {
      shapes.emplace_back(text_shape({x + 2.6, y}, fitting_text(line, number_type, false, room), number_type));
      y += step;
    }
  }
}

std::vector<ChartWindow> chart_windows(const DrawnChart& chart, const Document& document, double width, double height) {
  const int columns = document.grid.width();
  const int rows = document.grid.height();
  const double room = width - 2 * DrawnChart::numbers_width - chart.bands_width();
  double cell = std::clamp(room / columns, least_cell, largest_cell);
  const double uncut = (height - DrawnChart::numbers_height) / (rows * chart.cell_height(1.0));
  if (uncut < cell && uncut >= std::min(cell, uncut_cell)) {
    cell = uncut;
  }
  const int columns_in_one = std::clamp(static_cast<int>(room / cell + 1e-9), 1, columns);
  // Parts begin behind a tenth row, so that the strong lines go on.
  int rows_in_one =
      std::max(1, static_cast<int>((height - DrawnChart::numbers_height) / chart.cell_height(cell) + 1e-9));
  rows_in_one = rows_in_one < rows && rows_in_one > 10 ? rows_in_one / 10 * 10 : rows_in_one;
  std::vector<ChartWindow> windows;
  for (int row = 0; row < rows; row += rows_in_one) {
    for (int column = 0; column < columns; column += columns_in_one) {
      windows.push_back(
          {column, std::min(columns_in_one, columns - column), row, std::min(rows_in_one, rows - row), cell});
    }
  }
  return windows;
}

} // namespace punchwright
