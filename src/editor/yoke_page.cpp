// The yoke's page: its bar, and where fields, view and findings stand.
#include "editor/yoke_fitting.hpp"
#include "editor/yoke_parts.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <vector>

namespace punchwright::editor {

namespace {

struct BarButton {
  Command command;
  const char* label;
  float gap = 4; // before it, units of layout
};

std::vector<BarButton> bar_buttons() {
  return {{Command::open, tr("Open"), 0},
          {Command::save, tr("Save")},
          {Command::undo, tr("↶ Undo"), 16},
          {Command::redo, tr("↷ Redo")},
          {Command::yoke_schematic, tr("Schematic"), 16},
          {Command::yoke_flat, tr("Laid flat")},
          {Command::yoke_worn, tr("As worn")},
          {Command::yoke_bed, tr("On the bed")},
          {Command::export_yoke, tr("Sheets"), 16},
          {Command::show_yoke, tr("Back to the drawing"), 16}};
}

float width_of(const BarButton& item) {
  return ImGui::CalcTextSize(item.label).x + 2 * ImGui::GetStyle().FramePadding.x;
}

bool is_shown(const App& app, Command command) {
  const YokeShows shows = app.view.yoke.shows;
  switch (command) {
  case Command::yoke_schematic: return shows == YokeShows::schematic;
  case Command::yoke_flat: return shows == YokeShows::flat;
  case Command::yoke_worn: return shows == YokeShows::worn;
  case Command::yoke_bed: return shows == YokeShows::bed;
  default: return false;
  }
}

// Where each button stands: its line, and px from the left.
struct Standing {
  int line = 0;
  float left = 0;
};
std::vector<Standing> standings(const App& app, float width) {
  const float unit = app.theme.scale;
  std::vector<Standing> places;
  float left = 10 * unit;
  int line = 0;
  for (const BarButton& item : bar_buttons()) {
    left += item.gap * unit;
    if (left + width_of(item) > width - 10 * unit && !places.empty()) {
      ++line;
      left = 10 * unit;
    }
    places.push_back({line, left});
    left += width_of(item);
  }
  return places;
}

void bar(const App& app, Actions& actions, const ScreenBox& box) {
  const float unit = app.theme.scale;
  ImGui::PushStyleColor(ImGuiCol_WindowBg, tint(app.theme.ground));
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, ImVec2(10 * unit, 6 * unit));
  begin_part(app, "yoke bar", box, ImGuiWindowFlags_NoNav | ImGuiWindowFlags_NoFocusOnAppearing);
  const std::vector<Standing> places = standings(app, box.width());
  const std::vector<BarButton> items = bar_buttons();
  for (std::size_t place = 0; place < items.size(); ++place) {
    const auto line = static_cast<float>(places[place].line);
    ImGui::SetCursorPos({places[place].left, 6 * unit + line * (ImGui::GetFrameHeight() + 6 * unit)});
    const Command command = items[place].command;
    command_button(app, actions, command, items[place].label,
                   is_shown(app, command)            ? Look::chosen
                   : command == Command::export_yoke ? Look::main
                                                     : Look::plain);
  }
  ImGui::GetWindowDrawList()->AddLine({box.left, box.bottom - 1}, {box.right, box.bottom - 1}, ink(app.theme.line));
  ImGui::End();
  ImGui::PopStyleVar();
  ImGui::PopStyleColor();
}

void choices(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  const YokeView& view = app.view.yoke;
  const Yoke& yoke = app.yoke.opened->yoke;
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted(tr("Size"));
  const auto choice = [&](const std::string& name, const std::string& words, bool chosen, YokeView next) {
    flow(ImGui::CalcTextSize(words.c_str()).x + 2 * ImGui::GetStyle().FramePadding.x);
    if (button(theme, actions, name.c_str(), words.c_str(), chosen ? Look::chosen : Look::quiet)) {
      actions.push(SetYokeView{next});
    }
  };
  for (std::size_t size = 0; size < yoke.sizes.size(); ++size) {
    YokeView next = view;
    next.size = size;
    choice(fmt::format("yoke size {}", size + 1), yoke.sizes[size], size == view.size, next);
  }
  if (view.shows != YokeShows::bed) {
    return;
  }
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted(tr("Piece"));
  for (std::size_t piece = 0; piece < yoke.pieces.size(); ++piece) {
    YokeView next = view;
    next.piece = piece;
    choice(fmt::format("yoke piece {}", piece + 1), yoke.pieces[piece].name, piece == view.piece, next);
  }
}

// What is asked for, and why no more than that can be shown.
void draw_wished(const App& app, ScreenBox room) {
  ImGui::Dummy({0, 8 * app.theme.scale});
  hint(app.theme,
       tr("No stitch counts are found for this size: the lines show what is asked for. The findings say why, and "
          "what would do."));
  room.top = std::min(std::floor(ImGui::GetCursorScreenPos().y), room.bottom - 1);
  switch (app.view.yoke.shows) {
  case YokeShows::flat: return draw_wished_flat(app, room);
  case YokeShows::worn: return draw_wished_worn(app, room);
  default: return draw_wished_on_bed(app, room);
  }
}

// What a picture needs for its words, in the size of the text.
constexpr float least_letters_across = 14;
constexpr float least_lines = 9;
constexpr float least_lines_of_schematic = 17;

void view_part(const App& app, Actions& actions, const ScreenBox& box) {
  const float unit = app.theme.scale;
  ImGui::PushStyleColor(ImGuiCol_WindowBg, tint(app.theme.canvas));
  begin_part(app, "yoke", box);
  ImGui::PopStyleColor();
  choices(app, actions);
  const YokeShows shows = app.view.yoke.shows;
  // Large text takes more room than a small window has: the picture then keeps what it needs, and scrolls.
  const ImVec2 there = ImGui::GetContentRegionAvail();
  const float wide = std::max(there.x, least_letters_across * ImGui::GetFontSize());
  const float tall = std::max(there.y, (shows == YokeShows::schematic ? least_lines_of_schematic : least_lines) *
                                           ImGui::GetTextLineHeightWithSpacing());
  ImGui::PushStyleColor(ImGuiCol_ChildBg, tint(app.theme.canvas));
  ImGui::BeginChild("picture", {0, 0}, false, ImGuiWindowFlags_NavFlattened | ImGuiWindowFlags_HorizontalScrollbar);
  ImGui::PopStyleColor();
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const float right = wide > there.x ? wide : ImGui::GetContentRegionAvail().x; // less a bar that scrolls
  const ScreenBox room{corner.x, std::floor(corner.y + 4 * unit), corner.x + right,
                       std::max(corner.y + 5 * unit, std::floor(corner.y + tall - 2 * unit))};
  if (actions.publish_places) {
    actions.places.push_back({"yoke view", room});
  }
  if (shows == YokeShows::schematic) {
    draw_schematic(app, actions, room);
  } else if (shown_plan(app) == nullptr) {
    draw_wished(app, room);
  } else if (shows == YokeShows::flat) {
    draw_flat(app, actions, room);
  } else if (shows == YokeShows::worn) {
    draw_worn(app, actions, room);
  } else {
    draw_on_bed(app, actions, room);
  }
  ImGui::SetCursorScreenPos(corner);
  ImGui::Dummy({right - 1, tall - 1});
  ImGui::EndChild();
  ImGui::End();
}

} // namespace

float yoke_bar_height(const App& app, float width) {
  const auto lines = static_cast<float>(standings(app, width).back().line + 1);
  return lines * ImGui::GetFrameHeight() + (lines - 1) * 6 * app.theme.scale + 12 * app.theme.scale;
}

bool cloth_field(const Field& field, const char* words, double& cm, double low, double high) {
  const bool inches = field.app.settings.lengths == LengthUnit::inches;
  const double per = inches ? mm_per_inch / 10 : 1; // cm
  const auto shown_as = [&](double value) { return std::round(value / per * 1000) / 1000; };
  double shown = shown_as(cm);
  if (!number_field(field, words, shown, shown_as(low), shown_as(high), 1, inches ? tr("in") : tr("cm"))) {
    return false;
  }
  cm = std::clamp(std::round(shown * per * 1000) / 1000, low, high);
  return true;
}

void send(const App& app, Actions& actions, Yoke yoke, std::string field) {
  (void)app;
  if (!ImGui::IsKeyPressed(ImGuiKey_Escape)) {
    actions.push(ChangeYoke{std::move(yoke), std::move(field)});
  }
}

void yoke_page(const App& app, Actions& actions) {
  const Parts parts = parts_of(app);
  bar(app, actions, parts.toolbar);
  if (app.view.settings_open) {
    begin_part(app, "settings", parts.settings);
    ImGui::BeginChild("yoke fields", ImVec2(0, 0), false, ImGuiWindowFlags_NavFlattened);
    yoke_fields(app, actions);
    ImGui::EndChild();
    ImGui::GetWindowDrawList()->AddLine({parts.settings.right - 0.5F, parts.settings.top},
                                        {parts.settings.right - 0.5F, parts.settings.bottom}, ink(app.theme.line));
    ImGui::End();
  }
  const ScreenBox side{parts.piece.left, parts.piece.top, parts.piece.right, parts.findings.bottom};
  if (app.view.findings_open) {
    begin_part(app, "findings", side);
    ImGui::BeginChild("yoke side", ImVec2(0, 0), false, ImGuiWindowFlags_NavFlattened);
    yoke_side(app, actions);
    ImGui::EndChild();
    ImGui::GetWindowDrawList()->AddLine({side.left + 0.5F, side.top}, {side.left + 0.5F, side.bottom},
                                        ink(app.theme.line));
    ImGui::End();
  }
  view_part(app, actions, parts.drawing);
  status_line(app, actions, parts.status);
  panel_edges(app, actions, parts);
}

} // namespace punchwright::editor
