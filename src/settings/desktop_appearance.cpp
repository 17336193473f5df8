// The keys that desktops write: GTK's settings.ini, its variable, and the window colours in kdeglobals.
#include "settings/desktop_appearance.hpp"

#include "design/words.hpp"

#include <charconv>
#include <optional>
#include <string>

namespace punchwright {

namespace {

// The value of `key` in the section "[section]" of an ini file.
std::optional<std::string_view> ini_value(std::string_view text, std::string_view section, std::string_view key) {
  bool inside = false;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    const std::string_view line = trimmed(text.substr(0, end));
    text = end == std::string_view::npos ? std::string_view() : text.substr(end + 1);
    if (line.starts_with('[')) {
      inside = line.size() == section.size() + 2 && line.substr(1, section.size()) == section;
    } else if (const std::size_t equals = line.find('=');
               inside && equals != std::string_view::npos && trimmed(line.substr(0, equals)) == key) {
      return trimmed(line.substr(equals + 1));
    }
  }
  return std::nullopt;
}

bool names_dark(std::string_view theme) {
  const std::size_t length = theme.size();
  if (length < 5) {
    return false;
  }
  const std::string_view end = theme.substr(length - 5);
  return end == ":dark" || end == "-dark" || end == "-Dark";
}

// "42,46,50": darker than the middle in sum.
bool is_dark_colour(std::string_view numbers) {
  int sum = 0;
  int count = 0;
  while (!numbers.empty() && count < 3) {
    const std::size_t comma = numbers.find(',');
    const std::string_view part = trimmed(numbers.substr(0, comma));
    int value = 0;
    if (std::from_chars(part.data(), part.data() + part.size(), value).ec != std::errc()) {
      return false;
    }
    sum += value;
    ++count;
    numbers = comma == std::string_view::npos ? std::string_view() : numbers.substr(comma + 1);
  }
  return count == 3 && sum < 3 * 128;
}

} // namespace

Appearance appearance_of(const DesktopSays& desktop) {
  if (!desktop.theme_variable.empty()) { // outdoes the files, as in GTK itself
    return names_dark(desktop.theme_variable) ? Appearance::dark : Appearance::light;
  }
  const auto wishes = ini_value(desktop.gtk_settings, "Settings", "gtk-application-prefer-dark-theme");
  const auto theme = ini_value(desktop.gtk_settings, "Settings", "gtk-theme-name");
  const auto window = ini_value(desktop.kde_globals, "Colors:Window", "BackgroundNormal");
  const bool dark = (wishes && (*wishes == "1" || *wishes == "true")) || (theme && names_dark(*theme)) ||
                    (window && is_dark_colour(*window));
  return dark ? Appearance::dark : Appearance::light;
}

} // namespace punchwright
