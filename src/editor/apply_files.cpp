// Opening, saving, and the guard before anything that is not saved would go.
#include "design/repeat_file.hpp"
#include "editor/applying.hpp"
#include "editor/exporting.hpp"
#include "editor/hanging.hpp"
#include "editor/kept_work.hpp"
#include "files/files.hpp"
#include "machine/open_document.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <iterator>

namespace punchwright::editor {

namespace fs = std::filesystem;

void take(App& app, OpenedDocument opened, const fs::path& path) {
  let_go(app);
  Work& work = app.work;
  work.design = std::move(opened.document);
  work.profile = std::move(opened.profile);
  work.profile_name = work.design.profile;
  work.profile_trouble.clear();
  work.notes = std::move(opened.notes);
  work.history = History{};
  ++work.opening;
  app.session.path = path;
  app.session.file_digest = 0;
  app.session.file_seen.reset();
  forget_recovered(app, KeptSide::design); // given up, or saved
  app.session.suggested_name.clear();
  app.session.readings.reset();
  app.session.reader_offset.reset();
  app.yoke.shown = false; // the drawing is what was asked for
  app.view.cursor = {};
  app.view.marked.reset();
  app.view.chosen_symmetry.reset(); // for the other design
  app.view.symmetry.reset();
  app.view.symmetry_aside.reset();
  app.view.moved_axes.clear();
  app.view.moved_marks.clear();
  app.view.preview = {};
  app.view.finding = -1;
  app.view.zoom.reset();
  app.view.pan = {};
  app.view.focus_drawing = true;
}

namespace {

void take_file(App& app, OpenedDocument opened, const fs::path& path, std::uint64_t digest) {
  take(app, std::move(opened), path);
  app.session.file_digest = digest;
  if (path.has_parent_path()) {
    app.session.folder = path.parent_path();
  }
  remember_recent(app.settings, path);
  say(app, said("Opened {}", path.filename().string()));
}

// Only the machine is at fault: the design can be opened with another one.
void offer_other_machine(App& app, std::string_view text, const fs::path& path) {
  auto read = read_repeat(text, path.string());
  auto* const trouble = std::get_if<TroubleDialog>(&app.session.dialog);
  if (!read || trouble == nullptr || find_profile(read->document.profile, path, file_reader())) {
    return;
  }
  ReadDocument found = std::move(read).value();
  trouble->title = tr("The design's machine can't be loaded");
  if (!fs::exists(path.parent_path() / found.document.profile)) {
    trouble->remedy = tr("Put the machine's file there again, or go on with another machine.");
  }
  trouble->rest.clear();
  trouble->missing = MissingMachine{std::move(found.document), std::move(found.notes), path, digest_of(text)};
}

// Opens the file, or says what is wrong with it and leaves everything as it was.
void open_file(App& app, const fs::path& path) {
  if (has_photo_name(path.string())) {
    return open_picture(app, path);
  }
  if (has_yoke_name(path)) {
    return open_yoke_file(app, path, false);
  }
  app.session.dialog = NoDialog{};
  const std::string rest = app.session.path.empty() && app.work.history.done() == 0
                               ? tr("Nothing was opened; you can begin a new design.")
                               : said("“{}” stays open, as it was.", file_name_of(app));
  auto text = read_file(path, largest_file);
  if (!text) {
    return show_trouble(app, tr("The file can't be opened"), text.error(), rest);
  }
  auto opened = open_document(*text, path.string(), file_reader());
  if (!opened) {
    show_trouble(app, tr("The file can't be read"), opened.error(), rest);
    return offer_other_machine(app, *text, path);
  }
  take_file(app, std::move(opened).value(), path, digest_of(*text));
}

// For the wished machine, else for the one in use, where it is a built-in one, and as wide as its card.
NewDialog new_dialog(const App& app, const std::string& machine) {
  NewDialog dialog;
  if (const Profile* const present = built_in_profile(machine.empty() ? app.work.design.profile : machine)) {
    dialog.profile = present->name;
    dialog.width = present->card ? present->card->repeat : dialog.width;
  }
  return dialog;
}

// The machine's name is from the folder where the design lies, as before.
void go_back_to(App& app, std::size_t steps) {
  Work& work = app.work;
  while (work.history.done() > steps && work.history.undo(work.design)) {
  }
  work.profile_name = work.design.profile;
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
  const std::size_t steps = app.work.history.done();
  keep_machine_in_reach(app, path);
  if (path == app.session.path && ask_about_changed_file(app, KeptSide::design, dialog.afterwards)) {
    return;
  }
  if (const Failure failure = try_writing_design(app, path)) {
    go_back_to(app, steps);
    dialog.trouble = failure->text();
    dialog.ask_replace = false;
    app.session.dialog = dialog;
    return;
  }
  go_on(app, dialog.afterwards);
}

// For the new yoke that asked for it, or for the open one.
void take_tier(App& app, const PathDialog& dialog, const fs::path& path) {
  if (dialog.yoke) {
    NewYokeDialog wishes = *dialog.yoke;
    wishes.tiers.push_back(path);
    wishes.remark.clear();
    app.session.dialog = wishes;
  } else if (app.yoke.opened) {
    app.session.dialog = NoDialog{};
    add_tier(app, path);
  }
}

} // namespace

void show_trouble(App& app, const std::string& title, const Error& error, const std::string& rest) {
  Error place = error;
  place.remedy.clear();
  app.session.dialog = TroubleDialog{title, place.text(), error.remedy, rest, {}, {}};
}

void go_on(App& app, const Pending& pending) {
  switch (pending.what) {
  case Pending::What::nothing: return;
  case Pending::What::quit:
    if (!app.yoke.saved() && !pending.yoke_answered) {
      app.session.dialog = GuardDialog{pending, true};
      return;
    }
    app.session.quit = true;
    return;
  case Pending::What::new_yoke: app.session.dialog = new_yoke_dialog(app); return;
  case Pending::What::new_design: app.session.dialog = new_dialog(app, pending.machine); return;
  case Pending::What::choose_file: return open_path_dialog(app, Purpose::open);
  case Pending::What::open_file: return open_file(app, pending.path);
  case Pending::What::open_copy: return open_copy(app, pending.path);
  case Pending::What::picture: return begin_with(app, *pending.design, pending.path.stem().string());
  }
}

void request(App& app, const Pending& pending) {
  close_step(app);
  const bool about_yoke = is_about_yoke(app, pending);
  if (about_yoke ? app.yoke.saved() : app.work.history.saved() && !hanging_changes_drawing(app)) {
    return go_on(app, pending);
  }
  app.session.dialog = GuardDialog{pending, about_yoke};
}

void open_path_dialog(App& app, Purpose purpose, const Pending& afterwards) {
  PathDialog dialog;
  const bool reads_card = app.work.profile.card.has_value();
  if (purpose == Purpose::card && !reads_card) {
    purpose = Purpose::chart;
    dialog.remark = tr("This machine reads no card. The needle chart says which needles to bring forward in each row.");
  } else if ((purpose == Purpose::measure_page || purpose == Purpose::swatch) && !reads_card) {
    return say(app, tr("This machine reads no card: there is no blank to measure and no swatch to knit"),
               Tone::trouble);
  }
  dialog.purpose = purpose;
  dialog.from_preview = std::holds_alternative<PreviewDialog>(app.session.dialog);
  dialog.chart = app.view.preview.chart;
  if (purpose == Purpose::card && dialog.from_preview && app.view.preview.only_card) {
    dialog.only_card = app.view.preview.only_card;
    dialog.remark = said("Card {} alone", *dialog.only_card);
  }
  dialog.folder = app.session.folder;
  dialog.afterwards = afterwards;
  dialog.entries = entries_of(dialog.folder, purpose);
  dialog.name = usual_name(app, purpose);
  if (dialog.only_card) {
    dialog.name = fmt::format("{}-card-{}.pdf", name_without_kind(app), *dialog.only_card);
  }
  app.session.dialog = dialog;
  look_at_chosen_file(app);
}

void look_at_chosen_file(App& app) {
  auto* const dialog = std::get_if<PathDialog>(&app.session.dialog);
  if (dialog == nullptr || !shows_preview(dialog->purpose)) {
    return;
  }
  const bool typed = dialog->under_cursor.empty();
  const fs::path path = typed ? path_of(*dialog) : (dialog->folder / dialog->under_cursor).lexically_normal();
  if (dialog->preview && dialog->preview->path == path) {
    return;
  }
  std::error_code ignored;
  const auto kinds = extensions_for(dialog->purpose);
  const bool is_design = !(typed && dialog->name.empty()) &&
                         std::ranges::find(kinds, path.extension().string()) != kinds.end() &&
                         fs::is_regular_file(path, ignored);
  dialog->preview = is_design ? std::optional<DesignCard>(design_card(path, 1.0)) : std::nullopt;
}

void close_dialog(App& app) {
  const auto* const path = std::get_if<PathDialog>(&app.session.dialog);
  if (path != nullptr && path->yoke) { // back to the new yoke, without a tier more
    const std::shared_ptr<NewYokeDialog> wishes = path->yoke;
    app.session.dialog = *wishes;
    return;
  }
  const bool to_preview = path != nullptr && path->from_preview;
  app.view.focus_drawing = app.view.focus_drawing || (is_open(app.session.dialog) && !to_preview);
  app.session.dialog = to_preview ? Dialog(PreviewDialog{}) : Dialog(NoDialog{});
}

bool is_about_yoke(const App& app, const Pending& pending) {
  switch (pending.what) {
  case Pending::What::new_yoke: return true;
  case Pending::What::open_file:
  case Pending::What::open_copy: return has_yoke_name(pending.path);
  case Pending::What::choose_file: return app.yoke.shown;
  default: return false;
  }
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
    found->trouble =
        writes_file(dialog.purpose) ? tr("Type a name for the file.") : tr("Choose a file, or type its name.");
    return;
  }
  if (const fs::path named = dialog.folder / with_home(dialog.name); fs::is_directory(named, ignored)) {
    dialog.folder = named.lexically_normal();
    dialog.name = usual_name(app, dialog.purpose);
    dialog.entries = entries_of(dialog.folder, dialog.purpose);
    dialog.list_fresh = true;
    app.session.dialog = dialog;
    return;
  }
  if (!writes_file(dialog.purpose) && !fs::exists(path, ignored)) {
    dialog.trouble = said("There is no file “{}”. Choose one from the list, or type another name.", dialog.name);
    app.session.dialog = dialog;
    return;
  }
  switch (dialog.purpose) {
  case Purpose::open: // what is shown was guarded before; the other document is now
    return has_yoke_name(path) == app.yoke.shown || has_photo_name(path.string())
               ? open_file(app, path)
               : request(app, Pending{Pending::What::open_file, path, {}});
  case Purpose::yoke_tier: return take_tier(app, dialog, path);
  case Purpose::save_yoke: return save_yoke_as(app, dialog, path, replace);
  case Purpose::picture: return open_picture(app, path);
  case Purpose::choose_machine: return choose_machine(app, dialog, path);
  case Purpose::keep_machine: return keep_machine(app, dialog, path, replace);
  case Purpose::save: return save_as(app, dialog, path, replace);
  default: return export_files(app, dialog, path, replace);
  }
}

void make_folder(App& app) {
  auto* const dialog = std::get_if<PathDialog>(&app.session.dialog);
  if (dialog == nullptr || !dialog->new_folder || dialog->new_folder->empty()) {
    return;
  }
  const fs::path folder = (dialog->folder / *dialog->new_folder).lexically_normal();
  std::error_code trouble;
  if (!fs::create_directory(folder, trouble)) {
    dialog->trouble = trouble ? said("The folder can't be made: {}", trouble.message())
                              : said("There is something called “{}” already", *dialog->new_folder);
    return;
  }
  dialog->folder = folder;
  dialog->new_folder.reset();
  dialog->trouble.clear();
  dialog->ask_replace = false;
  dialog->entries = entries_of(folder, dialog->purpose);
}

void open_with_machine(App& app, const std::string& name) {
  auto* const trouble = std::get_if<TroubleDialog>(&app.session.dialog);
  const Profile* const profile = built_in_profile(name);
  if (trouble == nullptr || !trouble->missing || profile == nullptr) {
    return;
  }
  MissingMachine missing = std::move(*trouble->missing);
  const std::string named = missing.document.profile;
  app.session.dialog = NoDialog{};
  take_file(app, OpenedDocument{std::move(missing.document), *profile, std::move(missing.notes)}, missing.path,
            missing.digest);
  // A change like any other, so that the file keeps its machine until it is saved.
  edit(app, ChangeSettings{with_machine(settings_of(app.work.design), *profile)});
  say(app, said("Opened with “{}” instead of {}; saving keeps that", profile->title, named));
}

void answer_guard(App& app, GuardAnswer answer) {
  const auto* const guard = std::get_if<GuardDialog>(&app.session.dialog);
  if (guard == nullptr) {
    return;
  }
  Pending pending = guard->pending;
  const bool yoke = guard->yoke;
  app.session.dialog = NoDialog{};
  app.view.focus_drawing = true;
  pending.yoke_answered = yoke;
  switch (answer) {
  case GuardAnswer::save: return yoke ? save_yoke(app, pending) : save(app, pending);
  case GuardAnswer::discard: return go_on(app, pending);
  case GuardAnswer::cancel: return;
  }
}

} // namespace punchwright::editor
