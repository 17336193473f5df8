// Title, rulers and test square of a first page.
#include "sheets/cover_frame.hpp"

#include "sheets/rulers.hpp"
#include "sheets/shapes.hpp"
#include "words/words.hpp"

#include <fmt/format.h>

namespace punchwright {
namespace {

constexpr double gutter = 5.0;

// 1.000, or as many digits as the correction needs; with a point, since it is typed into a file.
std::string correction_text(double scale) {
  return fmt::format("{:.4g}", scale);
}

void add_size_check(std::vector<Shape>& shapes, Point corner, const PageFrame& frame) {
  add_test_square(shapes, corner);
  TextColumn column(shapes, {corner.x + 5, corner.y + 4}, test_square - 10, corner.y + test_square - 3);
  column.paragraph("100 × 100 mm", 4.2, true);
  column.heading(tr("Check the size before you punch"));
  column.item(
      tr("Lay a steel ruler along both printed rulers. Each has to be 150 mm long, this square 100 mm on every side."));
  column.item(
      tr("If not, see first whether the printer was told to fit or shrink the page, and print again at 100 %."));
  column.item(tr("If it still differs, type what the two rulers measure into the editor's card panel; or work out the "
                 "new correction for the file's [card] table:"));
  column.gap(1.0);
  column.paragraph(tr("new scale_x = present scale_x × measured across / 150"), 2.7, true);
  column.paragraph(tr("new scale_y = present scale_y × measured upwards / 150"), 2.7, true);
  column.gap(1.0);
  column.paragraph(said("Present correction of this print: scale_x = {}, scale_y = {}.", correction_text(frame.scale_x),
                        correction_text(frame.scale_y)));
  column.gap(1.5);
  column.paragraph(tr("measured across: ____________ mm"), 3.0);
  column.gap(2.5);
  column.paragraph(tr("measured upwards: ____________ mm"), 3.0);
}

double add_title(std::vector<Shape>& shapes, const PageFrame& frame, const std::string& title,
                 const std::string& subtitle, int pages) {
  const double y = frame.top();
  const std::string page = said("page {} of {}", 1, pages);
  const double page_width = width_of(page, 3.0, false) + 6.0;
  shapes.push_back(title_shape({frame.left(), y + 5.6}, title, 7.0, 4.0, frame.width() - page_width));
  shapes.push_back(text_shape({frame.right(), y + 5.6}, page, 3.0, Anchor::end));
  shapes.push_back(text_shape({frame.left(), y + 11.4}, fitting_text(subtitle, 3.1, false, frame.width()), 3.1,
                              Anchor::start, false, ink::dark));
  RectangleShape box;
  box.corner = {frame.left(), y + 14.5};
  box.width = frame.width();
  box.height = 11.0;
  box.paint = Paint{ink::black, 0.4, ink::wash, false};
  shapes.push_back(box);
  shapes.push_back(text_shape({frame.left() + frame.width() / 2, y + 19.0}, tr("PRINT AT 100 % — “ACTUAL SIZE”"), 4.0,
                              Anchor::middle, true));
  shapes.push_back(text_shape({frame.left() + frame.width() / 2, y + 23.6},
                              tr("Do not scale, fit or shrink the pages: the holes would not meet the machine's."), 2.9,
                              Anchor::middle));
  return y + 27.5;
}

} // namespace

CoverAreas add_cover_frame(std::vector<Shape>& shapes, const PageFrame& frame, const std::string& title,
                           const std::string& subtitle, int pages) {
  const double upper_top = add_title(shapes, frame, title, subtitle, pages);
  const Point corner{frame.left() + ruler_breadth, frame.bottom() - ruler_breadth};
  add_ruler_across(shapes, corner);
  add_ruler_up(shapes, corner);
  const double ruler_top = corner.y - ruler_length;
  const Point square{corner.x + gutter, ruler_top};
  add_size_check(shapes, square, frame);
  const double middle = frame.left() + frame.width() * 0.52;
  const double below = square.y + test_square + 1.5;
  CoverAreas areas;
  areas.upper_left = {frame.left(), upper_top, middle - gutter, ruler_top - 2};
  areas.upper_right = {middle, upper_top, frame.right(), ruler_top - 2};
  areas.beside_square = {square.x + test_square + gutter, ruler_top - 2.0, frame.right(), square.y + test_square};
  areas.below_left = {square.x, below, square.x + test_square + 4, corner.y - 2};
  areas.below_right = {square.x + test_square + 4 + gutter, below, frame.right(), corner.y - 2};
  return areas;
}

} // namespace punchwright
