// A yoke's first pages: what it is and where everything stands, and the schematic with measures.
#include "design/lengths.hpp"
#include "design/words.hpp"
#include "pieces/schematic.hpp"
#include "pieces/tier_faults.hpp"
#include "sheets/chart_words.hpp"
#include "sheets/leaflet_parts.hpp"
#include "sheets/shapes.hpp"
#include "sheets/sheet_words.hpp"
#include "sheets/text_metrics.hpp"
#include "sheets/yoke_parts.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright {

using namespace leaflet;

namespace {

std::string both(double mm) {
  return said("{} cm ({} in)", decimal(mm / 10, 1), decimal(mm / mm_per_inch, 1));
}

std::vector<FlowBlock> cover_facts(const YokeJob& job, double width) {
  const OpenedYoke& opened = job.opened;
  std::vector<FlowBlock> blocks{leaflet_subheading(tr("The yoke"), width)};
  const Gauge& gauge = opened.tiers.front().document.gauge;
  std::vector<std::string> sizes;
  for (const std::size_t size : job.sizes) {
    sizes.push_back(one_line(job.plan.sizes[size].size));
  }
  const bool all = job.sizes.size() == job.plan.sizes.size() && job.pieces.size() == opened.yoke.pieces.size();
  std::vector<std::string> lines{said("Machine: {}.", name_of_machine(opened.profile)),
                                 said("Gauge: {} stitches and {} rows to 10 cm, in the two-colour pattern.",
                                      with_decimal_sign(fmt::format("{:g}", gauge.stitches)),
                                      with_decimal_sign(fmt::format("{:g}", gauge.rows)))};
  if (opened.yoke.gauge.plain_rows) {
    lines.push_back(said("Plain rows between the tiers: {} to 10 cm.",
                         with_decimal_sign(fmt::format("{:g}", *opened.yoke.gauge.plain_rows))));
  }
  lines.push_back(said("Sizes: {}.", listed(sizes)));
  lines.push_back(said("Pieces, on the knit side from left to right: {}.", names_of(job, job.pieces)));
  if (!all) {
    lines.emplace_back(tr("The yoke has more; only these are here."));
  }
  lines.push_back(
      opened.yoke.edge == 0
          ? tr("No seam stitches.")
          : said("Seam stitches: {} at each side of each piece; counts have them, measures don't.", opened.yoke.edge));
  for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
    const Document& document = opened.tiers[tier].document;
    lines.push_back(said("{}: a repeat of {}, {} to knit.", with_capital(name_of_tier(job, tier)),
                         stitches_counted(document.grid.width()),
                         rows_counted(std::ssize(opened.tiers[tier].rows.rows))));
  }
  for (const std::string& line : lines) {
    blocks.push_back(leaflet_item(line, width));
  }
  return blocks;
}

std::vector<FlowBlock> cover_cautions(const YokeJob& job, double width) {
  std::vector<FlowBlock> blocks{leaflet_subheading(tr("Before you begin"), width)};
  std::vector<std::string> lines{tr("The maker's manual goes before these sheets."),
                                 tr("Latch needles and transfer tools: mind eyes and fingers."),
                                 tr("Weights come off before the work does, or it falls; on again once it hangs."),
                                 tr("A piece that is off the bed rests on waste yarn, a comb or a circular needle.")};
  if (job.wants(YokeSheet::strips) || (job.wants(YokeSheet::cards) && reads_card(job.opened.profile))) {
    lines.insert(lines.begin(),
                 said("Print at 100 %, “actual size”. The rulers on the pages of strips and cards must be 150 mm long. "
                      "Present correction: scale_x = {:.4g}, scale_y = {:.4g}, from the first tier's file.",
                      job.scale_x, job.scale_y));
  }
  for (const TierFaults& tier : tiers_with_faults(job.opened)) {
    lines.push_back(with_capital(fmt::format("{}; {}.", words_of(tier), remedy_of(job.opened, tier))));
  }
  for (const std::string& line : lines) {
    blocks.push_back(leaflet_item(line, width));
  }
  return blocks;
}

constexpr double names_below = 9.0; // an outline's foot, mm: base line of the first line of names
constexpr double name_step = 4.2;

// An outline at that scale; `corner` is the lower left corner of the box as wide as the piece.
class OutlineDrawing {
public:
  OutlineDrawing(std::vector<Shape>& shapes, const SchematicPiece& piece, double scale, Point corner)
      : shapes_(shapes), piece_(piece), scale_(scale), corner_(corner) {}

  // `names`: the lines below it.
  void draw(const std::vector<std::string>& names, double room) {
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
      const std::string words = said("tier {}: {}", tier + 1, here.stitches);
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
    double y = at(0, 0).y + names_below;
    for (const std::string& line : names) {
      centred(y, line, body_type, true);
      y += name_step;
    }
  }

private:
  [[nodiscard]] Point at(double x, double y) const {
    return {corner_.x + (piece_.widest / 2 + x) * scale_, corner_.y - y * scale_};
  }
  // The pattern rows are shaded.
  void band(const SchematicTier& tier) {
    const double half = tier.width / 2;
    shapes_.emplace_back(PolylineShape{
        {at(-half, tier.bottom), at(-half, tier.pattern_top), at(half, tier.pattern_top), at(half, tier.bottom)},
        true,
        Paint{ink::light, 0.2, ink::faint, false},
        {}});
  }

  std::vector<Shape>& shapes_;
  const SchematicPiece& piece_;
  double scale_;
  Point corner_;
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
      text_shape({foot.x - 2.5, middle - 0.6}, said("{} cm", decimal(mm / 10, 1)), small_type, Anchor::end));
  shapes.emplace_back(
      text_shape({foot.x - 2.5, middle + 3.2}, said("({} in)", decimal(mm / mm_per_inch, 1)), small_type, Anchor::end));
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
      widths += schematic.pieces[index].widest;
      gaps += outline_gap;
    }
    scale = std::min({scale, (width - height_room - gaps) / widths, tallest_outline / schematic.height});
  }
  return scale;
}

// Outlines beside each other, with what stands below each of them.
struct OutlineRow {
  struct Place {
    const SchematicPiece* piece = nullptr;
    double x = 0; // of its room
    double room = 0;
    double wide = 0;
    std::vector<std::string> names;
  };
  std::vector<Place> places;
  double height = 0; // of all, mm
};

constexpr double above_outline = 6.0;

// Below the outlines there is room for as many lines of names as the longest ones take. Where these would be more than
// a page holds, the pieces are counted: all are named elsewhere.
std::vector<OutlineRow> outline_rows(const LeafletPages& pages, const YokeJob& job, const Schematic& schematic,
                                     double scale) {
  constexpr double least_below = 17.0;
  const double most_names = pages.page_room() - 6 * line_step - above_outline - schematic.height * scale - names_below;
  const double right = pages.left() + pages.width();
  std::vector<OutlineRow> rows;
  double x = right;
  for (const SchematicPiece& piece : schematic.pieces) {
    const std::vector<std::size_t> pieces = chosen_of(job, piece);
    if (pieces.empty()) {
      continue;
    }
    const double wide = piece.widest * scale;
    const double room = std::max(wide, 30.0);
    if (rows.empty() || x + room > right) {
      rows.emplace_back();
      x = pages.left() + height_room;
    }
    const double text_room = room + outline_gap - 2.0;
    std::vector<std::string> names = lines_of(names_of(job, pieces), body_type, true, text_room);
    if (static_cast<double>(names.size()) * name_step > most_names) {
      names = lines_of(pieces_counted(std::ssize(pieces)), body_type, true, text_room);
    }
    const double below = std::max(least_below, names_below + name_step * static_cast<double>(names.size()) - 0.8);
    rows.back().height = std::max(rows.back().height, above_outline + schematic.height * scale + below);
    rows.back().places.push_back({&piece, x, room, wide, std::move(names)});
    x += room + outline_gap;
  }
  return rows;
}

void add_size_figure(LeafletPages& pages, const YokeJob& job, const Schematic& schematic, std::size_t size,
                     double scale) {
  const std::string words =
      said("Size {}: {} round the lower edge, {} round the neck, {} high", one_line(job.plan.sizes[size].size),
           both(schematic.around_bottom), both(schematic.around_top), both(schematic.height));
  const std::vector<FlowBlock> heading{leaflet_subheading(words, pages.width())};
  const std::vector<OutlineRow> rows = outline_rows(pages, job, schematic, scale);
  if (pages.room() < height_of(heading) + half_line + (rows.empty() ? 0.0 : rows.front().height)) {
    pages.new_page();
  }
  pages.set(heading, 1);
  pages.gap(half_line);
  for (const OutlineRow& row : rows) {
    if (pages.room() < row.height) {
      pages.new_page();
    }
    const double foot = pages.y() + above_outline + schematic.height * scale;
    add_height(pages.shapes(), {pages.left() + height_room - 6.0, foot}, schematic.height * scale, schematic.height);
    for (const OutlineRow::Place& place : row.places) {
      OutlineDrawing(pages.shapes(), *place.piece, scale, {place.x + (place.room - place.wide) / 2, foot})
          .draw(place.names, place.room + outline_gap - 2.0);
    }
    pages.gap(row.height);
  }
  pages.gap(half_line);
}

} // namespace

void add_yoke_cover(LeafletPages& pages, const YokeJob& job, const YokePlaces& places) {
  std::vector<FlowBlock> head{
      paragraph(title_of_yoke(job), pages.width(), {title_type, true, 0, 0, 3 * line_step, base_line + line_step})};
  head.push_back(paragraph(tr("A round yoke in pieces for the hand-operated knitting machine."), pages.width(), {}));
  if (const std::string notes = one_line(job.opened.yoke.notes); !notes.empty()) {
    head.push_back(paragraph(notes, pages.width(), {body_type, false, 0, half_line}));
  }
  pages.set(head, 1);
  pages.gap(line_step);
  const double width = pages.column_width(2);
  pages.set_beside(cover_facts(job, width), cover_cautions(job, width));
  pages.gap(line_step);
  pages.set({leaflet_subheading(tr("What stands where"), pages.width())}, 1);
  std::vector<FlowBlock> contents;
  for (const LeafletPart& part : places.parts) {
    contents.push_back(leaflet_contents(part, width));
  }
  pages.set(contents, 2);
}

void add_schematic(LeafletPages& pages, const YokeJob& job) {
  pages.begin_part(tr("Schematic"));
  pages.set({leaflet_text(tr("Measures of the finished cloth without the seam stitches; counts of stitches with them. "
                             "Shaded: the tiers' pattern rows. Each tier is straight, and its width changes in the row "
                             "after the decreases or increases. All sizes are drawn to one scale."),
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

} // namespace punchwright
