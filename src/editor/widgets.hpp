// Small parts that every panel uses: colours for ImGui, buttons that know their command, fields with labels.
#pragma once

#include "editor/actions.hpp"

#include <imgui.h>
#include <optional>
#include <string>
#include <string_view>

namespace punchwright::editor {

[[nodiscard]] ImU32 ink(Colour colour, float opacity = 1.0F);
[[nodiscard]] ImVec4 tint(Colour colour, float opacity = 1.0F);

// Remembers where the last item was drawn, for tests, and that the keys can go to it.
void remember_place(Actions& actions, std::string_view name, Stop::Kind kind = Stop::Kind::other);
// The last item was one of a dialog's that Return presses, or that has the keys when the dialog opens.
void make_default(Actions& actions);
void make_first_stop(Actions& actions);
// The last item is the field that a command goes to, where `wanted` is what is asked for.
void make_wanted(const App& app, Actions& actions, WantedField wanted);

// Whether the thing that has the keys is marked: after the mouse was used it isn't.
[[nodiscard]] bool keys_show_their_place();

// Whether the pointer was used last, and not the keys.
[[nodiscard]] bool pointer_leads();

// Where a tip begins that would cover something beside the pointer: its upper left corner, or its upper right one.
struct TipPlace {
  ScreenPoint corner;
  bool to_the_left = false; // the corner is the right one
};

// A tip where the pointer rests on the last item, beside the pointer or at that place. While the keys lead, that of
// the item that has them, along the foot of the window.
void tip(const Theme& theme, std::string_view text, std::optional<TipPlace> place = {});

// A tip of what the pointer rests on or drags in a picture, that covers none of these boxes, or as few of the last of
// them as can be; nor the state line.
void tip_beside(const Theme& theme, std::string_view text, const std::vector<ScreenBox>& boxes);

// How far the pointer has dragged the last item in this frame, in px; also in the frame that lets it go, since a fast
// hand's last movement and its letting go come in one. Nothing: it isn't dragged, or did not move.
[[nodiscard]] std::optional<ScreenPoint> way_of_frame(int button = 0);
// The same since the item was taken.
[[nodiscard]] std::optional<ScreenPoint> way_of_drag(int button = 0);

// With line breaks at spaces, where a line would be wider than the room: "68.8 mm" is never cut at its point.
[[nodiscard]] std::string in_lines(std::string_view text, float room);

enum class Look { plain, chosen, main, quiet };

// A button; true when pressed. `name` is the place's name, and the label is what is shown.
bool button(const Theme& theme, Actions& actions, const char* name, const char* label, Look look = Look::plain,
            float width = 0, bool enabled = true);

// The command's button with its name and key as a tip.
void command_button(const App& app, Actions& actions, Command command, const char* label, Look look = Look::plain,
                    float width = 0, std::optional<TipPlace> tip_place = {});

// Whether the command can do something now, and if not, why.
[[nodiscard]] std::string why_not(const App& app, Command command);

// A heading between parts of a panel.
void heading(const Theme& theme, const char* text);
// Quiet words that wrap.
void hint(const Theme& theme, std::string_view text);
// A label on the left; the next item fills the rest of the line.
// A field that needs more px than its share begins further left, or below the words.
void label(const Theme& theme, const char* text, float share = 0.46F, float needs = 0);

// Goes on in this line where there is room for so many px, else in the next.
void flow(float wide);

// The text, or what there is room for with dots behind it.
[[nodiscard]] std::string shortened(const std::string& text, float room);

// Fields of settings: each sends the changed settings under its name. Numbers stay within their bounds.
struct Field {
  const App& app;
  Actions& actions;
  const char* name = "";         // also the step's name in the history
  std::string* remark = nullptr; // takes what is said about a number that can't be; absent: the status line
};
// Any text; the width is that of the next item. True where it was changed. Escape takes the typing back.
bool text_input(const Field& field, std::string& text, const char* when_empty = nullptr, int flags = 0);
void text_field(const Field& field, const char* words, std::string Document::*member);
// A point or a comma; at least that many decimals are shown.
// The unit stands behind the number.
bool number_field(const Field& field, const char* words, double& value, double low, double high, int decimals,
                  const char* unit = nullptr);
// One that may be left empty: then there is none, and in quiet words what holds instead.
bool optional_field(const Field& field, const char* words, std::optional<double>& value, double low, double high,
                    int decimals, const std::string& when_empty);
// A small length, kept in mm whatever is shown; the bounds and decimals are those in mm.
bool length_field(const Field& field, const char* words, double& mm, double low, double high, int decimals);
// A whole number with buttons for one more and one less; the arrow keys do that too.
bool count_field(const Field& field, const char* words, int& value, int low, int high);
// The same without a label, in the room that is left.
bool count_input(const Field& field, const char* words, int& value, int low, int high);
void send(const Field& field, Document settings);

// Its words wrap where there is no room for them in one line.
bool check_box(Actions& actions, const char* name, const char* words, bool& value);

// A square of yarn with a border.
void swatch(ImDrawList& list, const Theme& theme, ScreenBox box, Colour colour);
// Diamond for a fault, triangle for a warning, disc for a note: told by shape as well as by colour.
void severity_sign(ImDrawList& list, const Theme& theme, ScreenPoint middle, float radius, Severity severity);

[[nodiscard]] inline ImVec2 to_imgui(ScreenPoint point) {
  return {point.x, point.y};
}
[[nodiscard]] inline ScreenPoint from_imgui(ImVec2 point) {
  return {point.x, point.y};
}

} // namespace punchwright::editor
