// One frame: where the parts of the window stand, and what keys mean.
#include "editor/panels.hpp"
#include "editor/widgets.hpp"

#include <algorithm>
#include <imgui.h>
#include <imgui_internal.h>

namespace punchwright::editor {

void begin_part(const App& app, const char* name, const ScreenBox& box, int more_flags) {
  (void)app;
  ImGui::SetNextWindowPos(ImVec2(box.left, box.top));
  ImGui::SetNextWindowSize(ImVec2(std::max(1.0F, box.width()), std::max(1.0F, box.height())));
  ImGui::Begin(name, nullptr,
               ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                   ImGuiWindowFlags_NoBringToFrontOnFocus | ImGuiWindowFlags_NoFocusOnAppearing | more_flags);
}

namespace {

// The window's parts:
//
//     menu
//     toolbar
//     settings | drawing            | piece
//              |                    | findings
//     status line
struct Parts {
  ScreenBox toolbar;
  ScreenBox settings;
  ScreenBox drawing;
  ScreenBox piece;
  ScreenBox findings;
  ScreenBox status;
};

Parts parts_of(const App& app) {
  const float unit = app.theme.scale;
  const ImVec2 size = ImGui::GetIO().DisplaySize;
  const float top = ImGui::GetFrameHeight();
  const float bar = toolbar_height(app, size.x);
  const float foot = 30 * unit;
  Parts parts;
  parts.toolbar = {0, top, size.x, top + bar};
  parts.status = {0, size.y - foot, size.x, size.y};
  const float upper = top + bar;
  const float lower = size.y - foot;
  // Never more than some quarter of the window each: the drawing is what it is about.
  const auto side = [&](float share, float least, float most) {
    return std::min(std::clamp(size.x * share, least * unit, most * unit), size.x * 0.27F);
  };
  const float left = app.view.settings_open ? side(0.215F, 258, 330) : 0;
  const float right = app.view.findings_open ? side(0.225F, 240, 350) : 0;
  parts.settings = {0, upper, left, lower};
  parts.drawing = {left, upper, std::max(left + 1, size.x - right), lower};
  const float split = upper + (lower - upper) * (lower - upper > 480 * unit ? 0.46F : 0.36F);
  parts.piece = {size.x - right, upper, size.x, split};
  parts.findings = {size.x - right, split, size.x, lower};
  return parts;
}

bool arrow(const std::string& name, int& columns, int& rows) {
  columns = name == "left" ? -1 : name == "right" ? 1 : 0;
  rows = name == "up" ? 1 : name == "down" ? -1 : 0;
  return columns != 0 || rows != 0;
}

// A field keeps its keys; but undo goes to the design where nothing has been typed into the field yet.
bool field_keeps(const App& app, const KeyEvent& key) {
  if (!ImGui::GetIO().WantTextInput || !belongs_to_text(key)) {
    return false;
  }
  const auto command = command_for(key);
  const bool steps = command == Command::undo || command == Command::redo;
  return !steps || !app.session.open_field.empty();
}

bool drawing_has_keys() {
  const ImGuiWindow* const window = ImGui::GetCurrentContext()->NavWindow;
  return window == nullptr || window == ImGui::FindWindowByName(drawing_part);
}

} // namespace

void keys(const App& app, const Portion& input, Actions& actions) {
  const bool popup = ImGui::IsPopupOpen("", ImGuiPopupFlags_AnyPopupId | ImGuiPopupFlags_AnyPopupLevel);
  for (const InputEvent& event : input) {
    if (event.kind != InputEvent::Kind::key || !event.key.down) {
      continue;
    }
    const KeyEvent& key = event.key;
    if (is_open(app.session.dialog) || popup || field_keeps(app, key)) {
      continue; // dialogs and fields have their keys
    }
    int columns = 0;
    int rows = 0;
    const bool for_parts = key.name == "tab" || key.name == "return" || key.name == "space" ||
                           (arrow(key.name, columns, rows) && !key.with.control);
    if (for_parts && !drawing_has_keys()) {
      continue; // a panel that was gone to by keys
    }
    if (arrow(key.name, columns, rows) && !key.with.control && !key.with.alt) {
      actions.push(MoveCursor{columns, rows, key.with.shift});
    } else if (key.name == "home" || key.name == "end") {
      const int column = key.name == "home" ? 0 : app.work.design.grid.width() - 1;
      actions.push(PlaceCursor{Cell{column, app.view.cursor.row}});
    } else if (key.name == "page up" || key.name == "page down") {
      const Cell cursor = app.view.cursor; // stops at the first and last row
      actions.push(PlaceCursor{Cell{cursor.column, cursor.row + (key.name == "page up" ? 10 : -10)}});
    } else if (const auto command = command_for(key)) {
      actions.run(*command);
    }
  }
}

void draw_frame(const App& app, const Portion& input, Actions& actions) {
  menu_bar(app, actions);
  const Parts parts = parts_of(app);
  Placed placed;
  toolbar(app, actions, parts.toolbar);
  if (app.view.settings_open) {
    settings_panel(app, actions, parts.settings);
  }
  if (app.view.findings_open) {
    piece_panel(app, actions, parts.piece, placed);
    findings_panel(app, actions, parts.findings);
  }
  drawing_panel(app, input, actions, parts.drawing, placed);
  status_line(app, actions, parts.status);
  dialogs(app, actions);
  actions.list.insert(actions.list.begin(), placed);
  if (!app.session.open_field.empty() && !ImGui::IsAnyItemActive() &&
      !ImGui::IsPopupOpen("", ImGuiPopupFlags_AnyPopupId | ImGuiPopupFlags_AnyPopupLevel)) {
    actions.list.insert(actions.list.begin(), CloseField{});
  }
  keys(app, input, actions);
}

} // namespace punchwright::editor
