// The small parts of panels.
#include "editor/widgets.hpp"

#include "editor/bed_marks.hpp"
#include "editor/clear_place.hpp"
#include "editor/panels.hpp"
#include "editor/tab_commands.hpp"
#include "editor/typed_text.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <imgui_internal.h>

namespace punchwright::editor {

ImU32 ink(Colour colour, float opacity) {
  return IM_COL32(colour.red, colour.green, colour.blue, static_cast<int>(opacity * 255.0F + 0.5F));
}

ImVec4 tint(Colour colour, float opacity) {
  return {static_cast<float>(colour.red) / 255.0F, static_cast<float>(colour.green) / 255.0F,
          static_cast<float>(colour.blue) / 255.0F, opacity};
}

void remember_place(Actions& actions, std::string_view name, Stop::Kind kind) {
  const ImVec2 low = ImGui::GetItemRectMin();
  const ImVec2 high = ImGui::GetItemRectMax();
  const ScreenBox box{low.x, low.y, high.x, high.y};
  if (actions.publish_places) {
    actions.places.push_back({std::string(name), box});
  }
  if (ImGui::GetItemID() != 0 && (ImGui::GetItemFlags() & ImGuiItemFlags_Disabled) == 0) {
    actions.stops.push_back(
        {kind, std::string(actions.publish_places ? name : ""), ImGui::GetItemID(), ImGui::GetCurrentWindow(), box});
  }
}

void make_default(Actions& actions) {
  actions.default_button = ImGui::GetItemID();
}

void make_first_stop(Actions& actions) {
  actions.first_stop = ImGui::GetItemID();
}

void make_wanted(const App& app, Actions& actions, WantedField wanted) {
  if (app.view.wanted_field == wanted) {
    actions.wanted_stop = ImGui::GetItemID();
  }
}

bool keys_show_their_place() {
  return !ImGui::GetCurrentContext()->NavDisableHighlight;
}

namespace {

// The room for that tip: in the place of the state line's message, so that the line's facts stay in sight. Above the
// line where they leave too little of it.
ScreenBox room_for_tip() {
  const ImVec2 size = ImGui::GetIO().DisplaySize;
  ImGuiWindow* const line = ImGui::FindWindowByName(state_line_part);
  if (line == nullptr || !line->WasActive) {
    return {0, 0, size.x, size.y};
  }
  const float facts = line->StateStorage.GetFloat(line->GetID(facts_begin), size.x);
  return facts > size.x * 0.4F ? ScreenBox{0, 0, facts, size.y} : ScreenBox{0, 0, size.x, line->Pos.y};
}

// What has the keys says its tip along the foot of the window, where the state line is: beside it, as the pointer's
// tips are, it would lie over the next field. Nowhere, if a dialog reaches down there.
void tip_at_foot(const Theme& theme, std::string_view text) {
  const float unit = theme.scale;
  const ScreenBox foot = room_for_tip();
  const ImVec2 size(foot.right, foot.bottom);
  const float aside = 12 * unit;
  const float wrap = std::max(1.0F, size.x - 2 * aside);
  const char* const end = text.data() + text.size();
  const float height = ImGui::CalcTextSize(text.data(), end, false, wrap).y + 12 * unit;
  const float top = size.y - std::max(height, 30 * unit);
  const ImGuiWindow& window = *ImGui::GetCurrentWindow()->RootWindow;
  const bool over_others = (window.Flags & ImGuiWindowFlags_Popup) != 0 || (window.Flags & ImGuiWindowFlags_Modal) != 0;
  if ((over_others ? window.Pos.y + window.Size.y : ImGui::GetItemRectMax().y) > top) {
    return;
  }
  ImDrawList& list = *ImGui::GetForegroundDrawList();
  const ImGuiWindow* const drawing = ImGui::FindWindowByName(drawing_part);
  if (drawing != nullptr && drawing->Active && !over_others && top < drawing->Pos.y + drawing->Size.y) {
    const float needles = drawing->Pos.y + drawing->Size.y - needle_numbers_tall * unit; // else cut through
    list.AddRectFilled({drawing->Pos.x, std::min(top, needles)}, {drawing->Pos.x + drawing->Size.x, top},
                       ink(theme.ground));
  }
  list.AddRectFilled({0, top}, size, ink(theme.panel));
  list.AddLine({0, top + 0.5F}, {size.x, top + 0.5F}, ink(theme.line));
  list.AddText(ImGui::GetFont(), ImGui::GetFontSize(), {aside, top + 6 * unit}, ink(theme.text), text.data(), end,
               wrap);
}

// In the place of any tip that was shown in this frame: what lies uppermost speaks. Of its own size at once: ImGui
// would show it in that of the tip before. A word that is longer than a line of so many px is broken.
void show_tip(const std::string& lines, float room) {
  const ImVec2 border = ImGui::GetStyle().WindowPadding;
  const ImVec2 words = ImGui::CalcTextSize(lines.c_str(), nullptr, false, room);
  ImGui::SetNextWindowSize({words.x + 2 * border.x, words.y + 2 * border.y});
  ImGui::BeginTooltipEx(ImGuiTooltipFlags_OverridePreviousTooltip, ImGuiWindowFlags_None);
  ImGui::PushTextWrapPos(room + border.x);
  ImGui::TextUnformatted(lines.c_str());
  ImGui::PopTextWrapPos();
  ImGui::EndTooltip();
}

} // namespace

bool pointer_leads() {
  return !ImGui::GetCurrentContext()->NavDisableMouseHover;
}

void tip(const Theme& theme, std::string_view text, std::optional<TipPlace> place) {
  if (text.empty() || !ImGui::IsItemHovered(ImGuiHoveredFlags_AllowWhenDisabled)) {
    return;
  }
  // Somebody types in it; or it has the keys, and the pointer lies wherever it was left.
  const bool typing = ImGui::IsItemActive() && ImGui::GetIO().WantTextInput;
  if (typing || !pointer_leads()) {
    tip_at_foot(theme, text);
    return;
  }
  if (place) {
    ImGui::SetNextWindowPos(to_imgui(place->corner), ImGuiCond_Always, {place->to_the_left ? 1.0F : 0.0F, 0});
  }
  const float room = 300 * theme.scale - ImGui::GetStyle().WindowPadding.x;
  show_tip(in_lines(text, room), room);
}

void tip_beside(const Theme& theme, std::string_view text, const std::vector<ScreenBox>& boxes) {
  const ImVec2 window = ImGui::GetIO().DisplaySize;
  const ImVec2 padding = ImGui::GetStyle().WindowPadding;
  const ImGuiWindow* const line = ImGui::FindWindowByName(state_line_part);
  const float foot = line != nullptr && line->WasActive ? line->Pos.y : window.y - 4 * theme.scale;
  const ScreenBox bounds{4 * theme.scale, 4 * theme.scale, window.x - 4 * theme.scale, foot};
  // Narrow, and where that finds no room, in fewer and longer lines.
  std::string words;
  ClearPlace place;
  for (const float room : {300 * theme.scale, 450 * theme.scale, 600 * theme.scale}) {
    std::string next = in_lines(text, std::min(room, bounds.width() - 2 * padding.x));
    const ImVec2 size = ImGui::CalcTextSize(next.c_str());
    const ClearPlace there = clear_place({size.x + 2 * padding.x, size.y + 2 * padding.y},
                                         from_imgui(ImGui::GetIO().MousePos), boxes, bounds);
    if (words.empty() || there.clear > place.clear) {
      words = std::move(next);
      place = there;
    }
  }
  ImGui::SetNextWindowPos(to_imgui(place.corner), ImGuiCond_Always);
  show_tip(words, ImGui::CalcTextSize(words.c_str()).x + 1);
}

namespace {

bool dragged_by(int button) {
  return (ImGui::IsItemActive() && ImGui::IsMouseDown(button)) ||
         (ImGui::IsItemDeactivated() && ImGui::IsMouseReleased(button));
}

std::optional<ScreenPoint> unless_still(ImVec2 way) {
  return way.x != 0 || way.y != 0 ? std::optional(from_imgui(way)) : std::nullopt;
}

} // namespace

std::optional<ScreenPoint> way_of_frame(int button) {
  // What the pointer moved in the frame that takes the item, it moved before it took it.
  return dragged_by(button) && !ImGui::IsItemActivated() ? unless_still(ImGui::GetIO().MouseDelta) : std::nullopt;
}

std::optional<ScreenPoint> way_of_drag(int button) {
  return dragged_by(button) ? unless_still(ImGui::GetMouseDragDelta(button, 0)) : std::nullopt;
}

std::string in_lines(std::string_view text, float room) {
  return wrapped_at(
      text, room, [](std::string_view part) { return ImGui::CalcTextSize(part.data(), part.data() + part.size()).x; });
}

bool button(const Theme& theme, Actions& actions, const char* name, const char* text, Look look, float width,
            bool enabled) {
  const Look shown = enabled ? look : Look::quiet; // without a face where it can't be used, in quiet words
  const Colour face = shown == Look::chosen ? theme.accent_soft : shown == Look::main ? theme.accent : theme.button;
  const Colour hover = shown == Look::main     ? mixed(theme.accent, theme.text, 0.25F)
                       : shown == Look::chosen ? theme.accent_hover
                                               : theme.button_hover;
  const Colour words = !enabled                ? theme.quiet_text
                       : shown == Look::main   ? theme.on_accent
                       : shown == Look::chosen ? theme.accent
                                               : theme.text;
  ImGui::PushStyleColor(ImGuiCol_Button, tint(face, shown == Look::quiet ? 0.0F : 1.0F));
  ImGui::PushStyleColor(ImGuiCol_ButtonHovered, tint(hover));
  ImGui::PushStyleColor(ImGuiCol_ButtonActive, tint(mixed(hover, theme.text, 0.12F)));
  ImGui::PushStyleColor(ImGuiCol_Text, tint(words));
  ImGui::BeginDisabled(!enabled);
  ImGui::PushID(name);
  const bool pressed = ImGui::Button(text, ImVec2(width, 0));
  ImGui::PopID();
  remember_place(actions, name, Stop::Kind::button);
  if (look == Look::chosen) { // told by a bar as well as by its colour
    const ImVec2 low = ImGui::GetItemRectMin();
    const ImVec2 high = ImGui::GetItemRectMax();
    const float aside = std::min((high.x - low.x) / 4, 8 * theme.scale);
    ImGui::GetWindowDrawList()->AddRectFilled({low.x + aside, high.y - 3 * theme.scale},
                                              {high.x - aside, high.y - theme.scale}, ink(theme.accent), theme.scale);
  }
  ImGui::EndDisabled();
  ImGui::PopStyleColor(4);
  return pressed;
}

std::string why_not(const App& app, Command command) {
  if (app.bench.open && !works_at_bench(command)) {
    return tr("Leave the bench first (F5)");
  }
  if (app.yoke.shown && !works_with_yoke(command)) {
    return tr("Back to the drawing first (F11)");
  }
  switch (command) {
  case Command::show_yoke: return app.yoke.opened ? "" : tr("No yoke is open: open a .yoke file, or begin a new yoke");
  case Command::yoke_schematic:
  case Command::yoke_flat:
  case Command::yoke_worn:
  case Command::yoke_bed:
  case Command::yoke_machine: return app.yoke.shown ? "" : tr("Only while a yoke is shown (F11)");
  case Command::export_yoke:
    return !app.yoke.shown                   ? tr("Only while a yoke is shown (F11)")
           : app.yoke.opened->machine_wanted ? tr("Choose one machine for all tiers first (Ctrl+5)")
                                             : "";
  case Command::bench_forward:
  case Command::bench_back: return app.bench.open ? "" : tr("Only at the bench (F5)");
  case Command::say_step:
    return !app.bench.speaks ? tr("No program that speaks is there: spd-say (speech-dispatcher) or espeak-ng")
           : app.bench.open  ? ""
                             : tr("Only at the bench (F5)");
  case Command::make_symmetric:
    return app.view.symmetry ? "" : tr("Choose a symmetry first: it stands among the tools");
  case Command::axis_left:
  case Command::axis_right:
  case Command::axis_up:
  case Command::axis_down: return why_no_axis(app, command);
  case Command::place_lettering:
  case Command::widen_repeat:
    return app.session.lettering.empty() ? tr("Type the words first (I)")
           : command == Command::widen_repeat && !widening_for_lettering(app)
               ? tr("The lettering has room in the repeat as it is")
               : "";
  case Command::fill_marked: return app.view.marked ? "" : tr("Mark an area first: M, or Ctrl+A for all of it");
  case Command::cut:
    return app.view.marked || app.session.floating ? "" : tr("Mark an area first: M, or Ctrl+A for all of it");
  case Command::undo:
    return (app.yoke.shown ? app.yoke.done > 0 : app.session.floating || app.work.history.can_undo())
               ? ""
               : tr("Nothing has been done yet");
  case Command::redo:
    return (app.yoke.shown ? app.yoke.done < app.yoke.steps.size() : app.work.history.can_redo())
               ? ""
               : tr("Nothing has been undone");
  case Command::export_card:
  case Command::export_measure_page:
  case Command::export_swatch:
    return app.work.profile.card
               ? ""
               : tr("This machine reads no card; the needle chart says which needles to bring forward");
  case Command::next_finding:
  case Command::previous_finding:
    return (app.yoke.shown ? app.caches.yoke.findings.empty() : app.caches.findings.empty())
               ? tr("There are no findings")
               : "";
  default: return "";
  }
}

void command_button(const App& app, Actions& actions, Command command, const char* text, Look look, float width,
                    std::optional<TipPlace> tip_place) {
  const CommandInfo& info = info_of(command);
  const std::string reason = why_not(app, command);
  if (button(app.theme, actions, info.id, text, look, width, reason.empty())) {
    actions.run(command);
  }
  const std::string keys = *info.keys != 0 ? fmt::format("  ({})", shown_keys(info.keys)) : "";
  const std::string more = reason.empty() ? tr(info.tip) : reason;
  tip(app.theme, fmt::format("{}{}{}{}", tr(info.name), keys, more.empty() ? "" : "\n", more), tip_place);
}

void heading(const Theme& theme, const char* text) {
  ImGui::Dummy(ImVec2(0, 6 * theme.scale));
  ImGui::PushFont(theme.bold);
  ImGui::PushTextWrapPos(0);
  ImGui::TextUnformatted(text);
  ImGui::PopTextWrapPos();
  ImGui::PopFont();
  const ImVec2 low = ImGui::GetItemRectMin();
  const ImVec2 high = ImGui::GetItemRectMax();
  const float right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
  const float y = (low.y + high.y) / 2;
  if (high.x + 8 * theme.scale < right) {
    ImGui::GetWindowDrawList()->AddLine(ImVec2(high.x + 8 * theme.scale, y), ImVec2(right, y), ink(theme.line));
  }
}

void hint(const Theme& theme, std::string_view text) {
  ImGui::PushStyleColor(ImGuiCol_Text, tint(theme.quiet_text));
  ImGui::PushTextWrapPos(0);
  ImGui::TextUnformatted(in_lines(text, ImGui::GetContentRegionAvail().x).c_str());
  ImGui::PopTextWrapPos();
  ImGui::PopStyleColor();
}

void label(const Theme& theme, const char* text, float share, float needs) {
  const float start = ImGui::GetCursorPosX();
  const float wide = ImGui::GetContentRegionAvail().x;
  ImGui::AlignTextToFramePadding();
  ImGui::PushStyleColor(ImGuiCol_Text, tint(theme.text));
  ImGui::TextUnformatted(text);
  ImGui::PopStyleColor();
  ImGui::SameLine();
  const float after_words = ImGui::GetCursorPosX();
  const float least = std::max(needs, 92 * theme.scale);
  const float field = std::max(after_words, std::min(start + wide * share, start + wide - least));
  if (start + wide - field < least && field == after_words) {
    ImGui::NewLine();
  } else {
    ImGui::SetCursorPosX(field);
  }
  ImGui::SetNextItemWidth(-1);
}

void flow(float wide) {
  const float right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
  if (ImGui::GetItemRectMax().x + ImGui::GetStyle().ItemSpacing.x + wide <= right) {
    ImGui::SameLine();
  }
}

std::string shortened(const std::string& text, float room) {
  if (ImGui::CalcTextSize(text.c_str()).x <= room) {
    return text;
  }
  const char* end = nullptr;
  ImGui::GetFont()->CalcTextSizeA(ImGui::GetFontSize(), std::max(1.0F, room - ImGui::CalcTextSize("…").x), 0,
                                  text.c_str(), nullptr, &end);
  return text.substr(0, static_cast<std::size_t>(end - text.c_str())) + "…";
}

void swatch(ImDrawList& list, const Theme& theme, ScreenBox box, Colour colour) {
  const float round = std::min(3 * theme.scale, box.height() / 4);
  list.AddRectFilled({box.left, box.top}, {box.right, box.bottom}, ink(colour), round);
  list.AddRect({box.left, box.top}, {box.right, box.bottom}, ink(theme.text, 0.45F), round);
}

void severity_sign(ImDrawList& list, const Theme& theme, ScreenPoint middle, float radius, Severity severity) {
  const ImVec2 at = to_imgui(middle);
  switch (severity) {
  case Severity::fault: {
    const float reach = radius * 1.15F;
    list.AddQuadFilled({at.x, at.y - reach}, {at.x + reach, at.y}, {at.x, at.y + reach}, {at.x - reach, at.y},
                       ink(theme.fault));
    list.AddLine({at.x - radius * 0.35F, at.y - radius * 0.35F}, {at.x + radius * 0.35F, at.y + radius * 0.35F},
                 ink(theme.panel), 1.6F * theme.scale);
    list.AddLine({at.x - radius * 0.35F, at.y + radius * 0.35F}, {at.x + radius * 0.35F, at.y - radius * 0.35F},
                 ink(theme.panel), 1.6F * theme.scale);
    return;
  }
  case Severity::warning:
    list.AddTriangleFilled({at.x, at.y - radius}, {at.x + radius, at.y + radius * 0.8F},
                           {at.x - radius, at.y + radius * 0.8F}, ink(theme.warning));
    list.AddLine({at.x, at.y - radius * 0.45F}, {at.x, at.y + radius * 0.2F}, ink(theme.panel), 1.6F * theme.scale);
    list.AddCircleFilled({at.x, at.y + radius * 0.5F}, 1.0F * theme.scale, ink(theme.panel));
    return;
  case Severity::note: break;
  }
  list.AddCircle(at, radius * 0.85F, ink(theme.note), 0, 1.6F * theme.scale);
  list.AddCircleFilled(at, radius * 0.32F, ink(theme.note));
}

} // namespace punchwright::editor
