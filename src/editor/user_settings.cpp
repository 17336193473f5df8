// Reading and writing the settings' file.
#include "editor/user_settings.hpp"

#include "editor/applying.hpp"
#include "files/files.hpp"
#include "files/user_folder.hpp"
#include "settings/desktop_appearance.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fmt/format.h>

namespace punchwright::editor {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t largest_settings = std::size_t{256} * 1024; // bytes

std::optional<std::string> text_in(const fs::path& path) {
  std::error_code ignored;
  if (path.empty() || !fs::is_regular_file(path, ignored)) {
    return {};
  }
  auto text = read_file(path, largest_settings);
  return text ? std::optional(std::move(text).value()) : std::nullopt;
}

// The value of a variable that names a folder; XDG's specification has relative ones ignored.
fs::path folder_in(const char* variable) {
  const char* const value = std::getenv(variable);
  const fs::path path = value != nullptr ? value : "";
  return path.is_absolute() ? path : fs::path();
}

fs::path config_folder() {
  return folder_for_user("XDG_CONFIG_HOME", ".config");
}

Appearance desktop_now() {
  const fs::path folder = config_folder();
  if (folder.empty()) {
    return Appearance::light;
  }
  std::string gtk = text_in(folder / "gtk-4.0" / "settings.ini").value_or("");
  if (gtk.empty()) {
    gtk = text_in(folder / "gtk-3.0" / "settings.ini").value_or("");
  }
  const std::string kde = text_in(folder / "kdeglobals").value_or("");
  const char* const variable = std::getenv("GTK_THEME");
  return appearance_of({variable != nullptr ? variable : "", gtk, kde});
}

void take_settings(App& app, const Settings& settings) {
  app.settings = settings;
  app.settings_file.kept = settings;
  app.view.settings_width = static_cast<float>(settings.settings_panel);
  app.view.findings_width = static_cast<float>(settings.findings_panel);
}

// What stands in the app, as settings.
Settings settings_now(const App& app) {
  Settings now = app.settings;
  now.settings_panel = static_cast<int>(std::lround(app.view.settings_width));
  now.findings_panel = static_cast<int>(std::lround(app.view.findings_width));
  return now;
}

// Another editor may have opened files meanwhile: they stay in the list, behind ours.
void add_recent_of_others(App& app, Settings& now) {
  const auto read = read_settings(text_in(app.settings_file.path).value_or(""), {});
  if (!read) {
    return;
  }
  const auto& known = app.settings_file.kept.recent;
  for (const fs::path& path : read->recent) {
    const bool theirs = std::ranges::find(known, path) == known.end();
    if (theirs && std::ranges::find(now.recent, path) == now.recent.end() && now.recent.size() < most_recent_files) {
      now.recent.push_back(path);
    }
  }
}

void say_once(App& app, const std::string& text) {
  if (!app.settings_file.trouble_said) {
    app.settings_file.trouble_said = true;
    say(app, text, Tone::trouble);
  }
}

} // namespace

fs::path set_aside(const fs::path& path) {
  for (int number = 1; number < 100; ++number) {
    fs::path aside = path;
    aside += number == 1 ? std::string(".broken") : fmt::format(".broken-{}", number);
    std::error_code trouble;
    if (fs::exists(aside, trouble)) {
      continue;
    }
    fs::rename(path, aside, trouble);
    return trouble ? fs::path() : aside;
  }
  return {};
}

fs::path folder_for_user(const char* variable, const fs::path& in_home) {
  const fs::path own = folder_in(variable);
  const fs::path home = folder_in("HOME");
  return !own.empty() ? own : home.empty() ? fs::path() : home / in_home;
}

Failure make_kept_folder(const fs::path& folder) {
  return make_user_folder(folder, folder_in("HOME"));
}

fs::path usual_settings_path() {
  const fs::path folder = config_folder();
  return folder.empty() ? fs::path() : folder / "punchwright" / "settings";
}

fs::path usual_state_folder(std::string_view name) {
  const fs::path folder = folder_for_user("XDG_STATE_HOME", ".local/state");
  return folder.empty() ? fs::path() : folder / "punchwright" / name;
}

FoundSettings found_settings(const fs::path& path) {
  return {path, text_in(path)};
}

std::string load_settings(App& app, const FoundSettings& found) {
  const fs::path& path = found.path;
  std::string note;
  app.settings_file.path = path;
  app.settings_file.desktop = desktop_now();
  std::error_code ignored;
  if (path.empty()) {
    note = tr("No home folder is known: settings last until the window closes");
    app.settings_file.trouble_said = true;
  } else if (found.text || fs::exists(fs::symlink_status(path, ignored))) {
    const auto text = found.text ? Result<std::string>(*found.text) : read_file(path, largest_settings);
    auto settings = text ? read_settings(*text, path.filename().string()) : Result<Settings>(text.error());
    if (settings) {
      take_settings(app, *settings);
    } else {
      const fs::path aside = text ? set_aside(path) : fs::path(); // what can't be opened may be whole
      if (aside.empty()) {
        app.settings_file.path.clear(); // what can't be read isn't written over
      }
      const std::string then = aside.empty() ? tr("they stay as they are, and the usual ones are used")
                                             : said("they lie in {} now", aside.string());
      note = said("The settings could not be read ({}); {}", settings.error().message, then);
    }
  }
  choose_colours(app);
  return note;
}

void say_at_start(App& app, const std::string& note) {
  if (!note.empty()) {
    const std::string& opened = app.session.message;
    say(app, opened.empty() ? note : opened + ". " + note, Tone::trouble);
  }
}

void keep_settings(App& app, bool at_end) {
  SettingsFile& file = app.settings_file;
  Settings now = settings_now(app);
  Settings compared = now;
  if (!at_end) {
    compared.window_width = file.kept.window_width;
    compared.window_height = file.kept.window_height;
    compared.maximized = file.kept.maximized;
  }
  if (file.path.empty() || compared == file.kept) {
    return;
  }
  add_recent_of_others(app, now);
  app.settings.recent = now.recent;
  file.kept = now; // also where it fails: the next change tries again
  Failure failure = make_kept_folder(file.path.parent_path());
  if (!failure) {
    failure = write_file(file.path, write_settings(now));
  }
  if (failure) {
    say_once(app, said("The settings can't be kept ({}): they last until the window closes", failure->message));
  }
}

void choose_colours(App& app) {
  const Appearance wished = app.settings.appearance;
  const bool dark = (wished == Appearance::as_desktop ? app.settings_file.desktop : wished) == Appearance::dark;
  static_cast<Palette&>(app.theme) = dark ? dark_palette() : Palette{};
}

void forget_files(App& app, const fs::path& path) {
  if (!path.empty()) {
    forget_recent(app.settings, path);
  } else {
    std::error_code ignored;
    std::erase_if(app.settings.recent, [&](const fs::path& file) { return !fs::exists(file, ignored); });
  }
  if (std::holds_alternative<StartDialog>(app.session.dialog)) {
    app.session.dialog = start_dialog(app);
  }
}

} // namespace punchwright::editor
