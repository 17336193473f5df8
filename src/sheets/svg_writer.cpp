// A sheet to SVG 1.1 for cutting machines, browsers and scripts: one user unit is one mm.
// Built as a tree by pugixml, which escapes text; numbers are written without regard to the locale.
#include "sheets/text_metrics.hpp"
#include "sheets/writers.hpp"

#include <cmath>
#include <fmt/format.h>
#include <pugixml.hpp>
#include <sstream>

namespace punchwright {
namespace {

// To a ten-thousandth of a mm, without trailing zeros.
std::string number(double value) {
  const double rounded = std::round(value * 10000.0) / 10000.0;
  return fmt::format("{}", rounded == 0.0 ? 0.0 : rounded);
}

std::string clean(const std::string& text) {
  return utf8_of(characters_of(text));
}

void set(pugi::xml_node node, const char* name, const std::string& value) {
  node.append_attribute(name).set_value(value.c_str());
}

void add_label(pugi::xml_node node, const Label& label) {
  if (!label.class_name.empty()) {
    set(node, "class", label.class_name);
  }
  for (const auto& [name, value] : label.attributes) {
    set(node, name.c_str(), clean(value));
  }
}

void add_paint(pugi::xml_node node, const Paint& paint) {
  set(node, "fill", paint.fill ? hex_of(*paint.fill) : "none");
  if (paint.stroke) {
    set(node, "stroke", hex_of(*paint.stroke));
    set(node, "stroke-width", number(paint.stroke_mm));
    if (paint.dashed) {
      set(node, "stroke-dasharray", "1.2 0.8");
    }
  }
}

void add(pugi::xml_node parent, const CircleShape& circle) {
  auto node = parent.append_child("circle");
  set(node, "cx", number(circle.centre.x));
  set(node, "cy", number(circle.centre.y));
  set(node, "r", number(circle.radius));
  add_label(node, circle.label);
  add_paint(node, circle.paint);
}
void add(pugi::xml_node parent, const RectangleShape& rectangle) {
  auto node = parent.append_child("rect");
  set(node, "x", number(rectangle.corner.x));
  set(node, "y", number(rectangle.corner.y));
  set(node, "width", number(rectangle.width));
  set(node, "height", number(rectangle.height));
  add_label(node, rectangle.label);
  add_paint(node, rectangle.paint);
}
void add(pugi::xml_node parent, const PolylineShape& line) {
  auto node = parent.append_child(line.closed ? "polygon" : "polyline");
  std::string points;
  for (const Point& point : line.points) {
    points += fmt::format("{}{},{}", points.empty() ? "" : " ", number(point.x), number(point.y));
  }
  set(node, "points", points);
  add_label(node, line.label);
  add_paint(node, line.paint);
}
void add(pugi::xml_node parent, const TextShape& text) {
  auto node = parent.append_child("text");
  set(node, "x", number(text.at.x));
  set(node, "y", number(text.at.y));
  set(node, "font-family", "DejaVu Sans, sans-serif");
  set(node, "font-size", number(text.height_mm));
  if (text.bold) {
    set(node, "font-weight", "bold");
  }
  if (text.anchor != Anchor::start) {
    set(node, "text-anchor", text.anchor == Anchor::middle ? "middle" : "end");
  }
  if (text.turned_degrees != 0) {
    set(node, "transform",
        fmt::format("rotate({} {} {})", number(text.turned_degrees), number(text.at.x), number(text.at.y)));
  }
  set(node, "fill", hex_of(text.colour));
  node.append_child(pugi::node_pcdata).set_value(clean(text.text).c_str());
}

} // namespace

std::string svg_of(const Sheet& sheet) {
  pugi::xml_document document;
  auto declaration = document.append_child(pugi::node_declaration);
  set(declaration, "version", "1.0");
  set(declaration, "encoding", "UTF-8");
  auto root = document.append_child("svg");
  set(root, "xmlns", "http://www.w3.org/2000/svg");
  set(root, "version", "1.1");
  set(root, "width", number(sheet.width) + "mm");
  set(root, "height", number(sheet.height) + "mm");
  set(root, "viewBox", fmt::format("0 0 {} {}", number(sheet.width), number(sheet.height)));
  root.append_child("title").append_child(pugi::node_pcdata).set_value(clean(sheet.title).c_str());
  for (const Group& group : sheet.groups) {
    auto node = root.append_child("g");
    if (!group.id.empty()) {
      set(node, "id", group.id);
    }
    for (const Shape& shape : group.shapes) {
      std::visit([&node](const auto& drawn) { add(node, drawn); }, shape);
    }
  }
  std::ostringstream out;
  document.save(out, " ", pugi::format_default, pugi::encoding_utf8);
  return out.str();
}

} // namespace punchwright
