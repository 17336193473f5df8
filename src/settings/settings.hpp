// What a person sets once for all designs: how the window looks, which lengths, what was open last. Values and text
// only; who reads and writes the file is the editor.
#pragma once

#include "design/document.hpp"
#include "design/lengths.hpp"
#include "design/result.hpp"

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

enum class Appearance { as_desktop, light, dark };

inline constexpr int least_text_percent = 80;
inline constexpr int most_text_percent = 250;
inline constexpr std::size_t most_recent_files = 12;
inline constexpr double least_bench_distance_m = 0.4;
inline constexpr double most_bench_distance_m = 6;
inline constexpr int most_screen_width_mm = 5000;
inline constexpr int least_speech_rate = -100; // as slow as the voice can
inline constexpr int most_speech_rate = 100;

struct Settings {
  Appearance appearance = Appearance::as_desktop;
  std::string language; // of the words, "de"; empty: as the system says
  int text_percent = 100;
  LengthUnit lengths = LengthUnit::centimetres;
  Paper paper = Paper::a4;         // of new designs
  bool motifs_see_through = false; // set down, they leave what lies below their main
  int window_width = 0;            // px; 0: as the program is built
  int window_height = 0;
  bool maximized = false;
  int settings_panel = 0; // units of layout; 0: as the window's size suggests
  int findings_panel = 0;
  double bench_distance_m = 2; // from which the steps at the bench are read
  int screen_width_mm = 0;     // as measured; 0: as the screen says
  bool speak_steps = false;
  int speech_rate = 0;                       // 0: as the voice usually speaks
  std::vector<std::filesystem::path> recent; // absolute; the latest first

  bool operator==(const Settings&) const = default;
};

// Keys that it doesn't know are passed over: a newer program may have written them.
[[nodiscard]] Result<Settings> read_settings(std::string_view text, const std::string& file_name);
[[nodiscard]] std::string write_settings(const Settings& settings);

// The file becomes the latest one.
void remember_recent(Settings& settings, const std::filesystem::path& path);
void forget_recent(Settings& settings, const std::filesystem::path& path);
// Text larger or smaller by so many percent, within its bounds.
[[nodiscard]] int text_percent_after(int present, int by);

} // namespace punchwright
