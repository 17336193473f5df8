// The parts that apply() is made of; only the apply_*.cpp files include this.
#pragma once

#include "drawing/widening.hpp"
#include "editor/actions.hpp"
#include "editor/kept_sides.hpp"
#include "machine/open_document.hpp"

namespace punchwright::editor {

void say(App& app, std::string text, Tone tone = Tone::plain);

// Applies an edit; refused: says why.
bool edit(App& app, const Edit& change);

// After an edit was applied to a drawing of that size: the axes of the chosen symmetry go along with rows and columns.
// `new_step`: it began a step of the history.
void follow_lines(App& app, const Edit& change, GridSize before, bool new_step);
// After every action, and between two steps: how the mark changed with the step that was made, so that it comes back
// with it.
void note_mark(App& app);
// After the drawing was laid out anew, which was that one before and is another now: the axes are where it has them. A
// symmetry that it had and has no longer isn't chosen any more until the step is undone; true where that is so.
[[nodiscard]] bool loses_symmetry_laid_out(App& app, const Grid& before);
// After every action, before which that message stood: whether the drawing can have the chosen symmetry, said in words
// where that is no longer so, or so again.
void settle_symmetry(App& app, const std::string& message_before);
[[nodiscard]] GridSize grid_size(const Grid& grid);
// Undo and redo, axes and mark included; false where there is nothing.
bool step_back(App& app);
bool step_on(App& app);

// Ends what is being drawn or typed, so that the next edit is a step of its own.
void close_step(App& app);

void apply_drawing(App& app, const BeginStroke& action);
void apply_drawing(App& app, const StrokeTo& action);
void apply_drawing(App& app, const EndStroke& action);
void apply_drawing(App& app, const MoveCursor& action);
void apply_drawing(App& app, const PlaceCursor& action);

void apply_drawing(App& app, const PressHere& action);
// Gives up the shape, or what hangs over the drawing, or the mark: the first of them that there is. False: none was.
bool give_up(App& app);

// What is marked, and what hangs over the drawing.
void hang_over(App& app, Floating floating);
void lift(App& app); // the marked area, to be moved
void set_down(App& app);
void run_area_command(App& app, Command command);
// The mend: shown first, then taken, or given up.
void show_mend(App& app);
void show_other_mend(App& app);
void turn_mend_symmetry(App& app);
void take_mend(App& app);

// Instead of changing stitches: floats caught by hand or accepted. Which: that of the chosen finding or else under the
// cursor, all that are too long in that row, or all of the drawing.
enum class FloatsOf { chosen, row, drawing };
void catch_floats_by_hand(App& app, FloatsOf which);
void accept_long_floats(App& app, FloatsOf which);
void take_marks_away(App& app);
void protect_marked_stitches(App& app);
void make_it_so(App& app, FriezeGroup group);
// The area that commands work on: the marked one, or all of the drawing.
[[nodiscard]] Area area_at_work(const App& app);

// Rows and columns, dragged or moved by keys; the yarns of rows; the drawing laid out.
void apply_rows(App& app, const BeginLineDrag& action);
void apply_rows(App& app, const LineDragTo& action);
void apply_rows(App& app, const EndLineDrag& action);
void apply_rows(App& app, const SetYarnsHere& action);
void apply_rows(App& app, const TakeLayout& action);
void widen(App& app, const Widening& wider);
void run_row_command(App& app, Command command);
// Of the tabs of tools and yarns.
void run_tab_command(App& app, Command command);
// Of what is otherwise clicked there.
void run_tool_command(App& app, Command command);

void apply_view(App& app, const ZoomAt& action);
void apply_view(App& app, const ChooseFinding& action);
void apply_view(App& app, const ZoomPiece& action);
void apply_view(App& app, const PanPiece& action);
// In the drawing's place, or back at its own: each has its own zoom.
void exchange_piece(App& app);
// Asked for once more, the colours are as they are.
void see_as(App& app, ColourSight sight);

// Pans so far that the cell can be seen, where it can't.
void show(App& app, Cell cell);

void run_command(App& app, Command command);
void go_to_step(App& app, std::size_t done);

// Another design takes the place of the one that is open; `path` is empty where it was never saved.
void take(App& app, OpenedDocument opened, const std::filesystem::path& path);

// What windows left behind.
void answer_recovery(App& app, RecoveryAnswer answer);
// Whether the file is another one than was opened or saved last; then it is asked what to do.
[[nodiscard]] bool ask_about_changed_file(App& app, KeptSide side, const Pending& afterwards);
// The same for all files that are open, before anything is saved: one look at each, and no reading where none changed.
void look_at_files(App& app);
void answer_changed(App& app, ChangedAnswer answer);
// In sentences: how the design, or the yoke, differs from its file as it is now (an empty path: nothing).
[[nodiscard]] std::vector<std::string> differences_from_file(const Document& design, const std::filesystem::path& path);
[[nodiscard]] std::vector<std::string> differences_from_file(const Yoke& yoke, const std::filesystem::path& path);
// What waited until the design that is open is safe.
void go_on(App& app, const Pending& pending);
// Writes the design there and says so; false where it can't be.
bool write_design(App& app, const std::filesystem::path& path, const Pending& afterwards = {});
// The same, but why it can't be is the answer.
[[nodiscard]] Failure try_writing_design(App& app, const std::filesystem::path& path);

// Files. `request` asks first where there is something to save.
void request(App& app, const Pending& pending);
void open_path_dialog(App& app, Purpose purpose, const Pending& afterwards = {});
// Where it was opened from the print preview, that comes back; else the drawing has the keys.
void close_dialog(App& app);
void export_shown(App& app);
void choose_path(App& app, bool replace);
void make_folder(App& app);
void open_with_machine(App& app, const std::string& profile);
void answer_guard(App& app, GuardAnswer answer);
void save(App& app, const Pending& afterwards);
// A design dropped on an untouched window is opened; on one where something is worked on, it is asked first.
void drop_file(App& app, const std::filesystem::path& path);
void place_dropped(App& app, const std::filesystem::path& path);
// Shown first, with the choice between a new design and a place in this one.
void open_picture(App& app, const std::filesystem::path& path);
void trace_instead(App& app);
void take_trace(App& app, bool as_new);
void take_picture(App& app, bool as_new);
// As a design that was never saved, called like the picture.
void begin_with(App& app, const Document& design, const std::string& name);
void show_trouble(App& app, const std::string& title, const Error& error, const std::string& rest);
// With a way to write it after all.
void show_not_saved(App& app, const Error& error, NotSaved work);
void save_after_trouble(App& app, SavedAgain where);

void ask_for_motif(App& app);
void keep_motif(App& app);
void begin_design(App& app, const NewDialog& wishes);

// The demo as a design that was never saved.
void open_copy(App& app, const std::filesystem::path& path);
// Of the recent files: that one, or those that are gone.
void forget_files(App& app, const std::filesystem::path& path);
// The file chooser's preview follows its name.
void look_at_chosen_file(App& app);
// The theme's colours, as the settings and the desktop ask for.
void choose_colours(App& app);
[[nodiscard]] Dialog start_dialog(const App& app);
[[nodiscard]] Dialog help_dialog();

// The open yoke, beside the repeat. Each change is a step that can be undone.
void take_yoke(App& app, OpenedYoke opened, const std::filesystem::path& path, std::uint64_t digest);
void change_yoke(App& app, const ChangeYoke& change);
void drop_yoke_field(App& app);
void undo_or_redo_yoke(App& app, bool back);
void go_to_yoke_step(App& app, std::size_t done);
void split_yoke(App& app);
void begin_yoke(App& app, const NewYokeDialog& wishes);
void open_tier(App& app, std::size_t tier);
void add_tier(App& app, const std::filesystem::path& path);
void choose_yoke_machine(App& app, const std::filesystem::path& path); // a .machine file, for all tiers
// After a repeat was saved: the yoke's tiers may be that file.
void reread_tiers(App& app, const std::filesystem::path& path);
// A copy was never saved.
void open_yoke_file(App& app, const std::filesystem::path& path, bool copy);
bool write_yoke_there(App& app, const std::filesystem::path& path, const Pending& afterwards);
[[nodiscard]] Failure try_writing_yoke(App& app, const std::filesystem::path& path);
void save_yoke(App& app, const Pending& afterwards);
void save_yoke_as(App& app, PathDialog dialog, const std::filesystem::path& path, bool replace);
// In sentences: how it differs from another state of it, and what yoke it is.
[[nodiscard]] std::vector<std::string> differences_in_words(const Yoke& yours, const Yoke& theirs);
[[nodiscard]] std::vector<std::string> yoke_in_words(const Yoke& yoke);
[[nodiscard]] NewYokeDialog new_yoke_dialog(const App& app);
// What a yoke that was never saved would be called: the paths of its tiers begin beside it.
[[nodiscard]] std::filesystem::path place_of_new_yoke(const App& app);
// Whether the pending step puts another yoke in the open one's place, or another repeat.
[[nodiscard]] bool is_about_yoke(const App& app, const Pending& pending);

constexpr std::size_t largest_file = std::size_t{8} * 1024 * 1024; // bytes; the reader refuses more
[[nodiscard]] FileReader file_reader();

// Machines. The first two answer the path dialog.
void choose_machine(App& app, PathDialog dialog, const std::filesystem::path& path);
void keep_machine(App& app, PathDialog dialog, const std::filesystem::path& path, bool replace);
// A design that goes to another folder still finds the .machine file that lies beside it now.
void keep_machine_in_reach(App& app, const std::filesystem::path& path);
// The bench: opened where the knitting was left, and its place kept at every step.
void open_bench(App& app);
void close_bench(App& app);
void step_bench(App& app, int by);
void go_to_move(App& app, int move);
void answer_bench(App& app, bool stay);
void run_knitting_command(App& app, Command command);
// Another design, or other stitches: what the bench knows is out of date.
void leave_outdated_bench(App& app);
[[nodiscard]] PlayDialog play_dialog_for(App& app);
void play_to(App& app, int moves);
[[nodiscard]] WrongDialog wrong_dialog_for(App& app);
void ask_what_went_wrong(App& app);
void correct_scale(App& app);
void use_readings(App& app);
void use_swatch(App& app, const SwatchAnswer& answer);
// Writes the profile as that .machine file and lets the design name it; false and the reason in `trouble` where it
// can't be written.
bool keep_profile_at(App& app, const Profile& profile, const std::string& learnt, const std::filesystem::path& path,
                     std::string& trouble);
// The name that a design in `folder` calls a .machine file by: its name alone where it lies there too.
[[nodiscard]] std::string machine_name_from(const std::filesystem::path& machine, const std::filesystem::path& folder);

// Loads the machine that the design names, if it isn't the one that is loaded. The built-in ones and .machine files,
// relative to the design's own folder.
void load_profile(App& app);

} // namespace punchwright::editor
