// All that the editor knows, as one value: what is worked on, how it is looked at, and what is being asked.
// Nothing in here changes while a frame is drawn; apply() in actions.hpp is the only way to change it.
#pragma once

#include "design/document.hpp"
#include "design/history.hpp"
#include "design/repeat_file.hpp"
#include "drawing/alphabet.hpp"
#include "drawing/frieze.hpp"
#include "editor/bench.hpp"
#include "editor/caches.hpp"
#include "editor/canvas_layout.hpp"
#include "editor/colour_sight.hpp"
#include "editor/dialogs.hpp"
#include "editor/preview.hpp"
#include "editor/theme.hpp"
#include "editor/tools.hpp"
#include "editor/yoke_view.hpp"
#include "editor/yoke_work.hpp"
#include "files/file_stamp.hpp"
#include "machine/profile.hpp"
#include "settings/settings.hpp"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace punchwright::editor {

// What is worked on.
struct Work {
  Document design;
  History history;
  Profile profile;             // the machine that the design names
  std::string profile_name;    // as the design had it when `profile` was loaded
  std::string profile_trouble; // why the named machine could not be loaded; `profile` is then the one before
  std::vector<ReadingNote> notes;
  std::uint64_t opening = 0; // grows with every design opened; with the revision, the key of the caches
};

enum class Tab { design, tools, yarns, machine, piece, card };
// A field that a command goes to, to be typed in at once.
enum class WantedField { none, lettering, motif_search, yoke_machine };
enum class Pen { opposite, contrast, main };

// How it is looked at. Never part of what is saved.
struct View {
  std::optional<float> zoom; // px per mm; absent: the repeat fills the canvas
  ScreenPoint pan;           // px from the canvas's middle to the repeat's
  Cell cursor;
  int finding = -1;            // the chosen one, by its place in the list
  bool finding_wanted = false; // the list scrolls to the chosen one
  Face face = Face::knit;
  Tab tab = Tab::design;
  bool settings_open = true;
  float settings_width = 0; // units of layout; 0: as the window's size suggests
  float findings_width = 0;
  bool findings_open = true;
  bool findings_in_front = false; // at the right, where there is room for one only: else the piece
  Pen pen = Pen::opposite;
  MovedYarns moved_yarns = MovedYarns::of_the_place;
  Tool tool = Tool::pen;
  Interior interior = Interior::outline; // of rectangles and ellipses
  std::optional<Area> marked;            // the marked area; it may go round the edges
  std::optional<Frieze> chosen_symmetry; // put aside while the drawing has a width that its group can't have
  std::optional<Frieze> symmetry;        // the chosen one, unless it is put aside: every stroke is completed under it
  std::optional<FriezeGroup> symmetry_aside; // the group of one that is put aside
  std::vector<MovedAxes> moved_axes;         // by the steps of the history
  std::vector<MovedMark> moved_marks;        // likewise
  std::optional<MovedMark> mark_of_step;     // of a step that is being made
  ScreenBox canvas;                          // where the drawing stood in the last frame, without its margins
  bool focus_drawing = true;                 // the next frame gives the keys to the drawing
  ScreenBox piece_box;                       // room for the picture of the piece in the last frame
  int part_step = 0;       // the next frame gives the keys to the next part of the window, or the one before
  bool open_menus = false; // the next frame opens the first menu
  WantedField wanted_field = WantedField::none; // gets the keys in the next frame
  bool piece_large = false;                     // the piece takes the drawing's place
  bool mend_symmetry = true;                    // mends keep the drawing's symmetry, by more stitches if need be
  bool float_marks = true;                      // floats that are too long are marked in the drawing
  ColourSight sight = ColourSight::as_is;       // how colours are seen, in the drawing and the piece
  PreviewView preview;                          // what the print preview shows
  ScreenBox preview_box;                        // room for its page in the last frame
  YokeView yoke;                                // how the open yoke is looked at
  bool afar = false;                            // the piece's room shows the band over 60 cm instead
  struct PieceMiddle {                          // mm from the piece's middle to the room's, y upwards
    double x = 0;
    double y = 0;
  };
  std::optional<double> piece_zoom; // px per mm; absent: all of the piece
  PieceMiddle piece_middle;
  std::optional<double> other_piece_zoom; // the same while it stands in the drawing's place, or while it doesn't
  PieceMiddle other_piece_middle;
};

enum class Tone { plain, good, trouble };

struct FoundWork;
struct LongWork;

// What is being asked and said.
struct Session {
  std::filesystem::path path;   // empty: never saved
  std::filesystem::path folder; // where the path dialog begins
  std::string message;
  Tone tone = Tone::plain;
  Dialog dialog;
  std::optional<Stroke> stroke;
  std::optional<LineDrag> line_drag;
  std::optional<KeyRun> key_run;
  double now = 0; // s, of a clock that only goes on; set before the actions of a frame are carried out
  std::optional<Floating> floating;  // waits to be set down
  std::optional<ShownMend> mend;     // waits to be taken
  std::string clipboard;             // what other programs put there; set before it is pasted
  std::optional<std::string> copied; // for the clipboard; the window takes it
  std::string lettering;             // the words that are typed
  LetterHeight letter_height = LetterHeight::seven;
  std::string motif_search;
  std::string open_field;    // the settings' field that is being changed: all its changes are one step
  double ruler_across = 150; // mm: what the printed rulers measured
  double ruler_upwards = 150;
  std::optional<BlankReadings> readings; // being typed in
  std::optional<int> reader_offset;      // rows, likewise
  std::uint64_t saves = 0;               // how often the design was written
  std::string suggested_name;            // for a design that was never saved: the demo's that it began as
  std::uint64_t file_digest = 0;         // of the bytes at `path` when they were last read or written; 0: none
  std::optional<FileStamp> file_seen;    // of the file when it was last compared with that digest
  std::shared_ptr<FoundWork> recovered;  // that the design was taken from, until it is kept anew
  std::shared_ptr<LongWork> long_work;   // is being worked out
  std::vector<std::shared_ptr<LongWork>> given_up_work; // likewise, and nobody waits for it
  bool quit = false;
};

// The file of the user's settings, and what was last seen in it.
struct SettingsFile {
  std::filesystem::path path; // empty: they last until the window closes
  Settings kept;
  Appearance desktop = Appearance::light; // what the desktop was set to at the start
  std::string system_language = "en";     // what the environment asked for at the start
  bool trouble_said = false;              // that they can't be kept, which is said once
};

struct App {
  Work work;
  YokeWork yoke; // beside the repeat
  View view;
  Session session;
  Bench bench;
  Caches caches;
  Theme theme;
  Settings settings;
  SettingsFile settings_file;
  std::filesystem::path motif_folder; // the user's own motifs; empty: there is no such place
};

// The yarn's colour as it is seen now.
[[nodiscard]] Colour seen_yarn(const App& app, char key);

// "Untitled" or the file's name; of the yoke, and of the repeat.
[[nodiscard]] std::string yoke_name_of(const App& app);
[[nodiscard]] std::string file_name_of(const App& app);
// "• puffins.repeat — Punchwright": with a mark where there is something to save.
[[nodiscard]] std::string window_title(const App& app);

// A new app with a blank design.
[[nodiscard]] App make_app();

} // namespace punchwright::editor
