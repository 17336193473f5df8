// The parts of the window. Each looks at the app and says what the user did; none changes anything.
#pragma once

#include "editor/actions.hpp"
#include "editor/input_queue.hpp"

#include <vector>

struct ImDrawList;

namespace punchwright::editor {

using Portion = std::vector<InputEvent>;

// The parts' places:
//
//     menu
//     toolbar
//     settings | drawing            | piece
//              |                    | findings
//     status line
//
// Where large text leaves no room for both at the right, the piece and the findings have the whole side by turns.
struct Parts {
  ScreenBox toolbar;
  ScreenBox settings;
  ScreenBox drawing;
  ScreenBox piece;
  ScreenBox findings;
  ScreenBox status;
  bool low = false;      // large text leaves little height: a list says what the piece shows
  bool by_turns = false; // piece and findings are of one size then, and one of them is drawn
};

// One whole frame, between ImGui's NewFrame and Render.
void draw_frame(const App& app, const Portion& input, Actions& actions);

void menu_bar(const App& app, Actions& actions);
// One line where there is room for it, else two.
float toolbar_height(const App& app, float width);
void toolbar(const App& app, Actions& actions, const ScreenBox& box);
void status_line(const App& app, Actions& actions, const ScreenBox& box);
// Fills placed.canvas with where the stitches themselves are drawn.
void drawing_panel(const App& app, const Portion& input, Actions& actions, const ScreenBox& box, Placed& placed);
// At the bench, in place of all other parts: one step in large type.
void bench_panel(const App& app, Actions& actions, const ScreenBox& box);
void settings_panel(const App& app, Actions& actions, const ScreenBox& box);
void piece_panel(const App& app, Actions& actions, const Parts& parts, Placed& placed);
// Seam stitches and the middle of the bed, over the picture of the piece.
void draw_piece_marks(const App& app, ImDrawList& list, const ScreenBox& room);
void findings_panel(const App& app, Actions& actions, const Parts& parts);
void dialogs(const App& app, Actions& actions, Placed& placed);
void keys(const App& app, const Portion& input, Actions& actions);
// Tab, Return and the step from part to part, after everything was drawn.
void walk_with_keys(const App& app, const Portion& input, Actions& actions);
[[nodiscard]] bool drawing_has_keys();
// Likewise for the piece in its place, which the arrows move.
[[nodiscard]] bool piece_has_keys(const App& app);
// After a frame: whether a menu, a tip or a dialog has opened in it that ImGui only shows in the next, or the keys are
// on their way from one thing to another.
[[nodiscard]] bool something_opens();
// False where a field is typed in that has nothing of its own to undo: the key is the program's then.
[[nodiscard]] bool typing_undoes(const KeyEvent& key);

[[nodiscard]] Parts parts_of(const App& app);
// The edges that can be dragged, on both sides of the drawing.
void panel_edges(const App& app, Actions& actions, const Parts& parts);
// Above the piece or the findings where they take turns: which of them is shown, and from which side.
void choose_at_right(const App& app, Actions& actions);

// The tabs of the settings.
void design_tab(const App& app, Actions& actions);
void tools_tab(const App& app, Actions& actions);
void motifs_part(const App& app, Actions& actions); // of the tools
void yarns_tab(const App& app, Actions& actions);
void machine_tab(const App& app, Actions& actions);
void piece_tab(const App& app, Actions& actions);
void card_tab(const App& app, Actions& actions);

// Begins a part of the window at a fixed place; ImGui::End() ends it.
void begin_part(const App& app, const char* name, const ScreenBox& box, int more_flags = 0);

// The names that ImGui knows the parts by.
inline constexpr const char* drawing_part = "drawing";
inline constexpr const char* piece_part = "piece";
inline constexpr const char* state_line_part = "status";
inline constexpr const char* facts_begin = "facts begin"; // in its storage: px, where the facts at its right end begin
inline constexpr const char* bench_part = "bench";

// Whether the drawing's cells are so large that they become stitches. Their textures aren't made before: the mipmaps
// cost a software renderer some 70 ms, which the first frame needn't wait for.
[[nodiscard]] bool stitches_show(const App& app);

} // namespace punchwright::editor
