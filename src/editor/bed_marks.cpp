// Seams and middle, in the drawing and in the piece.
#include "editor/bed_marks.hpp"

#include "editor/drawing_parts.hpp"
#include "machine/placement.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright::editor {

BedMarks bed_marks_of(const Document& design, const Profile& profile, Face face) {
  const Placement placement(design, profile);
  const Needle first = first_needle_of(design);
  const Needle last = last_needle_of(design);
  BedMarks marks;
  marks.stitches = stitches_of(design);
  marks.seam = std::min(design.piece.edge, marks.stitches / 2);
  for (int stitch = 0; stitch < std::min(marks.seam, design.grid.width()); ++stitch) {
    marks.left_seam.push_back(placement.column_of(Needle{first.position + stitch}));
    marks.right_seam.push_back(placement.column_of(Needle{last.position - stitch}));
  }
  marks.middle_column = placement.column_of(right_needle(1));
  const int from_left = right_needle(1).position - first.position; // on the purl side, which faces the knitter
  marks.middle = face == Face::purl ? from_left : marks.stitches - from_left;
  return marks;
}

namespace {

// A thin broken line that shows on any yarn: dark and light by turns.
void broken_line(ImDrawList& list, const Theme& theme, ScreenPoint from, ScreenPoint to, float dash, float opacity) {
  const float unit = theme.scale;
  for (float y = from.y; y < to.y; y += 2 * dash) {
    const float middle = std::min(to.y, y + dash);
    const float end = std::min(to.y, y + 2 * dash);
    list.AddRectFilled({from.x - unit / 2, y}, {from.x + unit / 2, middle}, ink(theme.dark_word, opacity));
    list.AddRectFilled({from.x - unit / 2, middle}, {from.x + unit / 2, end}, ink(theme.light_word, opacity));
  }
}

// Strokes that lean one way at the left seam and the other way at the right one.
void hatch(ImDrawList& list, const Theme& theme, const ScreenBox& box, bool leans_left) {
  const float unit = theme.scale;
  list.PushClipRect({box.left, box.top}, {box.right, box.bottom}, true);
  list.AddRectFilled({box.left, box.top}, {box.right, box.bottom}, ink(theme.panel));
  for (float x = box.left - box.height(); x < box.right + box.height(); x += 4 * unit) {
    const float foot = leans_left ? x + box.height() : x;
    const float head = leans_left ? x : x + box.height();
    list.AddLine({foot, box.bottom}, {head, box.top}, ink(theme.text), 1.3F * unit);
  }
  list.AddRect({box.left, box.top}, {box.right, box.bottom}, ink(theme.text));
  list.PopClipRect();
}

} // namespace

void draw_bed_marks(const Sight& sight, const ScreenBox& ruler) {
  const Theme& theme = sight.app.theme;
  const CanvasLayout& layout = sight.layout;
  const BedMarks marks = bed_marks_of(sight.app.work.design, sight.app.work.profile, Face::knit);
  const ScreenBox repeat = sight.repeat_box();
  const float unit = sight.unit();
  const float middle = std::round(box_of(layout, Cell{marks.middle_column, 0}).right);
  sight.list.PushClipRect({ruler.left, sight.canvas.top}, {ruler.right, ruler.bottom}, true);
  broken_line(sight.list, theme, {middle, std::max(repeat.top, sight.canvas.top)},
              {middle, std::min(repeat.bottom, sight.canvas.bottom)}, 9 * unit, 0.55F);
  // The seams lie in the ruler's foot. Neighbouring stitches are one box, and nothing is hidden where both seams meet.
  const float tall = 5 * unit;
  const auto seam = [&](const std::vector<int>& columns, bool left) {
    for (std::size_t first = 0; first < columns.size();) {
      std::size_t end = first + 1;
      while (end < columns.size() && std::abs(columns[end] - columns[end - 1]) == 1) {
        ++end;
      }
      const auto [low, high] = std::minmax(columns[first], columns[end - 1]);
      hatch(sight.list, theme,
            {box_of(layout, Cell{low, 0}).left, ruler.bottom - tall, box_of(layout, Cell{high, 0}).right,
             ruler.bottom - unit},
            left);
      first = end;
    }
  };
  seam(marks.left_seam, true);
  seam(marks.right_seam, false);
  sight.list.PopClipRect();
  if (pointer_leads() && ImGui::IsWindowHovered() &&
      ImGui::IsMouseHoveringRect({ruler.left, ruler.top}, {ruler.right, ruler.bottom})) {
    tip_beside(theme,
               said_count(marks.seam,
                          "Triangle: the middle of the bed, between L1 and R1\nHatched: {} seam stitch "
                          "at each end of the piece, left \\\\\\, right ///",
                          "Triangle: the middle of the bed, between L1 and R1\nHatched: {} seam "
                          "stitches at each end of the piece, left \\\\\\, right ///"),
               {ruler});
  }
}

void draw_piece_marks(const App& app, ImDrawList& list, const ScreenBox& room) {
  const PiecePicture& piece = app.caches.piece;
  const PiecePixels& pixels = piece.painter.pixels();
  if (app.view.afar || !piece.made_for || pixels.width < 1) {
    return;
  }
  const Theme& theme = app.theme;
  const float unit = theme.scale;
  const BedMarks marks = bed_marks_of(app.work.design, app.work.profile, app.view.face);
  const auto x_of = [&](double stitches) { return room.left + static_cast<float>(piece.painter.x_of(stitches)); };
  const float top = room.top + static_cast<float>(pixels.top);
  const float bottom = top + static_cast<float>(pixels.height);
  list.PushClipRect({room.left, room.top}, {room.right, room.bottom}, true);
  // Beside the cloth where there is room, else over its edge.
  const float tall = 5 * unit;
  const float above = std::max(room.top, top - tall);
  const float below = std::min(room.bottom, bottom + tall) - tall;
  const bool left_is_left = app.view.face == Face::purl;
  if (marks.seam > 0) {
    for (const float y : {above, below}) {
      hatch(list, theme, {x_of(0), y, std::max(x_of(marks.seam), x_of(0) + 3 * unit), y + tall}, left_is_left);
      hatch(list, theme,
            {std::min(x_of(marks.stitches - marks.seam), x_of(marks.stitches) - 3 * unit), y, x_of(marks.stitches),
             y + tall},
            !left_is_left);
    }
  }
  if (marks.middle > 0 && marks.middle < marks.stitches) {
    const float x = std::round(x_of(marks.middle));
    broken_line(list, theme, {x, top}, {x, bottom}, 5 * unit, 0.35F);
    list.AddTriangleFilled({x - 4 * unit, below + tall}, {x + 4 * unit, below + tall}, {x, below - unit},
                           ink(theme.accent));
  }
  list.PopClipRect();
}

} // namespace punchwright::editor
