// Two lists in the middle of the window: all commands, and what was done.
#include "design/step_words.hpp"
#include "editor/dialog_parts.hpp"
#include "editor/menu_entries.hpp"
#include "editor/widgets.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <imgui_stdlib.h>
#include <utility>
#include <vector>

namespace punchwright::editor {

namespace {

float height_of_list(const App& app) {
  return std::min(420 * app.theme.scale, room_for_dialog(app).y - 4 * ImGui::GetFrameHeightWithSpacing());
}

void entry(const App& app, Actions& actions, const CommandInfo& info, bool chosen, bool scroll) {
  const Theme& theme = app.theme;
  const std::string reason = why_not(app, info.command);
  const float aside = 6 * theme.scale;
  const float gap = ImGui::GetStyle().ItemSpacing.x;
  const MenuLayout layout{ImGui::GetContentRegionAvail().x - 2 * aside + gap, 0, gap, 0};
  const MenuEntry words{fmt::format("command {}", info.id), tr(info.name), shown_keys(info.keys), false,
                        reason.empty()};
  const ScreenPoint corner = from_imgui(ImGui::GetCursorScreenPos());
  ImGui::PushID(info.id);
  if (ImGui::Selectable("##command", chosen, 0, {0, height_of_entry(layout, words)}) && reason.empty()) {
    actions.push(SetDialog{NoDialog{}});
    actions.run(info.command);
  }
  ImGui::PopID();
  remember_place(actions, words.place);
  tip(theme, reason.empty() ? tr(info.tip) : reason.c_str());
  if (chosen && scroll) {
    ImGui::SetScrollHereY(0.5F);
  }
  write_entry(theme, actions, layout, words, {corner.x + aside, corner.y});
}

} // namespace

void commands_dialog(const App& app, Actions& actions, const CommandsDialog& dialog) {
  CommandsDialog next = dialog;
  ImGui::SetNextItemWidth(-1);
  if (ImGui::IsWindowAppearing()) {
    ImGui::SetKeyboardFocusHere();
  }
  const bool changed = ImGui::InputTextWithHint("##search", tr("Type a word of what you want to do"), &next.search);
  remember_place(actions, "command search", Stop::Kind::field);
  const std::vector<const CommandInfo*> found = commands_found(next.search);
  const int last = std::max(0, static_cast<int>(found.size()) - 1);
  const int step = ImGui::IsKeyPressed(ImGuiKey_DownArrow) ? 1 : ImGui::IsKeyPressed(ImGuiKey_UpArrow) ? -1 : 0;
  next.chosen = changed ? 0 : std::clamp(dialog.chosen + step, 0, last);
  ImGui::BeginChild("list", ImVec2(0, height_of_list(app)));
  for (std::size_t place = 0; place < found.size(); ++place) {
    entry(app, actions, *found[place], static_cast<int>(place) == next.chosen, step != 0);
  }
  if (found.empty()) {
    hint(app.theme, tr("No command has these words."));
  }
  ImGui::EndChild();
  if (changed || next.chosen != dialog.chosen) {
    actions.push(SetDialog{next});
  }
  const bool wanted = ImGui::IsKeyPressed(ImGuiKey_Enter) || ImGui::IsKeyPressed(ImGuiKey_KeyPadEnter);
  if (wanted && !actions.dialog_appears && !found.empty()) {
    const Command command = found[static_cast<std::size_t>(next.chosen)]->command;
    if (why_not(app, command).empty()) {
      actions.push(SetDialog{NoDialog{}});
      actions.run(command);
    }
  } else if (escape_pressed()) {
    actions.push(SetDialog{NoDialog{}});
  }
}

namespace {

// By the keys, in the list as it stands: the latest step at the top.
int step_gone_to(int done, int count) {
  const int page = std::max(1, static_cast<int>(ImGui::GetWindowHeight() / 2 / ImGui::GetTextLineHeightWithSpacing()));
  const std::array ways = {std::pair{ImGuiKey_UpArrow, done + 1},   std::pair{ImGuiKey_DownArrow, done - 1},
                           std::pair{ImGuiKey_PageUp, done + page}, std::pair{ImGuiKey_PageDown, done - page},
                           std::pair{ImGuiKey_Home, count},         std::pair{ImGuiKey_End, 0}};
  const auto pressed = std::ranges::find_if(ways, [](const auto& way) { return ImGui::IsKeyPressed(way.first); });
  return pressed == ways.end() ? done : std::clamp(pressed->second, 0, count);
}

} // namespace

void steps_dialog(const App& app, Actions& actions) {
  const History& history = app.work.history;
  const YokeWork& yoke = app.yoke;
  const auto count = static_cast<int>(yoke.shown ? yoke.steps.size() : history.steps().size());
  const std::size_t now = yoke.shown ? yoke.done : history.done();
  const auto name = [&](std::size_t step) {
    return yoke.shown ? step_in_words(yoke.steps[step].name) : words_of(history.steps()[step]);
  };
  const auto done_now = static_cast<int>(now);
  const int wished = step_gone_to(done_now, count);
  // The arrows step; ImGui would walk into the list with them.
  ImGui::BeginChild("list", ImVec2(0, height_of_list(app)), false, ImGuiWindowFlags_NoNav);
  if (wished != done_now) {
    ImGui::SetScrollY(static_cast<float>(count - wished) * ImGui::GetTextLineHeightWithSpacing() -
                      ImGui::GetWindowHeight() / 2);
  }
  ImGuiListClipper clipper; // hours of work are thousands of steps
  clipper.Begin(count + 1);
  while (clipper.Step()) {
    for (int line = clipper.DisplayStart; line < clipper.DisplayEnd; ++line) {
      const int done = count - line; // the latest at the top, the beginning below
      const auto place = static_cast<std::size_t>(done);
      const bool here = place == now;
      const std::string words = done == 0 ? tr("The beginning") : fmt::format("{}. {}", done, name(place - 1));
      ImGui::PushStyleColor(ImGuiCol_Text, tint(place > now ? app.theme.quiet_text : app.theme.text));
      ImGui::PushID(done);
      if (ImGui::Selectable((here ? "▸ " + words : "   " + words).c_str(), here) && !here) {
        actions.push(GoToStep{place});
      }
      ImGui::PopID();
      ImGui::PopStyleColor();
      remember_place(actions, fmt::format("step {}", done), Stop::Kind::button);
    }
  }
  ImGui::EndChild();
  hint(app.theme, tr("A click or the up and down arrows go there, Home to the latest step and End to the beginning; "
                     "later steps stay until something else is drawn."));
  close_button(app, actions);
  if (wished != done_now) {
    actions.push(GoToStep{static_cast<std::size_t>(wished)});
  }
}

} // namespace punchwright::editor
