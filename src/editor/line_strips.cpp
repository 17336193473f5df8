// The strips beside the drawing under the pointer: rows and columns dragged by their numbers, yarns changed in place.
#include "design/wrap.hpp"
#include "editor/drawing_parts.hpp"
#include "editor/status_words.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <imgui_internal.h>
#include <string_view>

namespace punchwright::editor {

namespace {

int line_at(const Sight& sight, ImVec2 pointer, bool rows) {
  const Cell cell = cell_at(sight.layout, from_imgui(pointer));
  return rows ? cell.row : cell.column;
}

// The room of so many lines across the whole drawing.
ScreenBox box_of_lines(const Sight& sight, bool rows, int first, int count) {
  const ScreenBox repeat = sight.repeat_box();
  if (rows) {
    return {repeat.left, box_of(sight.layout, Cell{0, first + count - 1}).top, repeat.right,
            box_of(sight.layout, Cell{0, first}).bottom};
  }
  return {box_of(sight.layout, Cell{first, 0}).left, repeat.top, box_of(sight.layout, Cell{first + count - 1, 0}).right,
          repeat.bottom};
}

// Between two lines, where the dragged ones would come to lie; its box.
ScreenBox landing_line(const Sight& sight, const LineDrag& drag, const ScreenBox& numbers) {
  const bool onwards = drag.to > drag.first; // upwards, or to the right
  const int beside = onwards ? drag.to + drag.count - 1 : drag.to;
  const ScreenBox box = box_of_lines(sight, drag.rows, beside, 1);
  const Theme& theme = sight.app.theme;
  const float unit = sight.unit();
  const float place = drag.rows ? (onwards ? box.top : box.bottom) : (onwards ? box.right : box.left);
  const ImVec2 from = drag.rows ? ImVec2(numbers.left, place) : ImVec2(place, numbers.top);
  const ImVec2 to = drag.rows ? ImVec2(box.right, place) : ImVec2(place, box.bottom);
  sight.list.AddLine(from, to, ink(theme.panel), 6 * unit);
  sight.list.AddLine(from, to, ink(theme.accent), 3 * unit);
  return {from.x - 3 * unit, from.y - 3 * unit, to.x + 3 * unit, to.y + 3 * unit};
}

// `size`: so many lines has the drawing.
std::string words_for(const LineDrag& drag, int size) {
  const int from = drag.first + 1;
  const int from_last = round_edge(drag.first + drag.count - 1, size) + 1;
  const int to = round_edge(drag.to, size) + 1;
  const int to_last = round_edge(drag.to + drag.count - 1, size) + 1;
  if (drag.count == 1) {
    return drag.rows ? said("Row {} → {}", from, to) : said("Column {} → {}", from, to);
  }
  return drag.rows ? said("Rows {}–{} → {}–{}", from, from_last, to, to_last)
                   : said("Columns {}–{} → {}–{}", from, from_last, to, to_last);
}

} // namespace

void use_line_strip(const Sight& sight, Actions& actions, const ScreenBox& box, bool rows) {
  if (box.width() < 1 || box.height() < 1) {
    return;
  }
  const char* const name = rows ? "row strip" : "column strip";
  ImGui::SetCursorScreenPos({box.left, box.top});
  ImGui::InvisibleButton(name, {box.width(), box.height()});
  if (actions.publish_places) {
    actions.places.push_back({name, box});
  }
  const bool hovered = ImGui::IsItemHovered();
  if (hovered || ImGui::IsItemActive()) {
    ImGui::SetMouseCursor(rows ? ImGuiMouseCursor_ResizeNS : ImGuiMouseCursor_ResizeEW);
  }
  const int line = line_at(sight, ImGui::GetIO().MousePos, rows);
  if (ImGui::IsItemActivated()) {
    actions.push(BeginLineDrag{rows, line});
  } else if (ImGui::IsItemDeactivated() && ImGui::IsMouseReleased(ImGuiMouseButton_Left)) {
    actions.push(LineDragTo{line});
    actions.push(EndLineDrag{});
  } else if (ImGui::IsItemDeactivated()) { // taken out of the hand; Escape gives it up by itself
    if (sight.app.session.line_drag && !ImGui::IsKeyPressed(ImGuiKey_Escape)) {
      actions.run(Command::focus_drawing);
    }
  } else if (ImGui::IsItemActive() && sight.app.session.line_drag) {
    actions.push(LineDragTo{line});
  } else if (hovered && pointer_leads()) { // the keys belong to the drawing, and need no tip of the strip's
    tip(sight.app.theme, rows
                             ? tr("Click: the cursor goes to the row. Drag a row, or the marked rows, to another place "
                                  "(Ctrl+Shift+Up, Ctrl+Shift+Down)")
                             : tr("Click: the cursor goes to the column. Drag a column, or the marked ones, to another "
                                  "place (Ctrl+Shift+Left, Ctrl+Shift+Right)"));
  }
}

void use_yarn_strip(const Sight& sight, Actions& actions, const ScreenBox& box) {
  if (box.width() < 1 || box.height() < 1) {
    return;
  }
  ImGui::SetCursorScreenPos({box.left, box.top});
  const bool pressed = ImGui::InvisibleButton("yarn strip", {box.width(), box.height()});
  if (actions.publish_places) {
    actions.places.push_back({"yarn strip", box});
  }
  const int row = line_at(sight, ImGui::GetIO().MousePos, true);
  const bool on_row = row >= 0 && row < sight.layout.rows;
  if (pressed && on_row) {
    actions.push(PlaceCursor{Cell{sight.app.view.cursor.column, row}});
    actions.push(SetDialog{YarnsHereDialog{row, false, from_imgui(ImGui::GetIO().MousePos)}});
  } else if (on_row && pointer_leads()) {
    tip(sight.app.theme,
        words_for_row_yarns(sight.app, row) + "\n" + tr("Click: other yarns for its band, or for it alone (U)"));
  }
}

void tell_low_strip(const Sight& sight) {
  const CanvasLayout& layout = sight.layout;
  if (strips_have_words(sight) || sight.app.session.stroke || sight.app.session.floating || !pointer_leads()) {
    return;
  }
  const ImVec2 pointer = ImGui::GetIO().MousePos;
  const Cell at = cell_at(layout, from_imgui(pointer));
  for (const int row : {at.row, at.row + 1}) { // the pointer's own row has its strip below it
    const ScreenBox strip = strip_below(layout, Cell{at.column, row});
    const float reach = 2 * sight.unit(); // a strip of 2 px is hard to rest on
    if (has_strip_below(layout, row) && pointer.y >= strip.top - reach && pointer.y <= strip.bottom + reach) {
      tip(sight.app.theme, words_for_inserted(sight.app, wrapped(Cell{0, row}, 1, layout.rows).row));
      return;
    }
  }
}

void draw_line_drag(const Sight& sight, const ScreenBox& row_numbers, const ScreenBox& column_numbers) {
  if (!sight.app.session.line_drag) {
    return;
  }
  const LineDrag& drag = *sight.app.session.line_drag;
  const Theme& theme = sight.app.theme;
  const float unit = sight.unit();
  const int size = drag.rows ? sight.layout.rows : sight.layout.columns;
  const ScreenBox& numbers = drag.rows ? row_numbers : column_numbers;
  const bool refused = lines_dragged(sight.app) && sight.app.caches.waiting->refused;
  const ScreenBox lines = box_of_lines(sight, drag.rows, refused ? drag.first : drag.to, drag.count);
  const ScreenBox& canvas = sight.canvas;
  sight.list.PushClipRect({std::min(canvas.left, numbers.left), std::min(canvas.top, numbers.top)},
                          {canvas.right, canvas.bottom}, true);
  sight.list.AddRect({lines.left, lines.top}, {lines.right, lines.bottom}, ink(theme.panel), 0, 0, 5 * unit);
  sight.list.AddRect({lines.left, lines.top}, {lines.right, lines.bottom}, ink(theme.accent), 0, 0, 2 * unit);
  if (refused) {
    const ScreenBox landing = landing_line(sight, drag, numbers);
    const Error& why = *sight.app.caches.waiting->refused;
    tip_beside(theme, words_for(drag, size) + ": " + why.message, {landing, lines});
  } else if (drag.to != drag.first) {
    tip_beside(theme, words_for(drag, size), {lines});
  }
  sight.list.PopClipRect();
}

} // namespace punchwright::editor
