// The file of the user's settings: found, read once, written when something changed. What can't be read is set aside,
// what can't be written is said once; neither keeps the editor from starting.
#pragma once

#include "editor/app.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace punchwright::editor {

// The folder that an XDG variable names, else the usual one in the home folder; empty where neither is an absolute
// path.
[[nodiscard]] std::filesystem::path folder_for_user(const char* variable, const std::filesystem::path& in_home);

// $XDG_CONFIG_HOME/punchwright/settings, else in ~/.config; empty where neither names an absolute path.
[[nodiscard]] std::filesystem::path usual_settings_path();

// The folder of that name in $XDG_STATE_HOME/punchwright, else in ~/.local/state; empty where neither names an absolute
// path. "bench": where the knitting stands; "journals": work between two savings; "steps": what can be undone of a
// file.
[[nodiscard]] std::filesystem::path usual_state_folder(std::string_view name);

// Makes the folder for what is kept there; never the home folder itself.
[[nodiscard]] Failure make_kept_folder(const std::filesystem::path& folder);

// A file that can't be read is renamed to "settings.broken", or "settings.broken-2" where there is one already. Its
// path now; empty where it can't be renamed.
[[nodiscard]] std::filesystem::path set_aside(const std::filesystem::path& path);

// The file as it was found at the start, before a language was chosen in which anything could be said of it.
struct FoundSettings {
  std::filesystem::path path;
  std::optional<std::string> text; // none: it isn't there, or can't be opened
};
[[nodiscard]] FoundSettings found_settings(const std::filesystem::path& path);

// What couldn't be read, for `say_at_start`: what is opened afterwards says something of its own. Empty: nothing.
[[nodiscard]] std::string load_settings(App& app, const FoundSettings& found);

// Behind what was said of the file that was opened, where there is one: until the next action.
void say_at_start(App& app, const std::string& note);

// Writes what changed since it was last read or written. The window's size alone waits until `at_end`.
void keep_settings(App& app, bool at_end);

} // namespace punchwright::editor
