// The list of steps as a whole, and the question that is asked when it has changed.
#include "editor/dialog_parts.hpp"
#include "editor/widgets.hpp"
#include "plan/bench_moves.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright::editor {
namespace {

const char* name_of_part(StepPart part) {
  return part == StepPart::setting_up ? tr("Setting up")
         : part == StepPart::knitting ? tr("Knitting")
                                      : tr("At the end");
}

// The first move of a step.
int move_of(const BenchMoves& bench, int step) {
  const auto found = std::ranges::find(bench.moves, step, &BenchMove::step);
  return static_cast<int>(found - bench.moves.begin());
}

struct Marked { // where the knitting stands
  int step = -1;
  int move = 0;
};

Marked marked_in(const App& app, const BenchMoves& bench) {
  const BenchPlace& place = app.bench.place;
  if (place.digest != bench.digest || place.done >= bench.count()) {
    return {};
  }
  return {bench.moves[static_cast<std::size_t>(place.done)].step, place.done};
}

// A step with its number, wrapped; true when pressed.
bool step_line(const App& app, Actions& actions, const BenchMoves& bench, int step, bool chosen, const Marked& here) {
  const Theme& theme = app.theme;
  const Step& entry = bench.list.steps[static_cast<std::size_t>(step)];
  std::string words = entry.text;
  if (here.step == step) {
    const std::string pass = pass_words(bench, here.move);
    words += pass.empty() ? tr("  ◆ here") : said("  ◆ here, {}", pass);
  }
  const float number = ImGui::CalcTextSize("0000. ").x;
  const float sign = ImGui::CalcTextSize("▸ ").x;
  const float wrap = std::max(40 * theme.scale, ImGui::GetContentRegionAvail().x - number - sign);
  const float high = ImGui::CalcTextSize(words.c_str(), nullptr, false, wrap).y;
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  ImGui::PushID(step);
  const bool pressed =
      ImGui::Selectable("##step", chosen, ImGuiSelectableFlags_DontClosePopups, ImVec2(0, high + 2 * theme.scale));
  ImGui::PopID();
  remember_place(actions, fmt::format("list step {}", step + 1), Stop::Kind::button);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const bool marked = here.step == step;
  if (marked) {
    list.AddText(corner, ink(theme.accent), "▸");
  }
  const std::string label = fmt::format("{}.", step + 1);
  list.AddText({corner.x + sign, corner.y}, ink(theme.quiet_text), label.c_str());
  list.AddText(nullptr, 0, {corner.x + sign + number, corner.y}, ink(marked ? theme.accent : theme.text), words.c_str(),
               nullptr, wrap);
  return pressed;
}

} // namespace

void step_list_dialog(const App& app, Actions& actions, const StepListDialog& dialog) {
  if (app.bench.moves == nullptr || app.bench.moves->count() == 0) {
    hint(app.theme,
         said("There are too many rows for a list: more than {}. Export the steps instead.", most_rows_at_the_bench));
    return close_button(app, actions);
  }
  const BenchMoves& bench = *app.bench.moves;
  const auto count = static_cast<int>(bench.list.steps.size());
  const Marked here = marked_in(app, bench);
  StepListDialog next = dialog;
  next.scroll = false;
  const int by = ImGui::IsKeyPressed(ImGuiKey_DownArrow) ? 1 : ImGui::IsKeyPressed(ImGuiKey_UpArrow) ? -1 : 0;
  if (by != 0) {
    next.chosen = std::clamp(dialog.chosen + by, 0, count - 1);
    next.scroll = true;
  }
  ImGui::BeginChild("list", ImVec2(0, height_beside_lines(app, 3)), false, ImGuiWindowFlags_NoNav);
  for (int step = 0; step < count; ++step) {
    const StepPart part = bench.list.steps[static_cast<std::size_t>(step)].part;
    if (step == 0 || part != bench.list.steps[static_cast<std::size_t>(step - 1)].part) {
      heading(app.theme, name_of_part(part));
    }
    if (step_line(app, actions, bench, step, step == next.chosen, here)) {
      next.chosen = step;
    }
    if (step == dialog.chosen && dialog.scroll) {
      ImGui::SetScrollHereY(0.4F);
    }
  }
  ImGui::EndChild();
  if (next.chosen != dialog.chosen || next.scroll != dialog.scroll) {
    actions.push(SetDialog{next});
  }
  const bool to_here = next.chosen == here.step;
  const std::string words =
      to_here ? std::string(tr("Go on at the bench")) : said("Go on at the bench from step {}", next.chosen + 1);
  if (button(app.theme, actions, "go to bench", words.c_str(), Look::main)) {
    actions.push(SetDialog{NoDialog{}});
    actions.push(GoToMove{to_here ? here.move : move_of(bench, next.chosen)});
  }
  make_default(actions);
  make_first_stop(actions);
  tip(app.theme, tr("One step at a time, in large type"));
  ImGui::SameLine();
  cancel_button(app, actions, tr("Close"));
}

void bench_changed_dialog(const App& app, Actions& actions, const BenchChangedDialog& dialog) {
  const Theme& theme = app.theme;
  ImGui::PushTextWrapPos(0);
  ImGui::TextUnformatted(
      said_count(dialog.rows,
                 "{} row was knitted when the bench was left. The design has changed since: its steps or its needles "
                 "are others now. What hangs on the machine is as it was.",
                 "{} rows were knitted when the bench was left. The design has changed since: its steps or its needles "
                 "are others now. What hangs on the machine is as it was.")
          .c_str());
  ImGui::PopTextWrapPos();
  ImGui::Dummy(ImVec2(0, 4 * theme.scale));
  const int row = std::min(dialog.rows, dialog.rows_now);
  const std::string stay =
      row < dialog.rows_now ? said("Stay: row {} is next", row + 1) : std::string(tr("Stay: all rows are knitted"));
  if (button(theme, actions, "bench stay", stay.c_str(), Look::main)) {
    actions.push(AnswerBench{true});
  }
  make_default(actions);
  make_first_stop(actions);
  tip(theme, tr("The next row is the one with that number in the design as it is now"));
  ImGui::SameLine();
  if (button(theme, actions, "bench start over", tr("Start over"))) {
    actions.push(AnswerBench{false});
  }
  tip(theme, tr("From the setting-up; the rows of each day stay counted"));
  ImGui::SameLine();
  cancel_button(app, actions, tr("Not now"));
}

} // namespace punchwright::editor
