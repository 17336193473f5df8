// Whatever the user does, as values. Panels, menus, keys, buttons and tests only make these; apply() alone carries
// them out, after the frame.
#pragma once

#include "design/edits.hpp"
#include "editor/app.hpp"
#include "editor/commands.hpp"
#include "sheets/exports.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace punchwright::editor {

struct Run { // a command without argument
  Command command = Command::undo;
};
struct EditDesign {
  Edit edit;
};
// A change of a settings' field; until another field or action comes, all of them are one step.
struct ChangeField {
  Document settings; // grid and bands are not looked at
  std::string field;
  std::optional<std::vector<Band>> bands; // instead of the settings
};
struct CloseField {};
struct DropField {}; // Escape in a field: as it was before the typing, without a step

struct BeginStroke {
  Cell at; // unwrapped
  bool erase = false;
};
struct StrokeTo {
  Cell at; // unwrapped
};
struct EndStroke {};

struct ChooseSymmetry {
  std::optional<Frieze> frieze;
};
struct ChooseInterior {
  Interior interior = Interior::outline;
};
struct PressHere {}; // the tool's button at the cursor, by key: begins, and at another place ends
struct SetDown {};   // what hangs over the drawing
struct HangOver {    // to be placed and set down
  Grid drawing;
  std::string name;
  bool see_through = false;
};
struct TypeLettering {
  std::string words;
  LetterHeight height = LetterHeight::seven;
};
struct SearchMotifs {
  std::string words;
};

struct BeginLineDrag {
  bool rows = true; // else columns
  int line = 0;
};
struct LineDragTo {
  int line = 0; // may lie outside the drawing
};
struct EndLineDrag {};
struct SetYarnsHere { // of rows, by key; no contrast: main alone
  int first = 0;
  int count = 1;
  char main = 'A';
  std::optional<char> contrast;
};
struct TakeLayout { // the whole drawing, laid out so
  Layout layout = Layout::brick;
};
struct TraceInstead {}; // of the picture dialog's file: fitted to the card, with no float too long
struct TakeTrace {      // what the dialog for tracing shows
  bool as_new = true;   // else it hangs over the drawing
};
struct TakePicture {  // what the picture dialog shows
  bool as_new = true; // else it hangs over the drawing
};
struct KeepMotif {}; // what its dialog says

struct MoveCursor {
  int columns = 0;
  int rows = 0;
  bool draw = false; // the stitch gone to becomes what the pen draws
};
struct PlaceCursor {
  Cell at;
};
struct ZoomAt {
  float factor = 1;
  ScreenPoint anchor; // px in the window: what lies here stays here
};
struct PanBy {
  ScreenPoint by;
};
struct ChooseFinding {
  int finding = 0;
};
struct ChooseTab {
  Tab tab = Tab::design;
};
struct ChooseFace {
  Face face = Face::knit;
};
// A panel made wider or narrower by its edge.
struct ResizePanel {
  enum class Which { settings, findings };
  Which which = Which::settings;
  float width = 0; // units of layout
};
struct BringToFront { // at the right, where the piece and the findings take turns
  bool findings = false;
};
struct ZoomPiece {
  float factor = 1;
  ScreenPoint anchor; // px in the window
};
struct PanPiece {
  ScreenPoint by; // px
};
// Another sheet, page or zoom of the print preview.
struct SetPreview {
  PreviewView view;
};
// The design's bands of that pair take other yarns.
struct TakePair {
  char main = 'A';
  char contrast = 'B';
  YarnPair pair;
};
struct ExportShown {}; // the sheet that the preview shows
// Where things stood in this frame.
struct Placed {
  ScreenBox canvas;
  ScreenBox piece;
  ScreenBox preview;
};

struct GoToDrawing {}; // the keys; what waits over it stays

struct SetDialog {
  Dialog dialog;
};
struct ChoosePath { // the path dialog's button
  bool replace = false;
};
struct MakeFolder {};    // of the path dialog's name, in its folder
struct OpenWithMachine { // the trouble dialog's design, with a built-in machine instead of the one that is missing
  std::string profile;
};
enum class GuardAnswer { save, discard, cancel };
struct AnswerGuard {
  GuardAnswer answer = GuardAnswer::cancel;
};
struct DropFile {
  std::filesystem::path path;
};
struct OpenDropped { // the dropped design, after the guard
  std::filesystem::path path;
};
struct PlaceDropped { // its drawing over this one
  std::filesystem::path path;
};
struct GoToStep { // undoes or does again until so many steps are done
  std::size_t done = 0;
};
struct BeginDesign {
  NewDialog wishes;
};
struct SetRulers {
  double across = 150; // mm
  double upwards = 150;
};
struct CorrectScale {};
struct SetReadings {
  BlankReadings readings;
  int reader_offset = 0; // rows
};
struct UseReadings {}; // the geometry that they mean goes into a .machine file of the user's own
struct UseSwatch {
  SwatchAnswer answer;
};
struct ChangeUserSettings {
  Settings settings; // at once in effect
};
struct ForgetRecent {
  std::filesystem::path path; // empty: all that are no longer there
};
struct BeginOnMachine { // the dialog for a new design on that machine, after the guard
  std::string profile;
};
struct OpenCopy { // of a demo, after the guard: saving asks for a place of its own
  std::filesystem::path path;
};
struct StepBench { // at the bench, so many things to do forward, or back
  int by = 1;
};
struct GoToMove { // at the bench; opens it where it isn't
  int move = 0;
};
struct AnswerBench { // the steps have changed since
  bool stay = false; // else from the beginning
};
struct PlayTo { // so many moves done
  int moves = 0;
};
struct AskWhatWentWrong {}; // of the marks in the dialog
enum class RecoveryAnswer { open, aside, later };
struct AnswerRecovery { // about the first of the dialog's works
  RecoveryAnswer answer = RecoveryAnswer::later;
};
enum class ChangedAnswer {
  over,      // saved in the file's place
  elsewhere, // saved under another name
  cancel,
  mine,  // what is open stays so
  theirs // the file is opened as it is now, after the guard
};
struct AnswerChanged { // the file is another one than was opened
  ChangedAnswer answer = ChangedAnswer::cancel;
};
enum class SavedAgain { there, elsewhere };
struct SaveAfterTrouble { // what could not be written
  SavedAgain where = SavedAgain::there;
};
struct LookAtFiles {}; // the window has the keys again: another program may have written what is open here
// Of the open yoke.
struct SetYokeView {
  YokeView view;
};
// A change of it; until another field or action comes, all of the same field are one step.
struct ChangeYoke {
  Yoke yoke;
  std::string field; // also the step's name
};
struct BeginYoke { // from the dialog's measurements, after the guard
  NewYokeDialog wishes;
};
struct OpenTier { // its repeat, after the guard
  std::size_t tier = 0;
};
struct SplitYoke {};                   // pieces that are wider than the bed
struct AddTierTo {                     // a file is chosen for it
  std::optional<NewYokeDialog> wishes; // the dialog's new yoke; absent: the open one
};
struct Say {
  std::string text;
  Tone tone = Tone::plain;
};

using Action =
    std::variant<Run, EditDesign, ChangeField, CloseField, DropField, BeginStroke, StrokeTo, EndStroke, ChooseSymmetry,
                 ChooseInterior, PressHere, SetDown, HangOver, TypeLettering, SearchMotifs, BeginLineDrag, LineDragTo,
                 EndLineDrag, SetYarnsHere, TakeLayout, TakePicture, TraceInstead, TakeTrace, KeepMotif, MoveCursor,
                 PlaceCursor, ZoomAt, PanBy, ChooseFinding, ChooseTab, ChooseFace, BringToFront, ResizePanel, ZoomPiece,
                 PanPiece, SetPreview, TakePair, ExportShown, Placed, GoToDrawing, SetDialog, ChoosePath, MakeFolder,
                 OpenWithMachine, AnswerGuard, DropFile, OpenDropped, PlaceDropped, GoToStep, BeginDesign, SetRulers,
                 CorrectScale, SetReadings, UseReadings, UseSwatch, ChangeUserSettings, ForgetRecent, BeginOnMachine,
                 OpenCopy, SetYokeView, ChangeYoke, BeginYoke, OpenTier, SplitYoke, AddTierTo, StepBench, GoToMove,
                 AnswerBench, PlayTo, AskWhatWentWrong, AnswerRecovery, AnswerChanged, SaveAfterTrouble, LookAtFiles,
                 Say>;

void apply(App& app, const Action& action);

// What a frame collects: the actions, and (for tests) where things with a name were drawn.
struct NamedPlace {
  std::string name;
  ScreenBox box;
};
// Something that the keys can go to, in the order in which it was drawn.
struct Stop {
  enum class Kind { field, button, other };
  Kind kind = Kind::other;
  std::string name;       // only for tests
  unsigned id = 0;        // ImGui's
  void* window = nullptr; // ImGui's: where it is drawn
  ScreenBox box;
};
struct Actions {
  std::vector<Action> list;
  std::vector<Stop> stops;
  unsigned default_button = 0; // of the dialog that is open: what Return presses
  unsigned first_stop = 0;     // of a dialog that has just opened: what gets the keys; 0: its first stop
  unsigned wanted_stop = 0;    // a field that a command goes to
  bool dialog_appears = false;
  std::string keys_at; // only for tests: the name of the stop that has the keys
  std::string typed;   // and what stands in it, where it is a field
  std::vector<NamedPlace> places;
  bool publish_places = false;
  bool unsettled = false; // something has opened that is only seen in the next frame

  // Of any kind of Action. Made in actions.cpp for all of them: where every panel made the code that moves one into the
  // list, that was a third of the time to compile the editor.
  template <class OneAction> void push(OneAction action);
  void push(Action action);
  void run(Command command) { push(Run{command}); }
};

// Everything of a design but its drawing and bands: what a ChangeField starts from.
[[nodiscard]] Document settings_of(const Document& design);

// The settings on that machine, without what only other machines take.
[[nodiscard]] Document with_machine(Document settings, const Profile& profile);

// The layout of the canvas for a box: the zoom and place that the view asks for.
[[nodiscard]] CanvasLayout layout_of(const App& app, const ScreenBox& box);
// The same while rows are dragged, with the strips that come of it: the row in the hand stays where it is without them,
// so that the pointer, which is read by layout_of, lies on it.
[[nodiscard]] CanvasLayout layout_in_sight(const App& app, const ScreenBox& box);

} // namespace punchwright::editor
