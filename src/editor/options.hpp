// What the editor is started with.
#pragma once

#include "design/result.hpp"
#include "editor/app.hpp"
#include "editor/user_settings.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <variant>

namespace punchwright::editor {

struct Options {
  std::filesystem::path file;     // empty: a blank design
  std::filesystem::path state_to; // one line a frame
  std::filesystem::path picture;  // a picture of the window, and no window
  int frames_benchmark = 0;       // frames to time, and no window
  std::filesystem::path motifs;   // the user's; empty: the usual place, or none for a picture
  std::string language;           // in effect already when this is read; empty: the settings', or the system's
  std::string system_language = "en";
  std::optional<FoundSettings> settings; // the user's; none for a picture
  int width = 0;                         // px; 0: as the settings say
  int height = 0;
  float scale = 0; // px per unit of layout; 0: what the display says
  Face face = Face::knit;
  std::optional<Tab> tab;
  bool choose_finding = false;
  bool large_piece = false; // the piece takes the drawing's place
  int done = 0;             // at the bench, passes played, or rows seen
  std::string dialog;       // shown on the picture: "keys", "open" …
  ColourSight sight = ColourSight::as_is;
  std::optional<YokeShows> yoke; // the view of a .yoke file
  float zoom = 0;                // of the drawing, px a mm; 0: the repeat fills the canvas
  std::string sheet;             // in the preview: "card", "chart" …
};

// The options, or the status to end with where all is said already (--help, a mistake).
[[nodiscard]] std::variant<Options, int> read_options(int count, char** arguments);

} // namespace punchwright::editor
