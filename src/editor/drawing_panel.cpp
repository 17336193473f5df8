// The drawing in the middle of the window: puts its parts together, and turns mouse and wheel into strokes.
#include "editor/bed_marks.hpp"
#include "editor/drawing_parts.hpp"

#include <algorithm>
#include <cmath>
#include <imgui_internal.h>

namespace punchwright::editor {

namespace {

Sight look_at(const App& app, const CanvasLayout& shown, const ScreenBox& canvas, ImDrawList& list) {
  Sight sight{app, list, shown, canvas, 0, 0, 0, 0};
  const CanvasLayout& layout = sight.layout;
  const int aside = neighbour_columns(layout.columns);
  const int above = neighbour_rows(layout.rows);
  const Cell low = cell_at(layout, {canvas.left, canvas.bottom - 1});
  const Cell high = cell_at(layout, {canvas.right - 1, canvas.top});
  sight.first_column = std::max(low.column, -aside);
  sight.last_column = std::min(high.column, layout.columns + aside - 1);
  sight.first_row = std::max(low.row, -above);
  sight.last_row = std::min(high.row, layout.rows + above - 1);
  return sight;
}

bool shown(const Sight& sight, Cell cell) {
  return cell.column >= sight.first_column && cell.column <= sight.last_column && cell.row >= sight.first_row &&
         cell.row <= sight.last_row;
}

// A stroke ends at the edge of what is drawn of the neighbours, wherever the hand goes on to in the window.
Cell held_in_sight(const Sight& sight, ScreenPoint pointer) {
  const Cell at = cell_at(sight.layout, pointer);
  const auto held = [](int place, int first, int last) { return std::max(first, std::min(place, last)); };
  return {held(at.column, sight.first_column, sight.last_column), held(at.row, sight.first_row, sight.last_row)};
}

// The pointer's places in this frame, in their order, so that a fast stroke follows the hand.
void follow_stroke(const Sight& sight, const Portion& input, Actions& actions) {
  if (!ImGui::IsMouseDown(ImGuiMouseButton_Left) && !ImGui::IsMouseDown(ImGuiMouseButton_Right) &&
      !ImGui::IsMouseReleased(ImGuiMouseButton_Left) && !ImGui::IsMouseReleased(ImGuiMouseButton_Right)) {
    return; // by keys
  }
  for (const InputEvent& event : input) {
    if (event.kind == InputEvent::Kind::pointer && event.pointer.at.x > -1.0e6F) {
      actions.push(StrokeTo{held_in_sight(sight, event.pointer.at)});
    }
  }
}

void use_mouse(const Sight& sight, const Portion& input, Actions& actions) {
  const ImGuiIO& io = ImGui::GetIO();
  const ScreenPoint pointer = from_imgui(io.MousePos);
  const bool over = ImGui::IsItemHovered();
  const Cell at = cell_at(sight.layout, pointer);
  if (over) {
    ImGui::SetMouseCursor(ImGuiMouseCursor_ResizeAll);
    if (ImGui::IsMouseClicked(ImGuiMouseButton_Left) && shown(sight, at)) {
      actions.push(BeginStroke{at, false});
      return;
    }
    if (ImGui::IsMouseClicked(ImGuiMouseButton_Right) && shown(sight, at)) {
      actions.push(BeginStroke{at, true});
      return;
    }
    if (io.MouseWheel != 0 && io.KeyShift) {
      actions.push(PanBy{{io.MouseWheel * 60 * sight.unit(), 0}});
    } else if (io.MouseWheel != 0 && io.KeyCtrl) {
      actions.push(PanBy{{0, io.MouseWheel * 60 * sight.unit()}});
    } else if (io.MouseWheel != 0) {
      actions.push(ZoomAt{std::pow(1.18F, io.MouseWheel), pointer});
    }
    if (io.MouseWheelH != 0) {
      actions.push(PanBy{{io.MouseWheelH * 60 * sight.unit(), 0}});
    }
  }
  if (const auto way = way_of_frame(ImGuiMouseButton_Middle)) {
    actions.push(PanBy{*way});
  }
  if (ImGui::IsItemActive() && ImGui::IsMouseDown(ImGuiMouseButton_Middle)) {
    return;
  }
  if (sight.app.session.stroke) {
    follow_stroke(sight, input, actions);
    if (ImGui::IsMouseReleased(ImGuiMouseButton_Left) || ImGui::IsMouseReleased(ImGuiMouseButton_Right)) {
      actions.push(EndStroke{}); // a shape that was begun by key ends by key
    }
  }
}

// A slim bar that shows which part of the drawing is seen, and moves it.
void scroll_bar(const Sight& sight, Actions& actions, bool upright) {
  const float unit = sight.unit();
  const ScreenBox repeat = sight.repeat_box();
  const ScreenBox& canvas = sight.canvas;
  const float low = upright ? canvas.top : canvas.left;
  const float high = upright ? canvas.bottom : canvas.right;
  const float content_low = (upright ? repeat.top : repeat.left) - 2 * sight.layout.cell_height;
  const float content_high = (upright ? repeat.bottom : repeat.right) + 2 * sight.layout.cell_height;
  if (content_low >= low - 4 * sight.layout.cell_height && content_high <= high + 4 * sight.layout.cell_height) {
    return;
  }
  const float all_low = std::min(content_low, low);
  const float all_high = std::max(content_high, high);
  const float scale = (high - low) / (all_high - all_low);
  const float size = std::max(24 * unit, (high - low) * scale);
  const float from = std::min(low + (low - all_low) * scale, high - size);
  const float thick = 9 * unit;
  const ImVec2 corner =
      upright ? ImVec2(canvas.right - thick - 2 * unit, from) : ImVec2(from, canvas.bottom - thick - 2 * unit);
  const ImVec2 extent = upright ? ImVec2(thick, size) : ImVec2(size, thick);
  ImGui::SetCursorScreenPos(corner);
  ImGui::InvisibleButton(upright ? "up and down" : "left and right", extent);
  sight.list.AddRectFilled(corner, {corner.x + extent.x, corner.y + extent.y},
                           ink(sight.app.theme.text, ImGui::IsItemActive() || ImGui::IsItemHovered() ? 0.6F : 0.35F),
                           thick / 2);
  if (const auto way = way_of_frame()) {
    actions.push(PanBy{upright ? ScreenPoint{0, -way->y / scale} : ScreenPoint{-way->x / scale, 0}});
  }
}

} // namespace

void drawing_panel(const App& app, const Portion& input, Actions& actions, const ScreenBox& box, Placed& placed) {
  const float unit = app.theme.scale;
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, ImVec2(0, 0));
  ImGui::PushStyleColor(ImGuiCol_WindowBg, tint(app.theme.canvas));
  begin_part(app, drawing_part, box, ImGuiWindowFlags_NoNavInputs | ImGuiWindowFlags_NoScrollWithMouse);
  if (app.view.focus_drawing) {
    ImGui::SetWindowFocus();
  }
  const float numbers = 38 * unit;
  const float yarns = 50 * unit;
  const ScreenBox canvas{box.left + numbers, box.top + 20 * unit, std::max(box.left + numbers + 40, box.right - yarns),
                         std::max(box.top + 60, box.bottom - needle_numbers_tall * unit)};
  placed.canvas = canvas;
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const Sight sight = look_at(app, layout_in_sight(app, canvas), canvas, list);
  const Sight at_rest = look_at(app, layout_of(app, canvas), canvas, list); // where the pointer is read

  ImGui::SetCursorScreenPos({canvas.left, canvas.top});
  ImGui::InvisibleButton("stitches", {canvas.width(), canvas.height()},
                         ImGuiButtonFlags_MouseButtonLeft | ImGuiButtonFlags_MouseButtonRight |
                             ImGuiButtonFlags_MouseButtonMiddle);
  ImGui::SetItemAllowOverlap();
  use_mouse(sight, input, actions);
  tell_low_strip(sight);

  list.PushClipRect({canvas.left, canvas.top}, {canvas.right, canvas.bottom}, true);
  if (sight.first_row <= sight.last_row && sight.first_column <= sight.last_column) {
    draw_stitches(sight);
    draw_lines(sight);
    draw_strips(sight);
    // Over the neighbours too, which stay apart from the repeat.
    const bool hangs = app.session.floating || app.session.mend || (app.session.stroke && app.caches.waiting);
    if (!hangs) {
      dim_neighbours(sight);
    }
    draw_axes(sight);
    if (app.caches.waiting) { // floats behind the stitches that are shown are seen too
      draw_preview(sight);
      draw_marks(sight);
    } else {
      draw_marks(sight);
      draw_preview(sight);
    }
    if (hangs) {
      dim_neighbours(sight);
    }
    if (!lines_dragged(app)) { // it goes along when they are let go
      draw_cursor(sight, ImGui::IsWindowFocused());
    }
  }
  list.PopClipRect();
  const ScreenBox row_numbers{box.left, canvas.top, canvas.left, canvas.bottom};
  const ScreenBox row_yarns{canvas.right, canvas.top, box.right, canvas.bottom};
  const ScreenBox column_numbers{canvas.left, box.top, canvas.right, canvas.top};
  use_line_strip(at_rest, actions, row_numbers, true);
  use_line_strip(at_rest, actions, column_numbers, false);
  use_yarn_strip(at_rest, actions, row_yarns);
  draw_row_numbers(sight, row_numbers);
  draw_row_yarns(sight, row_yarns);
  list.AddRectFilled({box.left, box.top}, {box.right, canvas.top}, ink(app.theme.ground));
  list.AddRectFilled({box.left, canvas.bottom}, {box.right, box.bottom}, ink(app.theme.ground));
  draw_column_numbers(sight, column_numbers);
  draw_needle_numbers(sight, {canvas.left, canvas.bottom, canvas.right, box.bottom});
  draw_bed_marks(sight, {canvas.left, canvas.bottom, canvas.right, box.bottom});
  list.AddRect({canvas.left, canvas.top}, {canvas.right, canvas.bottom}, ink(app.theme.line));
  draw_line_drag(sight, row_numbers, column_numbers);
  scroll_bar(sight, actions, true);
  scroll_bar(sight, actions, false);
  ImGui::End();
  ImGui::PopStyleColor();
  ImGui::PopStyleVar();
}

} // namespace punchwright::editor
