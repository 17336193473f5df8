// Small parts that every panel uses: colours for ImGui, buttons that know their command, fields with labels.
#pragma once

#include "editor/actions.hpp"

#include <imgui.h>
#include <string>
#include <string_view>

namespace punchwright::editor {

[[nodiscard]] ImU32 ink(Colour colour, float opacity = 1.0F);
[[nodiscard]] ImVec4 tint(Colour colour, float opacity = 1.0F);

// Remembers where the last item was drawn, for tests.
void remember_place(Actions& actions, std::string_view name);

// A tip where the pointer rests on the last item.
void tip(const Theme& theme, std::string_view text);

enum class Look { plain, chosen, main, quiet };

// A button; true when pressed. `name` is the place's name, and the label is what is shown.
bool button(const Theme& theme, Actions& actions, const char* name, const char* label, Look look = Look::plain,
            float width = 0, bool enabled = true);

// The command's button with its name and key as a tip.
void command_button(const App& app, Actions& actions, Command command, const char* label, Look look = Look::plain,
                    bool enabled = true);

// A heading between parts of a panel.
void heading(const Theme& theme, const char* text);
// Quiet words that wrap.
void hint(const Theme& theme, std::string_view text);
// A label on the left; the next item fills the rest of the line.
void label(const Theme& theme, const char* text, float share = 0.46F);

// Fields of settings: each sends the changed settings under its name. Numbers stay within their bounds.
struct Field {
  const App& app;
  Actions& actions;
  const char* name; // also the step's name in the history
};
void text_field(const Field& field, const char* words, std::string Document::*member);
bool number_field(const Field& field, const char* words, double& value, double low, double high, const char* form);
bool count_field(const Field& field, const char* words, int& value, int low, int high);
void send(const Field& field, Document settings);

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
