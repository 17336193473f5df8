// What the editor may be asking in the middle of the window; one at a time, as values, so that tests can read them.
#pragma once

#include "design/edits.hpp"
#include "design/repeat_file.hpp"
#include "drawing/layouts.hpp"
#include "editor/beside.hpp"
#include "editor/canvas_layout.hpp"
#include "editor/help_text.hpp"
#include "editor/small_picture.hpp"
#include "editor/trace_view.hpp"
#include "editor/wrong.hpp"
#include "editor/yarn_pairs.hpp"
#include "machine/profile.hpp"
#include "pictures/picture.hpp"
#include "pieces/starter.hpp"
#include "sheets/exports.hpp"

#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace punchwright::editor {

struct BodySize {
  std::string name;
  double chest_cm = 0;
  double upper_arm_cm = 0;
  double armhole_cm = 0; // its depth; 0: not known
};

// What goes on once the design that is open is safe.
struct Pending {
  enum class What { nothing, quit, new_design, new_yoke, choose_file, open_file, open_copy, picture };
  What what = What::nothing;
  std::filesystem::path path;
  std::string machine;                      // of a new design; empty: the one in use
  std::shared_ptr<const Document> design{}; // of a picture, to go on with
  bool yoke_answered = false;               // its changes may be given up
};

struct NoDialog {};

enum class Purpose {
  open,
  save,
  card,
  chart,
  steps,
  leaflet,
  fabric,
  pattern,
  picture, // a picture to import
  measure_page,
  swatch,
  everything, // into a folder; the name is what all files begin with
  choose_machine,
  keep_machine,
  save_yoke,
  yoke_tier, // a repeat for a new yoke
  yoke_sheets
};

// A yoke from body measurements.
struct NewYokeDialog {
  YokeKind kind = YokeKind::pullover;
  std::vector<BodySize> sizes; // one or more
  double ease_cm = 7.5;
  bool own_arms = false; // else sleeves are a share of the body
  YokeRules rules;
  std::string profile;                      // empty: the tiers' own
  std::vector<std::filesystem::path> tiers; // .repeat files, from the bottom upwards
  std::vector<std::filesystem::path> known; // offered for tiers
  std::string remark;                       // why it can't be begun
  std::string remedy;
};

struct FolderEntry {
  std::string name;
  bool folder = false;
};

// The editor's own file chooser.
struct PathDialog {
  Purpose purpose = Purpose::open;
  std::filesystem::path folder;
  std::vector<FolderEntry> entries;
  std::string name;
  std::string trouble;                   // why the last choice didn't work
  bool ask_replace = false;              // a file of that name is there already
  int replaced = 1;                      // how many are, where several are written
  std::string remark;                    // why this is asked, where that isn't plain
  bool list_fresh = false;               // another folder was gone to: by keys, its first entry takes them
  std::optional<std::string> new_folder; // its name, being typed
  ChartWishes chart;                     // only for the needle chart
  std::optional<int> only_card;          // only for the card, from 1
  bool from_preview = false;             // which comes back when this is closed
  std::optional<Profile> machine;        // only for keeping one: what was learnt of it, and in which words
  std::string learnt;
  Pending afterwards;                  // after saving
  std::shared_ptr<NewYokeDialog> yoke; // only for a tier: what it is for
  std::string under_cursor;            // the entry that the pointer or the keys rest on
  std::optional<DesignCard> preview;   // of the .repeat file that the name means
};

// There is something to save.
struct GuardDialog {
  Pending pending;
  bool yoke = false; // it is the yoke that has changes
};

// A design that could be opened, were its machine's file there.
struct MissingMachine {
  Document document;
  std::vector<ReadingNote> notes;
  std::filesystem::path path;
  std::uint64_t digest = 0;              // of the file's bytes
  std::string instead = "bulky-card-24"; // the built-in machine to go on with
};

// Work that could not be written where it was to be.
struct NotSaved {
  bool yoke = false;  // it is the yoke
  Pending afterwards; // after saving
};

struct TroubleDialog {
  std::string title;
  std::string text;   // with file and line
  std::string remedy; // may be empty
  std::string rest;   // what has become of the design
  std::optional<MissingMachine> missing;
  std::optional<NotSaved> not_saved;
};

struct NewDialog {
  std::string profile = "bulky-card-24";
  int width = 24;
  int rows = 24;
  std::string remark; // about a number that can't be
};

struct SizeDialog {
  int width = 24;
  int rows = 24;
  AcrossAnchor across = AcrossAnchor::left; // where the old drawing stays in the new size
  UpAnchor up = UpAnchor::bottom;
  std::string remark;
};

// A picture that was chosen or dropped: what it would be as a drawing, and what to do with it.
struct PictureDialog {
  std::filesystem::path path;
  std::shared_ptr<const Picture> picture;
  ContrastIs contrast = ContrastIs::darker;
  SmallPicture shown;
};

// The drawing laid out otherwise than straight: what it would be, or why not.
struct LayoutDialog {
  Layout layout = Layout::brick;
  SmallPicture shown; // several repeats of it; of no columns where there is none
  int width = 0;      // of the straight repeat
  int rows = 0;
  std::string trouble; // why it can't be taken
};

// The yarns of a band or of a row, asked for beside it.
struct YarnsHereDialog {
  int row = 0;
  bool row_only = false;
  ScreenPoint at; // px: where it opens
};

// The marked area as a motif of the user's own.
struct KeepMotifDialog {
  Grid drawing;
  std::string name;
  std::string words;
  std::string trouble;
};

// Small pictures of a band in other yarns; nothing changes before one is taken.
struct PairsDialog {
  char main = 'A';
  char contrast = 'B';
  PairChange change = PairChange::contrast;
  std::string search;
  int chosen = 0; // among those found; the first is the pair as it is
};
struct PaletteDialog { // a colour with a name for that yarn
  char yarn = 'A';
  std::string search;
  int chosen = -1; // among those found; -1: none yet
};
struct PreviewDialog {}; // the pages as they will print; what is shown of them is in the view
struct KeysDialog {};
struct SwatchDialog {}; // eight pictures: which one looks like what was knitted?

struct CommandsDialog { // all commands, found by typing
  std::string search;
  int chosen = 0; // among those found
};
struct StepsDialog {}; // what was done, to go to any point of it
// A design was dropped on the window while another one is worked on.
struct DroppedDialog {
  std::filesystem::path path;
};

struct SettingsDialog {};

// The empty start: machines to begin for, demos, and what was open last.
struct StartDialog {
  std::vector<DesignCard> demos;
  std::vector<DesignCard> recent;
};

// The guide, carried in the program.
struct HelpDialog {
  std::shared_ptr<const std::vector<HelpBlock>> text;
  std::string search;
  int go_to = -1; // the block that the next frame scrolls to; -1: none
  int found = -1; // the block that the search stands at
};

// The steps have changed since the knitting was left at the bench.
struct BenchChangedDialog {
  int rows = 0;     // of the piece that were complete
  int rows_now = 0; // of the piece as it is
};
struct StepListDialog { // the whole list
  int chosen = 0;       // of the steps
  bool scroll = true;   // the next frame brings it into sight
};
struct FoundWork;
// Windows did not close as they should: what they were at, one after another.
struct RecoveryDialog {
  std::vector<std::shared_ptr<FoundWork>> works; // the first is asked about; never empty
  std::vector<std::string> differences;          // of the first, from its file
  SmallPicture shown;                            // of a design
  std::vector<std::string> yoke;                 // or what yoke it is, in words
  bool start_page = false;                       // comes when all are answered
};
// The file is another one than was opened or saved last.
struct ChangedDialog {
  std::vector<std::string> differences; // between what is open and what lies there
  Pending afterwards;                   // after saving
  bool yoke = false;                    // it is the yoke's file
  bool at_saving = true;                // else it was noticed when the window had the keys again
  bool unsaved = false;                 // there are changes that no file has
};
struct PlayedKnitting;
struct PlayMoment;
struct PlayDialog { // the knitting, move by move
  std::shared_ptr<const PlayedKnitting> knitting;
  std::shared_ptr<const PlayMoment> moment;
};
using WrongSearch = Beside<WrongAnswer>;
struct WrongDialog { // marks of what is seen, and what may have been done
  SeenForm form;
  std::shared_ptr<const WrongAnswer> answer; // null: not asked yet, or other marks
  std::shared_ptr<WrongSearch> search;       // under way; null: none. Whoever takes the last one away ends it
};

using Dialog = std::variant<NoDialog, PathDialog, GuardDialog, TroubleDialog, NewDialog, SizeDialog, KeysDialog,
                            SwatchDialog, CommandsDialog, StepsDialog, DroppedDialog, SettingsDialog, StartDialog,
                            HelpDialog, PreviewDialog, PairsDialog, PaletteDialog, PictureDialog, LayoutDialog,
                            YarnsHereDialog, KeepMotifDialog, BenchChangedDialog, StepListDialog, PlayDialog,
                            WrongDialog, TraceDialog, RecoveryDialog, ChangedDialog, NewYokeDialog>;

// "none", "open", "guard" …: for the state line and for tests.
[[nodiscard]] std::string name_of(const Dialog& dialog);
[[nodiscard]] bool is_open(const Dialog& dialog);

[[nodiscard]] std::string_view title_of(Purpose purpose);
// The kinds of file that may be written or read, first the usual one: ".pdf", ".svg".
[[nodiscard]] std::vector<std::string> extensions_for(Purpose purpose);
[[nodiscard]] bool writes_file(Purpose purpose);
// Whether the file that is looked at is shown beside the list.
[[nodiscard]] bool shows_preview(Purpose purpose);

// "1, 2, 3, 4, 6, 8, 12, 24": the widths that a card of so many columns takes.
[[nodiscard]] std::string fitting_widths(int card_columns);

// Folders first, then files of the purpose's kinds; hidden ones left out.
[[nodiscard]] std::vector<FolderEntry> entries_of(const std::filesystem::path& folder, Purpose purpose);

// The path that the dialog means: its name, absolute or in the folder, with the usual extension where it has
// none, or none that a design or a machine can have. A sheet's name keeps the one that was typed: its writer says what
// is allowed.
[[nodiscard]] std::filesystem::path path_of(const PathDialog& dialog);
// What is typed, where "~" at its beginning is the home folder, as in a shell.
[[nodiscard]] std::filesystem::path with_home(const std::string& name);

} // namespace punchwright::editor
