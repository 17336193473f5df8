// The dialogs that are mostly to be looked at, and what all dialogs have in common; drawn by dialogs().
#pragma once

#include "editor/actions.hpp"

#include <functional>

namespace punchwright::editor {

// px that a dialog may take, without its borders.
[[nodiscard]] ScreenPoint room_for_dialog(const App& app);

// Escape, where no drop-down was open that takes it.
[[nodiscard]] bool escape_pressed();

// Closes without doing anything; Escape too.
void cancel_button(const App& app, Actions& actions, const char* words);
// The only button of a dialog: Return and Escape too.
void close_button(const App& app, Actions& actions);

// The arrow keys scroll, where nothing can be chosen by them.
void scroll_by_keys();
// px: a scrolling room, beside a dialog's title and so many lines of fields and buttons.
[[nodiscard]] float height_beside_lines(const App& app, float lines);

// Text that wraps, and words that warn.
void text_lines(const std::string& text);
void warning_lines(const Theme& theme, const std::string& text);
// Remarks above a dialog's buttons. While a mouse button is pressed they keep the room that they had, since leaving a
// field by a press may take a remark away or bring one, and what was pressed would slip away from under the pointer.
void remarks_above_buttons(const std::function<void()>& draw);
// px: that room, as it was in the last frame.
[[nodiscard]] float room_of_remarks();
// px down to where the dialog must end, within its border.
[[nodiscard]] float room_below_here();
// As tall as what it holds, or as that room, in which it then scrolls.
void scrolling(Actions& actions, float room, const std::function<void()>& draw);
// Which widths a card takes, and whether the wished one is among them.
void width_words(const App& app, const Profile* profile, int width);

void settings_dialog(const App& app, Actions& actions);
void start_page(const App& app, Actions& actions, const StartDialog& dialog);
void help_page(const App& app, Actions& actions, const HelpDialog& dialog);
// Where a picture lies in the box, in its own proportion: as large as fits, in the middle; and the picture there.
[[nodiscard]] ScreenBox box_of_small_picture(const SmallPicture& picture, const ScreenBox& box);
void draw_small_picture(const Theme& theme, const SmallPicture& picture, const ScreenBox& box);

void keys_dialog(const App& app, Actions& actions);
void swatch_dialog(const App& app, Actions& actions);
// px: what the content asks for.
[[nodiscard]] float width_of_keys_dialog(const App& app);
[[nodiscard]] float width_of_swatch_dialog(const App& app);

// All commands, found by typing; arrows choose, Return does it.
void commands_dialog(const App& app, Actions& actions, const CommandsDialog& dialog);
// What was kept of windows that did not close; and a file that somebody else has changed.
void recovery_dialog(const App& app, Actions& actions, const RecoveryDialog& dialog);
void changed_dialog(const App& app, Actions& actions, const ChangedDialog& dialog);
void new_yoke_dialog_panel(const App& app, Actions& actions, const NewYokeDialog& dialog);
void trace_panel(const App& app, Actions& actions, const TraceDialog& dialog);
void picture_panel(const App& app, Actions& actions, const PictureDialog& dialog);
void layout_panel(const App& app, Actions& actions, const LayoutDialog& dialog);
void size_dialog(const App& app, Actions& actions, const SizeDialog& dialog);
void yarns_here_dialog(const App& app, Actions& actions, const YarnsHereDialog& dialog);
void keep_motif_dialog(const App& app, Actions& actions, const KeepMotifDialog& dialog);
void pairs_dialog(const App& app, Actions& actions, const PairsDialog& dialog);
void palette_dialog(const App& app, Actions& actions, const PaletteDialog& dialog);
void bench_changed_dialog(const App& app, Actions& actions, const BenchChangedDialog& dialog);
// The steps as a whole; the one at which the knitting stands is marked.
void step_list_dialog(const App& app, Actions& actions, const StepListDialog& dialog);
void play_dialog(const App& app, Actions& actions, const PlayDialog& dialog);
void wrong_dialog(const App& app, Actions& actions, const WrongDialog& dialog);
// The pages as they will print; fills placed.preview.
void preview_dialog(const App& app, Actions& actions, Placed& placed);
// What was done, the latest at the top; a click goes there.
void steps_dialog(const App& app, Actions& actions);

} // namespace punchwright::editor
