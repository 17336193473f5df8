// The axes of the chosen symmetry, each kind with a sign of its own: mirrors in a whole line, glides in a dashed one,
// the middles of half turns as points.
#include "drawing/axes.hpp"
#include "editor/drawing_parts.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright::editor {

namespace {

class AxisPen {
public:
  explicit AxisPen(const Sight& sight)
      : sight_(sight), light_(ink(sight.app.theme.panel, 0.8F)), line_(ink(sight.app.theme.accent)) {}

  // In two tones, so that it shows on light and dark yarn.
  void line(ImVec2 from, ImVec2 to, float wide) const {
    sight_.list.AddLine(from, to, light_, wide + 2.5F * sight_.unit());
    sight_.list.AddLine(from, to, line_, wide);
  }
  void dashes(float left, float right, float y, float wide) const {
    const float dash = 7 * sight_.unit();
    for (float at = left; at < right; at += 1.7F * dash) {
      line({at, y}, {std::min(at + dash, right), y}, wide);
    }
  }
  void point(float x, float y, float line_wide) const {
    const float radius =
        std::max(std::clamp(sight_.layout.cell_height * 0.25F, 2.5F * sight_.unit(), 5 * sight_.unit()),
                 line_wide / 2 + 2 * sight_.unit());
    sight_.list.AddCircleFilled({x, y}, radius + 1.5F * sight_.unit(), ink(sight_.app.theme.panel));
    sight_.list.AddCircleFilled({x, y}, radius, line_);
  }

private:
  const Sight& sight_;
  ImU32 light_;
  ImU32 line_;
};

} // namespace

// An axis lies at half the sum of the two columns (rows) that it exchanges, counted to the middles of the stitches.
void draw_axes(const Sight& sight) {
  if (!sight.app.view.symmetry) {
    return;
  }
  const Frieze& frieze = *sight.app.view.symmetry;
  const AxisSigns signs = axis_signs(frieze, sight.layout.columns);
  const AxisPen pen(sight);
  const ScreenBox repeat = sight.repeat_box();
  const float thin = 1.5F * sight.unit();
  const auto x_of = [&](int half) {
    return repeat.left + (static_cast<float>(half) / 2 + 0.5F) * sight.layout.cell_width;
  };
  for (const int half : signs.mirrors) {
    pen.line({x_of(half), repeat.top}, {x_of(half), repeat.bottom}, thin);
  }
  const int row = frieze.level / 2;
  const ScreenBox low = box_of(sight.layout, Cell{0, row});
  const bool through = frieze.level % 2 == 0;
  const float y = through ? low.middle().y : low.top;
  // Through a row with a float's bar in its middle: wider than that, so that it is seen on both sides of it.
  const float wide = through && float_marked_in(sight, row) ? float_bar_width(sight) + 5 * sight.unit() : thin;
  if (signs.level == AxisSigns::Level::mirror) {
    pen.line({repeat.left, y}, {repeat.right, y}, wide);
  } else if (signs.level == AxisSigns::Level::glide) {
    pen.dashes(repeat.left, repeat.right, y, wide);
  }
  for (const int half : signs.centres) {
    pen.point(x_of(half), y, wide);
  }
}

} // namespace punchwright::editor
