// Shapes to cairo calls. Neighbouring shapes of one kind and paint go into one path: a card has thousands of circles,
// and a path each makes the file three times as large and as slow.
#include "sheets/cairo_canvas.hpp"

#include "sheets/point_runs.hpp"
#include "sheets/short_strokes.hpp"
#include "sheets/text_metrics.hpp"
#include "words/words.hpp"

#include <array>
#include <cairo-ft.h>
#include <map>
#include <numbers>
#include <utility>

namespace punchwright {
namespace {

// A face with the library that it lives in; goes when cairo lets go of the font.
struct OpenFont {
  FT_Library library = nullptr;
  FT_Face face = nullptr;

  OpenFont() = default;
  OpenFont(const OpenFont&) = delete;
  OpenFont& operator=(const OpenFont&) = delete;
  ~OpenFont() {
    if (face != nullptr) {
      FT_Done_Face(face);
    }
    if (library != nullptr) {
      FT_Done_FreeType(library);
    }
  }
};

// cairo knows attached data by the address of such a key.
constexpr cairo_user_data_key_t open_font_key{};

Result<CairoFontFace> load_face(bool bold) {
  auto font = std::make_unique<OpenFont>();
  if (FT_Init_FreeType(&font->library) != 0 ||
      FT_New_Face(font->library, font_file(bold).c_str(), 0, &font->face) != 0) {
    return Error{font_file(bold), 0, 0, tr("the font can't be read"), tr("install Debian's package fonts-dejavu-core")};
  }
  CairoFontFace face(cairo_ft_font_face_create_for_ft_face(font->face, FT_LOAD_NO_HINTING));
  const auto let_go = [](void* data) { delete static_cast<OpenFont*>(data); };
  const auto status = cairo_font_face_set_user_data(face.get(), &open_font_key, font.get(), let_go);
  if (status != CAIRO_STATUS_SUCCESS) {
    return cairo_error(tr("the font can't be used"), status);
  }
  static_cast<void>(font.release()); // now cairo's, by let_go
  return face;
}

void set_colour(cairo_t* context, Colour colour) {
  cairo_set_source_rgb(context, colour.red / 255.0, colour.green / 255.0, colour.blue / 255.0);
}

void add_path(cairo_t* context, const CircleShape& circle) {
  cairo_new_sub_path(context);
  cairo_arc(context, circle.centre.x, circle.centre.y, circle.radius, 0, 2 * std::numbers::pi);
  cairo_close_path(context);
}
void add_path(cairo_t* context, const RectangleShape& rectangle) {
  cairo_rectangle(context, rectangle.corner.x, rectangle.corner.y, rectangle.width, rectangle.height);
}
void add_path(cairo_t* context, const PolylineShape& line) {
  bool first = true;
  for (const Point& point : line.points) {
    first ? cairo_move_to(context, point.x, point.y) : cairo_line_to(context, point.x, point.y);
    first = false;
  }
  if (line.closed) {
    cairo_close_path(context);
  }
}

// cairo works out how far every dot reaches, point by point around its rim, though a PDF keeps the pen and not the rim.
// A rim of four points, above, below and at both sides, reaches as far. Above the pen's radius cairo takes four.
void coarsen_rims(cairo_t* context, double pen_mm) {
  if (cairo_surface_get_type(cairo_get_target(context)) == CAIRO_SURFACE_TYPE_PDF) {
    double radius = pen_mm / 2;
    double none = 0;
    cairo_user_to_device_distance(context, &radius, &none);
    cairo_set_tolerance(context, radius * 1.5);
  }
}

// Filled circles are drawn as points with a round pen, and points in a row as one dashed line: a card has a thousand
// holes, and as many arcs take twice as long and make the file three times as large.
void stroke_points(cairo_t* context, const PointRuns& runs, double pen_mm, Colour colour) {
  set_colour(context, colour);
  cairo_set_line_width(context, pen_mm);
  coarsen_rims(context, pen_mm);
  for (const auto& [key, lines] : runs) {
    const double distance = distance_of(key);
    const std::array<double, 2> dash{0, distance};
    cairo_set_dash(context, dash.data(), key == 0 ? 0 : 2, 0);
    for (const PointRun& line : lines) {
      // A little beyond the last point, so that no rounding leaves it out.
      const double more = distance / 4;
      cairo_move_to(context, line.first.x, line.first.y);
      cairo_line_to(context, line.last.x + (line.last.x > line.first.x ? more : 0),
                    line.last.y + (line.last.y > line.first.y ? more : 0));
    }
    cairo_stroke(context);
  }
}

void paint_points(cairo_t* context, const std::vector<Point>& centres, double radius, const Paint& paint) {
  const auto runs = point_runs(centres);
  const double usual_tolerance = cairo_get_tolerance(context);
  cairo_set_line_cap(context, CAIRO_LINE_CAP_ROUND);
  if (paint.stroke) {
    stroke_points(context, runs, 2 * radius + paint.stroke_mm, *paint.stroke);
  }
  stroke_points(context, runs, 2 * radius - (paint.stroke ? paint.stroke_mm : 0.0), *paint.fill);
  cairo_set_line_cap(context, CAIRO_LINE_CAP_BUTT);
  cairo_set_tolerance(context, usual_tolerance);
}

bool drawn_as_point(const Shape& shape) {
  const auto* const circle = std::get_if<CircleShape>(&shape);
  return circle != nullptr && circle->paint.fill && !circle->paint.dashed;
}

void paint_strokes(cairo_t* context, const std::vector<Stroke>& strokes, const Paint& paint) {
  set_colour(context, *paint.stroke);
  const auto lines = dashed_lines(strokes, paint.stroke_mm);
  for (std::size_t index = 0; index < lines.size(); ++index) {
    const DashedLine& line = lines[index];
    cairo_move_to(context, line.line.from.x, line.line.from.y);
    cairo_line_to(context, line.line.to.x, line.line.to.y);
    if (index + 1 == lines.size() || !line.same_pen(lines[index + 1])) {
      const std::array<double, 2> dash{line.dash_mm, line.gap_mm};
      cairo_set_dash(context, dash.data(), line.gap_mm > 0 ? 2 : 0, 0);
      cairo_set_line_width(context, line.pen_mm);
      cairo_stroke(context);
    }
  }
}

bool drawn_as_stroke(const Shape& shape) {
  const auto* const line = std::get_if<PolylineShape>(&shape);
  return line != nullptr && line->points.size() == 2 && !line->closed && line->paint.stroke && !line->paint.fill &&
         !line->paint.dashed;
}

void paint_path(cairo_t* context, const Paint& paint) {
  if (cairo_has_current_point(context) == 0) {
    return;
  }
  if (paint.fill) {
    set_colour(context, *paint.fill);
    cairo_fill_preserve(context);
  }
  if (paint.stroke) {
    set_colour(context, *paint.stroke);
    cairo_set_line_width(context, paint.stroke_mm);
    constexpr std::array dash{1.2, 0.8}; // mm
    cairo_set_dash(context, dash.data(), paint.dashed ? 2 : 0, 0);
    cairo_stroke_preserve(context);
  }
  cairo_new_path(context);
}

void draw_text(cairo_t* context, const TextShape& text, const SheetFonts& fonts) {
  const auto characters = characters_of(text.text);
  if (characters.empty()) {
    return;
  }
  cairo_save(context);
  cairo_translate(context, text.at.x, text.at.y);
  cairo_rotate(context, text.turned_degrees * std::numbers::pi / 180.0);
  set_colour(context, text.colour);
  cairo_set_font_face(context, (text.bold ? fonts.bold : fonts.regular).get());
  cairo_set_font_size(context, text.height_mm);
  const double width = width_of(text.text, text.height_mm, text.bold);
  double x = text.anchor == Anchor::start ? 0 : (text.anchor == Anchor::middle ? -width / 2 : -width);
  FT_Face face = cairo_ft_scaled_font_lock_face(cairo_get_scaled_font(context));
  std::vector<cairo_glyph_t> glyphs;
  std::vector<cairo_text_cluster_t> clusters;
  for (const auto& character : characters) {
    glyphs.push_back({face != nullptr ? FT_Get_Char_Index(face, character.code) : 0U, x, 0});
    const std::string bytes = utf8_of({character});
    clusters.push_back({static_cast<int>(bytes.size()), 1});
    x += width_of(bytes, text.height_mm, text.bold);
  }
  if (face != nullptr) {
    cairo_ft_scaled_font_unlock_face(cairo_get_scaled_font(context));
  }
  const std::string clean = utf8_of(characters);
  cairo_show_text_glyphs(context, clean.data(), static_cast<int>(clean.size()), glyphs.data(),
                         static_cast<int>(glyphs.size()), clusters.data(), static_cast<int>(clusters.size()),
                         static_cast<cairo_text_cluster_flags_t>(0));
  cairo_restore(context);
}

const Paint* paint_of(const Shape& shape) {
  if (const auto* circle = std::get_if<CircleShape>(&shape)) {
    return &circle->paint;
  }
  if (const auto* rectangle = std::get_if<RectangleShape>(&shape)) {
    return &rectangle->paint;
  }
  const auto* line = std::get_if<PolylineShape>(&shape);
  return line != nullptr ? &line->paint : nullptr;
}

// Circles never lie upon one another; other shapes may, and then a filling has to cover what was drawn before.
bool share_a_path(const Shape& one, const Shape& next) {
  const Paint* paint = paint_of(one);
  const Paint* other = paint_of(next);
  const bool same = paint != nullptr && other != nullptr && one.index() == next.index() && *paint == *other;
  if (const auto* circle = std::get_if<CircleShape>(&one); same && circle != nullptr) {
    return circle->radius == std::get<CircleShape>(next).radius;
  }
  return same && !paint->fill;
}

// What can be drawn together, until something else comes.
class Gathered {
public:
  explicit Gathered(cairo_t* context) : context_(context) {}

  void add(const Shape& shape) {
    if (drawn_as_point(shape)) {
      points_.push_back(std::get<CircleShape>(shape).centre);
    } else if (drawn_as_stroke(shape)) {
      const auto& ends = std::get<PolylineShape>(shape).points;
      strokes_.push_back({ends.front(), ends.back()});
    } else if (const auto* circle = std::get_if<CircleShape>(&shape)) {
      add_path(context_, *circle);
    } else if (const auto* rectangle = std::get_if<RectangleShape>(&shape)) {
      add_path(context_, *rectangle);
    } else if (const auto* line = std::get_if<PolylineShape>(&shape)) {
      add_path(context_, *line);
    }
  }

  // `last` is one of the shapes that were added; all have its paint.
  void paint(const Shape& last) {
    const Paint& paint = *paint_of(last);
    if (!points_.empty()) {
      paint_points(context_, points_, std::get<CircleShape>(last).radius, paint);
    }
    if (!strokes_.empty()) {
      paint_strokes(context_, strokes_, paint);
    }
    paint_path(context_, paint);
    points_.clear();
    strokes_.clear();
  }

private:
  cairo_t* context_;
  std::vector<Point> points_;
  std::vector<Stroke> strokes_;
};

void draw_group(cairo_t* context, const Group& group, const SheetFonts& fonts) {
  Gathered gathered(context);
  for (std::size_t index = 0; index < group.shapes.size(); ++index) {
    const Shape& shape = group.shapes[index];
    if (const auto* text = std::get_if<TextShape>(&shape)) {
      draw_text(context, *text, fonts);
      continue;
    }
    gathered.add(shape);
    if (index + 1 == group.shapes.size() || !share_a_path(shape, group.shapes[index + 1])) {
      gathered.paint(shape);
    }
  }
}

} // namespace

Error cairo_error(const std::string& what, cairo_status_t status) {
  return Error{{}, 0, 0, what + " (cairo: " + cairo_status_to_string(status) + ")", {}};
}

Result<SheetFonts> load_sheet_fonts() {
  SheetFonts fonts;
  auto regular = load_face(false);
  if (!regular) {
    return regular.error();
  }
  auto bold = load_face(true);
  if (!bold) {
    return bold.error();
  }
  fonts.regular = std::move(regular).value();
  fonts.bold = std::move(bold).value();
  return fonts;
}

void draw_sheet(cairo_t* context, const Sheet& sheet, const SheetFonts& fonts) {
  cairo_set_line_cap(context, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join(context, CAIRO_LINE_JOIN_MITER);
  cairo_font_options_t* options = cairo_font_options_create();
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
  cairo_set_font_options(context, options);
  cairo_font_options_destroy(options);
  for (const Group& group : sheet.groups) {
    draw_group(context, group, fonts);
  }
}

} // namespace punchwright
