// Words on the yoke's pictures: in as many lines as their room needs, and never wider than it.
// With large text the pictures are narrow beside their names, and a name that is cut off tells nobody which piece it
// is.
#pragma once

#include "editor/app.hpp"

#include <imgui.h>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright::editor {

// "front and back": the piece and those that are like it.
[[nodiscard]] std::string names_with_widths_of(const Yoke& yoke, std::size_t piece);

// Broken at spaces; what goes beyond `most` lines, and a word that is wider than the room, end with dots.
[[nodiscard]] std::vector<std::string> label_lines(const Theme& theme, const std::string& words, float room,
                                                   std::size_t most, bool bold = false);
// px: of the widest line
[[nodiscard]] float width_of_label(const Theme& theme, const std::vector<std::string>& lines, bool bold = false);

// Middles of lines of text, at least so far apart, as near as can be to where they are wished (the smallest sum of
// squares), and within the room; px. `wished` goes downwards, and all of them have room.
[[nodiscard]] std::vector<float> moved_apart(const std::vector<float>& wished, float apart, float least, float most);

// On a ground that keeps them readable; `middle` is that of the first line.
void label_on(ImDrawList& list, const Theme& theme, ImVec2 middle, const std::vector<std::string>& lines,
              bool bold = false);
// On the picture's own ground, one below the other from `y` on; from `x` to the right, or ending there.
void lines_at(ImDrawList& list, const Theme& theme, float x, float y, const std::vector<std::string>& lines,
              bool ending = false);
// As one line, whatever its width.
void words_on(ImDrawList& list, const Theme& theme, ImVec2 middle, const std::string& words, bool bold = false);

} // namespace punchwright::editor
