// The settings at the left, in tabs: design, tools, yarns, machine, piece, card.
#include "design/words.hpp"
#include "editor/choice_field.hpp"
#include "editor/panels.hpp"
#include "editor/typed_text.hpp"
#include "editor/widgets.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <imgui_stdlib.h>

namespace punchwright::editor {

namespace {

struct TabInfo {
  Tab tab;
  const char* name;
  const char* tip;
};

constexpr std::array tabs = {TabInfo{Tab::design, noted("Design"), noted("Title, notes, gauge, size")},
                             TabInfo{Tab::tools, noted("Tools"), noted("Shapes, symmetry, lettering, motifs")},
                             TabInfo{Tab::yarns, noted("Yarns"), noted("Yarns and the bands that use them")},
                             TabInfo{Tab::machine, noted("Machine"), noted("Which machine, and how its card is read")},
                             TabInfo{Tab::piece, noted("Piece"), noted("Stitches, needles, and the rules of knitting")},
                             TabInfo{Tab::card, noted("Card"), noted("Paper, loop, and whether the printer is true")}};

// For a narrow panel with large text: one under the other, where they are asked for.
void tab_list(const App& app, Actions& actions) {
  const auto present = std::ranges::find(tabs, app.view.tab, &TabInfo::tab);
  ImGui::SetNextItemWidth(-1);
  if (ImGui::BeginCombo("##tabs", tr(present->name))) {
    for (const TabInfo& info : tabs) {
      if (list_entry(tr(info.name), info.tab == app.view.tab)) {
        actions.push(ChooseTab{info.tab});
      }
      remember_place(actions, std::string("tab ") + info.name);
      tip(app.theme, tr(info.tip));
    }
    ImGui::EndCombo();
  }
  remember_place(actions, "tabs");
}

// In one line, or in two where large text leaves no room.
void tab_row(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  float words = 0;
  for (const TabInfo& info : tabs) {
    words += ImGui::CalcTextSize(tr(info.name)).x;
  }
  const float gap = 2 * theme.scale;
  const float room = ImGui::GetContentRegionAvail().x;
  const float padding = (room - words - gap * (tabs.size() - 1)) / static_cast<float>(tabs.size()) / 2;
  const bool two_lines = padding < 2 * theme.scale;
  float widest = 0;
  for (const TabInfo& info : tabs) {
    widest = std::max(widest, ImGui::CalcTextSize(tr(info.name)).x);
  }
  if (two_lines && widest + 2 > (room - 2 * gap) / 3) {
    return tab_list(app, actions);
  }
  ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, ImVec2(1, 6 * theme.scale));
  ImGui::PushStyleVar(ImGuiStyleVar_FrameBorderSize, 0);
  const float lines = two_lines ? 2 : 1;
  const float below = ImGui::GetCursorScreenPos().y + lines * ImGui::GetFrameHeightWithSpacing();
  for (std::size_t index = 0; index < tabs.size(); ++index) {
    const TabInfo& info = tabs[index];
    const std::size_t in_line = 3;
    const float wide = two_lines ? (room - gap * static_cast<float>(in_line - 1)) / static_cast<float>(in_line)
                                 : ImGui::CalcTextSize(tr(info.name)).x + 2 * padding;
    if (index > 0 && (!two_lines || index != in_line)) {
      ImGui::SameLine(0, gap);
    }
    const std::string place = std::string("tab ") + info.name;
    if (button(theme, actions, place.c_str(), tr(info.name), app.view.tab == info.tab ? Look::chosen : Look::quiet,
               wide)) {
      actions.push(ChooseTab{info.tab});
    }
    tip(theme, tr(info.tip), TipPlace{{ImGui::GetItemRectMin().x, below}});
  }
  ImGui::PopStyleVar(2);
}

// Wraps at spaces while it is typed; what is kept has no line breaks but the user's own.
struct Wrapping {
  const std::string& text;
  std::string wrapped; // as ImGui had it before the edit
  std::string after;
  float room = 0;
  bool edited = false;
};

int wrap_anew(ImGuiInputTextCallbackData* data) {
  Wrapping& wrapping = *static_cast<Wrapping*>(data->UserData);
  const std::string_view edited(data->Buf, static_cast<std::size_t>(data->BufTextLen));
  wrapping.after = unwrapped_edit(wrapping.text, wrapping.wrapped, edited);
  wrapping.edited = true;
  const std::string again = in_lines(wrapping.after, wrapping.room);
  std::ranges::copy(again, data->Buf); // of the same length, by wrapped_at's promise
  data->BufDirty = true;
  return 0;
}

void notes_field(const App& app, Actions& actions) {
  const Document& design = app.work.design;
  const ImGuiStyle& style = ImGui::GetStyle();
  const float room = ImGui::GetContentRegionAvail().x - 2 * style.FramePadding.x - style.ScrollbarSize - 1;
  std::string shown = in_lines(design.notes, room);
  Wrapping wrapping{design.notes, shown, {}, room, false};
  ImGui::InputTextMultiline("##notes", &shown, ImVec2(-1, 5.5F * ImGui::GetTextLineHeight()),
                            ImGuiInputTextFlags_CallbackEdit, wrap_anew, &wrapping);
  remember_place(actions, "notes", Stop::Kind::field);
  if (ImGui::IsItemDeactivated() && ImGui::IsKeyPressed(ImGuiKey_Escape)) {
    actions.push(DropField{});
  } else if (wrapping.edited) {
    Document settings = settings_of(design);
    settings.notes = wrapping.after;
    send({app, actions, noted("notes")}, std::move(settings));
  }
}

} // namespace

void settings_panel(const App& app, Actions& actions, const ScreenBox& box) {
  begin_part(app, "settings", box);
  tab_row(app, actions);
  ImGui::BeginChild("tab", ImVec2(0, 0), false, ImGuiWindowFlags_NavFlattened);
  switch (app.view.tab) {
  case Tab::design: design_tab(app, actions); break;
  case Tab::tools: tools_tab(app, actions); break;
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
  heading(theme, tr("Title and notes"));
  text_field({app, actions, noted("title")}, tr("Title"), &Document::title);
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted(with_capital(tr("notes")).c_str()); // "Notes" are findings elsewhere
  notes_field(app, actions);

  const LengthUnit unit = app.settings.lengths;
  heading(theme, said("Gauge, over {}", gauge_span_text(unit)).c_str());
  Document settings = settings_of(design);
  const auto gauge = [&](const char* name, const char* words, double& over_10_cm) {
    double shown = gauge_shown(over_10_cm, unit);
    if (number_field({app, actions, name}, words, shown, gauge_shown(1, unit), gauge_shown(200, unit), 1)) {
      over_10_cm = std::clamp(gauge_kept(shown, unit), 1.0, 200.0);
      send({app, actions, name}, settings);
    }
  };
  gauge(noted("gauge stitches"), tr("Stitches"), settings.gauge.stitches);
  gauge(noted("gauge rows"), tr("Rows"), settings.gauge.rows);
  hint(theme,
       said("A stitch is {} wide and {} high; the drawing's cells have that proportion.",
            small_length_text(design.gauge.stitch_mm(), unit, 2), small_length_text(design.gauge.row_mm(), unit, 2)));

  heading(theme, tr("Repeat"));
  label(theme, tr("Size"));
  ImGui::PushTextWrapPos(0);
  ImGui::TextUnformatted(said("{} stitches × {} rows", design.grid.width(), design.grid.height()).c_str());
  ImGui::PopTextWrapPos();
  if (button(theme, actions, "change size", tr("Change the size…"))) {
    actions.run(Command::resize);
  }
  tip(theme, tr("Stitches and rows of the repeat (Ctrl+R)"));
}

} // namespace punchwright::editor
