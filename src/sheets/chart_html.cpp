// The needle chart as one web page without scripts, for a tablet beside the machine and for the browser's printer.
// Well-formed XML too, so that other programs can read it; colours are the reader's own, light or dark.
#include "sheets/chart_forms.hpp"
#include "sheets/chart_words.hpp"
#include "sheets/html_nodes.hpp"
#include "words/words.hpp"

#include <fmt/format.h>
#include <sstream>

namespace punchwright {

namespace {

using Node = pugi::xml_node;

// One needle is 10 units wide in the strip's own coordinates; the browser stretches it to the column.
constexpr int needle_units = 10;
constexpr int tick_units = 6;   // above the needles
constexpr int strip_units = 24; // ticks and needles

// Only the system's own colour pairs carry text, which keeps its contrast in light and dark.
constexpr const char* style = R"(
:root { color-scheme: light dark; }
body { font: 1.05rem/1.35 "DejaVu Sans", Verdana, sans-serif; color: CanvasText; background: Canvas;
  margin: 1rem auto; max-width: 75rem; padding: 0 1rem; }
h1 { font-size: 1.5rem; margin: 0 0 .3rem; }
p { margin: .3rem 0; }
table { width: 100%; border-collapse: collapse; margin-top: .8rem; }
th, td { text-align: left; vertical-align: top; padding: .35rem .4rem; border-bottom: 1px solid rgba(128,128,128,.6); }
thead th { background: Canvas; vertical-align: bottom; border-bottom: 2px solid CanvasText; }
thead .again { font-weight: normal; border: 0; }
tr { break-inside: avoid; }
.done { border-left: .4rem solid CanvasText; background: rgba(128,128,128,.18); font-weight: bold; break-after: avoid; }
.inserted td, .inserted th { background: repeating-linear-gradient(45deg, rgba(128,128,128,.22) 0 .2rem, transparent .2rem .6rem); }
.row { font-size: 1.5rem; font-weight: bold; text-align: right; }
.count { font-size: 1.2rem; text-align: right; }
.needles { width: 60%; font-size: 1.2rem; word-spacing: .4em; }
.remark { font-style: italic; word-spacing: normal; }
.pass { white-space: nowrap; }
.arrow { font-size: 1.4rem; }
.swatch { width: 1em; height: 1em; vertical-align: -.12em; }
.swatch rect { stroke: currentColor; stroke-width: 2; }
.strip { display: block; width: 100%; height: 1.5rem; }
.ruler { display: block; width: 100%; height: 1.1em; overflow: visible; }
.ruler text { fill: currentColor; font-size: .8rem; font-weight: normal; }
.bed { stroke: currentColor; stroke-width: 1; fill: none; vector-effect: non-scaling-stroke; }
.middle { stroke-width: 3; }
.forward { fill: currentColor; }
input { width: 1.5rem; height: 1.5rem; margin: 0; }
@media print {
  @page { margin: 10mm 10mm 14mm; @bottom-right { content: PAGE-OF-PAGES; } }
  :root { color-scheme: light; }
  body { margin: 0; padding: 0; max-width: none; font-size: 4mm; }
  thead { display: table-header-group; }
  .row { font-size: 5mm; }
  .needles, .count { font-size: 4.5mm; }
  .swatch rect, .forward { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
}
)";

// The bed of the piece, drawn once and used by every row: cells, ticks above every fifth and tenth needle, the middle.
//
//        |         '    L10: a long tick, L5: a short one
//     +--+--+--+--+--+
//     |  |##|##|  |  |
//     +--+--+--+--+--+
void append_bed(Node body, const ChartRows& chart) {
  Node svg = with(with(body.append_child("svg"), "width", "0"), "height", "0");
  with(with(svg, "style", "position:absolute"), "aria-hidden", "true");
  Node bed = with(svg.append_child("defs").append_child("g"), "id", "bed");
  const int first = first_needle_of(chart.document()).position;
  const int width = chart.stitches() * needle_units;
  std::string cells = fmt::format("M0 {}H{}M0 {}H{}", tick_units, width, strip_units, width);
  for (int stitch = 0; stitch <= chart.stitches(); ++stitch) {
    cells += fmt::format("M{} {}V{}", stitch * needle_units, tick_units, strip_units);
    const int number = needle_number(Needle{first + stitch});
    if (stitch < chart.stitches() && number % 5 == 0) {
      cells += fmt::format("M{} {}V{}", stitch * needle_units + needle_units / 2, number % 10 == 0 ? 0 : tick_units / 2,
                           tick_units);
    }
  }
  with(classed(bed, "path", "bed"), "d", cells);
  if (first < 0 && first + chart.stitches() > 0) {
    with(classed(bed, "path", "bed middle"), "d", fmt::format("M{} 0V{}", -first * needle_units, strip_units));
  }
}

// Names of every tenth needle, above the strips.
void append_ruler(Node cell, const ChartRows& chart) {
  Node ruler = with(classed(cell, "svg", "ruler"), "aria-hidden", "true");
  const int first = first_needle_of(chart.document()).position;
  constexpr int room_for_names = 12; // names beside each other in the column
  const int step = chart.stitches() <= 10 * room_for_names ? 10 : chart.stitches() <= 20 * room_for_names ? 20 : 100;
  for (int stitch = 0; stitch < chart.stitches(); ++stitch) {
    const Needle needle{first + stitch};
    if (needle_number(needle) % step == 0) {
      Node name = element(ruler, "text", name_of(needle));
      with(name, "x", fmt::format("{:.2f}%", 100.0 * (stitch + 0.5) / chart.stitches()));
      with(with(name, "y", "1em"), "text-anchor", "middle");
    }
  }
}

void append_strip(Node cell, const ChartRows& chart, const ChartNeedles& needles) {
  Node strip = with(classed(cell, "svg", "strip"), "aria-hidden", "true");
  with(strip, "viewBox", fmt::format("0 0 {} {}", chart.stitches() * needle_units, strip_units));
  with(strip, "preserveAspectRatio", "none");
  const int first = first_needle_of(chart.document()).position;
  std::string path;
  for (const NeedleRun& run : needles.runs) {
    path += fmt::format("M{} {}h{}v{}h-{}z", (run.first.position - first) * needle_units, tick_units,
                        run.count() * needle_units, strip_units - tick_units, run.count() * needle_units);
  }
  if (!path.empty()) {
    with(classed(strip, "path", "forward"), "d", path);
  }
  with(strip.append_child("use"), "href", "#bed");
}

void append_yarn(Node parent, const ChartRows& chart, char key) {
  Node swatch = with(with(classed(parent, "svg", "swatch"), "viewBox", "0 0 16 16"), "aria-hidden", "true");
  Node square = with(with(swatch.append_child("rect"), "x", "1"), "y", "1");
  with(with(square, "width", "14"), "height", "14");
  with(square, "fill", hex_of(yarn_of(chart.document(), key).colour));
  parent.append_child(pugi::node_pcdata).set_value((" " + chart.yarn_name(key) + " ").c_str());
}

void append_pass(Node cell, const ChartRows& chart, const Pass& pass) {
  Node line = classed(cell, "div", "pass");
  with(classed(line, "span", "arrow", std::string(arrow_of(pass.travel))), "title",
       std::string(travel_words(pass.travel)));
  line.append_child(pugi::node_pcdata).set_value(" ");
  for (const char key : {pass.main, pass.contrast}) {
    if (key != 0) {
      append_yarn(line, chart, key);
    }
  }
}

void append_tick_box(Node row, const std::string& label) {
  Node box = with(row.append_child("td").append_child("input"), "type", "checkbox");
  with(box, "aria-label", label);
}

void append_heads(Node table, const ChartRows& chart) {
  Node heads = table.append_child("thead");
  Node again = classed(heads.append_child("tr"), "th", "again",
                       fmt::format("{} · {} · {}", title_of(chart), machine_of(chart), piece_words(chart)));
  with(again, "colspan", chart.profile().card ? "6" : "5");
  Node row = heads.append_child("tr");
  const auto head = [&row](const char* words) { return with(element(row, "th", words), "scope", "col"); };
  head(tr("done"));
  head(tr("row"));
  if (chart.profile().card) {
    head(tr("card row"));
  }
  head(tr("carriage, yarns"));
  head(tr("count"));
  append_ruler(head(tr("needles to bring forward, left to right")), chart);
}

void append_setup(Node body, const ChartRows& chart) {
  int number = 0;
  for (const SetupRow& setup : chart.setup()) {
    const std::string name = said("S{}", ++number);
    Node row = classed(body, "tr", "inserted");
    append_tick_box(row, said("setting up, {} done", name));
    with(classed(row, "th", "row", name), "scope", "row");
    if (chart.profile().card) {
      element(row, "td", "–");
    }
    append_pass(row.append_child("td"), chart, Pass{setup.travel, setup.main.value_or('\0'), 0});
    classed(row, "td", "count", "–");
    classed(row, "td", "needles", said("setting up: {}", setup_words(setup)));
  }
}

void append_done(Node body, const ChartRows& chart, const std::string& when, const std::string& done) {
  if (!done.empty()) {
    Node line = classed(body.append_child("tr"), "td", "done", fmt::format("{}: {}", when, one_line(done)));
    with(line, "colspan", chart.profile().card ? "6" : "5");
  }
}

void append_row(Node body, const ChartRows& chart, int number) {
  const RowToKnit& knit = chart.rows()[static_cast<std::size_t>(number - 1)];
  const ChartNeedles& needles = chart.needles_of(knit);
  Node row = classed(body, "tr", knit.why == Why::drawn ? nullptr : "inserted");
  append_tick_box(row, said("row {} done", number));
  with(classed(row, "th", "row", std::to_string(number)), "scope", "row");
  if (chart.profile().card) {
    classed(row, "td", "count", std::to_string(knit.card_row));
  }
  Node passes = row.append_child("td");
  for (const Pass& pass : passes_of(knit)) {
    append_pass(passes, chart, pass);
  }
  classed(row, "td", "count", std::to_string(needles.count));
  Node cell = classed(row, "td", "needles");
  append_strip(cell, chart, needles);
  element(cell, "div", chart.list_of(knit));
  if (const std::string remark = remark_of(knit, chart); !remark.empty()) {
    classed(cell, "div", "remark", remark);
  }
}

Node append_page(pugi::xml_document& page, const ChartRows& chart) {
  page.append_child(pugi::node_doctype).set_value("html");
  Node html = with(with(page.append_child("html"), "xmlns", "http://www.w3.org/1999/xhtml"), "lang",
                   std::string(chosen_language().code));
  Node head = html.append_child("head");
  with(head.append_child("meta"), "charset", "utf-8");
  with(with(head.append_child("meta"), "name", "viewport"), "content", "width=device-width, initial-scale=1");
  element(head, "title", said("{}: needle chart", title_of(chart)));
  element(head, "style", with_page_counters(style));
  Node body = html.append_child("body");
  element(body, "h1", title_of(chart));
  element(body, "p", std::string(mirror_words()));
  element(body, "p", std::string(selection_words(chart.profile())));
  element(body, "p",
          tr("A filled needle comes forward and knits contrast, an empty one stays back; long ticks every ten needles, "
             "short ones every five, the thick line is the middle of the bed."));
  element(body, "p", std::string(care_words()));
  return body;
}

} // namespace

std::string chart_html(const ChartRows& chart) {
  pugi::xml_document page;
  Node body = append_page(page, chart);
  append_bed(body, chart);
  Node table = body.append_child("table");
  append_heads(table, chart);
  Node rows = table.append_child("tbody");
  append_setup(rows, chart);
  const int last = static_cast<int>(chart.rows().size());
  for (int number = 1; number <= last; ++number) {
    append_done(rows, chart, said("before row {}", number), chart.done_before(number));
    append_row(rows, chart, number);
  }
  append_done(rows, chart, tr("at the end"), chart.done_at_end());
  std::ostringstream out;
  out.imbue(std::locale::classic());
  page.save(out, " ", pugi::format_indent | pugi::format_no_declaration, pugi::encoding_utf8);
  return std::move(out).str();
}

} // namespace punchwright
