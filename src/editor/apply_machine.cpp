// What is learnt about the user's own machine and printer: rulers read, blanks measured, swatches looked at.
#include "editor/applying.hpp"
#include "files/files.hpp"
#include "machine/profile_file.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright::editor {

namespace fs = std::filesystem;

namespace {

constexpr double ruler_mm = 150; // the length of the rulers on the card's pages

// A .machine file beside the design takes the profile, and the design then names that file. Where there is no such
// place yet, the user is asked for one.
void keep_profile(App& app, Profile profile, const std::string& learnt) {
  const fs::path& design_path = app.session.path;
  const fs::path named = app.work.design.profile;
  // A file of the user's own that is in use already is brought up to date; a new one never replaces another.
  const bool own = named.extension() == ".machine" && app.work.profile_trouble.empty();
  if (design_path.empty() && !(own && named.is_absolute())) {
    open_path_dialog(app, Purpose::keep_machine);
    auto& dialog = std::get<PathDialog>(app.session.dialog);
    dialog.machine = std::move(profile);
    dialog.learnt = learnt;
    dialog.remark =
        tr("What was found out about your machine is kept in a file of its own, for this design and others.");
    return;
  }
  fs::path path = design_path.parent_path() / named;
  std::error_code ignored;
  if (!own) {
    path = design_path;
    path.replace_extension(".machine");
    for (int number = 2; fs::exists(path, ignored); ++number) {
      path = design_path.parent_path() / fmt::format("{}-{}.machine", design_path.stem().string(), number);
    }
    profile.name = path.stem().string();
  }
  std::string trouble;
  if (!keep_profile_at(app, profile, learnt, path, trouble)) {
    say(app, trouble, Tone::trouble);
  }
}

} // namespace

FileReader file_reader() {
  return [](const fs::path& path) { return read_file(path, largest_file); };
}

std::string machine_name_from(const fs::path& machine, const fs::path& folder) {
  // Beside the design the name alone is enough, and stays right when both are moved.
  return !folder.empty() && machine.parent_path() == folder ? machine.filename().string() : machine.string();
}

bool keep_profile_at(App& app, const Profile& profile, const std::string& learnt, const fs::path& path,
                     std::string& trouble) {
  if (const Failure failure = write_file(path, write_machine(profile))) {
    trouble = failure->text();
    return false;
  }
  Document settings = settings_of(app.work.design);
  settings.profile = machine_name_from(path, app.session.path.parent_path());
  app.work.profile_name.clear(); // read anew, also where the name is the same
  app.caches.valid = false;
  app.session.readings.reset();
  app.session.reader_offset.reset();
  if (edit(app, ChangeSettings{settings})) {
    say(app, said("{}: kept in {}", learnt, path.filename().string()), Tone::good);
  }
  return true;
}

void correct_scale(App& app) {
  close_step(app);
  Document settings = settings_of(app.work.design);
  settings.card.scale_x *= app.session.ruler_across / ruler_mm;
  settings.card.scale_y *= app.session.ruler_upwards / ruler_mm;
  const auto possible = [](double scale) { return scale >= 0.5 && scale <= 2; };
  if (!possible(settings.card.scale_x) || !possible(settings.card.scale_y)) {
    say(app, tr("No printer is that far off: measure the 150 mm rulers once more"), Tone::trouble);
    return;
  }
  if (edit(app, ChangeSettings{settings})) {
    app.session.ruler_across = ruler_mm;
    app.session.ruler_upwards = ruler_mm;
    say(app, tr("Corrected: print the card again and its rulers will measure 150 mm"), Tone::good);
  }
}

void use_readings(App& app) {
  close_step(app);
  if (!app.session.readings || !app.work.profile.card) {
    return;
  }
  Profile profile = app.work.profile;
  CardReader& card = *profile.card;
  auto geometry = geometry_from_readings(*app.session.readings, card.repeat, card.geometry);
  if (!geometry) {
    say(app, geometry.error().text(), Tone::trouble);
    return;
  }
  card.geometry = *geometry;
  if (app.session.reader_offset && *app.session.reader_offset != card.reader_offset) {
    card.reader_offset = *app.session.reader_offset;
    profile.sources["card.reader_offset"] = "counted on the machine";
  }
  for (const char* const key :
       {"sheet_width_mm", "stitch_pitch_mm", "row_pitch_mm", "hole_diameter_mm", "column_1_mm"}) {
    profile.sources[std::string("card.geometry.") + key] = "measured";
  }
  keep_profile(app, std::move(profile), tr("Your blank's measures"));
}

void use_swatch(App& app, const SwatchAnswer& answer) {
  close_step(app);
  app.session.dialog = NoDialog{};
  app.view.focus_drawing = true;
  if (app.work.profile.card) {
    const bool right = !answer.mirrored && !answer.upside_down && !answer.inverted;
    keep_profile(app, profile_after_swatch(app.work.profile, answer),
                 right ? tr("The swatch came out right") : tr("The card's orientation"));
  }
}

void choose_machine(App& app, PathDialog dialog, const fs::path& path) {
  const auto profile = find_profile(path.string(), app.session.path, file_reader());
  if (!profile) {
    dialog.trouble = profile.error().text();
    app.session.dialog = dialog;
    return;
  }
  app.session.dialog = NoDialog{};
  if (app.yoke.shown && app.yoke.opened) {
    return choose_yoke_machine(app, path);
  }
  app.view.focus_drawing = true;
  Document settings = with_machine(settings_of(app.work.design), *profile);
  settings.profile = machine_name_from(path, app.session.path.parent_path());
  edit(app, ChangeSettings{settings});
}

void keep_machine(App& app, PathDialog dialog, const fs::path& path, bool replace) {
  std::error_code ignored;
  if (!replace && fs::exists(path, ignored)) {
    dialog.ask_replace = true;
    app.session.dialog = dialog;
    return;
  }
  Profile profile = dialog.machine.value_or(app.work.profile);
  profile.name = path.stem().string();
  if (!keep_profile_at(app, profile, dialog.learnt, path, dialog.trouble)) {
    dialog.ask_replace = false;
    app.session.dialog = dialog;
    return;
  }
  app.session.dialog = NoDialog{};
  app.session.folder = path.parent_path();
  app.view.focus_drawing = true;
}

void keep_machine_in_reach(App& app, const fs::path& path) {
  const fs::path machine = app.work.design.profile;
  if (machine.extension() != ".machine" || (!machine.is_absolute() && app.session.path.empty())) {
    return;
  }
  const fs::path whole = machine.is_absolute() ? machine : app.session.path.parent_path() / machine;
  const std::string name = machine_name_from(whole, path.parent_path());
  if (name != app.work.design.profile && path.parent_path() != app.session.path.parent_path()) {
    Document settings = settings_of(app.work.design);
    settings.profile = name;
    edit(app, ChangeSettings{settings});
    app.work.profile_name = name; // the same file: nothing to load
  }
}

void load_profile(App& app) {
  Work& work = app.work;
  if (work.design.profile == work.profile_name) {
    return;
  }
  work.profile_name = work.design.profile;
  auto profile = find_profile(work.design.profile, app.session.path, file_reader());
  if (profile) {
    work.profile = std::move(profile).value();
    work.profile_trouble.clear();
  } else {
    work.profile_trouble = profile.error().text();
  }
  app.caches.valid = false;
}

} // namespace punchwright::editor
