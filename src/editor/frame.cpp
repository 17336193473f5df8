// One frame: where the parts of the window stand, and what keys mean.
#include "editor/panels.hpp"
#include "editor/widgets.hpp"
#include "editor/yoke_parts.hpp"

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

bool arrow(const std::string& name, int& columns, int& rows) {
  columns = name == "left" ? -1 : name == "right" ? 1 : 0;
  rows = name == "up" ? 1 : name == "down" ? -1 : 0;
  return columns != 0 || rows != 0;
}

Action move_of_cursor(const App& app, const KeyEvent& key) {
  const Cell cursor = app.view.cursor;
  int columns = 0;
  int rows = 0;
  if (arrow(key.name, columns, rows)) {
    return MoveCursor{columns, rows, key.with.shift};
  }
  if (key.name == "home" || key.name == "end") {
    return PlaceCursor{Cell{key.name == "home" ? 0 : app.work.design.grid.width() - 1, cursor.row}};
  }
  return PlaceCursor{Cell{cursor.column, cursor.row + (key.name == "page up" ? 10 : -10)}}; // stops at the ends
}

// The keys of a pedal move on whatever has the keys; Return presses a button that was gone to by Tab.
void bench_keys(const App& app, const KeyEvent& key, Actions& actions) {
  const bool on_button = keys_show_their_place() && ImGui::GetCurrentContext()->NavId != 0;
  if (key.name == "return" && on_button) {
    return;
  }
  if (const auto by = bench_step_for(key)) {
    actions.push(StepBench{*by});
  } else if (key.name == "escape") {
    actions.run(Command::at_the_bench);
  } else if (const auto command = command_for(key); command && why_not(app, *command).empty()) {
    actions.run(*command);
  }
}

// Tab, Return, space and arrows go through the fields; all else is a command.
void yoke_keys(const App& app, const KeyEvent& key, Actions& actions) {
  const bool for_parts = key.name == "tab" || key.name == "return" || key.name == "space" || key.name == "x";
  const auto command = command_for(key);
  if (!for_parts && command && why_not(app, *command).empty()) {
    actions.run(*command);
  }
}

// What the start page offers has its keys there, too.
bool stands_on_start_page(Command command) {
  return command == Command::open || command == Command::new_design || command == Command::new_yoke ||
         command == Command::help || command == Command::settings || command == Command::quit;
}

// What can't be done now says why; these say it themselves, in words of their own, or do what comes nearest: the needle
// chart for a card.
bool says_why_itself(Command command) {
  return info_of(command).menu == Menu::edit || command == Command::next_finding ||
         command == Command::previous_finding || command == Command::export_card;
}

void run_or_say_why(const App& app, Command command, Actions& actions) {
  const std::string reason = says_why_itself(command) ? std::string() : why_not(app, command);
  if (reason.empty()) {
    actions.run(command);
  } else {
    actions.push(Say{reason});
  }
}

} // namespace

void keys(const App& app, const Portion& input, Actions& actions) {
  const ImGuiIO& io = ImGui::GetIO();
  const bool popup = ImGui::IsPopupOpen("", ImGuiPopupFlags_AnyPopupId | ImGuiPopupFlags_AnyPopupLevel);
  for (const InputEvent& event : input) {
    if (event.kind != InputEvent::Kind::key || !event.key.down) {
      continue;
    }
    const KeyEvent& key = event.key;
    if (std::holds_alternative<StartDialog>(app.session.dialog)) {
      if (const auto command = command_for(key); command && stands_on_start_page(*command)) {
        actions.run(*command);
      }
      continue;
    }
    if (is_open(app.session.dialog) || popup || (io.WantTextInput && belongs_to_text(key) && typing_undoes(key))) {
      continue; // dialogs and fields have their keys
    }
    if (io.WantTextInput && key.with.control && (key.name == "z" || key.name == "y")) {
      ImGui::ClearActiveID(); // else the field would write back what is undone
    }
    if (app.bench.open) {
      bench_keys(app, key, actions);
      continue;
    }
    if (app.yoke.shown) {
      yoke_keys(app, key, actions);
      continue;
    }
    int columns = 0;
    int rows = 0;
    if (!key.with.control && arrow(key.name, columns, rows) && piece_has_keys(app)) {
      const float by = 60 * app.theme.scale; // where one goes to comes nearer
      actions.push(PanPiece{{static_cast<float>(-columns) * by, static_cast<float>(rows) * by}});
      continue;
    }
    const bool for_parts = key.name == "tab" || key.name == "return" || key.name == "space" ||
                           (arrow(key.name, columns, rows) && !key.with.control);
    if (for_parts && !drawing_has_keys()) {
      continue; // a panel that was gone to by keys
    }
    if (moves_cursor(key)) {
      actions.push(move_of_cursor(app, key));
    } else if (const auto command = command_for(key)) {
      run_or_say_why(app, *command, actions);
    }
  }
}

namespace {

// What was typed into a field, or dragged, is one step when it is left.
void close_left_field(const App& app, Actions& actions) {
  const bool open = !app.session.open_field.empty() || !app.yoke.open_field.empty();
  if (open && !ImGui::IsAnyItemActive() &&
      !ImGui::IsPopupOpen("", ImGuiPopupFlags_AnyPopupId | ImGuiPopupFlags_AnyPopupLevel)) {
    actions.push(CloseField{});
  }
}

} // namespace

void draw_frame(const App& app, const Portion& input, Actions& actions) {
  menu_bar(app, actions);
  Placed placed;
  if (app.bench.open) {
    placed.canvas = app.view.canvas;
    placed.piece = app.view.piece_box;
    const ImVec2 size = ImGui::GetIO().DisplaySize;
    bench_panel(app, actions, {0, ImGui::GetFrameHeight(), size.x, size.y});
    dialogs(app, actions, placed);
    actions.list.insert(actions.list.begin(), placed);
    keys(app, input, actions);
    return walk_with_keys(app, input, actions);
  }
  if (app.yoke.shown) {
    placed.canvas = app.view.canvas;
    placed.piece = app.view.piece_box;
    yoke_page(app, actions);
    dialogs(app, actions, placed);
    actions.list.insert(actions.list.begin(), placed);
    close_left_field(app, actions);
    keys(app, input, actions);
    return walk_with_keys(app, input, actions);
  }
  const Parts parts = parts_of(app);
  toolbar(app, actions, parts.toolbar);
  if (app.view.settings_open) {
    settings_panel(app, actions, parts.settings);
  }
  placed.canvas = app.view.canvas;
  if (app.view.piece_large || (app.view.findings_open && !(parts.by_turns && app.view.findings_in_front))) {
    piece_panel(app, actions, parts, placed);
  }
  if (app.view.findings_open && !(parts.by_turns && !app.view.findings_in_front)) {
    findings_panel(app, actions, parts);
  }
  if (!app.view.piece_large) {
    drawing_panel(app, input, actions, parts.drawing, placed);
  }
  status_line(app, actions, parts.status);
  panel_edges(app, actions, parts);
  dialogs(app, actions, placed);
  actions.list.insert(actions.list.begin(), placed);
  close_left_field(app, actions);
  keys(app, input, actions);
  walk_with_keys(app, input, actions);
}

} // namespace punchwright::editor
