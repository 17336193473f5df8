// The settings at the left, in tabs: design, yarns, machine, piece, card.
#include "editor/panels.hpp"
#include "editor/widgets.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <imgui_stdlib.h>

namespace punchwright::editor {

namespace {

struct TabInfo {
  Tab tab;
  const char* name;
};

constexpr std::array tabs = {TabInfo{Tab::design, "Design"}, TabInfo{Tab::yarns, "Yarns"},
                             TabInfo{Tab::machine, "Machine"}, TabInfo{Tab::piece, "Piece"},
                             TabInfo{Tab::card, "Card"}};

void tab_row(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  float words = 0;
  for (const TabInfo& info : tabs) {
    words += ImGui::CalcTextSize(info.name).x;
  }
  const float gap = 2 * theme.scale;
  const float room = ImGui::GetContentRegionAvail().x - gap * (tabs.size() - 1);
  const float padding = std::max(2.0F, (room - words) / static_cast<float>(tabs.size()) / 2);
  ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, ImVec2(1, 6 * theme.scale));
  ImGui::PushStyleVar(ImGuiStyleVar_FrameBorderSize, 0);
  for (const TabInfo& info : tabs) {
    const std::string place = std::string("tab ") + info.name;
    const float wide = ImGui::CalcTextSize(info.name).x + 2 * padding;
    if (button(theme, actions, place.c_str(), info.name, app.view.tab == info.tab ? Look::chosen : Look::quiet, wide)) {
      actions.push(ChooseTab{info.tab});
    }
    ImGui::SameLine(0, gap);
  }
  ImGui::NewLine();
  ImGui::PopStyleVar(2);
}

} // namespace

void settings_panel(const App& app, Actions& actions, const ScreenBox& box) {
  begin_part(app, "settings", box);
  tab_row(app, actions);
  ImGui::BeginChild("tab");
  switch (app.view.tab) {
  case Tab::design: design_tab(app, actions); break;
  case Tab::yarns: yarns_tab(app, actions); break;
  case Tab::machine: machine_tab(app, actions); break;
  case Tab::piece: piece_tab(app, actions); break;
  case Tab::card: card_tab(app, actions); break;
  }
  ImGui::EndChild();
  ImGui::GetWindowDrawList()->AddLine({box.right - 0.5F, box.top}, {box.right - 0.5F, box.bottom}, ink(app.theme.line));
  ImGui::End();
}

void design_tab(const App& app, Actions& actions) {
  const Document& design = app.work.design;
  const Theme& theme = app.theme;
  heading(theme, "Title and notes");
  text_field({app, actions, "title"}, "Title", &Document::title);
  std::string notes = design.notes;
  if (ImGui::InputTextMultiline("##notes", &notes, ImVec2(-1, 5.5F * ImGui::GetTextLineHeight()))) {
    Document settings = settings_of(design);
    settings.notes = notes;
    send({app, actions, "notes"}, std::move(settings));
  }
  remember_place(actions, "notes");

  heading(theme, "Gauge, over 10 cm");
  Document settings = settings_of(design);
  if (number_field({app, actions, "gauge stitches"}, "Stitches", settings.gauge.stitches, 1, 200, "%.1f")) {
    send({app, actions, "gauge stitches"}, settings);
  }
  if (number_field({app, actions, "gauge rows"}, "Rows", settings.gauge.rows, 1, 200, "%.1f")) {
    send({app, actions, "gauge rows"}, settings);
  }
  hint(theme, fmt::format("A stitch is {:.2f} mm wide and {:.2f} mm high; the drawing's cells have that proportion.",
                          design.gauge.stitch_mm(), design.gauge.row_mm()));

  heading(theme, "Repeat");
  label(theme, "Size");
  ImGui::Text("%d stitches × %d rows", design.grid.width(), design.grid.height());
  if (button(theme, actions, "change size", "Change the size…")) {
    actions.run(Command::resize);
  }
}

} // namespace punchwright::editor
