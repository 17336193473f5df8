// The yoke's page: where bar, fields, view and findings stand.
#include "editor/yoke_fitting.hpp"
#include "editor/yoke_parts.hpp"
#include "editor/yoke_schematic_words.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <vector>

namespace punchwright::editor {

namespace {

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

void view_part(const App& app, Actions& actions, const ScreenBox& box) {
  const float unit = app.theme.scale;
  ImGui::PushStyleColor(ImGuiCol_WindowBg, tint(app.theme.canvas));
  begin_part(app, "yoke", box);
  ImGui::PopStyleColor();
  yoke_choices(app, actions);
  const YokeShows shows = app.view.yoke.shows;
  // Large text takes more room than a small window has: the picture then keeps what it needs, and scrolls.
  const ImVec2 there = ImGui::GetContentRegionAvail();
  const float least = std::max(there.x, least_letters_across * ImGui::GetFontSize());
  const bool schematic = shows == YokeShows::schematic;
  SchematicWords words = schematic ? schematic_words(app, least) : SchematicWords{};
  const float wide = schematic ? words.width : least;
  const float bar = wide > there.x ? ImGui::GetStyle().ScrollbarSize : 0; // that scrolls to the side
  const float tall = std::max(there.y - bar, schematic ? words.least_height() + 6 * unit
                                                       : least_lines * ImGui::GetTextLineHeightWithSpacing());
  if (actions.publish_places) {
    const ImVec2 low = ImGui::GetCursorScreenPos();
    actions.places.push_back({"yoke seen", {low.x, low.y, low.x + there.x, low.y + there.y}});
  }
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
  if (schematic) {
    if (right != wide) {
      words = schematic_words(app, right);
    }
    draw_schematic(app, actions, room, words);
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
  yoke_bar(app, actions, parts.toolbar);
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
