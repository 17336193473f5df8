// Holes, outline, and the light marks between the holes.
//
// A hole is a thin ring with a dark point in its middle for the punch; a place that stays whole is a faint dot, so
// that the eye can count along a row.
#include "sheets/card_drawing.hpp"

#include "sheets/shapes.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright {
namespace {

constexpr double ring_mm = 0.15;
constexpr double point_radius = 0.3; // the dark point in a hole's middle
constexpr double dot_radius = 0.22;

std::string class_of(HoleKind kind) {
  switch (kind) {
  case HoleKind::pattern: return "pattern";
  case HoleKind::overlap: return "overlap";
  case HoleKind::feed: return "feed";
  case HoleKind::clip: break;
  }
  return "clip";
}

CircleShape ring_of(const CardHole& hole, Point origin, const CardStyle& style) {
  CircleShape ring;
  ring.centre = {origin.x + hole.centre.x, origin.y + hole.centre.y};
  ring.radius = hole.diameter / 2;
  ring.paint = line_paint(ink::black, ring_mm);
  if (style.filled_holes) {
    ring.paint.fill = ink::faint;
  }
  ring.label.class_name = class_of(hole.kind);
  if (style.attributes && hole.kind == HoleKind::pattern) {
    ring.label.attributes = {{"data-row", std::to_string(hole.row)}, {"data-column", std::to_string(hole.column)}};
  }
  return ring;
}

CircleShape dot_at(Point centre, double radius, Colour colour) {
  CircleShape dot;
  dot.centre = centre;
  dot.radius = radius;
  dot.paint = fill_paint(colour);
  return dot;
}

// Numbers, lines and words beside the holes; only a guess, so that the list seldom has to move.
constexpr std::size_t marks_beside_holes = 1000;

void add_holes(DrawnCard& drawn, const CardLayout& layout, const CardPart& part, Point origin, const CardStyle& style) {
  drawn.holes.reserve(layout.holes().size());
  drawn.marks.reserve(layout.holes().size() + layout.unpunched().size() + marks_beside_holes);
  for (const CardHole& hole : layout.holes()) {
    if (part.holds(hole.centre.y)) {
      drawn.holes.push_back(ring_of(hole, origin, style));
      drawn.marks.push_back(dot_at({origin.x + hole.centre.x, origin.y + hole.centre.y}, point_radius, ink::dark));
    }
  }
  for (const Point& place : layout.unpunched()) {
    if (part.holds(place.y)) {
      drawn.marks.push_back(dot_at({origin.x + place.x, origin.y + place.y}, dot_radius, ink::light));
    }
  }
}

// The sheet's edge; where a part ends inside the card it stays open, since there the next page joins.
void add_outline(DrawnCard& drawn, const CardLayout& layout, const CardPart& part, Point origin) {
  const bool has_top = part.top <= 0;
  const bool has_bottom = part.bottom >= layout.height();
  const Paint paint = line_paint(ink::black, 0.25);
  const double left = origin.x;
  const double right = origin.x + layout.width();
  const double top = origin.y + std::max(part.top, 0.0);
  const double bottom = origin.y + std::min(part.bottom, layout.height());
  if (has_top && has_bottom) {
    drawn.outline.push_back(
        PolylineShape{{{left, top}, {right, top}, {right, bottom}, {left, bottom}}, true, paint, {}});
  } else if (has_top) {
    drawn.outline.push_back(
        PolylineShape{{{left, bottom}, {left, top}, {right, top}, {right, bottom}}, false, paint, {}});
  } else if (has_bottom) {
    drawn.outline.push_back(
        PolylineShape{{{left, top}, {left, bottom}, {right, bottom}, {right, top}}, false, paint, {}});
  } else {
    drawn.outline.push_back(line_shape({left, top}, {left, bottom}, paint));
    drawn.outline.push_back(line_shape({right, top}, {right, bottom}, paint));
  }
}

std::pair<double, double> outermost_columns(const CardLayout& layout) {
  const double one = layout.x_of_column(1);
  const double other = layout.x_of_column(layout.columns());
  return {std::min(one, other), std::max(one, other)};
}

// Short strokes between the columns, level with every fifth printed number: a line for the eye that crosses no hole.
// The tenth ones are darker; each sort is drawn together.
void add_row_lines(DrawnCard& drawn, const CardLayout& layout, const CardNotes& notes, const CardPart& part,
                   Point origin) {
  const double clear = layout.hole_diameter() / 2 + 0.15;
  const auto [first, last] = outermost_columns(layout);
  for (const bool tenth : {false, true}) {
    const Paint paint = line_paint(tenth ? ink::middle : ink::light, tenth ? 0.3 : 0.2);
    for (const LineNote& note : notes.lines) {
      const int line = layout.line_of(note.row);
      if (note.number % 5 != 0 || (note.number % 10 == 0) != tenth || line < 0 || line >= layout.lines() ||
          !part.holds(layout.y_of_line(line))) {
        continue;
      }
      const double y = origin.y + layout.y_of_line(line);
      for (double x = first; x < last - 0.01; x += layout.stitch_pitch()) {
        if (layout.stitch_pitch() - 2 * clear > 0.1) {
          drawn.marks.push_back(
              line_shape({origin.x + x + clear, y}, {origin.x + x + layout.stitch_pitch() - clear, y}, paint));
        }
      }
      drawn.marks.push_back(line_shape({origin.x + first - clear - 1.0, y}, {origin.x + first - clear, y}, paint));
      drawn.marks.push_back(line_shape({origin.x + last + clear, y}, {origin.x + last + clear + 1.0, y}, paint));
    }
  }
}

// Below the lowest and above the highest row; small, for whoever counts columns by the punch list.
void add_column_numbers(DrawnCard& drawn, const CardLayout& layout, const CardPart& part, Point origin) {
  const double size = std::min(1.9, layout.stitch_pitch() * 0.42);
  if (free_strips(layout).end < size + 1.2) {
    return;
  }
  const double lowest = std::max(layout.y_of_line(0), layout.y_of_line(layout.lines() - 1));
  const double highest = std::min(layout.y_of_line(0), layout.y_of_line(layout.lines() - 1));
  const double clear = layout.hole_diameter() / 2 + 0.6;
  for (int column = 1; column <= layout.columns(); ++column) {
    const double x = origin.x + layout.x_of_column(column);
    const Colour colour = column % 6 == 0 || column == 1 ? ink::black : ink::middle;
    if (part.holds(lowest)) {
      drawn.marks.push_back(text_shape({x, origin.y + lowest + clear + size * 0.75}, fmt::format("{}", column), size,
                                       Anchor::middle, false, colour));
    }
    if (part.holds(highest)) {
      drawn.marks.push_back(
          text_shape({x, origin.y + highest - clear}, fmt::format("{}", column), size, Anchor::middle, false, colour));
    }
  }
}

} // namespace

FreeStrips free_strips(const CardLayout& layout) {
  const auto [first, last] = outermost_columns(layout);
  const double hole = layout.hole_diameter() / 2 + 0.5;
  FreeStrips strips{0.5, first - hole, last + hole, layout.width() - 0.5, 0};
  for (const CardHole& hole_at : layout.holes()) {
    if (hole_at.kind == HoleKind::feed) {
      const double rim = hole_at.diameter / 2 + 0.4;
      const bool left = hole_at.centre.x < layout.width() / 2;
      strips.left_from = left ? std::max(strips.left_from, hole_at.centre.x + rim) : strips.left_from;
      strips.right_to = left ? strips.right_to : std::min(strips.right_to, hole_at.centre.x - rim);
    }
  }
  const double lowest = std::max(layout.y_of_line(0), layout.y_of_line(layout.lines() - 1));
  strips.end = layout.height() - lowest - hole;
  return strips;
}

DrawnCard draw_card(const CardLayout& layout, const CardNotes& notes, const CardWords& words, const CardPart& part,
                    const MarginColumn& column, Point origin, const CardStyle& style) {
  DrawnCard drawn;
  add_outline(drawn, layout, part, origin);
  add_holes(drawn, layout, part, origin, style);
  add_row_lines(drawn, layout, notes, part, origin);
  add_column_numbers(drawn, layout, part, origin);
  add_margin_marks(drawn.marks, layout, notes, words, part, column, origin);
  return drawn;
}

} // namespace punchwright
