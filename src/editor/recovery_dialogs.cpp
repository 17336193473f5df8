// What was kept of a window that did not close as it should, and a file that somebody else has changed.
#include "editor/dialog_parts.hpp"
#include "editor/kept_work.hpp"
#include "editor/widgets.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <iterator>

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

// What was kept, when, and how far it can be undone.
std::string words_for(const FoundWork& work, bool is_yoke, std::size_t steps) {
  const auto count = static_cast<long>(steps);
  if (is_yoke) {
    return steps == 0
               ? said("A window with “{}” did not close as it should. What was done in it since it was saved was "
                      "kept on {}.",
                      work.name(), work.when())
               : said_count(count,
                            "A window with “{1}” did not close as it should. What was done in it since it was "
                            "saved was kept on {2}, with {0} step that can be undone.",
                            "A window with “{1}” did not close as it should. What was done in it since it was "
                            "saved was kept on {2}, with {0} steps that can be undone.",
                            work.name(), work.when());
  }
  return steps == 0 ? said("A window with “{}” did not close as it should. What was drawn in it since it was saved was "
                           "kept on {}.",
                           work.name(), work.when())
                    : said_count(count,
                                 "A window with “{1}” did not close as it should. What was drawn in it since it was "
                                 "saved was kept on {2}, with {0} step that can be undone.",
                                 "A window with “{1}” did not close as it should. What was drawn in it since it was "
                                 "saved was kept on {2}, with {0} steps that can be undone.",
                                 work.name(), work.when());
}

} // namespace

void recovery_dialog(const App& app, Actions& actions, const RecoveryDialog& dialog) {
  const Theme& theme = app.theme;
  const FoundWork& work = *dialog.works.front();
  const Journal& journal = work.journal;
  const auto* const yoke = std::get_if<KeptYoke>(&journal.work);
  const std::size_t steps = yoke != nullptr ? yoke->done.size() : std::get<KeptDesign>(journal.work).history.done();
  text_lines(words_for(work, yoke != nullptr, steps));
  space(app);
  if (yoke != nullptr) {
    sentences(dialog.yoke);
  } else {
    picture(app, dialog.shown);
  }
  space(app);
  if (!dialog.differences.empty()) {
    heading(app, tr("Beside the file as it is now"));
    sentences(dialog.differences);
    hint(theme, journal.file.string());
    space(app);
  }
  if (dialog.works.size() > 1) {
    hint(theme, said_count(std::ssize(dialog.works) - 1, "{} more after this one.", "{} more after this one."));
  }
  if (button(theme, actions, "recovery open", tr("Open it"), Look::main)) {
    actions.push(AnswerRecovery{RecoveryAnswer::open});
  }
  make_default(actions);
  make_first_stop(actions);
  tip(theme, tr("As work that is not saved; its file stays as it is until you save"));
  ImGui::SameLine();
  if (button(theme, actions, "recovery aside", tr("Put it aside"))) {
    actions.push(AnswerRecovery{RecoveryAnswer::aside});
  }
  tip(theme, tr("Writes it as a file of its own, among the files opened last, and asks no more"));
  ImGui::SameLine();
  if (button(theme, actions, "recovery later", tr("Ask me at the next start")) || escape_pressed()) {
    actions.push(AnswerRecovery{RecoveryAnswer::later});
  }
}

namespace {

void buttons_at_saving(const Theme& theme, Actions& actions) {
  if (button(theme, actions, "changed elsewhere", tr("Save under another name…"), Look::main)) {
    actions.push(AnswerChanged{ChangedAnswer::elsewhere});
  }
  make_default(actions);
  make_first_stop(actions);
  tip(theme, tr("Both are kept"));
  ImGui::SameLine();
  if (button(theme, actions, "changed over", tr("Replace the file"))) {
    actions.push(AnswerChanged{ChangedAnswer::over});
  }
  tip(theme, tr("What the other one wrote is gone then"));
  ImGui::SameLine();
  if (button(theme, actions, "changed cancel", tr("Cancel")) || escape_pressed()) {
    actions.push(AnswerChanged{ChangedAnswer::cancel});
  }
}

void buttons_when_noticed(const Theme& theme, Actions& actions) {
  if (button(theme, actions, "changed mine", tr("Go on with mine"), Look::main) || escape_pressed()) {
    actions.push(AnswerChanged{ChangedAnswer::mine});
  }
  make_default(actions);
  make_first_stop(actions);
  tip(theme, tr("As work that is not saved; saving asks before it replaces the file"));
  ImGui::SameLine();
  if (button(theme, actions, "changed theirs", tr("Open the file"))) {
    actions.push(AnswerChanged{ChangedAnswer::theirs});
  }
  tip(theme, tr("As it is now, in the place of yours"));
  ImGui::SameLine();
  if (button(theme, actions, "changed elsewhere", tr("Save mine under another name…"))) {
    actions.push(AnswerChanged{ChangedAnswer::elsewhere});
  }
  tip(theme, tr("Both are kept"));
}

} // namespace

void changed_dialog(const App& app, Actions& actions, const ChangedDialog& dialog) {
  const std::string then = dialog.at_saving ? tr("Saving now would replace what is there.")
                           : dialog.unsaved ? tr("What you have changed here is not saved.")
                                            : tr("Here it is still as it was.");
  text_lines(said("“{}” was written by another window or another program since you opened or saved it here. {}",
                  dialog.yoke ? yoke_name_of(app) : file_name_of(app), then));
  space(app);
  heading(app, tr("Between yours and the file"));
  sentences(dialog.differences);
  hint(app.theme, (dialog.yoke ? app.yoke.path : app.session.path).string());
  space(app);
  dialog.at_saving ? buttons_at_saving(app.theme, actions) : buttons_when_noticed(app.theme, actions);
}

} // namespace punchwright::editor
