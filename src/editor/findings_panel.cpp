// What is wrong with the design, in words; each finding jumps to its place in the drawing.
#include "editor/panels.hpp"
#include "editor/widgets.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright::editor {

namespace {

// Where it is, in a few words: the heading of an entry.
std::string place_of(const Finding& finding) {
  std::string place;
  if (finding.row >= 0) {
    place = fmt::format("Row {}", finding.row + 1);
    if (finding.first_needle && finding.last_needle) {
      place += fmt::format(", {}–{}", name_of(*finding.first_needle), name_of(*finding.last_needle));
    } else if (finding.first_column >= 0) {
      place += fmt::format(", columns {}–{}", finding.first_column + 1, finding.last_column + 1);
    }
  } else {
    switch (finding.id) {
    case FindingId::repeat_width: return "Width of the repeat";
    case FindingId::card_too_short_for_loop:
    case FindingId::card_longer_than_blank: return "Card";
    case FindingId::piece_wider_than_bed:
    case FindingId::piece_off_bed: return "Piece";
    case FindingId::repeat_on_needles:
    case FindingId::repeat_cut_at_edges: return "Repeat on the bed";
    case FindingId::yarns_too_alike: return fmt::format("Yarns {} and {}", finding.yarn, finding.other);
    case FindingId::unknown_key: return finding.line > 0 ? fmt::format("File, line {}", finding.line) : "File";
    default: return "Design";
    }
  }
  if (finding.on_piece) {
    place += " (piece)";
  }
  return place;
}

Colour colour_of(const Theme& theme, Severity severity) {
  return severity == Severity::fault ? theme.fault : severity == Severity::warning ? theme.warning : theme.note;
}

// Cuts the text at the width, at a letter's border, with dots.
std::string cut(const std::string& text, float room) {
  if (ImGui::CalcTextSize(text.c_str()).x <= room) {
    return text;
  }
  const char* end = nullptr;
  ImGui::GetFont()->CalcTextSizeA(ImGui::GetFontSize(), room - ImGui::CalcTextSize("…").x, 0, text.c_str(), nullptr,
                                  &end);
  return text.substr(0, static_cast<std::size_t>(end - text.c_str())) + "…";
}

std::string with_capital(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
    text[0] = static_cast<char>(text[0] - 32);
  }
  return text;
}

void entry(const App& app, Actions& actions, int index) {
  const Theme& theme = app.theme;
  const float unit = theme.scale;
  const Finding& finding = app.caches.findings[static_cast<std::size_t>(index)];
  const bool chosen = app.view.finding == index;
  const float tall = 2 * ImGui::GetTextLineHeight() + 11 * unit;
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const float wide = ImGui::GetContentRegionAvail().x;
  ImGui::PushID(index);
  if (ImGui::Selectable("##finding", chosen, 0, ImVec2(wide, tall))) {
    actions.push(ChooseFinding{index});
  }
  ImGui::PopID();
  remember_place(actions, fmt::format("finding {}", index));
  ImDrawList& list = *ImGui::GetWindowDrawList();
  severity_sign(list, theme, {corner.x + 12 * unit, corner.y + 5 * unit + ImGui::GetTextLineHeight() / 2}, 7 * unit,
                finding.severity);
  const float left = corner.x + 27 * unit;
  list.AddText(theme.bold, theme.bold->FontSize, {left, corner.y + 4 * unit}, ink(colour_of(theme, finding.severity)),
               cut(place_of(finding), wide - 30 * unit).c_str());
  Words words = words_of(finding, app.work.design, app.work.profile);
  const std::string known = fmt::format("row {}: ", finding.row + 1); // the heading has said it
  if (words.text.starts_with(known)) {
    words.text.erase(0, known.size());
  }
  words.text = with_capital(words.text);
  list.AddText({left, corner.y + 6 * unit + ImGui::GetTextLineHeight()}, ink(theme.text),
               cut(words.text, wide - 30 * unit).c_str());
  if (app.view.finding_wanted && chosen) {
    ImGui::SetScrollHereY(0.5F);
  }
}

Words chosen_words(const App& app) {
  const Finding& finding = app.caches.findings[static_cast<std::size_t>(app.view.finding)];
  const Words words = words_of(finding, app.work.design, app.work.profile);
  return {with_capital(words.text), with_capital(words.remedy)};
}

// Room that the whole text of the chosen finding takes.
float height_of_details(const App& app) {
  const Words words = chosen_words(app);
  const float wide = ImGui::GetContentRegionAvail().x - 2 * ImGui::GetStyle().WindowPadding.x;
  const float text = ImGui::CalcTextSize(words.text.c_str(), nullptr, false, wide).y;
  const float remedy = words.remedy.empty() ? 0 : ImGui::CalcTextSize(words.remedy.c_str(), nullptr, false, wide).y;
  return text + remedy + ImGui::GetTextLineHeight() + 2 * ImGui::GetStyle().WindowPadding.y +
         4 * ImGui::GetStyle().ItemSpacing.y;
}

void details(const App& app, float tall) {
  const Theme& theme = app.theme;
  const Words words = chosen_words(app);
  ImGui::PushStyleColor(ImGuiCol_ChildBg, tint(theme.ground));
  ImGui::BeginChild("details", ImVec2(0, tall), true, ImGuiWindowFlags_AlwaysUseWindowPadding);
  ImGui::PushTextWrapPos(0);
  ImGui::TextUnformatted(words.text.c_str());
  if (!words.remedy.empty()) {
    ImGui::PushFont(theme.bold);
    ImGui::TextColored(tint(theme.good), "What helps");
    ImGui::PopFont();
    ImGui::TextUnformatted(words.remedy.c_str());
  }
  ImGui::PopTextWrapPos();
  ImGui::EndChild();
  ImGui::PopStyleColor();
}

void count(const Theme& theme, int number, Severity severity) {
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const float unit = theme.scale;
  const float tall = ImGui::GetFrameHeight();
  severity_sign(list, theme, {corner.x + 7 * unit, corner.y + tall / 2}, 6 * unit, severity);
  ImGui::Dummy(ImVec2(14 * unit, tall));
  ImGui::SameLine(0, 4 * unit);
  ImGui::AlignTextToFramePadding();
  ImGui::Text("%d", number);
  tip(theme, severity == Severity::fault ? "Faults" : severity == Severity::warning ? "Warnings" : "Notes");
}

} // namespace

void findings_panel(const App& app, Actions& actions, const ScreenBox& box) {
  const Theme& theme = app.theme;
  const float unit = theme.scale;
  const Caches& caches = app.caches;
  begin_part(app, "findings", box);
  ImGui::PushFont(theme.bold);
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted("Findings");
  ImGui::PopFont();
  const float counts =
      ImGui::CalcTextSize(fmt::format("{}{}{}", caches.faults, caches.warnings, caches.notes).c_str()).x +
      3 * 18 * unit + 2 * 10 * unit;
  ImGui::SameLine(box.width() - counts - 12 * unit);
  count(theme, caches.faults, Severity::fault);
  ImGui::SameLine(0, 10 * unit);
  count(theme, caches.warnings, Severity::warning);
  ImGui::SameLine(0, 10 * unit);
  count(theme, caches.notes, Severity::note);

  if (caches.findings.empty()) {
    hint(theme, "Nothing is wrong: the repeat can be knitted as it is drawn.");
  }
  const bool chosen = app.view.finding >= 0 && app.view.finding < static_cast<int>(caches.findings.size());
  const float room = ImGui::GetContentRegionAvail().y;
  const float details_tall = chosen ? std::min(room * 0.6F, height_of_details(app)) : 0;
  ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, ImVec2(0, 2 * unit));
  ImGui::BeginChild("list", ImVec2(0, std::max(20.0F, room - details_tall - (chosen ? 6 * unit : 0))));
  ImGuiListClipper clipper;
  clipper.Begin(static_cast<int>(caches.findings.size()), 2 * ImGui::GetTextLineHeight() + 13 * unit);
  if (app.view.finding_wanted && chosen) {
    clipper.ForceDisplayRangeByIndices(app.view.finding, app.view.finding + 1);
  }
  while (clipper.Step()) {
    for (int index = clipper.DisplayStart; index < clipper.DisplayEnd; ++index) {
      entry(app, actions, index);
    }
  }
  ImGui::EndChild();
  ImGui::PopStyleVar();
  if (chosen) {
    details(app, details_tall);
  }
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.AddLine({box.left + 0.5F, box.top}, {box.left + 0.5F, box.bottom}, ink(theme.line));
  list.AddLine({box.left, box.top + 0.5F}, {box.right, box.top + 0.5F}, ink(theme.line));
  ImGui::End();
}

} // namespace punchwright::editor
