// A sheet described once in millimetres, as a list of shapes; the writers (PDF, SVG, PNG) and the editor's preview
// draw the same list, so that paper and pixels can't drift apart.
#pragma once

#include "design/document.hpp"

#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace punchwright {

struct Point { // mm from the sheet's top left corner; y grows downwards
  double x = 0;
  double y = 0;
  bool operator==(const Point&) const = default;
};

struct Paint {
  std::optional<Colour> stroke;
  double stroke_mm = 0.2;
  std::optional<Colour> fill;
  bool dashed = false;
  bool operator==(const Paint&) const = default;
};

// What scripts read in the SVG: a class and attributes ("data-row" = "12").
struct Label {
  std::string class_name;
  std::vector<std::pair<std::string, std::string>> attributes;
};

struct CircleShape {
  Point centre;
  double radius = 1;
  Paint paint;
  Label label;
};
struct RectangleShape {
  Point corner; // top left
  double width = 0;
  double height = 0;
  Paint paint;
  Label label;
};
struct PolylineShape {
  std::vector<Point> points;
  bool closed = false;
  Paint paint;
  Label label;
};
enum class Anchor { start, middle, end };
struct TextShape {
  Point at; // on the base line
  std::string text;
  double height_mm = 3; // type size: the em, in mm
  Anchor anchor = Anchor::start;
  bool bold = false;
  double turned_degrees = 0; // clockwise about `at`
  Colour colour;
};
using Shape = std::variant<CircleShape, RectangleShape, PolylineShape, TextShape>;

struct Group {
  std::string id; // "cut-holes"; may be empty
  std::vector<Shape> shapes;
};

struct Sheet {
  std::string title;
  double width = 210;
  double height = 297;
  std::vector<Group> groups;
};

// Width of the text in mm as the writers set it.
[[nodiscard]] double width_of(const std::string& text, double height_mm, bool bold);

} // namespace punchwright
