// Along the edges of the window: the menus, the toolbar, the status line.
#include "editor/panels.hpp"
#include "editor/widgets.hpp"
#include "machine/placement.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <imgui_internal.h>

namespace punchwright::editor {

namespace {

bool ticked(const App& app, Command command) {
  switch (command) {
  case Command::pen_opposite: return app.view.pen == Pen::opposite;
  case Command::pen_contrast: return app.view.pen == Pen::contrast;
  case Command::pen_main: return app.view.pen == Pen::main;
  case Command::show_settings: return app.view.settings_open;
  case Command::show_findings: return app.view.findings_open;
  default: return false;
  }
}

// Commands that begin a group of their own in a menu.
bool begins_group(Command command) {
  constexpr std::array firsts = {Command::save,          Command::export_card,  Command::quit,
                                 Command::toggle_stitch, Command::shift_left,   Command::mirror_sideways,
                                 Command::insert_column, Command::resize,       Command::split_band,
                                 Command::next_finding,  Command::other_face,   Command::show_settings,
                                 Command::larger_text,   Command::focus_drawing};
  return std::ranges::find(firsts, command) != firsts.end();
}

struct ToolButton {
  Command command;
  const char* label;
};

// The toolbar: groups with a gap between them, in the order of use.
struct ToolGroup {
  int line = 0; // where the toolbar has two lines
  std::vector<ToolButton> tools;
};

const std::vector<ToolGroup>& tool_groups(std::vector<ToolGroup>& groups) {
  groups = {
      {0, {{Command::new_design, "New"}, {Command::open, "Open"}, {Command::save, "Save"}}},
      {0, {{Command::undo, "↶ Undo"}, {Command::redo, "↷ Redo"}}},
      {0,
       {{Command::pen_opposite, "◐ Opposite"}, {Command::pen_contrast, "■ Contrast"}, {Command::pen_main, "□ Main"}}},
      {1,
       {{Command::shift_left, "←"},
        {Command::shift_right, "→"},
        {Command::shift_up, "↑"},
        {Command::shift_down, "↓"},
        {Command::mirror_sideways, "⇄"},
        {Command::mirror_upwards, "⇅"},
        {Command::invert, "◑"}}},
      {1, {{Command::insert_row, "+ Row"}, {Command::delete_row, "− Row"}, {Command::resize, "Size"}}},
      {1, {{Command::zoom_out, "−"}, {Command::zoom_in, "+"}, {Command::zoom_fit, "Fit"}}},
      {1, {{Command::export_card, "Card"}, {Command::export_chart, "Needle chart"}}},
  };
  return groups;
}

float width_of(const ToolButton& tool) {
  return ImGui::CalcTextSize(tool.label).x + 2 * ImGui::GetStyle().FramePadding.x;
}

constexpr float between_tools = 4;
constexpr float between_groups = 16;

float width_of_all(const std::vector<ToolGroup>& groups, float unit) {
  float wide = 24 * unit;
  for (const ToolGroup& group : groups) {
    for (const ToolButton& tool : group.tools) {
      wide += width_of(tool) + between_tools * unit;
    }
    wide += between_groups * unit;
  }
  return wide;
}

} // namespace

void menu_bar(const App& app, Actions& actions) {
  if (!ImGui::BeginMainMenuBar()) {
    return;
  }
  for (const Menu menu : {Menu::file, Menu::edit, Menu::drawing, Menu::rows, Menu::view, Menu::help}) {
    const std::string title(name_of(menu));
    if (app.view.open_menus && menu == Menu::file) {
      ImGui::OpenPopup(title.c_str());
    }
    const bool open = ImGui::BeginMenu(title.c_str());
    if (!open && ImGui::GetItemID() != 0 && ImGui::GetCurrentContext()->NavJustMovedToId == ImGui::GetItemID()) {
      ImGui::OpenPopup(title.c_str()); // gone to by an arrow key: the next menu opens as the last one was
    }
    remember_place(actions, "menu " + title);
    if (!open) {
      continue;
    }
    for (const CommandInfo& info : all_commands()) {
      if (info.menu != menu) {
        continue;
      }
      if (begins_group(info.command)) {
        ImGui::Separator();
      }
      const char* const key = *info.keys != 0 ? info.keys : nullptr;
      const std::string reason = why_not(app, info.command);
      if (ImGui::MenuItem(info.name, key, ticked(app, info.command), reason.empty())) {
        actions.run(info.command);
      }
      remember_place(actions, fmt::format("menu {}", info.id));
      tip(app.theme, reason.empty() ? info.tip : reason);
    }
    ImGui::EndMenu();
  }
  ImGui::EndMainMenuBar();
}

float toolbar_height(const App& app, float width) {
  const float unit = app.theme.scale;
  std::vector<ToolGroup> groups;
  const float line = ImGui::GetFrameHeight();
  const bool two = width_of_all(tool_groups(groups), unit) > width;
  return (two ? 2 * line + 6 * unit : line) + 12 * unit;
}

void toolbar(const App& app, Actions& actions, const ScreenBox& box) {
  const float unit = app.theme.scale;
  ImGui::PushStyleColor(ImGuiCol_WindowBg, tint(app.theme.ground));
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, ImVec2(10 * unit, 6 * unit));
  begin_part(app, "toolbar", box, ImGuiWindowFlags_NoNav | ImGuiWindowFlags_NoFocusOnAppearing);
  std::vector<ToolGroup> groups;
  const bool two = width_of_all(tool_groups(groups), unit) > box.width();
  int line = 0;
  bool first = true;
  for (const ToolGroup& group : groups) {
    const bool new_line = two && group.line != line;
    line = group.line;
    float gap = between_groups;
    for (const ToolButton& tool : group.tools) {
      if (!first && (!new_line || gap != between_groups)) {
        ImGui::SameLine(0, gap * unit);
      }
      first = false;
      gap = between_tools;
      const Look look = ticked(app, tool.command)                                       ? Look::chosen
                        : tool.command == Command::export_card && app.work.profile.card ? Look::main
                                                                                        : Look::plain;
      command_button(app, actions, tool.command, tool.label, look);
    }
  }
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.AddLine({box.left, box.bottom - 1}, {box.right, box.bottom - 1}, ink(app.theme.line));
  ImGui::End();
  ImGui::PopStyleVar();
  ImGui::PopStyleColor();
}

namespace {

std::string place_of_cursor(const App& app) {
  const Cell cursor = app.view.cursor;
  const Document& design = app.work.design;
  std::string yarn;
  const Band& band = design.bands[band_index_at(design, cursor.row)];
  const char key = design.grid.at(cursor.column, cursor.row) ? band.contrast.value_or(band.main) : band.main;
  const Yarn& knitted = yarn_of(design, key);
  yarn = knitted.name.empty() ? std::string(1, knitted.key) : knitted.name;
  return fmt::format("Row {}, column {}: {}", cursor.row + 1, cursor.column + 1, yarn);
}

std::string words_for_saving(const App& app) {
  return app.session.path.empty() ? "not saved yet" : app.work.history.saved() ? "saved" : "changes not saved";
}

} // namespace

void status_line(const App& app, Actions& actions, const ScreenBox& box) {
  (void)actions;
  const Theme& theme = app.theme;
  const float unit = theme.scale;
  ImGui::PushStyleColor(ImGuiCol_WindowBg, tint(theme.ground));
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, ImVec2(12 * unit, 6 * unit));
  begin_part(app, "status", box, ImGuiWindowFlags_NoNav | ImGuiWindowFlags_NoInputs);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.AddLine({box.left, box.top + 0.5F}, {box.right, box.top + 0.5F}, ink(theme.line));
  const std::string right = fmt::format("{}      {} × {}      {}", place_of_cursor(app), app.work.design.grid.width(),
                                        app.work.design.grid.height(), words_for_saving(app));
  const float wide = ImGui::CalcTextSize(right.c_str()).x;
  const float room = std::max(40 * unit, box.width() - wide - 40 * unit);
  const Colour colour = app.session.tone == Tone::trouble ? theme.fault
                        : app.session.tone == Tone::good  ? theme.good
                                                          : theme.text;
  const std::string message = app.session.message.empty()
                                  ? "Draw with the left button, erase with the right; F1 shows the keys"
                                  : app.session.message;
  ImGui::PushClipRect({box.left, box.top}, {box.left + room, box.bottom}, true);
  ImGui::TextColored(tint(app.session.message.empty() ? theme.quiet_text : colour), "%s", message.c_str());
  ImGui::PopClipRect();
  ImGui::SameLine(box.width() - wide - 12 * unit);
  ImGui::TextUnformatted(right.c_str());
  ImGui::End();
  ImGui::PopStyleVar();
  ImGui::PopStyleColor();
}

} // namespace punchwright::editor
