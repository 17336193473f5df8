// 'Measure your blank': a drawing of a blank with the five readings on it, lines to write them on, and rulers.
//
//     D ------------ sheet width -----------
//     C -->|                                    edge to the first column
//          A ------ over so many gaps -----     B upwards: over 50 rows      E: a hole, enlarged
#include "sheets/card_layout.hpp"
#include "sheets/exports.hpp"
#include "sheets/output_names.hpp"
#include "sheets/page_files.hpp"
#include "sheets/page_frame.hpp"
#include "sheets/pages.hpp"
#include "sheets/rulers.hpp"
#include "sheets/shapes.hpp"
#include "sheets/sheet_words.hpp"
#include "sheets/text_column.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace punchwright {
namespace {

constexpr int shown_rows = 13; // of the blank; enough to show what is meant

// A dimension with arrow heads at both ends and its letter on the line.
void add_dimension(std::vector<Shape>& shapes, Point from, Point to, const std::string& letter) {
  const Paint paint = line_paint(ink::black, 0.25);
  const double length = std::hypot(to.x - from.x, to.y - from.y);
  const Point along{(to.x - from.x) / length, (to.y - from.y) / length};
  const Point across{-along.y, along.x};
  shapes.push_back(line_shape(from, to, paint));
  for (const bool end : {false, true}) {
    const Point tip = end ? to : from;
    const double back = end ? -2.2 : 2.2;
    const Point root{tip.x + along.x * back, tip.y + along.y * back};
    shapes.push_back(PolylineShape{
        {tip, {root.x + across.x * 0.7, root.y + across.y * 0.7}, {root.x - across.x * 0.7, root.y - across.y * 0.7}},
        true,
        fill_paint(ink::black),
        {}});
  }
  const Point middle{(from.x + to.x) / 2, (from.y + to.y) / 2};
  CircleShape badge;
  badge.centre = middle;
  badge.radius = 2.7;
  badge.paint = Paint{ink::black, 0.25, Colour{255, 255, 255}, false};
  shapes.push_back(badge);
  shapes.push_back(text_shape({middle.x, middle.y + 1.35}, letter, 3.7, Anchor::middle, true));
}

class BlankPicture {
public:
  // The blank's left edge and lower end lie at `corner`; `reduced`: mm on paper for a mm of the blank.
  BlankPicture(std::vector<Shape>& shapes, const CardReader& card, Point corner, double reduced)
      : shapes_(shapes), card_(card), geometry_(card.geometry), corner_(corner), reduced_(reduced) {}

  void draw() {
    outline();
    for (int row = 0; row < shown_rows; ++row) {
      const double y = geometry_.first_row + row * geometry_.row_pitch;
      for (int column = 0; column < card_.repeat; ++column) {
        hole({geometry_.column_1 + column * geometry_.stitch_pitch, y}, geometry_.hole_diameter);
      }
    }
    for (double y = std::fmod(geometry_.first_row, geometry_.feed_pitch) + geometry_.feed_pitch; y < height() - 6;
         y += geometry_.feed_pitch) {
      hole({geometry_.feed_from_side, y}, geometry_.feed_diameter);
      hole({geometry_.sheet_width - geometry_.feed_from_side, y}, geometry_.feed_diameter);
    }
  }

  void dimensions() {
    const double first = geometry_.column_1;
    const double last = first + (card_.repeat - 1) * geometry_.stitch_pitch;
    const double row = geometry_.first_row;
    const double below = -7.0 / reduced_;
    guide({first, row}, {first, below - 1.5});
    guide({last, row}, {last, below - 1.5});
    add_dimension(shapes_, at({first, below}), at({last, below}), "A");
    guide({0, 0}, {0, below * 2.6});
    guide({geometry_.sheet_width, 0}, {geometry_.sheet_width, below * 2.6});
    add_dimension(shapes_, at({0, below * 2.4}), at({geometry_.sheet_width, below * 2.4}), "D");
    const bool column_1_left = card_.face == CardFace::as_knitter_sees;
    const double edge = column_1_left ? 0 : geometry_.sheet_width;
    const double column = column_1_left ? first : last;
    const double high = row + (shown_rows - 4) * geometry_.row_pitch + geometry_.row_pitch / 2;
    add_dimension(shapes_, at({edge, high}), at({column, high}), "C");
    const double beside = geometry_.sheet_width + 8.0 / reduced_;
    guide({last, row}, {beside + 1.5, row});
    guide({last, height() + 4}, {beside + 1.5, height() + 4});
    add_dimension(shapes_, at({beside, row}), at({beside, height() + 4}), "B");
  }

  [[nodiscard]] double height() const { return geometry_.first_row + shown_rows * geometry_.row_pitch + 2; }

private:
  [[nodiscard]] Point at(Point blank) const { return {corner_.x + blank.x * reduced_, corner_.y - blank.y * reduced_}; }

  // Torn off at the top: the blank goes on.
  void outline() {
    PolylineShape edge;
    edge.paint = Paint{ink::black, 0.3, ink::wash, false};
    edge.points = {at({0, height()}), at({0, 0}), at({geometry_.sheet_width, 0}),
                   at({geometry_.sheet_width, height()})};
    constexpr int teeth = 24;
    for (int tooth = 1; tooth < teeth; ++tooth) {
      edge.points.push_back(
          at({geometry_.sheet_width * (teeth - tooth) / teeth, height() + (tooth % 2 == 0 ? 0.0 : 3.0)}));
    }
    edge.closed = true;
    shapes_.push_back(edge);
  }

  void hole(Point blank, double diameter) {
    CircleShape ring;
    ring.centre = at(blank);
    ring.radius = diameter / 2 * reduced_;
    ring.paint = Paint{ink::dark, 0.12, Colour{255, 255, 255}, false};
    shapes_.push_back(ring);
  }

  void guide(Point from, Point to) { shapes_.push_back(line_shape(at(from), at(to), line_paint(ink::middle, 0.12))); }

  std::vector<Shape>& shapes_;
  const CardReader& card_;
  const CardGeometry& geometry_;
  Point corner_;
  double reduced_;
};

void add_enlarged_hole(std::vector<Shape>& shapes, Point centre) {
  CircleShape hole;
  hole.centre = centre;
  hole.radius = 7.5;
  hole.paint = Paint{ink::black, 0.3, ink::wash, false};
  shapes.push_back(hole);
  add_dimension(shapes, {centre.x - 7.5, centre.y}, {centre.x + 7.5, centre.y}, "E");
}

struct Reading {
  std::string letter;
  std::string what;
  double present = 0;
};

std::vector<Reading> readings_on_page(const CardReader& card) {
  const BlankReadings present = readings_of(card.geometry, card.repeat);
  const int gaps = gaps_measured(card.repeat);
  return {
      {"A", said("over {} holes: from the first to the last of {} in a row", gaps, gaps + 1), present.over_23_holes},
      {"B", tr("over 50 rows: from the middle of a hole to that of the 50th above it"), present.over_50_rows},
      {"C",
       card.face == CardFace::as_knitter_sees
           ? tr("edge to first hole: from the left edge to the middle of the nearest column")
           : tr("edge to first hole: from the right edge to the middle of the nearest column"),
       present.edge_to_first_hole},
      {"D", tr("sheet width: from edge to edge"), present.sheet_width},
      {"E", tr("hole diameter: of one punched hole"), present.hole_diameter}};
}

void add_readings(std::vector<Shape>& shapes, const CardReader& card, const PageFrame& frame, Point corner) {
  double y = corner.y;
  for (const Reading& reading : readings_on_page(card)) {
    shapes.push_back(text_shape({corner.x, y}, reading.letter, 4.2, Anchor::start, true));
    shapes.push_back(
        text_shape({corner.x + 6, y}, fitting_text(reading.what, 2.8, false, frame.right() - corner.x - 62), 2.8));
    shapes.push_back(
        line_shape({frame.right() - 52, y + 0.6}, {frame.right() - 32, y + 0.6}, line_paint(ink::black, 0.25)));
    shapes.push_back(text_shape({frame.right() - 30.5, y}, "mm", 2.8));
    shapes.push_back(text_shape({frame.right(), y},
                                said("now {}", with_decimal_sign(fmt::format("{:g}", reading.present))), 2.6,
                                Anchor::end, false, ink::dark));
    y += 8.0;
  }
}

Sheet measure_sheet(const Profile& profile, const PageFrame& frame) {
  Sheet sheet;
  sheet.title = tr("Measure your blank");
  Group page{"page", {}};
  auto& shapes = page.shapes;
  shapes.push_back(text_shape({frame.left(), frame.top() + 5.6}, sheet.title, 7.0, Anchor::start, true));
  shapes.push_back(text_shape({frame.left(), frame.top() + 11.4},
                              fitting_text(fmt::format("{} · {} · {}", profile.name, title_of_machine(profile),
                                                       tr("print at 100 %, do not scale")),
                                           3.1, false, frame.width()),
                              3.1, Anchor::start, false, ink::dark));
  TextColumn text(shapes, {frame.left(), frame.top() + 14.5}, frame.width(), frame.bottom());
  text.paragraph(
      tr("Five readings with a steel ruler make the card template fit your own blanks. Lay a punched or printed blank "
         "face up, the end that goes into the machine first towards you; measure from middle to middle, to a "
         "fifth of a millimetre. Then type the readings into the editor's machine panel, 'measure your blank'."),
      3.0);
  const Point corner{frame.left() + ruler_breadth, frame.bottom() - ruler_breadth};
  add_ruler_across(shapes, corner);
  add_ruler_up(shapes, corner);
  const double left = corner.x + 9;
  const double readings_top = corner.y - 42;
  add_readings(shapes, *profile.card, frame, {left, readings_top});
  const double room_across = frame.right() - left - 16;
  const double room_up = readings_top - 12 - 22 - (text.y() + 26);
  BlankPicture whole(shapes, *profile.card, {0, 0}, 1);
  const double reduced = std::min(room_across / profile.card->geometry.sheet_width, room_up / whole.height());
  BlankPicture picture(shapes, *profile.card, {left, readings_top - 12 - 20}, reduced);
  picture.draw();
  picture.dimensions();
  add_enlarged_hole(shapes, {frame.right() - 14, text.y() + 12});
  shapes.push_back(
      text_shape({frame.right() - 24, text.y() + 13}, tr("a hole, enlarged"), 2.6, Anchor::end, false, ink::dark));
  sheet.groups.push_back(std::move(page));
  return printed_sheet(std::move(sheet), frame);
}

} // namespace

Result<std::vector<Sheet>> pages_of_measuring(const Profile& profile, Paper paper) {
  if (!profile.card) {
    return Error{{},
                 0,
                 0,
                 said("the machine '{}' reads no card, so there is no blank to measure", profile.name),
                 tr("choose a machine with a card")};
  }
  return std::vector<Sheet>{measure_sheet(profile, frame_for(paper, 1, 1))};
}

Result<std::vector<OutputFile>> measure_files(const Profile& profile, Paper paper, const std::string& path) {
  const auto pages = pages_of_measuring(profile, paper);
  if (!pages) {
    return pages.error();
  }
  const std::string extension = extension_in(path);
  if (extension != ".pdf" && extension != ".svg" && extension != ".png") {
    return Error{
        {}, 0, 0, said("'Measure your blank' can't be written as '{}'", extension), tr("allowed: .pdf, .svg, .png")};
  }
  return files_of_pages(*pages, path);
}

} // namespace punchwright
