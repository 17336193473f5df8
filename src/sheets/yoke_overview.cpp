// A yoke's first pages: what it is and where everything stands, the schematic with measures, the table of sizes.
#include "design/lengths.hpp"
#include "design/words.hpp"
#include "pieces/schematic.hpp"
#include "plan/step_words.hpp"
#include "sheets/chart_words.hpp"
#include "sheets/leaflet_parts.hpp"
#include "sheets/shapes.hpp"
#include "sheets/text_metrics.hpp"
#include "sheets/yoke_parts.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace punchwright {

using namespace leaflet;

namespace {

std::string both(double mm) {
  return fmt::format("{:.1f} cm ({:.1f} in)", mm / 10, mm / mm_per_inch);
}

// "L32 to R32 …" of the file's own words, as facts.
std::vector<FlowBlock> cover_facts(const YokeJob& job, double width) {
  const OpenedYoke& opened = job.opened;
  std::vector<FlowBlock> blocks{leaflet_subheading("The yoke", width)};
  const Gauge& gauge = opened.tiers.front().document.gauge;
  std::vector<std::string> sizes;
  for (const std::size_t size : job.sizes) {
    sizes.push_back(one_line(job.plan.sizes[size].size));
  }
  const bool all = job.sizes.size() == job.plan.sizes.size() && job.pieces.size() == opened.yoke.pieces.size();
  std::vector<std::string> lines{fmt::format("Machine: {}.", name_of_machine(opened.profile)),
                                 fmt::format("Gauge: {:g} stitches and {:g} rows to 10 cm, in the two-colour pattern.",
                                             gauge.stitches, gauge.rows)};
  if (opened.yoke.gauge.plain_rows) {
    lines.push_back(fmt::format("Plain rows between the tiers: {:g} to 10 cm.", *opened.yoke.gauge.plain_rows));
  }
  lines.push_back(fmt::format("Sizes: {}.", listed(sizes)));
  lines.push_back(fmt::format("Pieces, on the knit side from left to right: {}.", names_of(job, job.pieces)));
  if (!all) {
    lines.emplace_back("The yoke has more; only these are here.");
  }
  lines.push_back(opened.yoke.edge == 0 ? std::string("No seam stitches.")
                                        : fmt::format("Seam stitches: {} at each side of each piece; counts have them, "
                                                      "measures don't.",
                                                      opened.yoke.edge));
  for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
    const Document& document = opened.tiers[tier].document;
    lines.push_back(fmt::format("{}: a repeat of {}, {} to knit.", with_capital(name_of_tier(job, tier)),
                                counted(document.grid.width(), "stitch", "stitches"),
                                counted(std::ssize(opened.tiers[tier].rows.rows), "row", "rows")));
  }
  for (const std::string& line : lines) {
    blocks.push_back(leaflet_item(line, width));
  }
  return blocks;
}

std::vector<FlowBlock> cover_cautions(const YokeJob& job, double width) {
  std::vector<FlowBlock> blocks{leaflet_subheading("Before you begin", width)};
  std::vector<std::string> lines{"The maker's manual goes before these sheets.",
                                 "Latch needles and transfer tools: mind eyes and fingers.",
                                 "Weights come off before the work does, or it falls; on again once it hangs.",
                                 "A piece that is off the bed rests on waste yarn, a comb or a circular needle."};
  if (job.wants(YokeSheet::strips) || (job.wants(YokeSheet::cards) && reads_card(job.opened.profile))) {
    lines.insert(lines.begin(),
                 fmt::format("Print at 100 %, “actual size”. The rulers on the pages of strips and cards "
                             "must be 150 mm long. Present correction: scale_x = {:.4g}, scale_y = "
                             "{:.4g}, from the first tier's file.",
                             job.scale_x, job.scale_y));
  }
  for (const std::string& line : lines) {
    blocks.push_back(leaflet_item(line, width));
  }
  return blocks;
}

// An outline at that scale; `corner` is the lower left corner of the box as wide as the piece.
class OutlineDrawing {
public:
  OutlineDrawing(std::vector<Shape>& shapes, const SchematicPiece& piece, double scale, Point corner)
      : shapes_(shapes), piece_(piece), scale_(scale), corner_(corner) {
    for (const SchematicPoint& point : piece.outline) {
      half_ = std::max(half_, point.x);
    }
  }

  void draw(const std::string& names, double room) {
    std::vector<Point> points;
    for (const SchematicPoint& point : piece_.outline) {
      points.push_back(at(point.x, point.y));
    }
    for (const SchematicTier& tier : piece_.tiers) {
      band(tier);
    }
    shapes_.emplace_back(PolylineShape{points, true, line_paint(ink::black, 0.4), {}});
    for (std::size_t tier = 0; tier < piece_.tiers.size(); ++tier) {
      const SchematicTier& here = piece_.tiers[tier];
      const Point middle = at(0, (here.bottom + here.pattern_top) / 2);
      const std::string words = fmt::format("tier {}: {}", tier + 1, here.stitches);
      const bool fits = width_of(words, small_type, false) < here.width * scale_ - 2;
      shapes_.emplace_back(text_shape({middle.x, middle.y + 1.0}, fits ? words : std::to_string(here.stitches),
                                      small_type, Anchor::middle));
    }
    const double x = at(0, 0).x;
    const auto centred = [&](double y, const std::string& words, double type, bool bold) {
      shapes_.emplace_back(text_shape({x, y}, fitting_text(words, type, bold, room), type, Anchor::middle, bold));
    };
    centred(at(0, piece_.height).y - 2.0, both(piece_.top), small_type, false);
    centred(at(0, 0).y + 4.2, both(piece_.bottom), small_type, false);
    double y = at(0, 0).y + 9.0;
    for (const std::string& line : lines_of(names, body_type, true, room)) {
      centred(y, line, body_type, true);
      y += 4.2;
    }
  }

private:
  [[nodiscard]] Point at(double x, double y) const {
    return {corner_.x + (half_ + x) * scale_, corner_.y - y * scale_};
  }
  // The pattern rows are shaded as far as the outline goes.
  void band(const SchematicTier& tier) {
    const double next = width_at(tier.pattern_top) / 2;
    shapes_.emplace_back(PolylineShape{{at(-tier.width / 2, tier.bottom), at(-next, tier.pattern_top),
                                        at(next, tier.pattern_top), at(tier.width / 2, tier.bottom)},
                                       true,
                                       Paint{ink::light, 0.2, ink::faint, false},
                                       {}});
  }
  [[nodiscard]] double width_at(double y) const {
    const std::size_t sides = piece_.outline.size() / 2;
    for (std::size_t index = 0; index + 1 < sides; ++index) {
      const SchematicPoint& low = piece_.outline[index];
      const SchematicPoint& high = piece_.outline[index + 1];
      if (y >= low.y && y <= high.y && high.y > low.y) {
        return -2 * (low.x + (high.x - low.x) * (y - low.y) / (high.y - low.y));
      }
    }
    return piece_.top;
  }

  std::vector<Shape>& shapes_;
  const SchematicPiece& piece_;
  double scale_;
  Point corner_;
  double half_ = 0;
};

constexpr double outline_gap = 14.0; // between outlines, mm of paper
constexpr double height_room = 24.0; // for the height's measure, at the left
constexpr double tallest_outline = 62.0;

// The height at the left of a row of outlines: a line with ends.
void add_height(std::vector<Shape>& shapes, Point foot, double height, double mm) {
  const Paint paint = line_paint(ink::dark, 0.25);
  shapes.emplace_back(line_shape(foot, {foot.x, foot.y - height}, paint));
  for (const double y : {foot.y, foot.y - height}) {
    shapes.emplace_back(line_shape({foot.x - 1.5, y}, {foot.x + 1.5, y}, paint));
  }
  const double middle = foot.y - height / 2;
  shapes.emplace_back(
      text_shape({foot.x - 2.5, middle - 0.6}, fmt::format("{:.1f} cm", mm / 10), small_type, Anchor::end));
  shapes.emplace_back(
      text_shape({foot.x - 2.5, middle + 3.2}, fmt::format("({:.1f} in)", mm / mm_per_inch), small_type, Anchor::end));
}

// Those of the chosen pieces among an outline's.
std::vector<std::size_t> chosen_of(const YokeJob& job, const SchematicPiece& outline) {
  std::vector<std::size_t> pieces;
  for (const std::size_t piece : outline.pieces) {
    if (std::ranges::find(job.pieces, piece) != job.pieces.end()) {
      pieces.push_back(piece);
    }
  }
  return pieces;
}

// The scale at which the widest and the highest of all sizes fit, so that sizes can be compared; a figure whose pieces
// are too many for one row has several.
double scale_of(const std::vector<Schematic>& schematics, double width) {
  double scale = 1.0;
  for (const Schematic& schematic : schematics) {
    double widths = 0;
    double gaps = 0;
    for (std::size_t index = 0; index < std::min<std::size_t>(schematic.pieces.size(), 3); ++index) {
      widths += std::max(schematic.pieces[index].bottom, schematic.pieces[index].top);
      gaps += outline_gap;
    }
    scale = std::min({scale, (width - height_room - gaps) / widths, tallest_outline / schematic.height});
  }
  return scale;
}

void add_size_figure(LeafletPages& pages, const YokeJob& job, const Schematic& schematic, std::size_t size,
                     double scale) {
  constexpr double above = 6.0;
  constexpr double below = 17.0;
  const double row_height = schematic.height * scale + above + below;
  const std::string words =
      fmt::format("Size {}: {} round the lower edge, {} round the neck, {} high", one_line(job.plan.sizes[size].size),
                  both(schematic.around_bottom), both(schematic.around_top), both(schematic.height));
  if (pages.room() < row_height + 3 * line_step) {
    pages.new_page();
  }
  pages.set({leaflet_subheading(words, pages.width())}, 1);
  pages.gap(half_line);
  double x = pages.left() + height_room;
  bool row_begun = false;
  for (const SchematicPiece& piece : schematic.pieces) {
    const std::vector<std::size_t> pieces = chosen_of(job, piece);
    if (pieces.empty()) {
      continue;
    }
    const double wide = std::max(piece.bottom, piece.top) * scale;
    const double room = std::max(wide, 30.0);
    if (row_begun && x + room > pages.left() + pages.width()) {
      pages.gap(row_height);
      if (pages.room() < row_height) {
        pages.new_page();
      }
      x = pages.left() + height_room;
      row_begun = false;
    }
    const double foot = pages.y() + above + schematic.height * scale;
    if (!row_begun) {
      add_height(pages.shapes(), {pages.left() + height_room - 6.0, foot}, schematic.height * scale, schematic.height);
      row_begun = true;
    }
    OutlineDrawing(pages.shapes(), piece, scale, {x + (room - wide) / 2, foot})
        .draw(names_of(job, pieces), room + outline_gap - 2.0);
    x += room + outline_gap;
  }
  pages.gap(row_height + half_line);
}

constexpr std::size_t most_size_columns = 6;
constexpr double name_share = 0.34;

FlowBlock sizes_row(const std::vector<std::string>& cells, double width, bool head, bool heading = false) {
  FlowBlock block;
  block.whole = true;
  block.with_next = head || heading;
  FlowLine line;
  line.height = 1.25 * line_step;
  const double column = width * (1 - name_share) / static_cast<double>(std::max<std::size_t>(cells.size() - 1, 3));
  for (std::size_t index = 0; index < cells.size(); ++index) {
    const double x = index == 0 ? 0.0 : width * name_share + column * static_cast<double>(index);
    const double room = index == 0 ? (heading ? width : width * name_share - 2) : column - 1.5;
    line.shapes.emplace_back(text_shape({x, base_line}, fitting_text(cells[index], body_type, head || heading, room),
                                        body_type, index == 0 ? Anchor::start : Anchor::end, head || heading));
  }
  line.shapes.emplace_back(line_shape({0, line_step - 0.2}, {width, line_step - 0.2},
                                      line_paint(head ? ink::black : ink::faint, head ? 0.3 : 0.2)));
  block.lines.push_back(std::move(line));
  if (heading) {
    block.before = half_line;
  }
  return block;
}

// The rows of the table for some of the sizes.
class SizesTable {
public:
  SizesTable(const YokeJob& job, std::vector<std::size_t> sizes, double width)
      : job_(job), sizes_(std::move(sizes)), width_(width) {
    for (const std::size_t size : sizes_) {
      schematics_.push_back(schematic_of(job.opened, job.plan.sizes[size], size));
    }
  }

  std::vector<FlowBlock> all() {
    row(
        "size", [&](std::size_t size) { return one_line(job_.plan.sizes[size].size); }, true);
    heading("Round, and high");
    around("lower edge", &Schematic::around_bottom);
    around("neck", &Schematic::around_top);
    around("height", &Schematic::height);
    row("rows, pattern + plain", [&](std::size_t size) {
      const RowsOfYoke& rows = job_.plan.sizes[size].rows;
      return fmt::format("{} + {}", rows.pattern_rows, rows.plain_rows);
    });
    for (const std::size_t piece : first_of_alike()) {
      of_piece(piece);
    }
    heading("Yarn");
    yarns();
    return std::move(blocks_);
  }

private:
  template <class Cell> void row(const std::string& name, Cell&& cell, bool head = false) {
    std::vector<std::string> cells{name};
    for (const std::size_t size : sizes_) {
      cells.push_back(cell(size));
    }
    blocks_.push_back(sizes_row(cells, width_, head));
  }
  void heading(const std::string& words) { blocks_.push_back(sizes_row({words}, width_, false, true)); }
  void around(const std::string& name, double Schematic::*mm) {
    std::vector<std::string> cells{name};
    for (const Schematic& schematic : schematics_) {
      cells.push_back(fmt::format("{:.1f} cm / {:.1f} in", schematic.*mm / 10, schematic.*mm / mm_per_inch));
    }
    blocks_.push_back(sizes_row(cells, width_, false));
  }

  // Pieces whose counts are the same in all sizes here stand together.
  [[nodiscard]] bool alike(std::size_t one, std::size_t other) const {
    return std::ranges::all_of(sizes_, [&](std::size_t size) {
      const auto& pieces = job_.plan.sizes[size].pieces;
      return std::ranges::equal(pieces[one].tiers, pieces[other].tiers, [](const auto& left, const auto& right) {
        return left.stitches == right.stitches && left.shaping.after == right.shaping.after;
      });
    });
  }
  [[nodiscard]] std::vector<std::size_t> alike_with(std::size_t piece) const {
    std::vector<std::size_t> pieces;
    for (const std::size_t other : job_.pieces) {
      if (alike(piece, other)) {
        pieces.push_back(other);
      }
    }
    return pieces;
  }
  [[nodiscard]] std::vector<std::size_t> first_of_alike() const {
    std::vector<std::size_t> first;
    for (const std::size_t piece : job_.pieces) {
      if (alike_with(piece).front() == piece) {
        first.push_back(piece);
      }
    }
    return first;
  }

  void of_piece(std::size_t piece) {
    heading("Stitches: " + names_of(job_, alike_with(piece)));
    const std::size_t tiers = job_.opened.tiers.size();
    for (std::size_t tier = 0; tier < tiers; ++tier) {
      row(name_of_tier(job_, tier),
          [&](std::size_t size) { return std::to_string(job_.at(size, piece, tier).stitches); });
    }
    row("after the last decreases",
        [&](std::size_t size) { return std::to_string(job_.at(size, piece, tiers - 1).shaping.after); });
    const auto width_cell = [&](double SchematicPiece::*mm) {
      return [this, piece, mm](std::size_t size) {
        const auto at = static_cast<std::size_t>(std::ranges::find(sizes_, size) - sizes_.begin());
        const Schematic& schematic = schematics_[at];
        const double value = schematic.pieces[outline_of(schematic, piece)].*mm;
        return fmt::format("{:.1f} cm / {:.1f} in", value / 10, value / mm_per_inch);
      };
    };
    row("width at the lower edge", width_cell(&SchematicPiece::bottom));
    row("width at the neck", width_cell(&SchematicPiece::top));
  }

  void yarns() {
    std::vector<char> keys;
    for (const std::size_t size : sizes_) {
      for (const YarnAmount& yarn : job_.plan.sizes[size].yarns) {
        if (std::ranges::find(keys, yarn.key) == keys.end()) {
          keys.push_back(yarn.key);
        }
      }
    }
    for (const char key : keys) {
      row(fmt::format("{} {}", key, name_of(key)), [&](std::size_t size) { return amount(size, key); });
    }
  }
  [[nodiscard]] std::string name_of(char key) const {
    for (const OpenedTier& tier : job_.opened.tiers) {
      if (std::ranges::any_of(tier.document.yarns, [&](const Yarn& yarn) { return yarn.key == key; })) {
        return name_of_yarn(tier.document, key);
      }
    }
    return {};
  }
  [[nodiscard]] std::string amount(std::size_t size, char key) const {
    for (const YarnAmount& yarn : job_.plan.sizes[size].yarns) {
      if (yarn.key == key) {
        std::string text = yarn.grams ? fmt::format("{:.0f} g", std::ceil(*yarn.grams)) : "";
        return yarn.metres    ? text + fmt::format("{}{:.0f} m", text.empty() ? "" : ", ", std::ceil(*yarn.metres))
               : text.empty() ? "not known"
                              : text;
      }
    }
    return "–";
  }

  const YokeJob& job_;
  std::vector<std::size_t> sizes_;
  double width_;
  std::vector<Schematic> schematics_;
  std::vector<FlowBlock> blocks_;
};

} // namespace

void add_yoke_cover(LeafletPages& pages, const YokeJob& job, const YokePlaces& places) {
  std::vector<FlowBlock> head{
      paragraph(title_of_yoke(job), pages.width(), {title_type, true, 0, 0, 3 * line_step, base_line + line_step})};
  head.push_back(paragraph("A round yoke in pieces for the hand-operated knitting machine.", pages.width(), {}));
  if (const std::string notes = one_line(job.opened.yoke.notes); !notes.empty()) {
    head.push_back(paragraph(notes, pages.width(), {body_type, false, 0, half_line}));
  }
  pages.set(head, 1);
  pages.gap(line_step);
  const double width = pages.column_width(2);
  pages.set_beside(cover_facts(job, width), cover_cautions(job, width));
  pages.gap(line_step);
  pages.set({leaflet_subheading("What stands where", pages.width())}, 1);
  std::vector<FlowBlock> contents;
  for (const LeafletPart& part : places.parts) {
    contents.push_back(leaflet_contents(part, width));
  }
  pages.set(contents, 2);
}

void add_schematic(LeafletPages& pages, const YokeJob& job) {
  pages.begin_part("Schematic");
  pages.set({leaflet_text("Measures of the finished cloth without the seam stitches; counts of stitches with them. "
                          "Shaded: the tiers' pattern rows. All sizes are drawn to one scale.",
                          pages.width())},
            1);
  pages.gap(half_line);
  std::vector<Schematic> schematics;
  for (const std::size_t size : job.sizes) {
    schematics.push_back(schematic_of(job.opened, job.plan.sizes[size], size));
  }
  const double scale = scale_of(schematics, pages.width());
  for (std::size_t index = 0; index < job.sizes.size(); ++index) {
    add_size_figure(pages, job, schematics[index], job.sizes[index], scale);
  }
}

void add_sizes(LeafletPages& pages, const YokeJob& job) {
  pages.begin_part("Table of sizes");
  for (std::size_t first = 0; first < job.sizes.size(); first += most_size_columns) {
    const std::size_t end = std::min(first + most_size_columns, job.sizes.size());
    const std::vector<std::size_t> sizes(job.sizes.begin() + static_cast<std::ptrdiff_t>(first),
                                         job.sizes.begin() + static_cast<std::ptrdiff_t>(end));
    pages.set(SizesTable(job, sizes, pages.width()).all(), 1);
    pages.gap(2 * line_step);
  }
  for (const LoopCheck& check : job.plan.loops) {
    pages.set({leaflet_item(with_capital(text_of(check)) + ".", pages.width())}, 1);
  }
}

} // namespace punchwright
