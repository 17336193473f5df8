// Opening, saving, exporting, and the guard before anything that is not saved would go.
#include "design/repeat_file.hpp"
#include "editor/applying.hpp"
#include "files/files.hpp"
#include "machine/open_document.hpp"

#include <fmt/format.h>

namespace punchwright::editor {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t largest_file = std::size_t{8} * 1024 * 1024; // bytes; the reader refuses more

FileReader reader() {
  return [](const fs::path& path) { return read_file(path, largest_file); };
}

void show_trouble(App& app, const std::string& title, const Error& error) {
  Error place = error;
  place.remedy.clear();
  app.session.dialog = TroubleDialog{title, place.text(), error.remedy};
}

void take(App& app, OpenedDocument opened, const fs::path& path) {
  close_step(app);
  Work& work = app.work;
  work.design = std::move(opened.document);
  work.profile = std::move(opened.profile);
  work.profile_name = work.design.profile;
  work.profile_trouble.clear();
  work.notes = std::move(opened.notes);
  work.history = History{};
  ++work.opening;
  app.session.path = path;
  app.session.readings.reset();
  app.view.cursor = {};
  app.view.finding = -1;
  app.view.zoom.reset();
  app.view.pan = {};
  app.view.focus_drawing = true;
}

// Opens the file, or says what is wrong with it and leaves everything as it was.
void open_file(App& app, const fs::path& path) {
  app.session.dialog = NoDialog{};
  auto text = read_file(path, largest_file);
  if (!text) {
    return show_trouble(app, "The file can't be opened", text.error());
  }
  auto opened = open_document(*text, path.string(), reader());
  if (!opened) {
    return show_trouble(app, "The file can't be read", opened.error());
  }
  take(app, std::move(opened).value(), path);
  if (path.has_parent_path()) {
    app.session.folder = path.parent_path();
  }
  say(app, fmt::format("Opened {}", path.filename().string()));
}

void go_on(App& app, const Pending& pending) {
  switch (pending.what) {
  case Pending::What::nothing: return;
  case Pending::What::quit: app.session.quit = true; return;
  case Pending::What::new_design: app.session.dialog = NewDialog{app.work.design.profile, 24, 24}; return;
  case Pending::What::choose_file: return open_path_dialog(app, Purpose::open);
  case Pending::What::open_file: return open_file(app, pending.path);
  }
}

bool write_design(App& app, const fs::path& path) {
  if (const Failure failure = write_file(path, write_repeat(app.work.design))) {
    show_trouble(app, "The design is not saved", *failure);
    return false;
  }
  close_step(app);
  app.work.history.mark_saved();
  ++app.session.saves;
  app.session.path = path;
  app.session.folder = path.parent_path();
  say(app, fmt::format("Saved {}", path.filename().string()), Tone::good);
  return true;
}

Result<std::vector<OutputFile>> output_of(const App& app, const PathDialog& dialog, const fs::path& path) {
  const Document& design = app.work.design;
  const Profile& profile = app.work.profile;
  switch (dialog.purpose) {
  case Purpose::card: return card_files(design, profile, path.string());
  case Purpose::chart: return needle_files(design, profile, path.string(), dialog.chart);
  case Purpose::fabric: return fabric_files(design, profile, path.string(), app.view.face);
  case Purpose::measure_page: return measure_files(profile, design.card.paper, path.string());
  case Purpose::swatch: return swatch_files(profile, design.card.paper, path.string());
  default: return Error{};
  }
}

// Writes what the dialog asks for; keeps the dialog, with the reason, where it can't be.
void export_files(App& app, PathDialog dialog, const fs::path& path, bool replace) {
  const auto files = output_of(app, dialog, path);
  if (!files) {
    dialog.trouble = files.error().text();
    app.session.dialog = dialog;
    return;
  }
  std::error_code ignored;
  for (const OutputFile& file : *files) {
    if (!replace && fs::exists(file.path, ignored)) {
      dialog.ask_replace = true;
      app.session.dialog = dialog;
      return;
    }
  }
  for (const OutputFile& file : *files) {
    if (const Failure failure = write_file(file.path, file.bytes)) {
      dialog.trouble = failure->text();
      dialog.ask_replace = false;
      app.session.dialog = dialog;
      return;
    }
  }
  app.session.dialog = NoDialog{};
  app.session.folder = path.parent_path();
  app.view.focus_drawing = true;
  const std::string more = files->size() > 1 ? fmt::format(" and {} more", files->size() - 1) : "";
  say(app, fmt::format("Written: {}{}", files->front().path, more), Tone::good);
}

void save_as(App& app, PathDialog dialog, const fs::path& path, bool replace) {
  std::error_code ignored;
  if (!replace && path != app.session.path && fs::exists(path, ignored)) {
    dialog.ask_replace = true;
    app.session.dialog = dialog;
    return;
  }
  app.session.dialog = NoDialog{};
  app.view.focus_drawing = true;
  if (write_design(app, path)) {
    go_on(app, dialog.afterwards);
  }
}

void choose_machine(App& app, const fs::path& path) {
  app.session.dialog = NoDialog{};
  Document settings = settings_of(app.work.design);
  // Beside the design the name alone is enough, and stays right when both are moved.
  const bool beside = !app.session.path.empty() && path.parent_path() == app.session.path.parent_path();
  settings.profile = beside ? path.filename().string() : path.string();
  edit(app, ChangeSettings{settings});
}

std::string name_without_kind(const App& app) {
  return app.session.path.empty() ? std::string("untitled") : app.session.path.stem().string();
}

} // namespace

void request(App& app, const Pending& pending) {
  close_step(app);
  if (app.work.history.saved()) {
    return go_on(app, pending);
  }
  app.session.dialog = GuardDialog{pending};
}

void open_path_dialog(App& app, Purpose purpose, const Pending& afterwards) {
  PathDialog dialog;
  dialog.purpose = purpose;
  dialog.folder = app.session.folder;
  dialog.afterwards = afterwards;
  dialog.entries = entries_of(dialog.folder, purpose);
  const std::string name = name_without_kind(app);
  switch (purpose) {
  case Purpose::save: dialog.name = name + ".repeat"; break;
  case Purpose::card: dialog.name = name + "-card.pdf"; break;
  case Purpose::chart: dialog.name = name + "-needles.pdf"; break;
  case Purpose::fabric: dialog.name = name + "-piece.png"; break;
  case Purpose::measure_page: dialog.name = "measure-your-blank.pdf"; break;
  case Purpose::swatch: dialog.name = "orientation-swatch.pdf"; break;
  case Purpose::open:
  case Purpose::choose_machine: break;
  }
  app.session.dialog = dialog;
}

void choose_path(App& app, bool replace) {
  auto* const found = std::get_if<PathDialog>(&app.session.dialog);
  if (found == nullptr) {
    return;
  }
  PathDialog dialog = *found;
  const fs::path path = path_of(dialog);
  std::error_code ignored;
  if (dialog.name.empty()) {
    return;
  }
  if (fs::is_directory(dialog.folder / dialog.name, ignored)) {
    dialog.folder = (dialog.folder / dialog.name).lexically_normal();
    dialog.name.clear();
    dialog.entries = entries_of(dialog.folder, dialog.purpose);
    app.session.dialog = dialog;
    return;
  }
  switch (dialog.purpose) {
  case Purpose::open: return open_file(app, path);
  case Purpose::choose_machine: return choose_machine(app, path);
  case Purpose::save: return save_as(app, dialog, path, replace);
  default: return export_files(app, dialog, path, replace);
  }
}

void save(App& app, const Pending& afterwards) {
  if (app.session.path.empty()) {
    return open_path_dialog(app, Purpose::save, afterwards);
  }
  if (write_design(app, app.session.path)) {
    go_on(app, afterwards);
  }
}

void answer_guard(App& app, GuardAnswer answer) {
  const auto* const guard = std::get_if<GuardDialog>(&app.session.dialog);
  if (guard == nullptr) {
    return;
  }
  const Pending pending = guard->pending;
  app.session.dialog = NoDialog{};
  app.view.focus_drawing = true;
  switch (answer) {
  case GuardAnswer::save: return save(app, pending);
  case GuardAnswer::discard: return go_on(app, pending);
  case GuardAnswer::cancel: return;
  }
}

void begin_design(App& app, const NewDialog& wishes) {
  OpenedDocument opened;
  opened.document = blank_document(wishes.width, wishes.rows);
  opened.document.profile = wishes.profile;
  auto profile = find_profile(wishes.profile, app.session.path, reader());
  if (profile) {
    opened.profile = std::move(profile).value();
  } else {
    opened.document.profile = built_in_profiles().front().name;
    opened.profile = built_in_profiles().front();
  }
  take(app, std::move(opened), {});
  app.session.dialog = NoDialog{};
  app.session.message.clear();
}

void load_profile(App& app) {
  Work& work = app.work;
  if (work.design.profile == work.profile_name) {
    return;
  }
  work.profile_name = work.design.profile;
  auto profile = find_profile(work.design.profile, app.session.path, reader());
  if (profile) {
    work.profile = std::move(profile).value();
    work.profile_trouble.clear();
  } else {
    work.profile_trouble = profile.error().text();
  }
  app.caches.valid = false;
}

} // namespace punchwright::editor
