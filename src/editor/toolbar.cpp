// Below the menus: what is wanted most often, in groups; in one line, or in two.
// Which pen and which tool draw is told here whatever panel is open.
#include "editor/panels.hpp"
#include "editor/tab_commands.hpp"
#include "editor/top_bar.hpp"
#include "editor/widgets.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <iterator>
#include <utility>
#include <vector>

namespace punchwright::editor {

namespace {

struct ToolButton {
  Command command;
  const char* label;
};

// The toolbar: groups with a gap between them, in the order of use.
struct ToolGroup {
  int line = 0; // where the toolbar has two lines
  std::vector<ToolButton> tools;
};

const std::vector<ToolGroup>& tool_groups(const App& app, std::vector<ToolGroup>& groups) {
  groups = {
      {0, {{Command::new_design, tr("New")}, {Command::open, tr("Open")}, {Command::save, tr("Save")}}},
      {0, {{Command::undo, tr("↶ Undo")}, {Command::redo, tr("↷ Redo")}}},
      {0,
       {{Command::pen_opposite, tr("◐ Opposite")},
        {Command::pen_contrast, tr("■ Contrast")},
        {Command::pen_main, tr("□ Main")}}},
      {1,
       {{Command::shift_left, "←"},
        {Command::shift_right, "→"},
        {Command::shift_up, "↑"},
        {Command::shift_down, "↓"},
        {Command::mirror_sideways, "⇄"},
        {Command::mirror_upwards, "⇅"},
        {Command::invert, "◑"}}},
      {1, {{Command::insert_row, tr("+ Row")}, {Command::delete_row, tr("− Row")}, {Command::resize, tr("Size")}}},
      {1, {{Command::zoom_out, "−"}, {Command::zoom_in, "+"}, {Command::zoom_fit, tr("Fit")}}},
      {1, {{Command::export_card, tr("Card")}, {Command::export_chart, tr("Needle chart")}}},
  };
  if (app.yoke.opened) {
    groups.push_back({0, {{Command::show_yoke, tr("Yoke")}}});
  }
  return groups;
}

float width_of(const ToolButton& tool) {
  return ImGui::CalcTextSize(tool.label).x + 2 * ImGui::GetStyle().FramePadding.x;
}

constexpr float between_tools = 4;
constexpr float between_groups = 16;

float width_of_all(const std::vector<ToolGroup>& groups, float unit) {
  float wide = 2 * bar_margin * unit;
  for (const ToolGroup& group : groups) {
    for (const ToolButton& tool : group.tools) {
      wide += width_of(tool) + (&tool == &group.tools.front() ? between_groups : between_tools) * unit;
    }
  }
  return wide - between_groups * unit; // before the first there is none
}

std::vector<ToolButton> drawing_tools() {
  return {{Command::tool_pen, tr("Pen")},
          {Command::tool_line, tr("Line")},
          {Command::tool_rectangle, tr("Rectangle")},
          {Command::tool_ellipse, tr("Ellipse")},
          {Command::tool_flood, tr("Fill")},
          {Command::tool_mark, tr("Mark")}};
}

// Where all but the tools, and the widest of them, have no room in one.
bool takes_two_lines(const App& app, float width) {
  std::vector<ToolGroup> groups;
  tool_groups(app, groups);
  groups.push_back({0, {std::ranges::max(drawing_tools(), {}, width_of)}});
  return width_of_all(groups, app.theme.scale) > width;
}

} // namespace

float toolbar_height(const App& app, float width) {
  return height_of_bar(takes_two_lines(app, width) ? 2 : 1, app.theme.scale);
}

namespace {

// Its tip stands below all of the tools: beside the pointer it would lie over the next ones.
void tool_button(const App& app, Actions& actions, const ToolButton& tool, Look look, float below) {
  const float left = ImGui::GetCursorScreenPos().x;
  const bool in_right_half = left > ImGui::GetIO().DisplaySize.x / 2;
  command_button(app, actions, tool.command, tool.label, look, 0,
                 TipPlace{{in_right_half ? left + width_of(tool) : left, below}, in_right_half});
}

constexpr std::ptrdiff_t place_of_pens = 2; // among the groups

// Beside the pens all tools, or the one that is chosen; where there is no room for that, of the pens as well the chosen
// one alone, and as far to the left as they need. False where something is left out.
bool add_tools(const App& app, std::vector<ToolGroup>& groups, float room) {
  const ToolGroup all{0, drawing_tools()};
  const ToolButton tool = all.tools[static_cast<std::size_t>(app.view.tool)];
  const ToolButton pen = groups[place_of_pens].tools[static_cast<std::size_t>(app.view.pen)];
  for (const ToolGroup& wished : {all, ToolGroup{0, {tool}}}) {
    std::vector<ToolGroup> more = groups;
    more.insert(more.begin() + place_of_pens + 1, wished);
    if (width_of_all(more, app.theme.scale) <= room) {
      groups = std::move(more);
      return true;
    }
  }
  groups.erase(groups.begin() + place_of_pens);
  const std::vector<ToolGroup> others = groups;
  for (std::ptrdiff_t place = place_of_pens; place >= 0; --place) {
    groups.assign(others.begin(), others.begin() + place);
    groups.push_back({0, {pen, tool}});
    if (width_of_all(groups, app.theme.scale) <= room) {
      break;
    }
  }
  groups.insert(groups.end(), others.begin() + std::ssize(groups) - 1, others.end());
  return false;
}

// The tools side by side. Where large text leaves no room for all, the rest is reached by a button for all commands, at
// the end of the last line.
void line_of_tools(const App& app, Actions& actions, const std::vector<ToolGroup>& groups, const ScreenBox& box,
                   bool last_line, bool& left_out) {
  const float room = box.width();
  const float unit = app.theme.scale;
  const ToolButton more{Command::all_commands, tr("More…")};
  const float right = room - bar_margin * unit + 0.5F;
  const bool all = width_of_all(groups, unit) <= room && !(last_line && left_out);
  bool first = true;
  bool full = false;
  for (const ToolGroup& group : groups) {
    float gap = between_groups;
    for (const ToolButton& tool : group.tools) {
      const float from = first ? bar_margin * unit : ImGui::GetItemRectMax().x + gap * unit;
      const float for_more = last_line ? between_groups * unit + width_of(more) : 0;
      full = full || (!all && from + width_of(tool) + for_more > right);
      if (full) {
        break;
      }
      if (!first) {
        ImGui::SameLine(0, gap * unit);
      }
      first = false;
      gap = between_tools;
      const Look look = is_chosen(app, tool.command)                                    ? Look::chosen
                        : tool.command == Command::export_card && app.work.profile.card ? Look::main
                                                                                        : Look::plain;
      tool_button(app, actions, tool, look, box.bottom);
    }
  }
  left_out = left_out || full;
  if (left_out && last_line) {
    ImGui::SameLine(0, between_groups * unit);
    tool_button(app, actions, more, Look::plain, box.bottom);
  }
}

} // namespace

void toolbar(const App& app, Actions& actions, const ScreenBox& box) {
  begin_bar(app, "toolbar", box);
  std::vector<ToolGroup> groups;
  bool left_out = false;
  tool_groups(app, groups);
  if (!takes_two_lines(app, box.width())) {
    left_out = !add_tools(app, groups, box.width());
    line_of_tools(app, actions, groups, box, true, left_out);
  } else {
    for (const int line : {0, 1}) {
      std::vector<ToolGroup> in_line;
      std::ranges::copy_if(groups, std::back_inserter(in_line),
                           [&](const ToolGroup& group) { return group.line == line; });
      if (line == 0) {
        left_out = !add_tools(app, in_line, box.width());
      }
      line_of_tools(app, actions, in_line, box, line == 1, left_out);
    }
  }
  end_bar(app, box);
}

} // namespace punchwright::editor
