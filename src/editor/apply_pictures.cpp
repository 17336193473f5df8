// Files that were dropped, and pictures that become drawings.
#include "design/repeat_file.hpp"
#include "editor/applying.hpp"
#include "editor/picture_views.hpp"
#include "files/files.hpp"

#include <fmt/format.h>

namespace punchwright::editor {

namespace fs = std::filesystem;

void drop_file(App& app, const fs::path& path) {
  if (has_picture_name(path.string())) {
    return open_picture(app, path);
  }
  const bool untouched = app.session.path.empty() && app.work.history.done() == 0;
  if (untouched || path.extension() != ".repeat") {
    return request(app, Pending{Pending::What::open_file, path, {}, {}});
  }
  app.session.dialog = DroppedDialog{path};
}

void place_dropped(App& app, const fs::path& path) {
  const auto text = read_file(path, largest_file);
  if (!text) {
    return show_trouble(app, "The file can't be opened", text.error(), {});
  }
  auto dropped = read_repeat(*text, path.string());
  if (!dropped) {
    return show_trouble(app, "The file can't be read", dropped.error(), {});
  }
  hang_over(
      app,
      Floating{dropped->document.grid, app.view.cursor, fmt::format("set down “{}”", path.stem().string()), {}, false});
}

void open_picture(App& app, const fs::path& path) {
  close_step(app);
  app.session.dialog = NoDialog{};
  const auto bytes = read_file(path, largest_picture_file);
  if (!bytes) {
    return show_trouble(app, "The picture can't be opened", bytes.error(), {});
  }
  auto picture = read_picture(*bytes, path.string());
  if (!picture) {
    return show_trouble(app, "The picture can't be used", picture.error(), {});
  }
  app.session.folder = path.has_parent_path() ? path.parent_path() : app.session.folder;
  app.session.dialog = picture_dialog(path, std::make_shared<const Picture>(std::move(picture).value()),
                                      ContrastIs::darker, app.work.design.gauge);
}

void take_picture(App& app, bool as_new) {
  const auto* const dialog = std::get_if<PictureDialog>(&app.session.dialog);
  if (dialog == nullptr) {
    return;
  }
  const PictureDialog chosen = *dialog;
  app.session.dialog = NoDialog{};
  const std::string name = chosen.path.stem().string();
  if (!as_new) {
    return hang_over(app, Floating{drawing_of(*chosen.picture, chosen.contrast),
                                   app.view.cursor,
                                   fmt::format("set down “{}”", name),
                                   {},
                                   false});
  }
  Document design = design_of(*chosen.picture, chosen.contrast, name);
  design.gauge = app.work.design.gauge;
  design.profile = app.work.design.profile;
  design.card.paper = app.settings.paper;
  request(app, Pending{Pending::What::picture, chosen.path, {}, std::make_shared<const Document>(std::move(design))});
}

} // namespace punchwright::editor
