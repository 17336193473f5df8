// The drawing as a chart in one picture, for a pattern leaflet of one's own: title, chart with grid and numbers,
// legend.
#include "sheets/chart_words.hpp"
#include "sheets/drawn_chart.hpp"
#include "sheets/exports.hpp"
#include "sheets/output_names.hpp"
#include "sheets/pages.hpp"
#include "sheets/shapes.hpp"
#include "sheets/sheet_words.hpp"
#include "sheets/writers.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <utility>

namespace punchwright {
namespace {

constexpr double margin = 6.0; // mm
constexpr double title_type = 4.6;
constexpr double body_type = 3.0;
constexpr double line_step = 5.0;
constexpr double legend_cell = 4.0;
constexpr double legend_step = 6.0;
constexpr double usual_cell = 5.0; // mm: every column has its number
constexpr double least_cell = 2.0;
constexpr double most_across = 600.0; // mm of cells, before they become smaller
constexpr double most_pixels = 60.0e6;

// All of the drawing in one window, with cells as large as it leaves room for.
ChartWindow whole_window(const DrawnChart& chart, const Document& document) {
  ChartWindow window{0, document.grid.width(), 0, document.grid.height(), usual_cell};
  const double high_by_wide = chart.cell_height(1.0);
  const double largest = std::max(static_cast<double>(window.columns), window.rows * high_by_wide);
  window.cell_width = std::clamp(most_across / largest, least_cell, usual_cell);
  return window;
}

struct LegendEntry {
  char yarn = 'A';
  bool contrast = false;
};

std::vector<LegendEntry> legend_of(const Document& document, const DrawnChart& chart) {
  std::vector<LegendEntry> entries;
  for (const Band& band : document.bands) {
    if (std::ranges::find(entries, band.main, &LegendEntry::yarn) == entries.end()) {
      entries.push_back({band.main, false});
    }
  }
  for (const char yarn : chart.contrasts()) {
    entries.push_back({yarn, true});
  }
  return entries;
}

std::string words_of(const Document& document, const LegendEntry& entry) {
  const Yarn& yarn = yarn_of(document, entry.yarn);
  const std::string name = yarn.name.empty() ? std::string(1, yarn.key) : one_line(yarn.name);
  return entry.contrast ? said("contrast: {}", name) : said("main: {}", name);
}

std::vector<std::string> words_above(const Document& document) {
  return {said("{} stitches × {} rows, repeated side by side.", document.grid.width(), document.grid.height()),
          said("Gauge over 10 cm: {} stitches, {} rows.", with_decimal_sign(fmt::format("{}", document.gauge.stitches)),
               with_decimal_sign(fmt::format("{}", document.gauge.rows))),
          tr("The knit side; row 1 is knitted first.")};
}

// The sentences in as few lines as the width has room for.
std::vector<std::string> in_lines(const std::vector<std::string>& sentences, double width) {
  std::vector<std::string> lines;
  for (const std::string& sentence : sentences) {
    const std::string longer = lines.empty() ? sentence : lines.back() + "  " + sentence;
    if (!lines.empty() && width_of(longer, body_type, false) <= width) {
      lines.back() = longer;
    } else {
      lines.push_back(sentence);
    }
  }
  return lines;
}

Sheet chart_in_one(const Document& document) {
  const DrawnChart chart(document);
  const ChartWindow window = whole_window(chart, document);
  std::vector<std::string> sentences = words_above(document);
  double width = chart.width_of(window);
  for (const std::string& sentence : sentences) { // a narrow drawing's words are wider than it
    width = std::max(width, width_of(sentence, body_type, false));
  }
  Sheet sheet;
  sheet.title = document.title.empty() ? tr("Pattern chart") : one_line(document.title);
  std::vector<Shape> words;
  double y = margin;
  if (!document.title.empty()) {
    words.emplace_back(text_shape({margin, y + title_type}, fitting_text(sheet.title, title_type, true, width),
                                  title_type, Anchor::start, true));
    y += title_type + 3.0;
  }
  for (const std::string& line : in_lines(sentences, width)) {
    words.emplace_back(text_shape({margin, y + body_type}, line, body_type));
    y += line_step;
  }
  y += 2.0;
  std::vector<Shape> cells;
  chart.draw(cells, {margin, y}, window);
  y += chart.height_of(window) + 3.0;
  std::vector<Shape> legend;
  for (const LegendEntry& entry : legend_of(document, chart)) {
    chart.draw_cell(legend, {margin, y}, legend_cell, legend_cell, entry.yarn, entry.contrast);
    legend.emplace_back(text_shape({margin + legend_cell + 2.0, y + 3.1},
                                   fitting_text(words_of(document, entry), body_type, false, width - legend_cell - 2.0),
                                   body_type));
    y += legend_step;
  }
  sheet.groups = {{"words", std::move(words)}, {"chart", std::move(cells)}, {"legend", std::move(legend)}};
  sheet.width = width + 2 * margin;
  sheet.height = y + margin - (legend_step - legend_cell);
  return sheet;
}

// As many as leave the picture small enough to be sent and shown.
int pixels_per_mm_for(const Sheet& sheet) {
  constexpr std::array choices = {10, 8, 6, 5};
  for (const int choice : choices) {
    if (sheet.width * choice * sheet.height * choice <= most_pixels) {
      return choice;
    }
  }
  return 4;
}

Result<OutputFile> picture_of(const Sheet& sheet, const std::string& path) {
  if (extension_in(path) == ".svg") {
    return OutputFile{path, svg_of(sheet)};
  }
  auto png = png_of(sheet, pixels_per_mm_for(sheet));
  return png ? Result<OutputFile>(OutputFile{path, std::move(png).value()}) : Result<OutputFile>(png.error());
}

} // namespace

Result<std::vector<Sheet>> pages_of_pattern(const Document& document) {
  return std::vector<Sheet>{chart_in_one(document)};
}

Result<std::vector<OutputFile>> pattern_files(const Document& document, const std::string& path) {
  if (const std::string extension = extension_in(path); extension != ".png" && extension != ".svg") {
    return Error{path, 0, 0,
                 extension.empty() ? tr("the pattern chart's file name has no extension")
                                   : said("a pattern chart can't be written as '{}'", extension),
                 tr("allowed: .png, .svg")};
  }
  auto picture = picture_of(chart_in_one(document), path);
  if (!picture) {
    Error error = picture.error();
    error.file = path;
    return error;
  }
  return std::vector<OutputFile>{std::move(picture).value()};
}

} // namespace punchwright
