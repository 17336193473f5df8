// Where the parts of the window stand, and the edges that are dragged to make them wider.
// The panels keep to a share of the window, so that large text leaves room for the drawing.
#include "editor/panels.hpp"
#include "editor/widgets.hpp"
#include "editor/yoke_parts.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <imgui.h>
#include <imgui_internal.h>

namespace punchwright::editor {

namespace {

constexpr float least_panel = 150;      // units of layout
constexpr float least_for_both = 330;   // of the piece above the findings, units of layout
constexpr float most_of_window = 0.45F; // of its width, for one panel

// px: what the user wished, else a share of the window between two sensible sizes.
float panel_width(const App& app, float wished, float window, float share, float low, float high, float most) {
  const float unit = app.theme.scale;
  if (wished > 0) {
    return std::clamp(wished * unit, std::min(least_panel * unit, most_of_window * window), most_of_window * window);
  }
  return std::min(std::clamp(window * share, low * unit, high * unit), window * most);
}

void edge(const App& app, Actions& actions, ResizePanel::Which which, float x, const ScreenBox& beside) {
  const float unit = app.theme.scale;
  const bool settings = which == ResizePanel::Which::settings;
  const char* const name = settings ? "settings edge" : "findings edge";
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, ImVec2(0, 0));
  ImGui::PushStyleVar(ImGuiStyleVar_WindowMinSize, ImVec2(1, 1));
  const float wide = 6 * unit;
  ImGui::SetNextWindowPos(ImVec2(x - wide / 2, beside.top));
  ImGui::SetNextWindowSize(ImVec2(wide, std::max(1.0F, beside.height())));
  ImGui::Begin(name, nullptr,
               ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                   ImGuiWindowFlags_NoFocusOnAppearing | ImGuiWindowFlags_NoNav | ImGuiWindowFlags_NoBackground |
                   ImGuiWindowFlags_NoScrollWithMouse);
  ImGui::InvisibleButton("edge", ImVec2(wide, std::max(1.0F, beside.height())));
  if (actions.publish_places) {
    actions.places.push_back({name, {x - wide / 2, beside.top, x + wide / 2, beside.bottom}});
  }
  if (ImGui::IsItemHovered() || ImGui::IsItemActive()) {
    ImGui::SetMouseCursor(ImGuiMouseCursor_Hand);
    ImGui::GetWindowDrawList()->AddRectFilled({x - unit, beside.top}, {x + unit, beside.bottom}, ink(app.theme.accent));
  }
  tip(app.theme, tr("Drag to make the panel wider or narrower; double-click for its usual width"));
  if (ImGui::IsItemHovered() && ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left)) {
    actions.push(ResizePanel{which, 0});
  } else if (const auto way = way_of_drag(); way && (std::abs(way->x) >= ImGui::GetIO().MouseDragThreshold ||
                                                     ImGui::IsMouseDragPastThreshold(ImGuiMouseButton_Left))) {
    const float pointer = ImGui::GetIO().MousePos.x;
    const float width = settings ? pointer : ImGui::GetIO().DisplaySize.x - pointer;
    actions.push(ResizePanel{which, std::max(least_panel, width / unit)});
  }
  ImGui::End();
  ImGui::PopStyleVar(2);
}

} // namespace

Parts parts_of(const App& app) {
  const float unit = app.theme.scale;
  const ImVec2 size = ImGui::GetIO().DisplaySize;
  const float top = ImGui::GetFrameHeight();
  const float bar = app.yoke.shown ? yoke_bar_height(app, size.x) : toolbar_height(app, size.x);
  const float foot = 30 * unit;
  Parts parts;
  parts.toolbar = {0, top, size.x, top + bar};
  parts.status = {0, size.y - foot, size.x, size.y};
  const float upper = top + bar;
  const float lower = size.y - foot;
  const View& view = app.view;
  const float left = view.settings_open ? panel_width(app, view.settings_width, size.x, 0.215F, 258, 330, 0.30F) : 0;
  const float right = view.findings_open ? panel_width(app, view.findings_width, size.x, 0.225F, 240, 350, 0.28F) : 0;
  parts.settings = {0, upper, left, lower};
  parts.drawing = {left, upper, std::max(left + 1, size.x - right), lower};
  // Of the right side the piece gets a share, but at least what its buttons, its words and a small picture need.
  const float share = (lower - upper) * (lower - upper > 480 * unit ? 0.42F : 0.36F);
  const float split = upper + std::max(share, std::min(230 * unit, (lower - upper) * 0.6F));
  parts.piece = {size.x - right, upper, size.x, split};
  parts.findings = {size.x - right, split, size.x, lower};
  parts.low = lower - upper < least_for_both * unit;
  parts.by_turns = view.findings_open && !view.piece_large && parts.low;
  if (parts.by_turns) {
    parts.piece.bottom = lower;
    parts.findings.top = upper;
  }
  if (view.piece_large) {
    parts.piece = parts.drawing;
    parts.findings.top = upper;
  }
  return parts;
}

void panel_edges(const App& app, Actions& actions, const Parts& parts) {
  if (app.view.settings_open) {
    edge(app, actions, ResizePanel::Which::settings, parts.settings.right, parts.drawing);
  }
  if (app.view.findings_open) {
    edge(app, actions, ResizePanel::Which::findings, parts.drawing.right, parts.drawing);
  }
}

} // namespace punchwright::editor
