// Shapes to operators. Neighbouring lines of the same paint become one path, and colours and widths are only said when
// they change: that keeps a card's page at some tens of kilobytes.
#include "sheets/pdf_content.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <fmt/format.h>
#include <numbers>
#include <optional>

namespace punchwright {
namespace {

constexpr double points_per_mm = 72.0 / 25.4;

class PageWriter {
public:
  PageWriter(std::string& text, PdfResources& resources) : text_(text), resources_(resources) {}

  void write(const Sheet& sheet) {
    // From here on one unit is a millimetre, and y grows downwards from the sheet's top left corner.
    text_ += fmt::format("{0:.6f} 0 0 -{0:.6f} 0 {1:.4f} cm\n", points_per_mm, sheet.height * points_per_mm);
    for (const Group& group : sheet.groups) {
      for (const Shape& shape : group.shapes) {
        std::visit([this](const auto& drawn) { add(drawn); }, shape);
      }
    }
    finish_lines();
  }

private:
  void numbers(std::initializer_list<double> values, const char* operation) {
    for (const double value : values) {
      add_number(text_, value);
      text_ += ' ';
    }
    text_ += operation;
    text_ += '\n';
  }

  void add(const CircleShape& circle) {
    finish_lines();
    const CircleKind kind{circle.radius, circle.paint};
    auto& kinds = resources_.circles;
    // The same kind mostly comes again at once, so the search begins at the end.
    auto index = kinds.size();
    while (index > 0 && !(kinds[index - 1] == kind)) {
      --index;
    }
    if (index == 0) {
      kinds.push_back(kind);
      index = kinds.size();
    }
    text_ += "q 1 0 0 1 ";
    numbers({circle.centre.x, circle.centre.y}, "cm");
    text_ += "/C";
    text_ += std::to_string(index - 1);
    text_ += " Do Q\n";
  }

  void add(const RectangleShape& rectangle) {
    finish_lines();
    set(rectangle.paint);
    numbers({rectangle.corner.x, rectangle.corner.y, rectangle.width, rectangle.height}, "re");
    text_ += painting(rectangle.paint);
  }

  void add(const PolylineShape& line) {
    if (line.points.empty()) {
      return;
    }
    const bool joins = !line.closed && !line.paint.fill && line.paint.stroke.has_value();
    if (!joins || open_lines_ != line.paint) {
      finish_lines();
      set(line.paint);
    }
    bool first = true;
    for (const Point& point : line.points) {
      numbers({point.x, point.y}, first ? "m" : "l");
      first = false;
    }
    if (joins) {
      open_lines_ = line.paint;
      return;
    }
    text_ += line.closed ? "h " : "";
    text_ += painting(line.paint);
  }

  void add(const TextShape& shape) {
    finish_lines();
    PdfFont& font = shape.bold ? resources_.bold : resources_.regular;
    const double share = shape.anchor == Anchor::start ? 0.0 : (shape.anchor == Anchor::middle ? 0.5 : 1.0);
    const double back = share == 0.0 ? 0.0 : share * width_of(shape.text, shape.height_mm, shape.bold);
    const double turned = shape.turned_degrees * std::numbers::pi / 180.0;
    const double along = std::cos(turned);
    const double across = std::sin(turned);
    set_fill(shape.colour);
    text_ += shape.bold ? "BT /F1 " : "BT /F0 ";
    numbers({shape.height_mm}, "Tf");
    // Letters stand upright although y grows downwards.
    numbers({along, across, across, -along, shape.at.x - along * back, shape.at.y - across * back}, "Tm");
    text_ += '<';
    font.add_glyphs(text_, shape.text);
    text_ += "> Tj ET\n";
  }

  void finish_lines() {
    if (open_lines_) {
      text_ += "S\n";
      open_lines_.reset();
    }
  }

  [[nodiscard]] static const char* painting(const Paint& paint) {
    return paint.fill && paint.stroke ? "B\n" : (paint.fill ? "f\n" : (paint.stroke ? "S\n" : "n\n"));
  }

  void set_fill(Colour colour) {
    if (fill_ != colour) {
      numbers({colour.red / 255.0, colour.green / 255.0, colour.blue / 255.0}, "rg");
      fill_ = colour;
    }
  }

  void set(const Paint& paint) {
    if (paint.fill) {
      set_fill(*paint.fill);
    }
    if (!paint.stroke) {
      return;
    }
    if (stroke_ != *paint.stroke) {
      numbers({paint.stroke->red / 255.0, paint.stroke->green / 255.0, paint.stroke->blue / 255.0}, "RG");
      stroke_ = *paint.stroke;
    }
    if (width_ != paint.stroke_mm) {
      numbers({paint.stroke_mm}, "w");
      width_ = paint.stroke_mm;
    }
    if (dashed_ != paint.dashed) {
      text_ += paint.dashed ? "[1.2 0.8] 0 d\n" : "[] 0 d\n";
      dashed_ = paint.dashed;
    }
  }

  std::string& text_;
  PdfResources& resources_;
  std::optional<Paint> open_lines_; // a path of lines that is not yet stroked
  std::optional<Colour> fill_;
  std::optional<Colour> stroke_;
  double width_ = -1;
  bool dashed_ = false;
};

} // namespace

void add_number(std::string& text, double value) {
  auto thousandths = std::llround(value * 1000.0);
  if (thousandths < 0) {
    text += '-';
    thousandths = -thousandths;
  }
  char digits[24];
  const auto written = std::to_chars(digits, digits + sizeof digits, thousandths / 1000);
  text.append(digits, written.ptr);
  auto rest = static_cast<int>(thousandths % 1000);
  if (rest != 0) {
    text += '.';
    for (int place = 100; rest != 0; place /= 10) {
      text += static_cast<char>('0' + rest / place);
      rest %= place;
    }
  }
}

void write_page(std::string& text, const Sheet& sheet, PdfResources& resources) {
  text.clear();
  PageWriter(text, resources).write(sheet);
}

std::string circle_content(const CircleKind& kind) {
  // Four curves; with this handle they leave the true circle by less than 0.03 % of the radius.
  constexpr double handle = 0.5522847498;
  const double r = kind.radius;
  const double h = r * handle;
  std::string text;
  const auto add = [&text](std::initializer_list<double> values, const char* operation) {
    for (const double value : values) {
      add_number(text, value);
      text += ' ';
    }
    text += operation;
    text += '\n';
  };
  if (kind.paint.fill) {
    add({kind.paint.fill->red / 255.0, kind.paint.fill->green / 255.0, kind.paint.fill->blue / 255.0}, "rg");
  }
  if (kind.paint.stroke) {
    add({kind.paint.stroke->red / 255.0, kind.paint.stroke->green / 255.0, kind.paint.stroke->blue / 255.0}, "RG");
    add({kind.paint.stroke_mm}, "w");
    text += kind.paint.dashed ? "[1.2 0.8] 0 d\n" : "[] 0 d\n";
  }
  add({r, 0}, "m");
  add({r, h, h, r, 0, r}, "c");
  add({-h, r, -r, h, -r, 0}, "c");
  add({-r, -h, -h, -r, 0, -r}, "c");
  add({h, -r, r, -h, r, 0}, "c");
  text += kind.paint.fill && kind.paint.stroke ? "b\n" : (kind.paint.fill ? "f\n" : "s\n");
  return text;
}

} // namespace punchwright
