// What was kept of a window that did not close as it should, and a file that somebody else has changed.
#include "design/words.hpp"
#include "editor/dialog_parts.hpp"
#include "editor/kept_work.hpp"
#include "editor/widgets.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright::editor {
namespace {

void space(const App& app) {
  ImGui::Dummy(ImVec2(0, 4 * app.theme.scale));
}

void sentences(const std::vector<std::string>& lines) {
  for (const std::string& line : lines) {
    text_lines(line);
  }
}

void heading(const App& app, const char* words) {
  ImGui::PushFont(app.theme.bold);
  ImGui::TextUnformatted(words);
  ImGui::PopFont();
}

void picture(const App& app, const SmallPicture& shown) {
  const float wide = ImGui::GetContentRegionAvail().x;
  const float tall = std::min(120 * app.theme.scale, room_for_dialog(app).y / 4);
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  draw_small_picture(app.theme, shown, {corner.x, corner.y, corner.x + wide, corner.y + tall});
  ImGui::Dummy(ImVec2(wide, tall));
}

} // namespace

void recovery_dialog(const App& app, Actions& actions, const RecoveryDialog& dialog) {
  const Theme& theme = app.theme;
  const FoundWork& work = *dialog.works.front();
  const Journal& journal = work.journal;
  const auto* const yoke = std::get_if<KeptYoke>(&journal.work);
  const std::size_t steps = yoke != nullptr ? yoke->done.size() : std::get<KeptDesign>(journal.work).history.done();
  text_lines(fmt::format("A window with “{}” did not close as it should. What was {} in it since it was saved was "
                         "kept on {}{}.",
                         work.name(), yoke != nullptr ? "done" : "drawn", work.when(),
                         steps == 0 ? std::string()
                                    : fmt::format(", with {} that can be undone",
                                                  counted(static_cast<std::int64_t>(steps), "step", "steps"))));
  space(app);
  if (yoke != nullptr) {
    sentences(dialog.yoke);
  } else {
    picture(app, dialog.shown);
  }
  space(app);
  if (!dialog.differences.empty()) {
    heading(app, "Beside the file as it is now");
    sentences(dialog.differences);
    hint(theme, journal.file.string());
    space(app);
  }
  if (dialog.works.size() > 1) {
    hint(theme, fmt::format("{} more after this one.", dialog.works.size() - 1));
  }
  if (button(theme, actions, "recovery open", "Open it", Look::main)) {
    actions.push(AnswerRecovery{RecoveryAnswer::open});
  }
  make_default(actions);
  make_first_stop(actions);
  tip(theme, "As work that is not saved; its file stays as it is until you save");
  ImGui::SameLine();
  if (button(theme, actions, "recovery aside", "Put it aside")) {
    actions.push(AnswerRecovery{RecoveryAnswer::aside});
  }
  tip(theme, "Writes it as a file of its own, among the files opened last, and asks no more");
  ImGui::SameLine();
  if (button(theme, actions, "recovery later", "Ask me at the next start") || escape_pressed()) {
    actions.push(AnswerRecovery{RecoveryAnswer::later});
  }
}

namespace {

void buttons_at_saving(const Theme& theme, Actions& actions) {
  if (button(theme, actions, "changed elsewhere", "Save under another name…", Look::main)) {
    actions.push(AnswerChanged{ChangedAnswer::elsewhere});
  }
  make_default(actions);
  make_first_stop(actions);
  tip(theme, "Both are kept");
  ImGui::SameLine();
  if (button(theme, actions, "changed over", "Replace the file")) {
    actions.push(AnswerChanged{ChangedAnswer::over});
  }
  tip(theme, "What the other one wrote is gone then");
  ImGui::SameLine();
  if (button(theme, actions, "changed cancel", "Cancel") || escape_pressed()) {
    actions.push(AnswerChanged{ChangedAnswer::cancel});
  }
}

void buttons_when_noticed(const Theme& theme, Actions& actions) {
  if (button(theme, actions, "changed mine", "Go on with mine", Look::main) || escape_pressed()) {
    actions.push(AnswerChanged{ChangedAnswer::mine});
  }
  make_default(actions);
  make_first_stop(actions);
  tip(theme, "As work that is not saved; saving asks before it replaces the file");
  ImGui::SameLine();
  if (button(theme, actions, "changed theirs", "Open the file")) {
    actions.push(AnswerChanged{ChangedAnswer::theirs});
  }
  tip(theme, "As it is now, in the place of yours");
  ImGui::SameLine();
  if (button(theme, actions, "changed elsewhere", "Save mine under another name…")) {
    actions.push(AnswerChanged{ChangedAnswer::elsewhere});
  }
  tip(theme, "Both are kept");
}

} // namespace

void changed_dialog(const App& app, Actions& actions, const ChangedDialog& dialog) {
  const std::string then = dialog.at_saving ? "Saving now would replace what is there."
                           : dialog.unsaved ? "What you have changed here is not saved."
                                            : "Here it is still as it was.";
  text_lines(fmt::format("“{}” was written by another window or another program since you opened or saved it here. {}",
                         dialog.yoke ? yoke_name_of(app) : file_name_of(app), then));
  space(app);
  heading(app, "Between yours and the file");
  sentences(dialog.differences);
  hint(app.theme, (dialog.yoke ? app.yoke.path : app.session.path).string());
  space(app);
  dialog.at_saving ? buttons_at_saving(app.theme, actions) : buttons_when_noticed(app.theme, actions);
}

} // namespace punchwright::editor
