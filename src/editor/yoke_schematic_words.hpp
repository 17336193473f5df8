// What the schematic shows of a size: its pieces with their measures, and all words in the lines that a width leaves
// them. Laid out once a frame, before the height is known that the words need.
#pragma once

#include "editor/app.hpp"

#include <string>
#include <vector>

namespace punchwright::editor {

struct SchematicWords {
  // Of the pieces with widths of their own. Words in lines: the width below, the pieces that have it, the width above.
  struct Piece {
    std::size_t number = 0; // in the yoke
    double bottom_mm = 0;
    double top_mm = 0;
    std::vector<std::string> bottom;
    std::vector<std::string> names;
    std::vector<std::string> top;
    float words_wide = 0; // px: the widest line of all
  };
  float seen = 0;      // px: of the room in the window
  float width = 0;     // px: of all; more, where so many pieces could not be told apart in that
  float left = 0;      // px from the room's left: where the pieces begin, beside the scale
  float right = 0;     // likewise, where they end
  bool beside = true;  // there is room for words beside the scale; else numbers alone
  double depth_mm = 0; // asked for
  double tall_mm = 0;  // that, or what is knitted where it is more
  std::vector<Piece> pieces;
  std::vector<std::string> rows; // below all
  std::size_t bottom_lines = 1;  // the most of any piece
  std::size_t name_lines = 1;
  std::size_t top_lines = 1;

  [[nodiscard]] double all_wide_mm() const;
  // px: what the words need
  [[nodiscard]] float above() const;
  [[nodiscard]] float below() const;
  // px: for all words, and the pieces as large as the width lets them be, or large enough.
  [[nodiscard]] float least_height() const;
};

constexpr float between_schematic_pieces = 16; // with their words, units of layout

[[nodiscard]] SchematicWords schematic_words(const App& app, float seen);

} // namespace punchwright::editor
