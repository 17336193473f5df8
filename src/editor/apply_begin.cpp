// Designs that begin without a file of their own: new ones, copies of the demos, and what was made of a picture.
#include "editor/applying.hpp"
#include "files/files.hpp"
#include "machine/usual_gauge.hpp"
#include "rules/whole_repeats.hpp"
#include "words/words.hpp"

#include <utility>

namespace punchwright::editor {

namespace fs = std::filesystem;

void begin_with(App& app, const Document& design, const std::string& name) {
  OpenedDocument opened{design, app.work.profile, {}};
  take(app, std::move(opened), {});
  app.session.suggested_name = name;
  app.session.dialog = NoDialog{};
  say(app, said("A new design of {}: saving asks where to keep it", name));
}

void open_copy(App& app, const fs::path& path) {
  if (has_yoke_name(path)) {
    return open_yoke_file(app, path, true);
  }
  app.session.dialog = NoDialog{};
  const auto text = read_file(path, largest_file);
  if (!text) {
    return show_trouble(app, tr("The demo can't be opened"), text.error(), {});
  }
  auto opened = open_document(*text, path.string(), file_reader());
  if (!opened) {
    return show_trouble(app, tr("The demo can't be read"), opened.error(), {});
  }
  take(app, std::move(opened).value(), {});
  app.session.suggested_name = path.stem().string();
  say(app, said("A copy of the demo {}: saving asks where to keep it", path.filename().string()));
}

void begin_design(App& app, const NewDialog& wishes) {
  OpenedDocument opened;
  opened.document = blank_document(wishes.width, wishes.rows);
  opened.document.profile = wishes.profile;
  opened.document.card.paper = app.settings.paper;
  auto profile = find_profile(wishes.profile, app.session.path, file_reader());
  if (profile) {
    opened.profile = std::move(profile).value();
  } else {
    opened.document.profile = built_in_profiles().front().name;
    opened.profile = built_in_profiles().front();
  }
  opened.document.gauge = usual_gauge(opened.profile);
  // One repeat alone would be cut by its seam stitches, and in its middle where the card doesn't begin there.
  opened.document.piece.stitches = whole_repeats_in_the_middle(opened.document, opened.profile);
  take(app, std::move(opened), {});
  app.session.dialog = NoDialog{};
  app.session.message.clear();
}

} // namespace punchwright::editor
