// Saving, and what can be done where that fails: the work is never gone.
#include "design/repeat_file.hpp"
#include "editor/applying.hpp"
#include "editor/kept_work.hpp"
#include "files/files.hpp"
#include "words/words.hpp"

#include <utility>

namespace punchwright::editor {

namespace fs = std::filesystem;

void show_not_saved(App& app, const Error& error, NotSaved work) {
  show_trouble(app, work.yoke ? tr("The yoke is not saved") : tr("The design is not saved"), error,
               tr("Your work is still here: save it elsewhere, or try again."));
  std::get<TroubleDialog>(app.session.dialog).not_saved = std::move(work);
}

void save_after_trouble(App& app, SavedAgain where) {
  const auto* const trouble = std::get_if<TroubleDialog>(&app.session.dialog);
  if (trouble == nullptr || !trouble->not_saved) {
    return;
  }
  const NotSaved work = *trouble->not_saved;
  app.session.dialog = NoDialog{};
  app.view.focus_drawing = true;
  if (where == SavedAgain::elsewhere) {
    return open_path_dialog(app, work.yoke ? Purpose::save_yoke : Purpose::save, work.afterwards);
  }
  return work.yoke ? save_yoke(app, work.afterwards) : save(app, work.afterwards);
}

bool write_design(App& app, const fs::path& path, const Pending& afterwards) {
  const Failure failure = try_writing_design(app, path);
  if (failure) {
    show_not_saved(app, *failure, {false, afterwards});
  }
  return !failure;
}

Failure try_writing_design(App& app, const fs::path& path) {
  const std::string text = write_repeat(app.work.design);
  if (Failure failure = write_file(path, text)) {
    return failure;
  }
  close_step(app);
  app.work.history.mark_saved();
  ++app.session.saves;
  app.session.path = path;
  app.session.file_digest = digest_of(text);
  app.session.folder = path.parent_path();
  remember_recent(app.settings, path);
  say(app, said("Saved {}", path.filename().string()), Tone::good);
  reread_tiers(app, path);
  return {};
}

void save(App& app, const Pending& afterwards) {
  if (app.session.path.empty()) {
    return open_path_dialog(app, Purpose::save, afterwards);
  }
  if (ask_about_changed_file(app, KeptSide::design, afterwards)) {
    return;
  }
  if (write_design(app, app.session.path, afterwards)) {
    go_on(app, afterwards);
  }
}

} // namespace punchwright::editor
