// Marks over the stitches: floats that are too long, the chosen finding, the cursor.
#include "editor/drawing_parts.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

namespace punchwright::editor {

namespace {

// The marked columns of the marked rows as one or two boxes: a run round the edge shows at both ends.
template <class Draw> void each_part(const Sight& sight, const Mark& mark, Draw&& draw) {
  const auto span = [&](int first, int last) {
    const ScreenBox low = box_of(sight.layout, Cell{first, mark.row});
    const ScreenBox high = box_of(sight.layout, Cell{last, mark.last_row});
    draw(ScreenBox{low.left, high.top, high.right, low.bottom});
  };
  if (mark.first_column <= mark.last_column) {
    span(mark.first_column, mark.last_column);
  } else {
    span(mark.first_column - sight.layout.columns, mark.last_column);
    span(mark.first_column, mark.last_column + sight.layout.columns);
  }
}

float bar_of(const Sight& sight) {
  return std::clamp(sight.layout.cell_height * 0.16F, 1.5F, 3.0F * sight.unit());
}

bool floats_are_marked(const Sight& sight) {
  return sight.app.view.float_marks && sight.layout.cell_height >= 4;
}

// A bar along the run, with a stop at each end, and its length where there is room for it.
void draw_float(const Sight& sight, const Mark& mark, int stitches) {
  const Theme& theme = sight.app.theme;
  const float thick = bar_of(sight);
  each_part(sight, mark, [&](const ScreenBox& box) {
    const float y = box.middle().y;
    const float stop = sight.layout.cell_height * 0.32F;
    const float left = box.left + sight.layout.cell_width * 0.12F;
    const float right = box.right - sight.layout.cell_width * 0.12F;
    for (const bool halo : {true, false}) {
      if (halo && sight.layout.cell_height < 9) {
        continue; // no room for it
      }
      const ImU32 colour = halo ? ink(theme.panel, 0.85F) : ink(theme.fault);
      const float width = halo ? thick + 2 : thick;
      sight.list.AddLine({left, y}, {right, y}, colour, width);
      sight.list.AddLine({left, y - stop}, {left, y + stop}, colour, width);
      sight.list.AddLine({right, y - stop}, {right, y + stop}, colour, width);
    }
    const std::string length = std::to_string(stitches);
    const float size = std::min(theme.small->FontSize, sight.layout.cell_height);
    const ImVec2 room = theme.bold->CalcTextSizeA(size, 10000, 0, length.c_str());
    // In the middle of what is seen of the bar, so that it isn't cut where the bar goes on beyond the edge.
    const float seen_from = std::max(left, sight.canvas.left);
    const float seen_to = std::min(right, sight.canvas.right);
    const bool room_for_length =
        sight.layout.cell_height >= 9 * sight.unit() && room.x + 6 * sight.unit() < seen_to - seen_from;
    if (room_for_length && !sight.app.session.mend) { // stitches that are shown would hide half of it
      const ImVec2 corner{std::round((seen_from + seen_to - room.x) / 2), std::round(y - room.y / 2)};
      sight.list.AddRectFilled({corner.x - 3 * sight.unit(), corner.y},
                               {corner.x + room.x + 3 * sight.unit(), corner.y + room.y}, ink(theme.panel),
                               3 * sight.unit());
      sight.list.AddText(theme.bold, size, corner, ink(theme.fault), length.c_str());
    }
  });
}

// Of those in sight, where they are to be marked.
void draw_floats(const Sight& sight, const std::vector<Mark>& marks, const std::vector<Finding>& findings) {
  if (!floats_are_marked(sight)) {
    return;
  }
  const auto first = std::ranges::lower_bound(marks, std::max(0, sight.first_row), {}, &Mark::row);
  for (auto mark = first; mark != marks.end() && mark->row <= sight.last_row; ++mark) {
    const Finding& finding = findings[static_cast<std::size_t>(mark->finding)];
    if (is_long_float_of_repeat(finding)) {
      draw_float(sight, *mark, finding.stitches);
    }
  }
}

// The name of the needle at an end of the piece, on its column: the left end above, the right one below, so that they
// don't hide each other where the columns are neighbours.
void draw_needle(const Sight& sight, const ScreenBox& box, Needle needle, bool above, Colour colour) {
  const Theme& theme = sight.app.theme;
  const float unit = sight.unit();
  const std::string text = name_of(needle);
  const ImVec2 size = theme.bold->CalcTextSizeA(theme.small->FontSize, 10000, 0, text.c_str());
  const float left = std::round(box.middle().x - size.x / 2);
  const float top = above ? std::max(sight.canvas.top, box.top) + 6 * unit
                          : std::min(sight.canvas.bottom, box.bottom) - size.y - 6 * unit;
  sight.list.AddRectFilled({left - 4 * unit, top - 2 * unit}, {left + size.x + 4 * unit, top + size.y + 2 * unit},
                           ink(colour), 3 * unit);
  sight.list.AddText(theme.bold, theme.small->FontSize, {left, top}, ink(theme.on_accent), text.c_str());
}

// Draws the marks of one row's stitches, each with a halo, to be seen on any yarn.
class StitchMarksOfRow {
public:
  StitchMarksOfRow(const Sight& sight, float radius, int row)
      : sight_(sight), radius_(radius), thick_(std::clamp(radius * 0.4F, 1.0F, 2.5F * sight.unit())), row_(row) {}

  void caught(int column) const {
    const ScreenPoint middle = box_of(sight_.layout, Cell{column, row_}).middle();
    twice([&](ImU32 colour, float width) {
      if (radius_ < 6 * sight_.unit()) {
        return small_frame(middle, width, colour);
      }
      sight_.list.AddRect({middle.x - radius_, middle.y - radius_}, {middle.x + radius_, middle.y + radius_}, colour, 0,
                          0, width);
    });
  }

  // Neighbours have their strokes in one.
  void accepted(int first, int last) const {
    const ScreenBox left = box_of(sight_.layout, Cell{first, row_});
    const ScreenBox right = box_of(sight_.layout, Cell{last, row_});
    twice([&](ImU32 colour, float width) {
      for (const float y : {left.middle().y - radius_ / 2, left.middle().y + radius_ / 2}) {
        sight_.list.AddLine({left.left, y}, {right.right, y}, colour, width);
      }
    });
  }

  void kept(int column) const {
    const ScreenBox box = box_of(sight_.layout, Cell{column, row_});
    for (const auto& [colour, size] : {std::pair(sight_.app.theme.panel, 1.5F), {sight_.app.theme.accent, 1.2F}}) {
      sight_.list.AddTriangleFilled({box.left, box.top}, {box.left + radius_ * size, box.top},
                                    {box.left, box.top + radius_ * size}, ink(colour));
    }
  }

private:
  template <class Draw> void twice(Draw&& draw) const {
    draw(ink(sight_.app.theme.panel), thick_ + 2 * sight_.unit());
    draw(ink(sight_.app.theme.accent), thick_);
  }

  // On whole pixels, of which there may be tens of thousands.
  void small_frame(ScreenPoint middle, float width, ImU32 colour) const {
    const auto pixel = [](float place) { return std::floor(place + 0.5F); };
    const float outer = radius_ + width / 2;
    const float wide = std::max(1.0F, pixel(width));
    const ImVec2 low{pixel(middle.x - outer), pixel(middle.y - outer)};
    const ImVec2 high{pixel(middle.x + outer), pixel(middle.y + outer)};
    sight_.list.AddRectFilled(low, {high.x, low.y + wide}, colour);
    sight_.list.AddRectFilled({low.x, high.y - wide}, high, colour);
    sight_.list.AddRectFilled({low.x, low.y + wide}, {low.x + wide, high.y - wide}, colour);
    sight_.list.AddRectFilled({high.x - wide, low.y + wide}, {high.x, high.y - wide}, colour);
  }

  const Sight& sight_;
  float radius_; // px
  float thick_;  // px, of a stroke without its halo
  int row_;
};

// A square where a float is caught, as on the needle chart, two strokes where one is accepted, a corner where a stitch
// is protected: told apart by their shapes, and from the ring that hints at a mend.
void draw_stitch_marks(const Sight& sight) {
  const StitchMarks& marks = design_in_sight(sight.app).marks;
  const Grid& grid = design_in_sight(sight.app).grid;
  const float radius = std::min(sight.layout.cell_height, sight.layout.cell_width) * 0.28F;
  if (marks.none() || radius < 1.5F) {
    return;
  }
  const int first = std::max(0, sight.first_column);
  const int last = std::min(sight.last_column, grid.width() - 1);
  for (int row = std::max(0, sight.first_row); row <= std::min(sight.last_row, grid.height() - 1); ++row) {
    const StitchMarksOfRow draw(sight, radius, row);
    int accepted_from = first;
    for (int column = first; column <= last; ++column) {
      if (is_marked(marks.caught, column, row)) {
        draw.caught(column);
      }
      const bool accepted = is_marked(marks.accepted, column, row);
      if (accepted && (column == last || !is_marked(marks.accepted, column + 1, row))) {
        draw.accepted(accepted_from, column);
      }
      accepted_from = accepted ? accepted_from : column + 1;
      if (is_marked(marks.kept, column, row)) {
        draw.kept(column);
      }
    }
  }
}

void draw_chosen(const Sight& sight, const Mark& mark, const Finding& finding) {
  const Theme& theme = sight.app.theme;
  const Severity severity = finding.severity;
  const Colour colour = severity == Severity::fault     ? theme.fault
                        : severity == Severity::warning ? theme.warning
                                                        : theme.note;
  const float unit = sight.unit();
  each_part(sight, mark, [&](const ScreenBox& box) {
    const ImVec2 low{box.left - 3 * unit, box.top - 3 * unit};
    const ImVec2 high{box.right + 3 * unit, box.bottom + 3 * unit};
    sight.list.AddRect(low, high, ink(theme.panel), 3 * unit, 0, 5 * unit);
    sight.list.AddRect(low, high, ink(colour), 3 * unit, 0, 2.5F * unit);
    if (mark.needle) {
      draw_needle(sight, box, *mark.needle, mark.needle == finding.first_needle, colour);
    }
  });
  if (finding.id == FindingId::float_too_long && finding.first_needle && finding.last_needle) {
    // The knitter sees the bed from the other side: the leftmost needle knits the rightmost column.
    draw_needle(sight, box_of(sight.layout, Cell{mark.last_column, mark.row}), *finding.first_needle, true, colour);
    draw_needle(sight, box_of(sight.layout, Cell{mark.first_column, mark.row}), *finding.last_needle, false, colour);
  }
}

} // namespace

bool float_marked_in(const Sight& sight, int row) {
  const Caches& caches = sight.app.caches;
  const auto& marks = caches.waiting ? caches.waiting->marks : caches.marks;
  const auto& findings = caches.waiting ? caches.waiting->floats : caches.findings;
  return floats_are_marked(sight) && std::ranges::any_of(marks, [&](const Mark& mark) {
           return mark.row == row && is_long_float_of_repeat(findings[static_cast<std::size_t>(mark.finding)]);
         });
}

float float_bar_width(const Sight& sight) {
  return bar_of(sight) + 2;
}

void draw_marks(const Sight& sight) {
  draw_stitch_marks(sight);
  const auto& marks = sight.app.caches.marks;
  const auto& findings = sight.app.caches.findings;
  if (sight.app.caches.waiting) { // its floats, in the frame that shows it
    draw_floats(sight, sight.app.caches.waiting->marks, sight.app.caches.waiting->floats);
  } else {
    draw_floats(sight, marks, findings);
  }
  if (lines_dragged(sight.app)) {
    return; // the chosen finding is about a place where something else is shown
  }
  const Listed* const chosen = listed_for(sight.app.caches, sight.app.view.finding);
  for (const Mark& mark : marks) {
    const bool of_group = chosen != nullptr && chosen->gathers(sight.app.view.finding) && chosen->gathers(mark.finding);
    if (mark.finding == sight.app.view.finding || of_group) {
      draw_chosen(sight, mark, findings[static_cast<std::size_t>(mark.finding)]);
    }
  }
}

void draw_cursor(const Sight& sight, bool has_keys) {
  const Theme& theme = sight.app.theme;
  const ScreenBox box = box_of(sight.layout, sight.app.view.cursor);
  const float unit = sight.unit();
  const ImVec2 low{std::round(box.left) - unit, std::round(box.top) - unit};
  const ImVec2 high{std::round(box.right) + unit, std::round(box.bottom) + unit};
  sight.list.AddRect(low, high, ink(theme.panel), 2 * unit, 0, 4 * unit);
  sight.list.AddRect(low, high, ink(has_keys ? theme.accent : theme.quiet_text), 2 * unit, 0, 2 * unit);
}

} // namespace punchwright::editor
