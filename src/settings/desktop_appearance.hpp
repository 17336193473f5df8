// Whether the desktop is set to dark, as far as its plain files say so: no bus, no library of one desktop.
// Pure: the texts come in, so that any desktop's files can be tried.
#pragma once

#include "settings/settings.hpp"

#include <string_view>

namespace punchwright {

// What can be known without asking a running program; empty where a file isn't there.
struct DesktopSays {
  std::string_view theme_variable; // GTK_THEME: "Name" or "Name:dark"
  std::string_view gtk_settings;   // gtk-4.0/settings.ini or gtk-3.0/settings.ini
  std::string_view kde_globals;    // kdeglobals, with the colours of windows
};

// light or dark; light where nothing says otherwise.
[[nodiscard]] Appearance appearance_of(const DesktopSays& desktop);

} // namespace punchwright
