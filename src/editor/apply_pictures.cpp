// Files that were dropped, and pictures that become drawings.
#include "design/repeat_file.hpp"
#include "editor/applying.hpp"
#include "editor/picture_views.hpp"
#include "files/files.hpp"
#include "words/words.hpp"

#include <fmt/format.h>

namespace punchwright::editor {

namespace fs = std::filesystem;

namespace {

// The step's name is stored, and translated where it is shown.
void hang_file_over(App& app, const fs::path& path, Grid drawing) {
  hang_over(
      app,
      Floating{std::move(drawing), app.view.cursor, fmt::format("set down “{}”", path.stem().string()), {}, false});
}

} // namespace

void drop_file(App& app, const fs::path& path) {
  if (has_photo_name(path.string())) {
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
    return show_trouble(app, tr("The file can't be opened"), text.error(), {});
  }
  auto dropped = read_repeat(*text, path.string());
  if (!dropped) {
    return show_trouble(app, tr("The file can't be read"), dropped.error(), {});
  }
  hang_file_over(app, path, std::move(dropped->document.grid));
}

namespace {

void trace_bytes(App& app, const fs::path& path, std::string_view bytes) {
  auto photo = read_photo(bytes, path.string());
  if (!photo) {
    return show_trouble(app, tr("The picture can't be used"), photo.error(), {});
  }
  app.session.folder = path.has_parent_path() ? path.parent_path() : app.session.folder;
  app.session.dialog =
      trace_dialog(path, std::make_shared<const Photo>(std::move(photo).value()), app.work.design, app.work.profile);
}

// Over the drawing, or as a design of its own after what is open is safe.
void take_drawing(App& app, bool as_new, const fs::path& path, Document design) {
  app.session.dialog = NoDialog{};
  if (!as_new) {
    return hang_file_over(app, path, std::move(design.grid));
  }
  request(app, Pending{Pending::What::picture, path, {}, std::make_shared<const Document>(std::move(design))});
}

} // namespace

void open_picture(App& app, const fs::path& path) {
  close_step(app);
  app.session.dialog = NoDialog{};
  const auto bytes = read_file(path, largest_photo_file);
  if (!bytes) {
    return show_trouble(app, tr("The picture can't be opened"), bytes.error(), {});
  }
  auto picture = read_picture(*bytes, path.string());
  if (!picture) { // more than two colours, or more pixels than stitches
    return trace_bytes(app, path, *bytes);
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
  Document design = design_of(*chosen.picture, chosen.contrast, chosen.path.stem().string());
  design.gauge = app.work.design.gauge;
  design.profile = app.work.design.profile;
  design.card.paper = app.settings.paper;
  take_drawing(app, as_new, chosen.path, std::move(design));
}

void trace_instead(App& app) {
  if (const auto* const dialog = std::get_if<PictureDialog>(&app.session.dialog)) {
    const fs::path path = dialog->path;
    const auto bytes = read_file(path, largest_photo_file);
    return bytes ? trace_bytes(app, path, *bytes)
                 : show_trouble(app, tr("The picture can't be opened"), bytes.error(), {});
  }
}

void take_trace(App& app, bool as_new) {
  const auto* const dialog = std::get_if<TraceDialog>(&app.session.dialog);
  if (dialog != nullptr) {
    const TraceDialog chosen = *dialog;
    take_drawing(app, as_new, chosen.path, design_of_trace(chosen, app.work.design));
  }
}

} // namespace punchwright::editor
