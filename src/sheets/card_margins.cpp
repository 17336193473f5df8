// The words and numbers around the holes: row numbers at the left, what is done before a row at the right, where the
// knitting starts, which way the card travels and which side faces the knitter.
#include "sheets/card_drawing.hpp"
#include "sheets/shapes.hpp"
#include "sheets/text_metrics.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace punchwright {
namespace {

constexpr double smallest_words = 1.0; // mm high

class MarginMarks {
public:
  MarginMarks(std::vector<Shape>& marks, const CardLayout& layout, const CardPart& part, Point origin)
      : marks_(marks), layout_(layout), part_(part), origin_(origin), strips_(free_strips(layout)) {}

  void numbers(const CardNotes& notes) {
    for (const LineNote& note : notes.lines) {
      const auto y = y_of_note(layout_, notes, note);
      if (y && part_.holds(*y)) {
        number(note, *y);
      }
    }
  }

  // A mark on the card, a leader across its edge, and the words on the paper beside it.
  void note(const PlacedNote& note) {
    if (note.kind == NoteKind::start) {
      triangle({strips_.right_from + 0.6, note.line}, 2.2, 1.5, ink::black);
    } else if (note.kind == NoteKind::action) {
      triangle({strips_.right_from + 0.6, note.line}, 1.7, 1.1, ink::dark);
    }
    if (note.lines.empty()) {
      return;
    }
    if (note.kind != NoteKind::beyond) {
      leader(note.line, note.middle, note.kind == NoteKind::start);
    }
    const double leading = note.type * note_leading;
    double y = note.middle + note.type * 0.36 - static_cast<double>(note.lines.size() - 1) * leading / 2;
    for (const NoteLine& line : note.lines) {
      at({layout_.width() + notes_gap, y}, line.text, note.type, Anchor::start, line.bold,
         note.kind == NoteKind::overlap ? ink::dark : ink::black);
      y += leading;
    }
  }

  // In the free strips at both ends of the sheet.
  void words(const CardWords& words) {
    const std::string name = words.title.empty() ? tr("card") : words.title;
    const double size = std::min(2.8, strips_.end * 0.3);
    if (size < 1.4) {
      return;
    }
    const double room = room_between_clips() - 16.0;
    const EndLine line = end_line(words, size * 0.85, room);
    for (const bool top : {true, false}) {
      const double edge = top ? 0.0 : layout_.height();
      if (!part_.holds(top ? edge + 0.01 : edge - 0.01)) {
        continue;
      }
      const double y = top ? size * 1.35 : layout_.height() - size * 1.75;
      at({layout_.width() / 2, y}, fitting_text(name, size, true, room), size, Anchor::middle, true);
      at({layout_.width() / 2, y + size * 1.2}, line.text, line.size, Anchor::middle);
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
    const std::string text = tr("this side towards you  ·  the card travels this way");
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

private:
  struct EndLine {
    std::string text;
    double size;
  };
  // Which side and which card it is must be there; on a narrow sheet they are set smaller, and the profile's name gives
  // way.
  static EndLine end_line(const CardWords& words, double size, double room) {
    const std::string number = words.number.empty() ? "" : " · " + words.number;
    const std::string side = tr("this side towards you");
    const std::string whole = words.profile + number + " · " + side;
    if (width_of(whole, size, false) <= room) {
      return {whole, size};
    }
    const std::string needed = side + number;
    const double width = width_of(needed, size, false);
    if (width > room) {
      return {needed, std::max(smallest_words, size * room / width)};
    }
    return {fitting_text(needed + " · " + words.profile, size, false, room), size};
  }

  // In the middle of the sheet's ends, between the feed holes and the clip holes; no row's number stands there.
  [[nodiscard]] double room_between_clips() const {
    double half = layout_.width() / 2 - strips_.left_from;
    for (const CardHole& hole : layout_.holes()) {
      if (hole.kind == HoleKind::clip) {
        half = std::min(half, std::abs(layout_.width() / 2 - hole.centre.x) - hole.diameter / 2 - 0.5);
      }
    }
    return 2 * half;
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

  // Level at both ends, so that it is seen which line and which note it joins; leaders never cross, since the notes
  // keep their lines' order.
  void leader(double from, double to, bool strong) {
    const double edge = origin_.x + layout_.width();
    const double bend = 1.8; // mm
    PolylineShape line{{{edge + 0.6, origin_.y + from}},
                       false,
                       line_paint(strong ? ink::black : ink::middle, strong ? 0.3 : 0.15),
                       {}};
    if (std::abs(to - from) > 0.05) {
      line.points.push_back({edge + bend, origin_.y + from});
      line.points.push_back({edge + notes_gap - bend, origin_.y + to});
    }
    line.points.push_back({edge + notes_gap - 0.8, origin_.y + to});
    marks_.push_back(std::move(line));
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
  const CardLayout& layout_;
  const CardPart& part_;
  Point origin_;
  FreeStrips strips_;
};

} // namespace

void add_margin_marks(std::vector<Shape>& marks, const CardLayout& layout, const CardNotes& notes,
                      const CardWords& words, const CardPart& part, const MarginColumn& column, Point origin) {
  MarginMarks margin(marks, layout, part, origin);
  margin.numbers(notes);
  for (const PlacedNote& note : column.notes) {
    margin.note(note);
  }
  margin.words(words);
  margin.side_words();
}

} // namespace punchwright
