// The leaflet's first page, and the chart with its legend.
#include "design/lengths.hpp"
#include "plan/step_words.hpp"
#include "sheets/chart_words.hpp"
#include "sheets/cloth_drawing.hpp"
#include "sheets/drawn_chart.hpp"
#include "sheets/leaflet_parts.hpp"
#include "sheets/shapes.hpp"
#include "sheets/sheet_words.hpp"
#include "sheets/text_metrics.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright {

using namespace leaflet;

namespace {

constexpr double sample_height = 2.5 * line_step;
constexpr int sample_columns = 5;
constexpr int sample_rows = 4;
constexpr double tallest_picture = 92.0;
constexpr double least_picture = 50.0;

std::string both_units(double across_mm, double upwards_mm) {
  return fmt::format("{} ({})", unbroken(size_text(across_mm, upwards_mm, LengthUnit::centimetres)),
                     unbroken(size_text(across_mm, upwards_mm, LengthUnit::inches)));
}

// Drawn rows in which a yarn has that part, as "1–8, 12–15".
std::string rows_text(const Document& document, char yarn, bool contrast) {
  std::string text;
  int first = 1;
  int open = 0;
  const auto close = [&](int last) {
    if (open > 0) {
      text += (text.empty() ? "" : ", ") + (open == last ? std::to_string(open) : fmt::format("{}–{}", open, last));
      open = 0;
    }
  };
  for (const Band& band : document.bands) {
    const bool here = contrast ? band.contrast == yarn : band.main == yarn;
    if (here && open == 0) {
      open = first;
    } else if (!here) {
      close(first - 1);
    }
    first += band.rows;
  }
  close(first - 1);
  return text;
}

std::vector<const Yarn*> used_yarns(const Document& document) {
  std::vector<const Yarn*> yarns;
  for (const Yarn& yarn : document.yarns) {
    if (std::ranges::any_of(document.bands,
                            [&](const Band& band) { return band.main == yarn.key || band.contrast == yarn.key; })) {
      yarns.push_back(&yarn);
    }
  }
  return yarns;
}

// A knitted sample in print, the name, where it is knitted, and room for a strand.
FlowBlock yarn_block(const Document& document, const Yarn& yarn, double width) {
  FlowBlock block;
  block.whole = true;
  block.before = half_line;
  FlowLine line;
  line.height = sample_height;
  const double sample_width = 13.0;
  draw_sample(line.shapes, {0, 0}, sample_width / sample_columns, sample_height / sample_rows, sample_columns,
              sample_rows, yarn.colour);
  const double strand_width = 17.0;
  RectangleShape strand;
  strand.corner = {width - strand_width, 0};
  strand.width = strand_width;
  strand.height = sample_height;
  strand.paint = dashed_paint(ink::middle, 0.2);
  line.shapes.emplace_back(strand);
  line.shapes.emplace_back(text_shape({width - strand_width / 2, sample_height / 2 + 0.9}, tr("strand"), small_type,
                                      Anchor::middle, false, ink::dark));
  const double x = sample_width + 3.0;
  const double room = width - strand_width - 3.0 - x;
  line.shapes.emplace_back(text_shape({x, base_line},
                                      fitting_text(name_of_yarn(document, yarn.key), body_type, true, room), body_type,
                                      Anchor::start, true));
  double y = base_line + line_step;
  for (const bool contrast : {false, true}) {
    if (const std::string rows = rows_text(document, yarn.key, contrast); !rows.empty()) {
      line.shapes.emplace_back(
          text_shape({x, y},
                     fitting_text(contrast ? said("contrast, chart rows {}", rows) : said("main, chart rows {}", rows),
                                  small_type, false, room),
                     small_type));
      y += line_step;
    }
  }
  line.height = std::max(line.height, y - base_line);
  block.lines.push_back(std::move(line));
  return block;
}

std::string machine_words(const LeafletMachine& machine) {
  const std::string name = fmt::format("{}: {}.", name_of_kind(machine.profile), name_of_machine(machine.profile));
  if (!machine.misfits.empty()) {
    return fmt::format("{} {}", name, tr("The drawing doesn't fit it as it is; its part says why."));
  }
  return machine.own ? name : fmt::format("{} {}", name, tr("Yours may differ: compare bed and card."));
}

std::string cloth_words(const ClothDrawn& cloth, int columns, int rows) {
  if (cloth.columns == columns && cloth.rows == rows) {
    return tr("The knit side, the whole piece.");
  }
  return said("The knit side: {} of {} stitches, {} of {} rows, from the lower left corner.", cloth.columns, columns,
              cloth.rows, rows);
}

std::vector<FlowBlock> yarn_blocks(const Document& document, double width) {
  std::vector<FlowBlock> blocks{leaflet_subheading(tr("Yarns"), width)};
  for (const Yarn* yarn : used_yarns(document)) {
    blocks.push_back(yarn_block(document, *yarn, width));
  }
  return blocks;
}

// Gauge and size, machines, contents.
std::vector<FlowBlock> facts(const LeafletMachine& own, const LeafletMachine& other,
                             const std::vector<LeafletPart>& parts, double width) {
  const Document& document = own.document;
  const int columns = stitches_of(document);
  const int rows = static_cast<int>(own.rows.rows.size());
  std::vector<FlowBlock> blocks{leaflet_subheading(tr("Gauge and size"), width)};
  for (const std::string& text :
       {said("Gauge: {} stitches and {} rows to 10 cm, in the two-colour pattern.",
             with_decimal_sign(fmt::format("{:g}", document.gauge.stitches)),
             with_decimal_sign(fmt::format("{:g}", document.gauge.rows))),
        said("Repeat: {} wide, {} high.", stitches_counted(document.grid.width()),
             rows_counted(document.grid.height())),
        said("Piece: {} and {} to knit; {}.", stitches_counted(columns), rows_counted(rows),
             both_units(columns * document.gauge.stitch_mm(), rows * document.gauge.row_mm()))}) {
    blocks.push_back(leaflet_item(text, width));
  }
  blocks.push_back(leaflet_subheading(tr("Machines"), width));
  for (const LeafletMachine* machine : {&own, &other}) {
    blocks.push_back(leaflet_item(machine_words(*machine), width));
  }
  if (own.profile.pitch_mm != other.profile.pitch_mm) {
    blocks.push_back(leaflet_item(tr("Another bed gives another gauge: knit a swatch of the pattern first."), width));
  }
  blocks.push_back(leaflet_subheading(tr("In this leaflet"), width));
  for (const LeafletPart& part : parts) {
    blocks.push_back(leaflet_contents(part, width));
    blocks.back().before = part.name == parts.front().name ? half_line : 0;
  }
  return blocks;
}

} // namespace

FlowBlock leaflet_subheading(const std::string& text, double width) {
  FlowBlock block = paragraph(text, width, {subheading_type, true, 0, line_step});
  block.with_next = true;
  return block;
}

FlowBlock leaflet_item(const std::string& text, double width) {
  CircleShape dot;
  dot.centre = {0.9, base_line - 1.1};
  dot.radius = 0.5;
  dot.paint = fill_paint(ink::dark);
  return paragraph(text, width, {body_type, false, 3.2, half_line}, {dot});
}

FlowBlock leaflet_contents(const LeafletPart& part, double width) {
  FlowBlock block = paragraph(part.name, width - 8, {});
  block.lines.front().shapes.emplace_back(
      text_shape({width, base_line}, std::to_string(part.page), body_type, Anchor::end));
  return block;
}

FlowBlock leaflet_text(const std::string& text, double width) {
  return paragraph(text, width, {body_type, false, 0, half_line});
}

void add_cover(LeafletPages& pages, const LeafletMachine& own, const LeafletMachine& other,
               const std::vector<LeafletPart>& parts) {
  const Document& document = own.document;
  const std::string title = one_line(document.title);
  std::vector<FlowBlock> head{paragraph(title.empty() ? tr("A two-colour band") : title, pages.width(),
                                        {title_type, true, 0, 0, 3 * line_step, base_line + line_step})};
  head.push_back(
      paragraph(tr("A two-colour pattern for hand-operated knitting machines: with a punch card, or by hand."),
                pages.width(), {}));
  if (const std::string notes = one_line(document.notes); !notes.empty()) {
    head.push_back(paragraph(notes, pages.width(), {body_type, false, 0, half_line}));
  }
  pages.set(head, 1);
  pages.gap(half_line);
  const double width = pages.column_width(2);
  const std::vector<FlowBlock> left = yarn_blocks(document, width);
  const std::vector<FlowBlock> right = facts(own, other, parts, width);
  // As tall as it may be with all the rest on this page.
  const double rest = std::max(height_of(left), height_of(right)) + 3 * line_step;
  const double picture_room = std::clamp(pages.room() - rest, least_picture, tallest_picture);
  const ClothDrawn cloth = draw_cloth(pages.shapes(), {pages.left(), pages.y()}, pages.width(), picture_room, document,
                                      own.profile, own.rows);
  constexpr double below = 0.8;
  pages.gap(cloth.height + below);
  pages.set({paragraph(cloth_words(cloth, stitches_of(document), static_cast<int>(own.rows.rows.size())), pages.width(),
                       {small_type})},
            1);
  pages.gap(half_line);
  pages.set_beside(left, right);
}

void add_chart(LeafletPages& pages, const Document& document) {
  pages.begin_part(tr("Chart"));
  const DrawnChart chart(document);
  pages.set(
      {paragraph(tr("The knit side. Row 1 is knitted first and lies lowest; column 1 is the leftmost. Rows of one "
                    "colour that come between the drawn ones at a yarn change are in the steps."),
                 pages.width(), {})},
      1);
  pages.gap(half_line);
  // The legend: cells as they stand in the chart.
  double x = pages.left();
  const double cell = 4.8;
  const double above = 0.9; // so that the words stand on the grid and in the cell's middle
  const auto entry = [&](char yarn, bool contrast, const std::string& words) {
    const double width = cell + 2.0 + width_of(words, body_type, false) + 7.0;
    if (x + width - 7.0 > pages.left() + pages.width() && x > pages.left()) {
      x = pages.left();
      pages.gap(1.5 * line_step);
    }
    chart.draw_cell(pages.shapes(), {x, pages.y() - above}, cell, cell, yarn, contrast);
    pages.shapes().push_back(text_shape({x + cell + 2.0, pages.y() + base_line},
                                        fitting_text(words, body_type, false, pages.width() - cell - 2.0), body_type));
    x += width;
  };
  std::vector<char> mains;
  for (const Band& band : document.bands) {
    if (std::ranges::find(mains, band.main) == mains.end()) {
      mains.push_back(band.main);
      entry(band.main, false, said("main: {}", name_of_yarn(document, band.main)));
    }
  }
  for (const char yarn : chart.contrasts()) {
    entry(yarn, true, said("contrast: {}", name_of_yarn(document, yarn)));
  }
  pages.gap(2 * line_step);
  const auto windows = chart_windows(chart, document, pages.width(), pages.room());
  for (const ChartWindow& window : windows) {
    const double height = chart.height_of(window);
    if (height > pages.room()) {
      pages.new_page();
    }
    chart.draw(pages.shapes(), {pages.left(), pages.y()}, window);
    pages.gap(height + 6.0);
  }
}

} // namespace punchwright
