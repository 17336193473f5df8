// Small questions to the editor's state.
#include "editor/actions.hpp"
#include "words/words.hpp"

#include <fmt/format.h>

namespace punchwright::editor {

Colour seen_yarn(const App& app, char key) {
  return seen_as(yarn_of(app.work.design, key).colour, app.view.sight);
}

std::string file_name_of(const App& app) {
  return app.session.path.empty() ? std::string(tr("Untitled")) : app.session.path.filename().string();
}

std::string yoke_name_of(const App& app) {
  return !app.yoke.path.empty() ? app.yoke.path.filename().string() : std::string(tr("Untitled yoke"));
}

std::string window_title(const App& app) {
  if (app.yoke.shown) {
    return fmt::format("{}{} — Punchwright", app.yoke.saved() ? "" : "• ", yoke_name_of(app));
  }
  return (app.work.history.saved() ? "" : "• ") + file_name_of(app) + " — Punchwright";
}

App make_app() {
  App app;
  app.work.design = blank_document(24, 24);
  if (const Profile* const profile = built_in_profile(app.work.design.profile)) {
    app.work.profile = *profile;
  }
  app.work.profile_name = app.work.design.profile;
  std::error_code trouble;
  app.session.folder = std::filesystem::current_path(trouble);
  return app;
}

Document settings_of(const Document& design) {
  Document settings;
  settings.title = design.title;
  settings.notes = design.notes;
  settings.profile = design.profile;
  settings.gauge = design.gauge;
  settings.yarns = design.yarns;
  settings.piece = design.piece;
  settings.rules = design.rules;
  settings.card = design.card;
  settings.extras = design.extras;
  return settings;
}

Document with_machine(Document settings, const Profile& profile) {
  settings.profile = profile.name;
  if (profile.card) {
    settings.piece.first_column.reset(); // the card decides which column a needle knits
  }
  return settings;
}

} // namespace punchwright::editor
