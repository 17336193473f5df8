// Paper sizes, and the division of every coordinate by the print correction.
#include "sheets/page_frame.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright {
namespace {

class Correction {
public:
  explicit Correction(const PageFrame& frame) : frame_(frame), both_(std::sqrt(frame.scale_x * frame.scale_y)) {}

  void operator()(CircleShape& circle) const {
    move(circle.centre);
    circle.radius /= both_;
  }
  void operator()(RectangleShape& rectangle) const {
    move(rectangle.corner);
    rectangle.width /= frame_.scale_x;
    rectangle.height /= frame_.scale_y;
  }
  void operator()(PolylineShape& line) const {
    for (Point& point : line.points) {
      move(point);
    }
  }
  // Letters keep their shape; they only have to stay where they belong.
  void operator()(TextShape& text) const {
    move(text.at);
    text.height_mm /= std::max(frame_.scale_x, frame_.scale_y);
  }

private:
  void move(Point& point) const {
    point.x /= frame_.scale_x;
    point.y /= frame_.scale_y;
  }

  const PageFrame& frame_;
  double both_;
};

} // namespace

PageFrame frame_for(Paper paper, double scale_x, double scale_y) {
  if (paper == Paper::letter) {
    return {215.9, 279.4, scale_x, scale_y};
  }
  return {210.0, 297.0, scale_x, scale_y};
}

PageFrame roll_frame(double width, double height, double scale_x, double scale_y) {
  constexpr double narrowest_roll = 210.0;
  return {std::max(narrowest_roll, width / scale_x + 2 * free_margin), height / scale_y + 2 * free_margin, scale_x,
          scale_y};
}

Sheet printed_sheet(Sheet laid_out, const PageFrame& frame) {
  laid_out.width = frame.paper_width;
  laid_out.height = frame.paper_height;
  if (frame.scale_x == 1.0 && frame.scale_y == 1.0) {
    return laid_out;
  }
  const Correction correct(frame);
  for (Group& group : laid_out.groups) {
    for (Shape& shape : group.shapes) {
      std::visit(correct, shape);
    }
  }
  return laid_out;
}

} // namespace punchwright
