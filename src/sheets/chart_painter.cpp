// The shapes of the needle chart: rows with their strips, lines between them, heads and feet.
// Dark on white and without yarn colours in the strip, so that it reads on any printer and with any pair of yarns.
#include "sheets/chart_pages.hpp"
#include "sheets/chart_words.hpp"
#include "sheets/shapes.hpp"
#include "sheets/text_metrics.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright {

namespace {

constexpr double care_type = 3.0;
constexpr double legend_cell = 3.6;
constexpr double least_names_type = 3.0; // of a long yarn name, before it is cut

constexpr double swatch_size = 3.6;
constexpr double box_size = 5.0;
// Base line of a line of type below its upper edge, in em: ascender of DejaVu Sans without its leading.
constexpr double base_line = 0.80;

void text(std::vector<Shape>& shapes, double x, double y, const std::string& words, double type, bool bold = false,
          Anchor anchor = Anchor::start) {
  if (!words.empty()) {
    shapes.push_back(TextShape{Point{x, y + type * base_line}, words, type, anchor, bold, 0, ink::black});
  }
}

void box(std::vector<Shape>& shapes, double x, double y, double width, double height, const Paint& paint) {
  shapes.push_back(RectangleShape{Point{x, y}, width, height, paint, {}});
}

} // namespace

ChartPainter::ChartPainter(const ChartRows& chart, const ChartPage& page)
    : chart_(chart), page_(page),
      mirror_lines_(lines_of(fmt::format("{} {}", mirror_words(), selection_words(chart.profile())), head_type, false,
                             page.right - page.left)) {}

std::vector<std::string> ChartPainter::broken(const std::string& words, double type) const {
  return lines_of(words, type, false, page_.right - page_.needles);
}

// Runs stand two spaces apart, so that the eye finds the next one.
std::vector<std::string> ChartPainter::broken_runs(const ChartNeedles& needles) const {
  std::vector<std::string> lines{needles.lists_those_that_stay ? tr("all but") : ""};
  double used = width_of(lines.back(), needles_type, false);
  const double gap = width_of("  ", needles_type, false);
  for (const NeedleRun& run : needles.listed) {
    const std::string words = text_of(std::vector<NeedleRun>{run});
    const double width = width_of(words, needles_type, false);
    if (used > 0 && used + gap + width > page_.right - page_.needles) {
      lines.emplace_back();
      used = 0;
    }
    lines.back() += (used > 0 ? "  " : "") + words;
    used += (used > 0 ? gap : 0) + width;
  }
  return lines;
}

// None where no needle is listed: then "none" or "all" stands before the remark.
const std::vector<std::string>& ChartPainter::needle_lines(const RowToKnit& row) {
  const ChartNeedles& needles = chart_.needles_of(row);
  std::vector<std::string>& lines = lines_[&needles];
  if (lines.empty()) {
    lines = needles.listed.empty() ? std::vector<std::string>{} : broken_runs(needles);
  }
  return lines;
}

double ChartPainter::passes_height(const std::vector<Pass>& passes) const {
  int names = 0;
  for (const Pass& pass : passes) {
    names += std::max(1, (pass.main != 0 ? 1 : 0) + (pass.contrast != 0 ? 1 : 0));
  }
  return names * names_line;
}

double ChartPainter::setup_height() const {
  return names_line + 2 * row_padding;
}

std::vector<std::string> ChartPainter::remark_lines(const RowToKnit& row) const {
  std::string words = remark_of(row, chart_);
  if (chart_.needles_of(row).listed.empty()) {
    words = chart_.list_of(row) + (words.empty() ? "" : ": ") + words;
  }
  return broken(words, names_type);
}

double ChartPainter::row_height(const RowToKnit& row) {
  const double remarks = static_cast<double>(remark_lines(row).size()) * names_line;
  const double needles =
      tick_height + strip_height + strip_gap + static_cast<double>(needle_lines(row).size()) * needles_line + remarks;
  const double number = number_type * 1.2 + (row.card_row > 0 ? names_line : 0);
  return std::max({needles, number, passes_height(passes_of(row))}) + 2 * row_padding;
}

void ChartPainter::frame(std::vector<Shape>& shapes, double y, double height, bool inserted) const {
  if (inserted) {
    box(shapes, page_.left, y, page_.right - page_.left, height, fill_paint(ink::faint));
  }
  shapes.push_back(
      line_shape(Point{page_.left, y + height}, Point{page_.right, y + height}, line_paint(ink::middle, 0.2)));
}

void ChartPainter::tick_box(std::vector<Shape>& shapes, double y) const {
  box(shapes, page_.left + 0.6, y + 0.2, box_size, box_size, Paint{ink::black, 0.35, Colour{255, 255, 255}, false});
}

void ChartPainter::number(std::vector<Shape>& shapes, double y, const std::string& words, int card_row) const {
  text(shapes, page_.row_end, y, words, number_type, true, Anchor::end);
  if (card_row > 0) {
    text(shapes, page_.row_end, y + number_type * 1.2, said("card {}", card_row), names_type, false, Anchor::end);
  }
}

// An arrow for each pass, and beside it its yarns, one below the other.
void ChartPainter::passes(std::vector<Shape>& shapes, double y, const std::vector<Pass>& passes) const {
  const double name_x = page_.yarns + 12.0;
  const double room = page_.names_end - name_x;
  for (const Pass& pass : passes) {
    text(shapes, page_.yarns, y, std::string(arrow_of(pass.travel)), number_type, true);
    const double start = y;
    for (const char key : {pass.main, pass.contrast}) {
      if (key != 0) {
        box(shapes, page_.yarns + 7.0, y + 0.3, swatch_size, swatch_size,
            Paint{ink::black, 0.25, yarn_of(chart_.document(), key).colour, false});
        const std::string& name = chart_.yarn_name(key);
        const double type =
            std::clamp(names_type * room / width_of(name, names_type, false), least_names_type, names_type);
        text(shapes, name_x, y, fitting_text(name, type, false, room), type);
        y += names_line;
      }
    }
    y = std::max(y, start + names_line);
  }
}

// The cells' borders are one line that goes up and down along the strip: a shape each would be thousands a page.
//
//     +--+  +--+  +
//     |  |  |  |  |
//     +  +--+  +--+      and a frame around
void ChartPainter::strip(std::vector<Shape>& shapes, double y, const ChartNeedles& needles) const {
  const int first = first_needle_of(chart_.document()).position;
  const double upper = y + tick_height;
  const double lower = upper + strip_height;
  for (const NeedleRun& run : needles.runs) {
    box(shapes, page_.needle_x(run.first.position - first), upper, page_.needle_width * run.count(), strip_height,
        fill_paint(ink::black));
  }
  for (const Needle needle : needles.caught) { // a white square with a black edge shows on either colour
    const double size = std::min(page_.needle_width, strip_height) * 0.55;
    box(shapes, page_.needle_x(needle.position - first) + (page_.needle_width - size) / 2,
        upper + (strip_height - size) / 2, size, size, Paint{ink::black, size / 4, Colour{255, 255, 255}, false});
  }
  PolylineShape borders{{}, false, line_paint(ink::middle, std::min(0.15, page_.needle_width / 6)), {}};
  for (int edge = 0; edge <= chart_.stitches(); ++edge) {
    const double x = page_.needle_x(edge);
    borders.points.push_back(Point{x, edge % 2 == 0 ? lower : upper});
    borders.points.push_back(Point{x, edge % 2 == 0 ? upper : lower});
  }
  shapes.push_back(std::move(borders));
  box(shapes, page_.needles, upper, page_.needle_width * chart_.stitches(), strip_height, line_paint(ink::black, 0.2));
  for (int stitch = 0; stitch < chart_.stitches(); ++stitch) {
    const int number = needle_number(Needle{first + stitch});
    if (number % 5 == 0) {
      const double x = page_.needle_x(stitch) + page_.needle_width / 2;
      const double tick = number % 10 == 0 ? tick_height : tick_height / 2;
      shapes.push_back(
          line_shape(Point{x, upper - tick}, Point{x, upper}, line_paint(ink::black, number % 10 == 0 ? 0.3 : 0.2)));
    }
  }
  if (first < 0 && first + chart_.stitches() > 0) {
    const double x = page_.needle_x(-first);
    shapes.push_back(line_shape(Point{x, y - 0.6}, Point{x, lower + 0.6}, line_paint(ink::black, 0.6)));
  }
}

void ChartPainter::setup(std::vector<Shape>& shapes, double y, int setup_number) const {
  const SetupRow& row = chart_.setup()[static_cast<std::size_t>(setup_number - 1)];
  frame(shapes, y, setup_height(), true);
  y += row_padding;
  tick_box(shapes, y);
  number(shapes, y, said("S{}", setup_number), 0);
  passes(shapes, y, {Pass{row.travel, row.main.value_or('\0'), 0}});
  const std::string words = said("Setting up: {}", setup_words(row));
  text(shapes, page_.needles, y, fitting_text(words, names_type, false, page_.right - page_.needles), names_type);
}

void ChartPainter::row(std::vector<Shape>& shapes, double y, int row_number) {
  const RowToKnit& row = chart_.rows()[static_cast<std::size_t>(row_number - 1)];
  const ChartNeedles& needles = chart_.needles_of(row);
  frame(shapes, y, row_height(row), row.why != Why::drawn);
  y += row_padding;
  tick_box(shapes, y);
  number(shapes, y, std::to_string(row_number), row.card_row);
  passes(shapes, y, passes_of(row));
  text(shapes, page_.count_end, y, std::to_string(needles.count), needles_type, true, Anchor::end);
  strip(shapes, y, needles);
  y += tick_height + strip_height + strip_gap;
  for (const std::string& words : needle_lines(row)) {
    text(shapes, page_.needles, y, words, needles_type);
    y += needles_line;
  }
  for (const std::string& words : remark_lines(row)) {
    text(shapes, page_.needles, y, words, names_type);
    y += names_line;
  }
}

std::vector<std::string> ChartPainter::done_lines(const std::string& words) const {
  return lines_of(one_line(words), names_type, true, page_.right - page_.left - 6.0);
}

double ChartPainter::done_height(const std::string& words) const {
  return words.empty() ? 0 : static_cast<double>(done_lines(words).size()) * names_line + 2 * done_padding;
}

void ChartPainter::done(std::vector<Shape>& shapes, double y, const std::string& words) const {
  const double height = done_height(words);
  box(shapes, page_.left, y, page_.right - page_.left, height, fill_paint(ink::faint));
  box(shapes, page_.left, y, 1.6, height, fill_paint(ink::black));
  y += done_padding + 0.6;
  for (const std::string& line : done_lines(words)) {
    text(shapes, page_.left + 4.0, y, line, names_type, true);
    y += names_line;
  }
}

// Title and page number, machine, piece, which way round, legend, heads of the columns.
double ChartPainter::head_height() const {
  return title_type * 1.4 + 2 * head_type * 1.4 + static_cast<double>(mirror_lines_.size()) * head_type * 1.4 +
         head_type * 1.7 + head_type * 1.4 + 3.0;
}

void ChartPainter::legend(std::vector<Shape>& shapes, double y) const {
  double x = page_.left;
  const auto words = [&](const std::string& what) {
    text(shapes, x, y, what, head_type);
    x += width_of(what, head_type, false) + 5.0;
  };
  box(shapes, x, y, legend_cell, legend_cell, Paint{ink::black, 0.2, ink::black, false});
  x += legend_cell + 1.5;
  words(tr("comes forward, knits contrast"));
  box(shapes, x, y, legend_cell, legend_cell, line_paint(ink::black, 0.2));
  x += legend_cell + 1.5;
  words(tr("stays back"));
  shapes.push_back(line_shape(Point{x, y - 0.4}, Point{x, y + legend_cell + 0.4}, line_paint(ink::black, 0.6)));
  x += 1.5;
  words(tr("middle of the bed"));
  if (chart_.document().marks.caught.width() == 0) {
    words(tr("ticks: every 5 and 10 needles"));
    return;
  }
  // There is no room for both, and what is to be done goes before what is seen.
  const double size = legend_cell * 0.55;
  box(shapes, x + (legend_cell - size) / 2, y + (legend_cell - size) / 2, size, size,
      Paint{ink::black, size / 4, Colour{255, 255, 255}, false});
  x += legend_cell + 1.5;
  words(tr("a float is lifted onto it"));
}

void ChartPainter::ruler(std::vector<Shape>& shapes, double y) const {
  const int first = first_needle_of(chart_.document()).position;
  const double room_for_name = width_of("L100", head_type, false) + 1.0;
  int step = 10; // names of narrow needles mustn't run into each other
  for (const int wider : {20, 50, 100}) {
    step = step * page_.needle_width < room_for_name ? wider : step;
  }
  for (int stitch = 0; stitch < chart_.stitches(); ++stitch) {
    const Needle needle{first + stitch};
    if (needle_number(needle) % step == 0) {
      const double x = page_.needle_x(stitch) + page_.needle_width / 2;
      text(shapes, x, y, name_of(needle), head_type, false, Anchor::middle);
    }
  }
}

void ChartPainter::head(std::vector<Shape>& shapes, int page_number, int pages) const {
  const double step = head_type * 1.4;
  const double room = page_.right - page_.left;
  const std::string page_words = said("page {} of {}", page_number, pages);
  double y = page_.top;
  text(shapes, page_.right, y + 1.5, page_words, names_type, false, Anchor::end);
  const double title_room = room - width_of(page_words, names_type, false) - 5.0;
  shapes.push_back(title_shape(Point{page_.left, y + title_type * base_line}, title_of(chart_), title_type,
                               title_type * 0.55, title_room));
  y += title_type * 1.4;
  text(shapes, page_.left, y, fitting_text(machine_of(chart_), head_type, false, room), head_type);
  y += step;
  text(shapes, page_.left, y, piece_words(chart_), head_type, true);
  y += step;
  for (const std::string& words : mirror_lines_) {
    text(shapes, page_.left, y, words, head_type);
    y += step;
  }
  legend(shapes, y + 0.4);
  y += head_type * 1.7;
  text(shapes, page_.row_end, y, tr("row"), head_type, true, Anchor::end);
  text(shapes, page_.yarns, y, tr("carriage, yarns"), head_type, true);
  text(shapes, page_.count_end, y, tr("count"), head_type, true, Anchor::end);
  ruler(shapes, y);
  y += step + 0.8;
  shapes.push_back(line_shape(Point{page_.left, y}, Point{page_.right, y}, line_paint(ink::black, 0.5)));
  y = page_.bottom + 1.5;
  for (const std::string& words : lines_of(std::string(care_words()), care_type, false, room)) {
    text(shapes, page_.left, y, words, care_type);
    y += care_type * 1.3;
  }
}

} // namespace punchwright
