// The settings file: TOML, read with the checks that every file of ours goes through.
#include "settings/settings.hpp"

#include "design/toml_statements.hpp"
#include "design/toml_strings.hpp"
#include "design/toml_values.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace punchwright {

namespace fs = std::filesystem;

namespace {

constexpr std::array<std::pair<std::string_view, Appearance>, 3> appearances = {
    {{"desktop", Appearance::as_desktop}, {"light", Appearance::light}, {"dark", Appearance::dark}}};
constexpr std::array<std::pair<std::string_view, LengthUnit>, 2> units = {
    {{"centimetres", LengthUnit::centimetres}, {"inches", LengthUnit::inches}}};
constexpr std::array<std::pair<std::string_view, Paper>, 3> papers = {
    {{"a4", Paper::a4}, {"letter", Paper::letter}, {"roll", Paper::roll}}};

constexpr int largest_window = 32767; // px: the X protocol's widest

template <class Meaning, std::size_t count>
std::string word_for(const std::array<std::pair<std::string_view, Meaning>, count>& words, Meaning meaning) {
  const auto found = std::ranges::find(words, meaning, &std::pair<std::string_view, Meaning>::second);
  return toml_quoted(found->first);
}

void read_recent(const TomlTable& root, Settings& settings) {
  if (!root.has("recent")) {
    return;
  }
  const toml::array* const list = root.node("recent")->as_array();
  if (list == nullptr) {
    return root.refuse("recent", tr("a list of paths in quotation marks"));
  }
  for (const toml::node& entry : *list) {
    const auto path = entry.value_exact<std::string>();
    if (!path) {
      return root.refuse("recent", tr("a list of paths in quotation marks"));
    }
    const bool known = std::ranges::find(settings.recent, fs::path(*path)) != settings.recent.end();
    if (fs::path(*path).is_absolute() && !known && settings.recent.size() < most_recent_files) {
      settings.recent.emplace_back(*path);
    }
  }
}

void read_window(const TomlTable& root, TomlErrors& errors, Settings& settings) {
  const toml::table* const table = root.inner("window");
  if (table == nullptr) {
    return;
  }
  const TomlTable window(*table, "window.", "", errors);
  settings.window_width = window.whole("width", 0, largest_window).value_or(0);
  settings.window_height = window.whole("height", 0, largest_window).value_or(0);
  settings.maximized = window.flag("maximized").value_or(false);
  settings.settings_panel = window.whole("settings_panel", 0, largest_window).value_or(0);
  settings.findings_panel = window.whole("findings_panel", 0, largest_window).value_or(0);
}

void read_bench(const TomlTable& root, TomlErrors& errors, Settings& settings) {
  const toml::table* const table = root.inner("bench");
  if (table == nullptr) {
    return;
  }
  const TomlTable bench(*table, "bench.", "", errors);
  settings.bench_distance_m =
      bench.number("distance_m", least_bench_distance_m, most_bench_distance_m).value_or(settings.bench_distance_m);
  settings.screen_width_mm = bench.whole("screen_width_mm", 0, most_screen_width_mm).value_or(0);
  settings.speak_steps = bench.flag("speak").value_or(false);
  settings.speech_rate = bench.whole("speech_rate", least_speech_rate, most_speech_rate).value_or(0);
}

} // namespace

Result<Settings> read_settings(std::string_view text, const std::string& file_name) {
  const Result<TomlRead> toml = read_toml(text, file_name);
  if (!toml) {
    return toml.error();
  }
  TomlErrors errors(file_name);
  const TomlTable root(toml->table, "", "", errors);
  Settings settings;
  settings.appearance = root.word("theme", appearances).value_or(settings.appearance);
  settings.language = root.text("language").value_or("");
  settings.text_percent =
      root.whole("text_percent", least_text_percent, most_text_percent).value_or(settings.text_percent);
  settings.lengths = root.word("lengths", units).value_or(settings.lengths);
  settings.paper = root.word("paper", papers).value_or(settings.paper);
  settings.motifs_see_through = root.flag("motifs_see_through").value_or(false);
  read_recent(root, settings);
  read_window(root, errors, settings);
  read_bench(root, errors, settings);
  if (errors.first()) {
    return *errors.first();
  }
  return settings;
}

std::string write_settings(const Settings& settings) {
  std::string out = "# Punchwright's settings: written by the program, and read when it starts.\n";
  out += fmt::format("theme = {} # desktop, light, dark\n", word_for(appearances, settings.appearance));
  out += fmt::format("language = {} # en, de; empty: as the system says\n", toml_quoted(settings.language));
  out += fmt::format("text_percent = {} # {} to {}\n", settings.text_percent, least_text_percent, most_text_percent);
  out += fmt::format("lengths = {} # centimetres, inches\n", word_for(units, settings.lengths));
  out += fmt::format("paper = {} # of new designs: a4, letter, roll\n", word_for(papers, settings.paper));
  out += fmt::format("motifs_see_through = {} # set down, they leave what lies below their main\n",
                     settings.motifs_see_through);
  out += "recent = [\n";
  for (const fs::path& path : settings.recent) {
    if (is_utf8(path.string())) { // a name that is no UTF-8 has no place in TOML
      out += "  " + toml_quoted(path.string()) + ",\n";
    }
  }
  out += fmt::format("]\n\n[window] # px; panels in px at 100 % text; 0: as usual\nwidth = {}\nheight = {}\n"
                     "maximized = {}\nsettings_panel = {}\nfindings_panel = {}\n",
                     settings.window_width, settings.window_height, settings.maximized, settings.settings_panel,
                     settings.findings_panel);
  out += fmt::format("\n[bench] # read from so many metres; width of the screen in mm, 0: as it says\ndistance_m = {}\n"
                     "screen_width_mm = {}\nspeak = {}\nspeech_rate = {} # {} to {}\n",
                     settings.bench_distance_m, settings.screen_width_mm, settings.speak_steps, settings.speech_rate,
                     least_speech_rate, most_speech_rate);
  return out;
}

void remember_recent(Settings& settings, const fs::path& path) {
  if (!path.is_absolute()) {
    return;
  }
  forget_recent(settings, path);
  settings.recent.insert(settings.recent.begin(), path);
  settings.recent.resize(std::min(settings.recent.size(), most_recent_files));
}

void forget_recent(Settings& settings, const fs::path& path) {
  std::erase(settings.recent, path);
}

int text_percent_after(int present, int by) {
  return std::clamp(present + by, least_text_percent, most_text_percent);
}

} // namespace punchwright
