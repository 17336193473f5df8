// The words and numbers around the holes: row numbers at the left, what is done before a row at the right, where the
// knitting starts, which way the card travels and which side faces the knitter.
#include "sheets/card_drawing.hpp"
#include "sheets/shapes.hpp"
#include "sheets/text_metrics.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace punchwright {
namespace {

class MarginMarks {
public:
  MarginMarks(std::vector<Shape>& marks, const CardLayout& layout, const CardPart& part, Point origin,
              const CardStyle& style)
      : marks_(marks), layout_(layout), part_(part), origin_(origin), style_(style), strips_(free_strips(layout)) {}

  void numbers_and_actions(const CardNotes& notes) {
    for (const LineNote& note : notes.lines) {
      const int line = layout_.line_of(note.row);
      if (line < 0 || line >= layout_.lines() || !part_.holds(layout_.y_of_line(line)) ||
          belongs_elsewhere(note.row, notes.rows_in_all)) {
        continue;
      }
      number(note, layout_.y_of_line(line));
      if (!note.action.empty()) {
        action(note, layout_.y_of_line(line));
        lines_with_action_.push_back(line);
      }
    }
  }

  // Actions whose number has no line any more, beside the card's last end.
  void beyond(const CardNotes& notes) {
    const double end = layout_.first_row_lowest() ? 0.0 : layout_.height();
    if (end < part_.top || end > part_.bottom) {
      return;
    }
    const double size = 2.2;
    double y = layout_.first_row_lowest() ? 2.0 : layout_.height() - 8.0;
    for (const LineNote& note : notes.beyond) {
      for (const std::string& text :
           lines_of(fmt::format("{}: {}", note.number, note.action), size, false, style_.notes_width)) {
        if (y > 11.0 && layout_.first_row_lowest()) {
          return; // the cover and the needle chart have them all
        }
        at({notes_x(), y}, text, size, Anchor::start);
        y += size * 1.15;
      }
    }
  }

  // Beside row 1: the place on which the card is locked.
  void start() {
    const double y = layout_.y_of_line(layout_.line_of(1));
    if (layout_.first_row() != 1 || !part_.holds(y)) {
      return;
    }
    const double x = layout_.width();
    triangle({strips_.right_from + 0.6, y}, 2.2, 1.5, ink::black);
    stroke({x + 0.6, y}, {x + notes_gap - 0.8, y}, 0.3);
    const double size = 2.4;
    auto lines = lines_of("knitting starts here", size, true, style_.notes_width);
    const std::size_t bold_lines = lines.size();
    for (auto& line : lines_of("lock the card with row 1 under the reader", size, false, style_.notes_width)) {
      lines.push_back(std::move(line));
    }
    double text_y = layout_.first_row_lowest() ? y + 0.9 : y + 0.9 - 2.9 * static_cast<double>(lines.size() - 1);
    for (std::size_t index = 0; index < lines.size(); ++index) {
      const bool bold = index < bold_lines;
      at({notes_x(), text_y}, fitting_text(lines[index], size, bold, style_.notes_width), size, Anchor::start, bold);
      text_y += 2.9;
    }
  }

  // In the free strips at both ends of the sheet.
  void words(const CardWords& words) {
    const std::string name = words.title.empty() ? "card" : words.title;
    const std::string rest =
        words.profile + (words.number.empty() ? "" : " · " + words.number) + " · this side towards you";
    const double size = std::min(2.8, strips_.end * 0.3);
    if (size < 1.4) {
      return;
    }
    const double room = room_between_clips() - 16.0;
    for (const bool top : {true, false}) {
      const double edge = top ? 0.0 : layout_.height();
      if (!part_.holds(top ? edge + 0.01 : edge - 0.01)) {
        continue;
      }
      const double y = top ? size * 1.35 : layout_.height() - size * 1.75;
      at({layout_.width() / 2, y}, fitting_text(name, size, true, room), size, Anchor::middle, true);
      at({layout_.width() / 2, y + size * 1.2}, fitting_text(rest, size * 0.85, false, room), size * 0.85,
         Anchor::middle);
      travel_arrow({layout_.width() / 2 - room / 2 - 4.0, y + size * 0.25}, size * 1.9);
      travel_arrow({layout_.width() / 2 + room / 2 + 4.0, y + size * 0.25}, size * 1.9);
    }
  }

  // Along the right strip, once a part or more.
  void side_words() {
    const double size = std::min(2.6, (strips_.right_to - strips_.right_from) * 0.35);
    if (size < 1.4) {
      return;
    }
    const double x = (strips_.right_from + 3.2 + strips_.right_to) / 2;
    const double from = std::max(part_.top, 0.0);
    const double to = std::min(part_.bottom, layout_.height());
    const std::string text = "this side towards you  ·  the card travels this way";
    const double length = width_of(text, size, false) + 8.0;
    const int times = std::max(0, static_cast<int>((to - from - 30.0) / std::max(length + 25.0, 1.0)));
    for (int index = 0; index < std::max(times, to - from - 30.0 > length ? 1 : 0); ++index) {
      const double share = (to - from) / std::max(times, 1);
      const double middle = from + (index + 0.5) * share;
      const double down = layout_.first_row_lowest() ? 1.0 : -1.0;
      TextShape words = text_shape({origin_.x + x - down * size * 0.36, origin_.y + middle - down * 4.0}, text, size,
                                   Anchor::middle, false, ink::dark);
      words.turned_degrees = down > 0 ? 90 : -90; // reads towards the end that goes in first
      marks_.push_back(words);
      travel_arrow({x, middle + down * (length / 2 - 2.0)}, 5.0);
    }
  }

  void overlap_words() {
    for (const int line : {0, layout_.lines() - overlap_rows}) {
      const bool first_end = line == 0;
      const double one = layout_.y_of_line(line);
      const double other = layout_.y_of_line(line + 1);
      const double y = first_end ? one : std::max(one, other);
      // Row 1's note already stands at the first end of the first card.
      if (!part_.holds(y) || (first_end && layout_.first_row() == 1)) {
        continue;
      }
      // What hands do goes before: numbers stand some lines above their row, and so beside the overlap too.
      if (std::ranges::any_of(lines_with_action_, [&](int taken) { return taken == line || taken == line + 1; })) {
        continue;
      }
      at({notes_x(), y + (first_end ? 0.0 : 0.9)},
         fitting_text("2 overlap rows: punch all", 2.2, false, style_.notes_width), 2.2, Anchor::start, false,
         ink::dark);
    }
  }

private:
  // In the middle of the sheet's ends, where no clip hole lies.
  [[nodiscard]] double room_between_clips() const {
    double half = layout_.width() / 2 - strips_.left_to;
    for (const CardHole& hole : layout_.holes()) {
      if (hole.kind == HoleKind::clip) {
        half = std::min(half, std::abs(layout_.width() / 2 - hole.centre.x) - hole.diameter / 2 - 0.5);
      }
    }
    return 2 * half;
  }

  [[nodiscard]] double notes_x() const { return layout_.width() + notes_gap; }

  // Overlap rows lie over the neighbouring card's rows, and those carry the numbers; only the last card's end has none.
  [[nodiscard]] bool belongs_elsewhere(int row, int rows_in_all) const {
    return row < layout_.first_row() || (row > layout_.last_row() && row <= rows_in_all);
  }

  void at(Point place, const std::string& text, double size, Anchor anchor, bool bold = false,
          Colour colour = ink::black) {
    marks_.push_back(text_shape({origin_.x + place.x, origin_.y + place.y}, text, size, anchor, bold, colour));
  }
  void stroke(Point from, Point to, double width, Colour colour = ink::black) {
    marks_.push_back(line_shape({origin_.x + from.x, origin_.y + from.y}, {origin_.x + to.x, origin_.y + to.y},
                                line_paint(colour, width)));
  }
  // Points to the left, its tip at `tip`.
  void triangle(Point tip, double length, double half, Colour colour) {
    const Point place{origin_.x + tip.x, origin_.y + tip.y};
    marks_.push_back(PolylineShape{
        {place, {place.x + length, place.y - half}, {place.x + length, place.y + half}}, true, fill_paint(colour), {}});
  }

  void number(const LineNote& note, double y) {
    const double size = std::min({2.7, layout_.row_pitch() * 0.6, (strips_.left_to - strips_.left_from) * 0.42});
    if (size < 1.0) {
      return;
    }
    const bool fifth = note.number % 5 == 0;
    const double x = strips_.left_to - 1.2;
    at({x, y + size * 0.36}, fmt::format("{}", note.number), size, Anchor::end, fifth, fifth ? ink::black : ink::dark);
    if (note.circuit_start) {
      // Between this number's line and the one before it, on the side of the end that is read first.
      const double between = y + (layout_.first_row_lowest() ? 0.5 : -0.5) * layout_.row_pitch();
      stroke({strips_.left_from, between}, {strips_.left_to, between}, 0.3);
    }
  }

  // A mark in the card's margin, a leader across its edge, and the words on the paper beside it.
  void action(const LineNote& note, double y) {
    triangle({strips_.right_from + 0.6, y}, 1.7, 1.1, ink::dark);
    stroke({layout_.width() + 0.6, y}, {layout_.width() + notes_gap - 0.8, y}, 0.15, ink::middle);
    const std::string text = fmt::format("{}: {}", note.number, note.action);
    double size = 2.4;
    auto lines = lines_of(text, size, false, style_.notes_width);
    if (lines.size() > 1) {
      size = std::min(2.1, layout_.row_pitch() * 0.42);
      lines = lines_of(text, size, false, style_.notes_width);
    }
    if (lines.size() > 2) {
      lines[1] += "…";
      lines.resize(2);
    }
    double line_y = y + size * 0.36 - (static_cast<double>(lines.size()) - 1.0) * size * 0.56;
    for (const std::string& line : lines) {
      at({notes_x(), line_y}, fitting_text(line, size, false, style_.notes_width), size, Anchor::start);
      line_y += size * 1.12;
    }
  }

  // The way the card goes into the machine: towards the end that is read first.
  void travel_arrow(Point middle, double length) {
    const double down = layout_.first_row_lowest() ? 1.0 : -1.0;
    const double x = origin_.x + middle.x;
    const double y = origin_.y + middle.y;
    const double tip = y + down * length / 2;
    const double neck = tip - down * length * 0.5;
    marks_.push_back(line_shape({x, y - down * length / 2}, {x, neck}, line_paint(ink::dark, 0.6)));
    marks_.push_back(PolylineShape{
        {{x, tip}, {x - length * 0.26, neck}, {x + length * 0.26, neck}}, true, fill_paint(ink::dark), {}});
  }

  std::vector<Shape>& marks_;
  std::vector<int> lines_with_action_; // from the sheet's first end
  const CardLayout& layout_;
  const CardPart& part_;
  Point origin_;
  const CardStyle& style_;
  FreeStrips strips_;
};

} // namespace

void add_margin_marks(std::vector<Shape>& marks, const CardLayout& layout, const CardNotes& notes,
                      const CardWords& words, const CardPart& part, Point origin, const CardStyle& style) {
  MarginMarks margin(marks, layout, part, origin, style);
  margin.numbers_and_actions(notes);
  margin.beyond(notes);
  margin.start();
  margin.words(words);
  margin.side_words();
  margin.overlap_words();
}

} // namespace punchwright
