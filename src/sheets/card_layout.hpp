// One physical card in millimetres: its outline and every hole, from the profile's geometry and the rows to knit.
// Pure numbers in the card's own coordinates; what is drawn around them, and on which paper, is decided elsewhere.
#pragma once

#include "plan/plan.hpp"
#include "sheets/drawing.hpp"

#include <vector>

namespace punchwright {

enum class HoleKind { pattern, overlap, feed, clip };

struct CardHole {
  HoleKind kind = HoleKind::pattern;
  Point centre; // mm from the card's top left corner, face up; y grows downwards
  double diameter = 3.5;
  int row = 0;    // pattern: counted through all cards, from 1
  int column = 0; // pattern and overlap: card column, from 1
};

// Lines of the card, counted from the end that is read first:
//
//     line   rows + 3   o o o o   overlap
//            rows + 2   o o o o   overlap
//            rows + 1   o . o .   the card's last row
//            …
//            2          . o o .   the card's first row
//            1          o o o o   overlap
//            0          o o o o   overlap
class CardLayout {
public:
  CardLayout(const Document& document, const Profile& profile, const RowsToKnit& rows, const Card& card);

  [[nodiscard]] double width() const { return width_; }
  [[nodiscard]] double height() const { return height_; }
  [[nodiscard]] int first_row() const { return card_.first_row; }
  [[nodiscard]] int last_row() const { return card_.first_row + card_.rows - 1; }
  [[nodiscard]] int lines() const { return card_.rows + 2 * overlap_rows; }
  [[nodiscard]] const Card& card() const { return card_; }
  [[nodiscard]] int columns() const { return repeat_; }
  [[nodiscard]] double stitch_pitch() const { return stitch_pitch_; }
  [[nodiscard]] double row_pitch() const { return row_pitch_; }
  [[nodiscard]] double hole_diameter() const { return hole_diameter_; }
  // Row 1 lies lowest, unless the card is fed by its other end.
  [[nodiscard]] bool first_row_lowest() const { return !turned_; }

  // Line of a row counted through all cards, and its height on the card.
  [[nodiscard]] int line_of(int row) const { return row - card_.first_row + overlap_rows; }
  [[nodiscard]] double y_of_line(int line) const;
  [[nodiscard]] double x_of_column(int column) const;

  [[nodiscard]] const std::vector<CardHole>& holes() const { return holes_; }
  // Places of the pattern rows that stay whole.
  [[nodiscard]] const std::vector<Point>& unpunched() const { return unpunched_; }

private:
  void add_lines(const Document& document, const Profile& profile, const RowsToKnit& rows);
  void add_clip_holes(const CardGeometry& geometry);
  void add_feed_holes(const CardGeometry& geometry);
  [[nodiscard]] bool meets_a_clip(Point centre, double diameter) const;

  Card card_;
  double width_;
  double height_;
  double row_pitch_;
  double first_line_; // of the sheet's end to the centre of line 0
  double stitch_pitch_;
  double column_1_; // from the side edge to column 1's centre
  double hole_diameter_;
  int repeat_;
  bool column_1_left_;
  bool turned_;
  std::vector<CardHole> holes_;
  std::vector<Point> unpunched_;
};

} // namespace punchwright
